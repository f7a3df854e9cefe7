"""What would do: wires and injectors around the ones that are given, each with what it comes to."""

from __future__ import annotations

from fuelwiz.physics.injector import dead_share
from fuelwiz.physics.wire import gauges_at, is_gauge
from fuelwiz.session import Session, Wiring
from fuelwiz.sizing.part_figures import InjectorChoice, InjectorFigures, WireChoice
from fuelwiz.sizing.thresholds import CC_MIN, STEP_CC_MIN

BELOW, ABOVE = 2, 4


def wire_choices(wiring: Wiring, current_A: float | None, fuse_A: float | None) -> tuple[WireChoice, ...]:
    """Every gauge of the table, thin ones first, against the fuse; empty without current, fuse or length."""
    if current_A is None or fuse_A is None or wiring.length is None:
        return ()
    gauges = gauges_at(
        current_a=current_A,
        fuse_a=fuse_A,
        length_m=wiring.length,
        by_chassis=wiring.return_path == "chassis",
        temperature_k=wiring.temperature,
    )
    return tuple(
        WireChoice(
            gauge=each.gauge,
            loss_V=each.loss_v,
            ampacity_A=each.ampacity_a,
            does=each.does,
            given=wiring.wire is not None and is_gauge(wiring.wire, each.gauge),
        )
        for each in gauges
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
