"""What limits first: the crank power at which each part alone reaches its end, all else as it is."""

from __future__ import annotations

from fuelwiz.session import given
from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.injection import injector_ceiling_w
from fuelwiz.sizing.lines import FeedRun
from fuelwiz.sizing.size_rows import too_fast
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.vocabulary import band_of

BRISK_EDGE, FAST_EDGE = 2, 3  # upper edges of the two bands among the four thresholds


def ceilings(sized: SizedSystem) -> tuple[Ceiling, ...]:
    """The parts that the session has, lowest first; velocities and filters by rule of thumb, the rest solved."""
    system = sized.system
    session = system.session
    if not session.feed.run:
        return ()
    power, flow = system.demand.crank_power_W, system.flow_m3_s
    found: list[Ceiling] = []
    if sized.capacity is not None:
        by_line = system.at_tank and sized.sag_flow_m3_s < sized.capacity
        found.append(Ceiling("pump", sized.max_power_w(sized.capacity), "solved", by_line=by_line))
    found.append(_feed(sized))
    if session.feed.filter and given(session, "feed.filter"):
        least = min(part.rated_flow for part in session.feed.filter)
        found.append(Ceiling("filter", power * least / flow, "rule"))
    suction = None if system.pumps is None else system.inlet_velocity_m_s(flow, system.pumps)
    if suction is not None:
        found.append(Ceiling("inlet", power * session.bands.inlet[BRISK_EDGE] / suction, "rule"))
    if session.injectors is not None and not system.direct:
        found.append(Ceiling("injectors", injector_ceiling_w(sized), "solved"))
    return tuple(sorted(found, key=lambda ceiling: ceiling.max_power_W))


def solved_ceiling_w(sized: SizedSystem) -> float | None:
    """The lowest of the ceilings that are solved: of the pump and of the injectors; None without either."""
    system = sized.system
    found: list[float] = []
    if sized.system.solvable and sized.capacity is not None:
        found.append(sized.max_power_w(sized.capacity))
    if system.session.injectors is not None and not system.direct:
        found.append(injector_ceiling_w(sized))
    return min(found, default=None)


def _feed(sized: SizedSystem) -> Ceiling:
    """The run that limits first: the one that is shown, or a kept one."""
    shown = _run_ceiling(sized, sized.shown_run, None)
    kept = [_run_ceiling(sized, run, run.number) for run in sized.feed.kept()]
    return min([shown, *kept], key=lambda ceiling: ceiling.max_power_W)


def _run_ceiling(sized: SizedSystem, run: FeedRun, number: int | None) -> Ceiling:
    """The power at the end of "brisk", of "fast" for a run that is fast and not refused for it."""
    system, bands = sized.system, sized.system.session.bands.feed
    velocity = run.velocity_m_s(system.flow_m3_s)
    fast = band_of(velocity, bands) == "fast" and not too_fast(sized, run)
    edge = bands[FAST_EDGE if fast else BRISK_EDGE]
    return Ceiling("feed", system.demand.crank_power_W * edge / velocity, "rule", number)
