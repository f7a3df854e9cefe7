"""Pump against system: the pressures that the pumps make and that each size asks for, over a range of flows."""

from __future__ import annotations

from fuelwiz.session import Session
from fuelwiz.sizing.figures import Plot
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.size_rows import sized_systems

POINTS = 41
FAR_PA = 1e8  # stands for a pressure without end, far outside any picture
BEYOND = 1.3  # how far past the goal and the meeting point the flows go


def plot_around(session: Session, highlighted: str) -> Plot | None:
    """Curves for a size and those beside it, and where the pumps meet it; None without a pump or a feed.

    A size that is not among the candidates is taken for the smallest.
    """
    system = FuelSystem(session)
    pumps = system.pumps
    if pumps is None or not session.feed.run:
        return None
    systems = sized_systems(system)
    names = list(systems)
    at = names.index(highlighted) if highlighted in systems else 0
    meeting = systems[highlighted].capacity if highlighted in systems else None
    most = BEYOND * max(system.flow_m3_s, meeting or 0.0)
    flows = tuple(most * i / (POINTS - 1) for i in range(POINTS))
    ends = pumps.dead_head_rise_pa
    made = [pumps.highest_rise_pa(flow) if flow > 0 else ends for flow in flows]
    return Plot(
        flows=flows,
        pump_pressures=tuple(FAR_PA if rise is None else max(rise, -FAR_PA) for rise in made),
        systems={
            size: tuple(systems[size].rise_pa(flow) for flow in flows)
            for size in names[max(at - 1, 0) : at + 2]
        },
        goal_flow=system.flow_m3_s,
        crossing=(meeting, systems[highlighted].rise_pa(meeting)) if meeting else None,
    )
