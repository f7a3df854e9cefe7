"""The row of one candidate size: velocity, loss, what the pumps still deliver, and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.physics.line import friction_factor, reynolds
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.figures import Ladder, SizeFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedLoss
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
    system, run = sized.system, sized.shown_run
    number = reynolds(
        velocity_m_s=sized.velocity_m_s, bore_m=run.line.bore_m, viscosity_m2_s=system.fuel.viscosity_m2_s
    )
    roughness = run.line.roughness_m / run.line.bore_m
    limits = size_limits(sized)
    loss = sized.demand_loss if system.has_runs else None
    capacity, full = sized.capacity, sized.full_delivery_velocity_m_s
    at_work = _pump_at_work(sized)
    return SizeFigures(
        size=spelled(sized.candidate),
        bore_m=run.line.bore_m,
        nominal_velocity_m_s=run.nominal_velocity_m_s(system.flow_m3_s),
        velocity_m_s=sized.velocity_m_s,
        reynolds=number,
        friction_factor=friction_factor(reynolds=number, relative_roughness=roughness),
        band=band_of(sized.velocity_m_s, system.session.bands.feed),
        feed_loss_Pa=loss.total_pa if loss else None,
        line_loss_Pa=loss.followers_pa if loss else None,
        pump_rise_Pa=sized.demand_rise_pa if loss else None,
        target_rise_Pa=sized.rise_pa(system.demand.target_flow_m3_s) if loss else None,
        capacity_m3_s=capacity,
        margin=sized.margin,
        max_power_W=None if capacity is None else sized.max_power_w(capacity),
        pump_volts_V=at_work.volts_V,
        pump_current_A=at_work.current_A,
        full_delivery_velocity_m_s=full,
        full_delivery_band=None if full is None else band_of(full, system.session.bands.feed),
        full_delivery_loss_Pa=None if full is None or capacity is None else sized.feed.loss_pa(capacity),
        rail_at_goal_Pa=None if capacity is None else sized.rail_at_goal_pa,
        rail_sag_Pa=sized.sag_pa if loss else None,
        vapour_margin_Pa=sized.vapour_margin_pa,
        extrapolated=at_work.extrapolated,
        line_works=not any(limit in LINE_LIMITS for limit in limits),
        works=False if limits else (True if system.solvable else None),
        limits=limits,
        ladder=ladder(sized) if loss else None,
    )


@dataclass(frozen=True, slots=True)
class _PumpAtWork:
    """One pump at capacity, and whether its sheet says what it does there."""

    volts_V: float | None
    current_A: float | None
    extrapolated: bool


def _pump_at_work(sized: SizedSystem) -> _PumpAtWork:
    pumps = sized.system.pumps
    if pumps is None or sized.capacity is None:
        return _PumpAtWork(None, None, False)
    pressure = sized.pressure_at_capacity_pa
    volts = pumps.volts(pressure)
    return _PumpAtWork(volts, pumps.pump.current_A(pressure), pumps.pump.extrapolates(pressure, volts))


def size_limits(sized: SizedSystem) -> tuple[SizeLimit, ...]:
    """What is wrong with a size, in the order of the verdict's table."""
    system = sized.system
    limits: list[SizeLimit] = []
    if not no_faster_than(band_of(sized.velocity_m_s, system.session.bands.feed), "brisk"):
        limits.append("velocity")
    if not system.has_runs:
        return tuple(limits)
    full = sized.full_delivery_velocity_m_s
    if full is not None and band_of(full, system.session.bands.feed) == "too fast":
        limits.append("delivery")
    if sized.sag_pa is not None and sized.sag_pa >= MOST_SAG * system.pressure.injector_Pa:
        limits.append("sag")
    return (*limits, *pump_limits(sized))


def pump_limits(sized: SizedSystem) -> tuple[SizeLimit, ...]:
    """What is wrong with the pumps at a size; nothing that is known without a pump."""
    system, pump = sized.system, sized.system.session.pump
    pumps, capacity, margin = system.pumps, sized.capacity, sized.margin
    if pump is None or pumps is None or capacity is None or margin is None:
        return ()
    limits: list[SizeLimit] = []
    if margin < system.session.goal.reserve:
        limits.append("pump")
    if pump.relief is not None and pump.relief < sized.demand_rise_pa:
        limits.append("relief")
    vapour = sized.vapour_margin_pa
    if vapour is not None and vapour < LEAST_VAPOUR_MARGIN_PA[pump.place]:
        limits.append("vapour")
    inlet = system.inlet_velocity_m_s(capacity, pumps)
    if inlet is not None and not no_faster_than(band_of(inlet, system.session.bands.inlet), "brisk"):
        limits.append("inlet")
    return tuple(limits)


def ladder(sized: SizedSystem) -> Ladder:
    """What makes up the rise at the demand flow, in order from the rail back to the tank."""
    system = sized.system
    could = system.could_make_pa
    # A feed behind a regulator at the tank costs the pump nothing: only the filters ahead of it do.
    loss = (
        FeedLoss(filters_pa=sized.pump_filters_pa(system.flow_m3_s)) if system.at_tank else sized.demand_loss
    )
    return Ladder(
        base_Pa=system.session.pressure.base,
        boost_Pa=system.session.pressure.boost if system.follows_manifold else 0.0,
        filters_Pa=loss.filters_pa,
        friction_Pa=loss.friction_pa,
        fittings_Pa=loss.fittings_pa,
        parts_Pa=loss.parts_pa,
        rise_Pa=loss.rise_pa,
        inlet_Pa=-system.demand_inlet_gauge_pa,
        could_make_Pa=None if could is None else max(0.0, could),
    )
