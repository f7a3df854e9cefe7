"""The next goal by name: its power, with the boost that it is solved at, given or assumed."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import NextFigures

ASSUMED = " (assumed)"


def next_name(subject: Subject, goal: NextFigures, *, whole: bool = True) -> str:
    """ "350 hp at 26.1 psi"; where `whole` that it is boost, and assumed where it is not given."""
    power = subject.numbers.figure("power", goal.crank_power_W)
    if goal.boost_Pa <= 0.0:
        return power
    assumed = ASSUMED if whole and boost_is_assumed(subject) else ""
    boost = subject.numbers.figure("pressure", goal.boost_Pa)
    return f"{power} at {boost}{' of boost' if whole else ''}{assumed}"


def point_then(subject: Subject, goal: NextFigures) -> str:
    """What a pump has to give then, as it would be asked for in a shop: "76 gal/h at 74.8 psi"."""
    flow = subject.numbers.figure("flow", goal.target_flow_m3_s)
    return f"{flow} at {subject.numbers.about('pressure', goal.target_rise_Pa)}"


def boost_is_assumed(subject: Subject) -> bool:
    """Whether the boost of the next goal was not given: it then follows from its power."""
    following = subject.next
    return subject.session.goal.next_boost is None and following is not None and following.boost_Pa > 0.0


def left_across_then(subject: Subject) -> float | None:
    """The pressure across the injectors at the next goal's boost, where it is less than today's; else None.

    A regulator with a hose to the manifold keeps it as it is, and so does less boost than today's.
    """
    session, following = subject.session, subject.next
    if following is None or session.engine.injection == "direct" or session.pressure.reference == "manifold":
        return None
    if following.boost_Pa <= session.pressure.boost or session.pressure.base <= 0.0:
        return None
    return subject.figures.pressure.injector_Pa - (following.boost_Pa - session.pressure.boost)
