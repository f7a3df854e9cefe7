"""What would do: wires and injectors around the ones that are given, each with what it comes to."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.facts import table
from fuelwiz.physics.wire import MOST_WIRE_LOSS_V, ampacity_A, awg_area_m2, loop_resistance_ohm
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures

CC_MIN = 1e-6 / 60  # m3/s
STEP_CC_MIN = 50  # injectors are sold in rough steps of this
BELOW, ABOVE = 2, 4


@dataclass(frozen=True, slots=True)
class WireChoice:
    """A gauge at the working current: volts lost in it, what it carries, and whether it does."""

    gauge: int
    loss_V: float
    ampacity_A: float
    does: bool


@dataclass(frozen=True, slots=True)
class InjectorChoice:
    """An injector's rating in m3/s at its rated pressure, and the duty that it would run at."""

    rating_m3_s: float
    duty: float
    does: bool


def wire_choices(session: Session, figures: Figures) -> tuple[WireChoice, ...]:
    """Every gauge of the table, thin ones first, against the fuse and half a volt; empty without current or length."""
    wiring, found = session.wiring, figures.wiring
    if wiring is None or found is None or wiring.length is None:
        return ()
    if found.current_A is None or found.fuse_A is None:
        return ()
    rows = []
    for gauge in sorted((int(name) for name in table("wire")["ampacity_105C"]), reverse=True):
        area = awg_area_m2(gauge)
        ohms = loop_resistance_ohm(
            area_m2=area,
            length_m=wiring.length,
            by_chassis=wiring.return_path == "chassis",
            temperature_k=wiring.temperature,
        )
        loss, carries = found.current_A * ohms, ampacity_A(area)
        rows.append(WireChoice(gauge, loss, carries, loss <= MOST_WIRE_LOSS_V and carries >= found.fuse_A))
    return tuple(rows)


def injector_choices(session: Session, figures: Figures) -> tuple[InjectorChoice, ...]:
    """Ratings around the smallest that does and the one given, with the duty of each; empty where none is known."""
    said, found = session.injectors, figures.injectors
    if said is None or found is None or found.smallest_rating_m3_s is None:
        return ()
    step = STEP_CC_MIN * CC_MIN
    first = int(found.smallest_rating_m3_s / step) + 1
    ratings = {step * (first + i) for i in range(-BELOW, ABOVE) if first + i > 0}
    near = [rating for rating in ratings if abs(rating - said.rated_flow) < step / 100]
    ratings = (ratings - set(near)) | {said.rated_flow}
    return tuple(
        InjectorChoice(rating, duty, duty <= said.duty_limit)
        for rating, duty in (
            (rating, found.smallest_rating_m3_s * said.duty_limit / rating) for rating in sorted(ratings)
        )
    )
