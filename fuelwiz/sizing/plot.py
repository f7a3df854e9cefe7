"""Pump against system: the pressures that the pumps make and that each size asks for, over a range of flows."""

from __future__ import annotations

from fuelwiz.physics.circuit import PumpSet
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Plot
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.size_rows import sized_systems
from fuelwiz.sizing.sized_system import SizedSystem

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
    pull = _pull(systems[names[at]])
    most = BEYOND * max(system.flow_m3_s, meeting or 0.0, *(flow for flow, _ in pull))
    flows = tuple(most * i / (POINTS - 1) for i in range(POINTS))
    known = session.pump is None or session.pump.kind is not None
    return Plot(
        flows=flows,
        pump_pressures=_made(pumps, flows),
        systems={
            size: tuple(systems[size].rise_pa(flow) for flow in flows)
            for size in names[max(at - 1, 0) : at + 2]
        },
        goal_flow=system.flow_m3_s,
        crossing=(meeting, systems[highlighted].rise_pa(meeting)) if meeting else None,
        pull=pull,
        by_turbine=None if known else _made(pumps.by("turbine"), flows),
        by_displacement=None if known else _made(pumps.by("displacement"), flows),
    )


def _made(pumps: PumpSet, flows: tuple[float, ...]) -> tuple[float, ...]:
    """The pressure that the pumps make at each flow."""
    ends = pumps.dead_head_rise_pa
    made = [pumps.highest_rise_pa(flow) if flow > 0 else ends for flow in flows]
    return tuple(FAR_PA if rise is None else max(rise, -FAR_PA) for rise in made)


def _pull(sized: SizedSystem) -> tuple[tuple[float, float], ...]:
    """Flow and pressure that each further point of full power asks for."""
    points = ((point.system.flow_m3_s, point) for point in sized.points)
    return tuple((flow, point.rise_pa(flow)) for flow, point in points)
