"""The row of one candidate size: velocity, loss, what the pumps still deliver, and what is wrong with it."""

from __future__ import annotations

from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.physics.line import ROUGHNESS_M, Run, friction_factor, reynolds, velocity_m_s
from fuelwiz.sizing.candidates import bore_in_hose_m, feed_candidates, nominal_bore_m, spelled
from fuelwiz.sizing.figures import Ladder, SizeFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedRun
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import LINE_LIMITS, SizeLimit, band_of, no_faster_than


def sized_systems(system: FuelSystem) -> dict[str, SizedSystem]:
    """The system at every candidate of the feed, smallest bore first, by the name of its row."""
    return {
        spelled(candidate): SizedSystem(system, candidate)
        for candidate in feed_candidates(system.session.feed)
    }


def size_rows(system: FuelSystem) -> tuple[SizeFigures, ...]:
    """The row of every candidate, smallest bore first."""
    return tuple(size_row(sized) for sized in sized_systems(system).values())


def size_row(sized: SizedSystem) -> SizeFigures:
    """All that is known of one candidate; without a run of feed, what a velocity alone says."""
    shown = shown_run(sized)
    velocity = run_velocity_m_s(shown, sized.system.flow_m3_s)
    number = reynolds(
        velocity_m_s=velocity, bore_m=shown.line.bore_m, viscosity_m2_s=sized.system.fuel.viscosity_m2_s
    )
    limits = size_limits(sized, shown)
    pumps, system = sized.system.pumps, sized.system
    has_runs = bool(system.session.feed.run)
    solved = has_runs and pumps is not None
    loss = sized.feed.loss(system.flow_m3_s) if has_runs else None
    capacity = sized.capacity if solved else None
    full = run_velocity_m_s(shown, capacity) if capacity is not None and system.at_rail else None
    at_capacity = sized.pressure_at_capacity_pa if solved else 0.0
    return SizeFigures(
        size=spelled(sized.candidate),
        bore_m=shown.line.bore_m,
        nominal_velocity_m_s=nominal_velocity_m_s(shown, system.flow_m3_s),
        velocity_m_s=velocity,
        reynolds=number,
        friction_factor=friction_factor(
            reynolds=number, relative_roughness=shown.line.roughness_m / shown.line.bore_m
        ),
        band=band_of(velocity, system.session.bands.feed),
        feed_loss_Pa=loss.total_pa if loss else None,
        line_loss_Pa=loss.followers_pa if loss else None,
        pump_rise_Pa=sized.demand_rise_pa if has_runs else None,
        target_rise_Pa=sized.rise_pa(system.demand.target_flow_m3_s) if has_runs else None,
        capacity_m3_s=capacity,
        margin=margin(sized) if solved else None,
        max_power_W=sized.max_power_w(capacity) if capacity is not None else None,
        pump_volts_V=pumps.volts(at_capacity) if solved and pumps else None,
        pump_current_A=pumps.pump.current_A(at_capacity) if solved and pumps else None,
        full_delivery_velocity_m_s=full,
        full_delivery_band=None if full is None else band_of(full, system.session.bands.feed),
        full_delivery_loss_Pa=sized.feed.loss_pa(capacity)
        if full is not None and capacity is not None
        else None,
        rail_at_goal_Pa=sized.rail_at_goal_pa if solved else None,
        rail_sag_Pa=sized.sag_pa if has_runs else None,
        vapour_margin_Pa=vapour_margin_pa(sized) if solved else None,
        extrapolated=bool(
            solved and pumps and pumps.pump.extrapolates(at_capacity, pumps.volts(at_capacity))
        ),
        line_works=not any(limit in LINE_LIMITS for limit in limits),
        works=False if limits else (True if solved else None),
        limits=limits,
        ladder=ladder(sized) if has_runs else None,
    )


