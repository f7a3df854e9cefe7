"""What gives out first: the crank power at which each part alone reaches its end, all else as it is."""

from __future__ import annotations

from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.injection import injector_ceiling_w
from fuelwiz.sizing.verdict import BuildVerdict

LAST_GOOD_EDGE = 2  # the upper edge of "brisk" among the four thresholds


def ceilings(verdict: BuildVerdict) -> tuple[Ceiling, ...]:
    """The parts that the session has, lowest first; velocities and filters by rule of thumb, the rest solved."""
    system, sized = verdict.sized.system, verdict.sized
    session = system.session
    if not session.feed.run:
        return ()
    power, flow = system.demand.crank_power_W, system.flow_m3_s
    parts: list[Ceiling] = []
    if sized.capacity is not None:
        parts.append(Ceiling("pump", sized.max_power_w(sized.capacity), "solved"))
    parts.append(Ceiling("feed", power * session.bands.feed[LAST_GOOD_EDGE] / sized.velocity_m_s, "rule"))
    if session.feed.filter:
        least = min(part.rated_flow for part in session.feed.filter)
        parts.append(Ceiling("filter", power * least / flow, "rule"))
    suction = None if system.pumps is None else system.inlet_velocity_m_s(flow, system.pumps)
    if suction is not None:
        parts.append(Ceiling("inlet", power * session.bands.inlet[LAST_GOOD_EDGE] / suction, "rule"))
    if verdict.injectors is not None:
        parts.append(Ceiling("injectors", injector_ceiling_w(sized, verdict.injectors), "solved"))
    return tuple(sorted(parts, key=lambda ceiling: ceiling.max_power_W))
