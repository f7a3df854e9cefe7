"""Bench tests: what the pumps sent into a can over what the model says they send there."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from fuelwiz.measured.figures import BenchFigures, BenchTest, Expected, Proposal
from fuelwiz.measured.model import Model
from fuelwiz.measured.proposals import percent
from fuelwiz.measured.statistics import median, weighted_mean
from fuelwiz.measured.thresholds import CANS, LEAST_TOLERANCE, LONG_ENOUGH_S, ODD
from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.session import Bench, Rejected, field_at, given, read
from fuelwiz.units import to_si

# How far off each part of a test may be, 95 times in 100: common practice, no source.
MARKS_OF_A_CAN = 0.02
WATCH_S = 0.5
GAUGE_PA = PSI_PA
METER_V = 0.1


def bench_figures(model: Model) -> BenchFigures | None:
    """All bench tests of a session; None where there is none, or no pump to hold them against."""
    tests = model.system.session.bench
    if not tests or model.system.pumps is None:
        return None
    return together([bench_test(model, test) for test in tests])


def bench_test(model: Model, test: Bench) -> BenchTest:
    """One test by itself, not yet held against the others."""
    if test.volume is not None:
        volume = test.volume
    else:
        assert test.mass is not None
        volume = test.mass / model.system.fuel.density_kg_m3
    flow = volume / test.time
    pumps = model.pumps_at(test.pumps, test.volts)
    if pumps is None or (test.at == "rail" and not model.has_feed):
        return BenchTest(flow, None, None, None, False)
    rise = _rise_pa(model, test, flow, pumps)
    given = pumps.flow_m3_s(rise)
    if given <= 0:
        return BenchTest(flow, given, None, None, False)
    return BenchTest(flow, given, flow / given, _tolerance(pumps, rise, given, test.time), False)


def _rise_pa(model: Model, test: Bench, flow_m3_s: float, pumps: PumpSet) -> float:
    """Rise across the pumps: the engine stands, so a feed behind a regulator at the tank carries nothing."""
    if test.at == "rail":
        return model.sized.rise_pa(flow_m3_s, rail_pa=test.pressure, pumps=pumps)
    return test.pressure - model.system.inlet_gauge_pa(flow_m3_s, pumps)


def _tolerance(pumps: PumpSet, rise_pa: float, given_m3_s: float, time_s: float) -> float:
    """How far off the factor of one test may be, as a fraction of it, 95 times in 100."""
    half = GAUGE_PA / 2
    by_pressure = abs(pumps.flow_m3_s(rise_pa + half) - pumps.flow_m3_s(rise_pa - half))
    volts = pumps.supply.volts
    more, less = (
        replace(pumps, supply=replace(pumps.supply, volts=volts + off)).flow_m3_s(rise_pa)
        for off in (METER_V / 2, -METER_V / 2)
    )
    return hypot(MARKS_OF_A_CAN, WATCH_S / time_s, by_pressure / given_m3_s, (more - less) / given_m3_s)


def together(tests: list[BenchTest]) -> BenchFigures:
    """Tests held against each other: odd ones stay out, the rest make one factor."""
    known = [test.factor for test in tests if test.factor is not None]
    if not known:
        return BenchFigures(None, None, tuple(tests))
    middle = median(known)
    judged = tuple(replace(test, odd=_is_odd(test, middle)) for test in tests)
    counted = [
        (test.factor, test.tolerance)
        for test in judged
        if test.factor is not None and test.tolerance is not None and not test.odd
    ]
    if not counted:
        return BenchFigures(None, None, judged)
    mean = weighted_mean([factor for factor, _ in counted], [tolerance for _, tolerance in counted])
    return BenchFigures(mean.value, max(mean.error, LEAST_TOLERANCE), judged)


def _is_odd(test: BenchTest, middle: float) -> bool:
    if test.factor is None or test.tolerance is None:
        return False
    return abs(test.factor - middle) > ODD * test.tolerance * test.factor


def bench_proposals(model: Model, bench: BenchFigures | None) -> tuple[Proposal, ...]:
    """The pump's health, and how far off its flow may be yet; nothing where the build has both already."""
    pump = model.system.session.pump
    if bench is None or bench.factor is None or bench.tolerance is None or pump is None:
        return ()
    health = percent(bench.factor * pump.health)
    try:
        read(field_at("pump.health"), health)
    except Rejected:
        return ()
    days = [test.date for test in model.system.session.bench if test.date]
    tolerance = percent(bench.tolerance)
    if health == percent(pump.health) and given(model.system.session, "tolerance.pump_flow"):
        return ()
    return (
        Proposal(
            "pump.health", health, "tolerance.pump_flow", tolerance, "bench tests", max(days, default="")
        ),
    )


def expected(model: Model, volts: float | None) -> tuple[Expected, ...]:
    """What tests at base pressure and at full-power pressure should show; empty without pump and feed.

    Each pump alone where there are several, then all of them.
    """
    pump = model.system.session.pump
    if pump is None or volts is None or not model.has_feed:
        return ()
    pressures = sorted({model.system.session.pressure.base, model.system.pressure.rail_Pa})
    counts = sorted({1, pump.count})
    found = (_expected(model, running, rail, round(volts, 1)) for running in counts for rail in pressures)
    return tuple(one for one in found if one is not None)


def _expected(model: Model, running: int, rail_pa: float, volts: float) -> Expected | None:
    pumps = model.pumps_at(running, volts)
    assert pumps is not None
    flow = model.sized.capacity_m3_s(pumps=pumps, rail_pa=rail_pa)
    if flow <= 0:
        return None
    cans = [to_si(number, unit) for number, unit in CANS[model.system.session.show_units]]
    can = next((volume for volume in cans if volume / flow >= LONG_ENOUGH_S), cans[-1])
    return Expected(running, rail_pa, volts, can, can / flow)
