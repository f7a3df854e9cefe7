"""What is worth a look at rail and injectors: the pressure that is left across them, and the sag."""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from fuelwiz.advice.next_words import left_across_then, next_name
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.thresholds import MOST_SAG

SAG_WORTH_A_NOTE = 0.01
SAG_WORTH_A_WARNING = 0.5  # of the most that it may be


def injector_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    yield from _boost_from_nowhere(subject)
    yield from _boost_from_nowhere_then(subject)
    yield from _no_manifold_hose(subject)
    yield from _no_manifold_hose_then(subject)
    yield from _sag(subject)


def _boost_from_nowhere(subject: Subject) -> Iterator[Remark]:
    boost = subject.session.pressure.boost
    if boost <= 0.0 or subject.session.engine.induction != "none":
        return
    yield Remark(
        "warning",
        "engine.induction",
        f"{subject.numbers.figure('pressure', boost)} of boost is given, but nothing that makes it.",
        "Say whether a turbo or a supercharger does: such an engine takes more fuel for each horsepower.",
    )


def _boost_from_nowhere_then(subject: Subject) -> Iterator[Remark]:
    goal, following = subject.session.goal, subject.next
    if following is None or following.boost_Pa <= 0.0 or goal.next_induction != "none":
        return
    yield Remark(
        "warning",
        "goal.next_induction",
        f"{subject.numbers.figure('pressure', following.boost_Pa)} of boost is given for the next goal, but no boost"
        " as its induction.",
        "Say whether a turbo or a supercharger makes it: such an engine takes more fuel for each horsepower.",
    )


def _no_manifold_hose(subject: Subject) -> Iterator[Remark]:
    """Boost pushes back on injectors whose regulator does not feel it: they flow less just when boost comes."""
    session, sag = subject.session, subject.pick.rail_sag_Pa or 0.0
    left = subject.figures.pressure.injector_Pa - sag
    boost, base = session.pressure.boost, session.pressure.base
    if session.engine.injection == "direct" or session.pressure.reference == "manifold" or boost <= 0.0:
        return
    if left <= 0.0 or base <= 0.0:
        return
    at = subject.numbers.figure("pressure", boost)
    yield Remark(
        "warning",
        "pressure.reference",
        f"The regulator has no hose to the manifold: at {at} of boost{_in_the_line(subject, sag)}"
        f" {_flow_less(subject, left)}.",
        _let_it_follow(subject),
    )


def _no_manifold_hose_then(subject: Subject) -> Iterator[Remark]:
    """The same of the next goal, where its boost is above today's: the regulator is best bought with that in mind."""
    following, left = subject.next, left_across_then(subject)
    if following is None or left is None or left <= 0.0:
        return
    yield Remark(
        "warning",
        "pressure.reference",
        f"For {next_name(subject, following)}: the regulator has no hose to the manifold, so"
        f" {_flow_less(subject, left)}.",
        _let_it_follow(subject),
    )


def _in_the_line(subject: Subject, sag_pa: float) -> str:
    """What the line takes of it too, with the regulator at the tank: nothing at the rail makes up for that."""
    return f", {subject.numbers.figure('pressure', sag_pa)} lost in the line," if sag_pa > 0.0 else ""


def _flow_less(subject: Subject, left: float) -> str:
    """What is left across the injectors of the base pressure, and what that costs in flow."""
    base = subject.session.pressure.base
    pressure, whole = subject.numbers.figure("pressure", left, base), subject.numbers.number("pressure", base)
    less = subject.numbers.figure("percent", 1.0 - sqrt(left / base), 0.0)
    return f"{pressure} of {whole} is left across the injectors and they flow {less} less"


def _let_it_follow(subject: Subject) -> str:
    """What helps, by where the regulator sits."""
    if subject.at_rail:
        return "Run a small hose from the regulator to the manifold: the pressure across them then stays the same."
    if subject.at_tank:
        return (
            "Injectors and tune must allow for that, or fit a regulator on the rail with a hose to the manifold, or"
            " raise base pressure and tune for it."
        )
    return "Injectors and tune must allow for that, or the engine computer raises the rail pressure with the boost."


def _sag(subject: Subject) -> Iterator[Remark]:
    sag, across = subject.pick.rail_sag_Pa, subject.figures.pressure.injector_Pa
    if sag is None or across <= 0.0 or "sag" in subject.pick.limits or sag < SAG_WORTH_A_NOTE * across:
        return
    drop = subject.numbers.figure("pressure", sag, MOST_SAG * across)
    share = subject.numbers.figure("percent", sag / across, MOST_SAG)
    much = sag > SAG_WORTH_A_WARNING * MOST_SAG * across
    yield Remark(
        "warning" if much else "note",
        "pressure.regulator",
        f"Rail pressure drops {drop} at full power, {share} of what the injectors get.",
        f"Nothing at the rail makes up for the line: tune with the drop{', or fit a larger line' if much else ''}.",
    )
