"""The next goal with today's parts."""

from __future__ import annotations

from fuelwiz.session import Session
from fuelwiz.sizing.build import Build


def next_session(build: Build) -> Session | None:
    """The session at its next power and boost; None without a next power.

    A boost that is not given grows with the power in absolute terms, no less than nought.
    """
    session = build.session
    goal, said = session.goal, session.pressure
    if goal.next_power is None:
        return None
    boost = said.boost
    if goal.next_boost is not None:
        boost = goal.next_boost
    elif boost > 0:
        outside = build.pressure.atmosphere_Pa
        boost = max(0.0, (outside + boost) * goal.next_power / goal.power - outside)
    return session.model_copy(
        update={
            "goal": goal.model_copy(update={"power": goal.next_power}),
            "pressure": said.model_copy(update={"boost": boost}),
        }
    )
