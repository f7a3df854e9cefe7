"""What gives out first: the crank power at which each part alone reaches its end, all else as it is."""

from __future__ import annotations

from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.injection import injector_ceiling_w
from fuelwiz.sizing.rows import run_velocity_m_s
from fuelwiz.sizing.whole import Whole

LAST_GOOD_EDGE = 2  # the upper edge of "strained" among the four thresholds


def ceilings(whole: Whole) -> tuple[Ceiling, ...]:
    """The parts that the session has, lowest first; velocities and filters by rule of thumb, the rest solved."""
    build, system = whole.system.build, whole.system
    session = build.session
    if not session.feed.run:
        return ()
    power, flow = build.demand.crank_power_W, build.flow_m3_s
    found = []
    if system.capacity is not None:
        found.append(Ceiling("pump", system.max_power_w(system.capacity), "solved"))
    velocity = run_velocity_m_s(system.feed.shown(), flow)
    found.append(Ceiling("feed", power * session.bands.feed[LAST_GOOD_EDGE] / velocity, "rule"))
    if session.feed.filter:
        least = min(part.rated_flow for part in session.feed.filter)
        found.append(Ceiling("filter", power * least / flow, "rule"))
    suction = None if build.pumps is None else build.inlet_velocity_m_s(flow, build.pumps)
    if suction is not None:
        found.append(Ceiling("inlet", power * session.bands.inlet[LAST_GOOD_EDGE] / suction, "rule"))
    if whole.injectors is not None:
        found.append(Ceiling("injectors", injector_ceiling_w(system, whole.injectors), "solved"))
    return tuple(sorted(found, key=lambda ceiling: ceiling.max_power_W))
