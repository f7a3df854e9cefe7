"""The row of one candidate size: velocity, loss, what the pumps still deliver, and what is wrong with it."""

from __future__ import annotations

from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.physics.line import ROUGHNESS_M, Run, friction_factor, reynolds, velocity_m_s
from fuelwiz.sizing.bands import band_of, no_worse_than
from fuelwiz.sizing.candidates import bore_in_hose_m, nominal_bore_m, spelled
from fuelwiz.sizing.figures import Ladder, SizeFigures
from fuelwiz.sizing.lines import FeedRun
from fuelwiz.sizing.system import MOST_SAG, System

LINE_LIMITS = ("velocity", "delivery", "sag")


def size_row(system: System) -> SizeFigures:
    """All that is known of one candidate; without a run of feed, what a velocity alone says."""
    shown = shown_run(system)
    velocity = run_velocity_m_s(shown, system.build.flow_m3_s)
    number = reynolds(
        velocity_m_s=velocity, bore_m=shown.line.bore_m, viscosity_m2_s=system.build.fuel.viscosity_m2_s
    )
    limits = size_limits(system, shown)
    pumps, build = system.build.pumps, system.build
    has_runs = bool(build.session.feed.run)
    solved = has_runs and pumps is not None
    loss = system.feed.loss(build.flow_m3_s) if has_runs else None
    capacity = system.capacity if solved else None
    full = run_velocity_m_s(shown, capacity) if capacity is not None and build.at_rail else None
    at_capacity = system.pressure_at_capacity_pa if solved else 0.0
    return SizeFigures(
        size=spelled(system.candidate),
        bore_m=shown.line.bore_m,
        nominal_velocity_m_s=nominal_velocity_m_s(shown, build.flow_m3_s),
        velocity_m_s=velocity,
        reynolds=number,
        friction_factor=friction_factor(
            reynolds=number, relative_roughness=shown.line.roughness_m / shown.line.bore_m
        ),
        band=band_of(velocity, build.session.bands.feed),
        feed_loss_Pa=loss.total_pa if loss else None,
        line_loss_Pa=loss.followers_pa if loss else None,
        pump_rise_Pa=system.demand_rise_pa if has_runs else None,
        target_rise_Pa=system.rise_pa(build.demand.target_flow_m3_s) if has_runs else None,
        capacity_m3_s=capacity,
        margin=margin(system) if solved else None,
        max_power_W=system.max_power_w(capacity) if capacity is not None else None,
        pump_volts_V=pumps.volts(at_capacity) if solved and pumps else None,
        pump_current_A=pumps.pump.current_A(at_capacity) if solved and pumps else None,
        full_delivery_velocity_m_s=full,
        full_delivery_band=None if full is None else band_of(full, build.session.bands.feed),
        full_delivery_loss_Pa=system.feed.loss_pa(capacity)
        if full is not None and capacity is not None
        else None,
        rail_at_goal_Pa=system.rail_at_goal_pa if solved else None,
        rail_sag_Pa=system.sag_pa if has_runs else None,
        vapour_margin_Pa=vapour_margin_pa(system) if solved else None,
        extrapolated=bool(
            solved and pumps and pumps.pump.extrapolates(at_capacity, pumps.volts(at_capacity))
        ),
        line_works=not any(limit in LINE_LIMITS for limit in limits),
        works=False if limits else (True if solved else None),
        limits=limits,
        ladder=ladder(system) if has_runs else None,
    )


def shown_run(system: System) -> FeedRun:
    """The run that a row speaks of; without a run of feed, one of PTFE hose at the candidate."""
    if system.build.session.feed.run:
        return system.feed.shown()
    assert system.candidate is not None
    bore = bore_in_hose_m(system.candidate, "ptfe")
    hose = Run(bore_m=bore, length_m=0.0, roughness_m=ROUGHNESS_M["ptfe"], loss_coefficient=0.0)
    return FeedRun(hose, True, nominal_bore_m(system.candidate))


def run_velocity_m_s(run: FeedRun, flow_m3_s: float) -> float:
    """Velocity in one run of the feed."""
    return velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.line.bore_m, side_by_side=run.line.side_by_side)


def nominal_velocity_m_s(run: FeedRun, flow_m3_s: float) -> float | None:
    """The velocity that people quote, at dash/16 in; None where no dash number is in play."""
    if run.nominal_bore_m is None:
        return None
    return velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.nominal_bore_m, side_by_side=run.line.side_by_side)


def margin(system: System) -> float:
    """What the pumps can send over what the goal burns, less one."""
    assert system.capacity is not None
    return system.capacity / system.build.flow_m3_s - 1


def vapour_margin_pa(system: System) -> float | None:
    """Vapour margin at the pump's inlet at capacity."""
    pumps = system.build.pumps
    assert pumps is not None and system.capacity is not None
    return system.build.vapour_margin_pa(system.capacity, pumps)


def size_limits(system: System, shown: FeedRun) -> tuple[str, ...]:
    """What is wrong with a size, in the order of the verdict's table."""
    build = system.build
    bands = build.session.bands
    limits = []
    if not no_worse_than(band_of(run_velocity_m_s(shown, build.flow_m3_s), bands.feed), "strained"):
        limits.append("velocity")
    if not build.session.feed.run:
        return tuple(limits)
    capacity = system.capacity
    full = run_velocity_m_s(shown, capacity) if build.at_rail and capacity is not None else 0.0
    if band_of(full, bands.feed) == "unfit":
        limits.append("delivery")
    if system.sag_pa is not None and system.sag_pa >= MOST_SAG * build.pressure.injector_Pa:
        limits.append("sag")
    return (*limits, *pump_limits(system)) if capacity is not None else tuple(limits)


def pump_limits(system: System) -> tuple[str, ...]:
    """What is wrong with the pumps at a size."""
    build, pump = system.build, system.build.session.pump
    pumps, capacity = build.pumps, system.capacity
    assert pump is not None and pumps is not None and capacity is not None
    limits = []
    if margin(system) < build.session.goal.reserve:
        limits.append("pump")
    if pump.relief is not None and pump.relief < system.demand_rise_pa:
        limits.append("relief")
    vapour = vapour_margin_pa(system)
    if vapour is not None and vapour < LEAST_VAPOUR_MARGIN_PA[pump.place]:
        limits.append("vapour")
    inlet = build.inlet_velocity_m_s(capacity, pumps)
    if inlet is not None and not no_worse_than(band_of(inlet, build.session.bands.inlet), "strained"):
        limits.append("inlet")
    return tuple(limits)


def ladder(system: System) -> Ladder:
    """What makes up the rise at the demand flow, in order from the rail back to the tank."""
    build = system.build
    flow = build.flow_m3_s
    said = build.session.pressure
    inlet = -build.inlet_gauge_pa(flow, build.pumps)
    boost = said.boost if build.follows_manifold else 0.0
    could = None if build.could_make_pa is None else max(0.0, build.could_make_pa)
    if build.at_tank:
        return Ladder(said.base, boost, system.pump_filters_pa(flow), 0.0, 0.0, 0.0, 0.0, inlet, could)
    loss = system.feed.loss(flow)
    return Ladder(
        said.base,
        boost,
        loss.filters_pa,
        loss.friction_pa,
        loss.fittings_pa,
        loss.parts_pa,
        loss.rise_pa,
        inlet,
        could,
    )