def shown_run(sized: SizedSystem) -> FeedRun:
    """The run that a row speaks of; without a run of feed, one of PTFE hose at the candidate."""
    if sized.system.session.feed.run:
        return sized.feed.shown()
    assert sized.candidate is not None
    bore = bore_in_hose_m(sized.candidate, "ptfe")
    hose = Run(bore_m=bore, length_m=0.0, roughness_m=ROUGHNESS_M["ptfe"], loss_coefficient=0.0)
    return FeedRun(hose, True, nominal_bore_m(sized.candidate))


def run_velocity_m_s(run: FeedRun, flow_m3_s: float) -> float:
    """Velocity in one run of the feed."""
    return velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.line.bore_m, side_by_side=run.line.side_by_side)


def nominal_velocity_m_s(run: FeedRun, flow_m3_s: float) -> float | None:
    """The velocity that people quote, at dash/16 in; None where no dash number is in play."""
    if run.nominal_bore_m is None:
        return None
    return velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.nominal_bore_m, side_by_side=run.line.side_by_side)


def margin(sized: SizedSystem) -> float:
    """What the pumps can send over what the goal burns, less one."""
    assert sized.capacity is not None
    return sized.capacity / sized.system.flow_m3_s - 1


def vapour_margin_pa(sized: SizedSystem) -> float | None:
    """Vapour margin at the pump's inlet at capacity."""
    pumps = sized.system.pumps
    assert pumps is not None and sized.capacity is not None
    return sized.system.vapour_margin_pa(sized.capacity, pumps)


def size_limits(sized: SizedSystem, shown: FeedRun) -> tuple[SizeLimit, ...]:
    """What is wrong with a size, in the order of the verdict's table."""
    system = sized.system
    bands = system.session.bands
    limits: list[SizeLimit] = []
    if not no_faster_than(band_of(run_velocity_m_s(shown, system.flow_m3_s), bands.feed), "brisk"):
        limits.append("velocity")
    if not system.session.feed.run:
        return tuple(limits)
    capacity = sized.capacity
    full = run_velocity_m_s(shown, capacity) if system.at_rail and capacity is not None else 0.0
    if band_of(full, bands.feed) == "too fast":
        limits.append("delivery")
    if sized.sag_pa is not None and sized.sag_pa >= MOST_SAG * system.pressure.injector_Pa:
        limits.append("sag")
    return (*limits, *pump_limits(sized)) if capacity is not None else tuple(limits)


def pump_limits(sized: SizedSystem) -> tuple[SizeLimit, ...]:
    """What is wrong with the pumps at a size."""
    system, pump = sized.system, sized.system.session.pump
    pumps, capacity = system.pumps, sized.capacity
    assert pump is not None and pumps is not None and capacity is not None
    limits: list[SizeLimit] = []
    if margin(sized) < system.session.goal.reserve:
        limits.append("pump")
    if pump.relief is not None and pump.relief < sized.demand_rise_pa:
        limits.append("relief")
    vapour = vapour_margin_pa(sized)
    if vapour is not None and vapour < LEAST_VAPOUR_MARGIN_PA[pump.place]:
        limits.append("vapour")
    inlet = system.inlet_velocity_m_s(capacity, pumps)
    if inlet is not None and not no_faster_than(band_of(inlet, system.session.bands.inlet), "brisk"):
        limits.append("inlet")
    return tuple(limits)


def ladder(sized: SizedSystem) -> Ladder:
    """What makes up the rise at the demand flow, in order from the rail back to the tank."""
    system = sized.system
    flow = system.flow_m3_s
    pressure = system.session.pressure
    inlet = -system.inlet_gauge_pa(flow, system.pumps)
    boost = pressure.boost if system.follows_manifold else 0.0
    could = None if system.could_make_pa is None else max(0.0, system.could_make_pa)
    if system.at_tank:
        return Ladder(pressure.base, boost, sized.pump_filters_pa(flow), 0.0, 0.0, 0.0, 0.0, inlet, could)
    loss = sized.feed.loss(flow)
    return Ladder(
        pressure.base,
        boost,
        loss.filters_pa,
        loss.friction_pa,
        loss.fittings_pa,
        loss.parts_pa,
        loss.rise_pa,
        inlet,
        could,
    )
