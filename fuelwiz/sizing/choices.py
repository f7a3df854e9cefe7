"""What would do: wires and injectors around the ones that are given, each with what it comes to."""

from __future__ import annotations

from fuelwiz.physics.injector import dead_share
from fuelwiz.physics.wire import METRIC_M2, WireAtCurrent, gauge_of, gauges_m2, is_same_area, wire_at
from fuelwiz.session import Session, Wiring
from fuelwiz.sizing.part_figures import InjectorChoice, InjectorFigures, WireChoice
from fuelwiz.sizing.thresholds import CC_MIN, STEP_CC_MIN

BELOW, ABOVE = 2, 4


def wire_choices(
    wiring: Wiring, current_A: float | None, fuse_A: float | None, *, metric: bool
) -> tuple[WireChoice, ...]:
    """Every gauge of the table, or every metric wire, thin ones first; empty without current, fuse or length.

    The builder's own wire is always among those of its kind, with the very area that the build is solved with.
    """
    if current_A is None or fuse_A is None or wiring.length is None:
        return ()
    own = wiring.wire if wiring.wire is not None and (gauge_of(wiring.wire) is None) == metric else None
    sold = METRIC_M2 if metric else gauges_m2()
    others = [area for area in sold if own is None or not is_same_area(area, own)]
    return tuple(
        _choice(
            wire_at(
                area,
                current_a=current_A,
                fuse_a=fuse_A,
                length_m=wiring.length,
                by_chassis=wiring.return_path == "chassis",
                temperature_k=wiring.temperature,
            ),
            own,
        )
        for area in sorted(others if own is None else [*others, own])
    )


def _choice(wire: WireAtCurrent, own_m2: float | None) -> WireChoice:
    return WireChoice(
        gauge=gauge_of(wire.area_m2),
        loss_V=wire.loss_v,
        ampacity_A=wire.ampacity_a,
        does=wire.does,
        given=wire.area_m2 == own_m2,
        area_m2=wire.area_m2,
        carries_fuse=wire.carries_fuse,
    )


def injector_choices(session: Session, figures: InjectorFigures | None) -> tuple[InjectorChoice, ...]:
    """Ratings around the smallest that does and the one given, with the duty of each; empty where none is known."""
    injectors = session.injectors
    if injectors is None or figures is None or figures.smallest_rating_m3_s is None:
        return ()
    step = STEP_CC_MIN * CC_MIN
    first = int(figures.smallest_rating_m3_s / step) + 1
    rounded = (step * (first + i) for i in range(-BELOW, ABOVE) if first + i > 0)
    others = {rating for rating in rounded if abs(rating - injectors.rated_flow) >= step / 100}
    dead = dead_share(dead_time_s=injectors.dead_time, rpm=session.engine.rpm)
    open_all_the_time = figures.smallest_rating_m3_s * (injectors.duty_limit - dead)
    return tuple(
        InjectorChoice(
            rating_m3_s=rating,
            duty=open_all_the_time / rating + dead,
            does=rating >= figures.smallest_rating_m3_s,
            given=rating == injectors.rated_flow,
        )
        for rating in sorted(others | {injectors.rated_flow})
    )
