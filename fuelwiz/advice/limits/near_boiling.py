"""What helps where the fuel is too close to boiling at the pump inlet: only what can bring what is missing."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.numbers import Role
from fuelwiz.advice.phrases import vapour_need
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.physics.fuel import blend_reid_pa
from fuelwiz.physics.line import GRAVITY
from fuelwiz.sizing.vocabulary import PathKind

WORTH_SHARE = 0.25
"""A part that loses less of what is missing is not named: a larger one would hardly move it."""
MOST_LOWER_M = 0.6
"""How much lower a pump can be mounted, or fuel stand, on a car at most: common practice, no source."""
SAFE_SIDE = 0.99


def cooler_inlet(subject: Subject, missing_pa: float | None, *, today: bool = True) -> str:
    """The cures as a sentence.

    Args:
        subject: the build.
        missing_pa: what the fuel lacks of the distance from boiling that is asked; None at a point of the pull alone,
            of which no figure is known.
        today: whether that is as the build stands, and not on a bad day, when the fuel is another.
    """
    helps = [
        *_another_place(subject, missing_pa),
        "fit a cooler in the return" if subject.session.return_line is not None else "cool the fuel",
        *_another_fuel(subject, missing_pa, today),
        *_less_loss(subject, missing_pa),
        *_more_pressure(subject, missing_pa),
    ]
    if len(helps) == 1:
        return f"{capitalized(helps[0])}."
    return f"{capitalized(', '.join(helps[:-1]))}{',' if len(helps) > 2 else ''} or {helps[-1]}."


def missing_today_pa(subject: Subject, margin_pa: float | None) -> float | None:
    """What a margin lacks of what the pump's place needs; None where it does not, or is not known."""
    need = vapour_need(subject)
    return None if margin_pa is None or margin_pa >= need else need - margin_pa


def needs_less_in_the_tank(subject: Subject, missing_pa: float | None) -> bool:
    """Whether the same pump in the tank or a surge pot would be far enough from boiling."""
    pump = subject.session.pump
    outside = pump is not None and pump.place == "outside"
    return outside and (missing_pa is None or missing_pa <= vapour_need(subject))


def _another_place(subject: Subject, missing_pa: float | None) -> Iterator[str]:
    if needs_less_in_the_tank(subject, missing_pa):
        yield "put the pump into the tank or a surge pot"


def _another_fuel(subject: Subject, missing_pa: float | None, today: bool) -> Iterator[str]:
    """A fuel that boils less easily; today with the Reid pressure that is low enough. Bad days have summer fuel."""
    fuel, pressure = subject.session.fuel, subject.figures.fuel.vapour_pressure_Pa
    if fuel.kind != "blend":
        return
    most = " (summer fuel)" if today else ""
    if today and missing_pa is not None and pressure is not None and pressure > missing_pa:
        reid = blend_reid_pa(fuel.ethanol) if fuel.reid_pressure is None else fuel.reid_pressure
        enough = SAFE_SIDE * reid * (pressure - missing_pa) / pressure
        most = f" (Reid pressure {subject.numbers.figure('pressure', enough)} or less)"
    yield f"use a less volatile fuel{most}"


def _less_loss(subject: Subject, missing_pa: float | None) -> Iterator[str]:
    """Strainer and suction line, where either loses a good part of what is missing."""
    if strainer_matters(subject, missing_pa):
        yield "clean or enlarge the strainer"
    if suction_matters(subject, missing_pa):
        yield "shorten or enlarge the suction line"


def strainer_matters(subject: Subject, missing_pa: float | None) -> bool:
    """Whether the strainer loses a good part of what is missing."""
    return _loses(subject, "strainer") >= WORTH_SHARE * (missing_pa or 0.0)


def suction_matters(subject: Subject, missing_pa: float | None) -> bool:
    """Whether the suction line does."""
    return _loses(subject, "suction") >= WORTH_SHARE * (missing_pa or 0.0)


def _loses(subject: Subject, kind: PathKind) -> float:
    """What the parts of a kind lose with all that the pump gives; -1 without any."""
    ahead = [part for part in subject.figures.path if part.kind in ("strainer", "suction")]
    of_kind = [part.loss_Pa for part in ahead if part.kind == kind]
    at_the_goal = sum(part.loss_Pa for part in ahead)
    inlet, given = subject.figures.inlet, subject.session.inlet
    if not of_kind or inlet is None or given is None or at_the_goal <= 0.0:
        return -1.0
    surge, tank = subject.session.surge, subject.session.tank.pressure
    in_the_pot = subject.session.pump is not None and subject.session.pump.place == "surge"
    above = tank if surge is None or not in_the_pot or surge.pressure is None else surge.pressure
    head = subject.figures.fuel.density_kg_m3 * GRAVITY * given.fuel_head
    lost = subject.figures.pressure.atmosphere_Pa + above + head - inlet.pressure_abs_Pa
    return lost * sum(of_kind) / at_the_goal


def _more_pressure(subject: Subject, missing_pa: float | None) -> Iterator[str]:
    """Fuel that stands higher above the inlet, where so little is missing; pressure in a surge pot."""
    inlet, pump = subject.session.inlet, subject.session.pump
    if pump is not None and pump.place == "surge":
        yield f"let the surge pot hold {_how_much(subject, 'pressure', missing_pa)}more pressure"
        return
    higher_m = None
    if missing_pa is not None:
        higher_m = missing_pa / (subject.figures.fuel.density_kg_m3 * GRAVITY)
    if higher_m is not None and higher_m > MOST_LOWER_M:
        return
    if pump is None or pump.place != "outside":
        yield "keep the tank full"
        return
    by = _how_much(subject, "length", higher_m)
    flooded = inlet is not None and inlet.fuel_head > 0.0
    yield f"flood the inlet {by}more" if flooded else f"mount the pump {by}lower"


def _how_much(subject: Subject, role: Role, value: float | None) -> str:
    """A figure with a blank behind it; nothing where none is known."""
    return "" if value is None else f"{subject.numbers.figure(role, value, 0.0)} "
