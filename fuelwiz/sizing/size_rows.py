"""The row of one candidate size: velocity, loss, what the pumps still deliver, and what is wrong with it."""

from __future__ import annotations

from typing import TypedDict

from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.physics.line import friction_factor, reynolds
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.figures import Ladder, Least, SizeFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedLoss, FeedRun
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import LINE_LIMITS, SIZE_LIMITS, Band, SizeLimit, band_of, no_faster_than


def sized_systems(system: FuelSystem) -> dict[str, SizedSystem]:
    """The system at every candidate of the feed, smallest bore first, by the name of its row."""
    return {
        spelled(candidate): SizedSystem(system, candidate)
        for candidate in feed_candidates(system.session.feed)
    }


def size_row(sized: SizedSystem) -> SizeFigures:
    """All that is known of one candidate; without a run of feed, what a velocity alone says."""
    system, shown, velocity = sized.system, sized.shown_run, sized.velocity_m_s
    number = reynolds(
        velocity_m_s=velocity, bore_m=shown.line.bore_m, viscosity_m2_s=system.fuel.viscosity_m2_s
    )
    limits = limits_at_any_point(sized)
    has_runs = system.has_runs
    loss = sized.demand_loss if has_runs else None
    return SizeFigures(
        size=spelled(sized.candidate),
        bore_m=shown.line.bore_m,
        nominal_velocity_m_s=shown.nominal_velocity_m_s(system.flow_m3_s),
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
        **_with_pumps(sized),
        rail_sag_Pa=sized.sag_pa if has_runs else None,
        vapour_margin_Pa=sized.vapour_margin_pa,
        least=least(sized),
        line_works=not any(limit in LINE_LIMITS for limit in limits),
        works=False if limits else (True if system.solvable else None),
        limits=limits,
        ladder=ladder(sized) if has_runs else None,
    )


class _WithPumps(TypedDict):
    capacity_m3_s: float | None
    margin: float | None
    max_power_W: float | None
    pump_volts_V: float | None
    pump_current_A: float | None
    full_delivery_velocity_m_s: float | None
    full_delivery_band: Band | None
    full_delivery_loss_Pa: float | None
    rail_at_goal_Pa: float | None
    extrapolated: bool


def _with_pumps(sized: SizedSystem) -> _WithPumps:
    """What of a row needs a pump and a feed."""
    system, pumps, capacity = sized.system, sized.system.pumps, sized.capacity
    if pumps is None or capacity is None:
        return _NO_PUMPS
    pressure = sized.pressure_at_capacity_pa
    volts = pumps.volts(pressure)
    full = sized.full_velocity_m_s(sized.shown_run)
    return {
        "capacity_m3_s": capacity,
        "margin": sized.margin,
        "max_power_W": sized.max_power_w(capacity),
        "pump_volts_V": volts,
        "pump_current_A": pumps.pump.current_A(pressure),
        "full_delivery_velocity_m_s": full,
        "full_delivery_band": None if full is None else band_of(full, system.session.bands.feed),
        "full_delivery_loss_Pa": None if full is None else sized.feed.loss_pa(capacity),
        "rail_at_goal_Pa": sized.rail_at_goal_pa,
        "extrapolated": pumps.pump.extrapolates(pressure, volts),
    }


_NO_PUMPS: _WithPumps = {
    "capacity_m3_s": None,
    "margin": None,
    "max_power_W": None,
    "pump_volts_V": None,
    "pump_current_A": None,
    "full_delivery_velocity_m_s": None,
    "full_delivery_band": None,
    "full_delivery_loss_Pa": None,
    "rail_at_goal_Pa": None,
    "extrapolated": False,
}


def least(sized: SizedSystem) -> Least | None:
    """The least margin of the goal and the points, the first of equals; None where none can be known."""
    found: Least | None = None
    for number, point in enumerate(sized.and_points(), -1):
        margin = point.margin
        if margin is not None and (found is None or margin < found.margin):
            found = Least(None if number < 0 else number, margin)
    return found


def limits_at_any_point(sized: SizedSystem) -> tuple[SizeLimit, ...]:
    """What is wrong with a size at the goal or at any further point, in the order of the verdict's table."""
    if not sized.points:
        return size_limits(sized)
    found = {limit for point in sized.and_points() for limit in size_limits(point)}
    return tuple(limit for limit in SIZE_LIMITS if limit in found)


def size_limits(sized: SizedSystem) -> tuple[SizeLimit, ...]:
    """What is wrong with a size at one point of full power, in the order of the verdict's table."""
    shown = sized.shown_run
    limits: list[SizeLimit] = []
    if too_fast(sized, shown):
        limits.append("velocity")
    if not sized.system.has_runs:
        return tuple(limits)
    if too_fast_at_full_delivery(sized, shown):
        limits.append("delivery")
    if sized.sag_pa is not None and sized.sag_pa >= MOST_SAG * sized.system.pressure.injector_Pa:
        limits.append("sag")
    return (*limits, *pump_limits(sized))


def too_fast(sized: SizedSystem, run: FeedRun) -> bool:
    """Whether a run is refused for its velocity at the demand.

    "fast" is refused where the loss of the runs costs the pumps a share of their flow worth naming, and where
    there is no pump to know it by.
    """
    band = band_of(run.velocity_m_s(sized.system.flow_m3_s), sized.system.session.bands.feed)
    if band != "fast":
        return band == "too fast"
    return sized.runs_cost_the_pump is not False


def too_fast_at_full_delivery(sized: SizedSystem, run: FeedRun) -> bool:
    """Whether a run ahead of a regulator at the rail is refused for its velocity with all that the pumps send."""
    full = sized.full_velocity_m_s(run)
    band = None if full is None else band_of(full, sized.system.session.bands.feed)
    return band == "too fast" and sized.runs_cost_the_pump is True


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
