"""Pump against system: the pressures that the pumps make and that each size asks for, over a range of flows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fuelwiz.session import Session
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.system import System

POINTS = 41
FAR_PA = 1e8  # stands for a pressure without end, far outside any picture
BEYOND = 1.3  # how far past the goal and the meeting point the flows go


@dataclass(frozen=True, slots=True)
class Plot:
    """Rising flows in m3/s, and pascals across the pumps at each; below nought where they send no such flow."""

    flows: tuple[float, ...]
    pump_pressures: tuple[float, ...]
    systems: dict[str, tuple[float, ...]]
    goal_flow: float
    crossing: tuple[float, float] | None


def plot(session: Session, sizes: Sequence[str], highlighted: str) -> Plot | None:
    """Curves for some sizes and where the pumps meet the highlighted one; None without a pump or a feed."""
    build = Build(session)
    pumps = build.pumps
    if pumps is None or not session.feed.run:
        return None
    systems = {spelled(row): System(build, row) for row in feed_candidates(session.feed)}
    meeting = systems[highlighted].capacity if highlighted in systems else None
    most = BEYOND * max(build.flow_m3_s, meeting or 0.0)
    flows = tuple(most * i / (POINTS - 1) for i in range(POINTS))
    ends = pumps.stages * pumps.end_pa if pumps.end_pa is not None else None
    made = [pumps.highest_rise_pa(flow) if flow > 0 else ends for flow in flows]
    return Plot(
        flows=flows,
        pump_pressures=tuple(FAR_PA if rise is None else max(rise, -FAR_PA) for rise in made),
        systems={
            size: tuple(systems[size].rise_pa(flow) for flow in flows) for size in sizes if size in systems
        },
        goal_flow=build.flow_m3_s,
        crossing=(meeting, systems[highlighted].rise_pa(meeting)) if meeting else None,
    )
