"""The next goal with today's parts."""

from __future__ import annotations

from fuelwiz.session import Session, Size
from fuelwiz.sizing.choose import recommended
from fuelwiz.sizing.figures import NextFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.size_rows import size_rows
from fuelwiz.sizing.verdict import ReturnPick, judge


def next_figures(system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None) -> NextFigures | None:
    """The next goal at today's sizes of feed and return; None without a next power."""
    session = next_session(system)
    if session is None:
        return None
    following = FuelSystem(session)
    judgement = judge(following, pick, return_pick)
    return NextFigures(
        crank_power_W=following.demand.crank_power_W,
        boost_Pa=session.pressure.boost,
        recommended=recommended(size_rows(following)),
        margin=judgement.margin,
        works=not judgement.limits,
        limits=judgement.limits,
    )


def next_session(system: FuelSystem) -> Session | None:
    """The session at its next power and boost; None without a next power.

    A boost that is not given grows with the power in absolute terms, and is never below 0.
    """
    session = system.session
    goal, pressure = session.goal, session.pressure
    if goal.next_power is None:
        return None
    boost = pressure.boost
    if goal.next_boost is not None:
        boost = goal.next_boost
    elif boost > 0:
        outside = system.pressure.atmosphere_Pa
        boost = max(0.0, (outside + boost) * goal.next_power / goal.power - outside)
    return session.model_copy(
        update={
            "goal": goal.model_copy(update={"power": goal.next_power}),
            "pressure": pressure.model_copy(update={"boost": boost}),
        }
    )
