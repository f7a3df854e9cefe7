"""A pump: beyond its points, between its voltages, and where its flow ends."""

from __future__ import annotations

from itertools import accumulate
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.curve import Curve, pchip_slopes
from fuelwiz.physics.pump import Pump

PSI = 6894.757293168
POINTS = ((2e5, 9e-5), (4e5, 7e-5), (6e5, 4e-5))
SHEET = Curve(13.5, POINTS)
LOW_SHEET = Curve(12.0, ((1e5, 8e-5), (3e5, 6.5e-5), (5e5, 3e-5)))
PRESSURES = st.floats(0.0, 9e5)


@st.composite
def curves(draw: st.DrawFn) -> Curve:
    """A sheet whose flow falls at every step, or rests; some end at no flow."""
    steps = draw(st.lists(st.floats(1e4, 2e5), min_size=1, max_size=7))
    flows = [draw(st.one_of(st.just(0.0), st.floats(1e-7, 1e-4)))]
    for _ in steps:
        flows.append(flows[-1] + draw(st.sampled_from([0.0, 1e-6, 5e-6, 2e-5])))
    return Curve(13.5, tuple(zip(accumulate(steps, initial=0.0), reversed(flows), strict=True)))


def test_slopes_of_two_points_are_their_line() -> None:
    assert pchip_slopes([0.0, 2.0], [3.0, -1.0]) == [-2.0, -2.0]


def test_slope_is_zero_at_a_peak_and_at_a_rest() -> None:
    assert pchip_slopes([0.0, 1.0, 2.0], [0.0, 1.0, 0.0])[1] == 0.0
    assert pchip_slopes([0.0, 1.0, 2.0, 3.0], [2.0, 1.0, 1.0, 0.0])[1:3] == [0.0, 0.0]


def test_curve_passes_through_its_points() -> None:
    for pressure, flow in POINTS:
        assert SHEET.flow_m3_s(pressure) == pytest.approx(flow, rel=1e-12)


@settings(deadline=None)
@given(curve=curves(), pressure=PRESSURES, more=st.floats(1.0, 2e5))
def test_more_pressure_never_gives_more_flow(curve: Curve, pressure: float, more: float) -> None:
    """Between the points and beyond both ends."""
    assert curve.flow_m3_s(pressure + more) <= curve.flow_m3_s(pressure) + 1e-18


@settings(deadline=None)
@given(curve=curves(), place=st.integers(0, 6))
def test_nothing_jumps_at_a_point(curve: Curve, place: int) -> None:
    pressure = curve.points[min(place, len(curve.points) - 1)][0]
    below, above = curve.flow_m3_s(pressure - 0.01), curve.flow_m3_s(pressure + 0.01)
    assert below == pytest.approx(above, abs=1e-10)


def test_beyond_the_points_a_straight_line() -> None:
    """1e-5 m3/s a 100 kPa below the points, 1.5e-5 above."""
    assert SHEET.flow_m3_s(0.0) == pytest.approx(11e-5)
    assert SHEET.flow_m3_s(7e5) == pytest.approx(2.5e-5)
    assert SHEET.flow_m3_s(9e5) == 0.0


def test_a_sheet_that_ends_at_no_flow_stays_there() -> None:
    curve = Curve(13.5, ((0.0, 5e-5), (5e5, 2e-5), (8e5, 0.0)))
    assert curve.end_pa == 8e5
    assert curve.flow_m3_s(8e5) == 0.0
    assert curve.flow_m3_s(20e5) == 0.0
    assert curve.flow_m3_s(8e5 - 1) > 0.0


def test_the_lowest_pressure_without_flow_is_the_end() -> None:
    """A sheet with two points at no flow ends at the first of them."""
    assert Curve(13.5, ((0.0, 5e-5), (5e5, 0.0), (8e5, 0.0))).end_pa == 5e5


@settings(deadline=None)
@given(curve=curves())
def test_flow_ends_where_it_is_said_to(curve: Curve) -> None:
    if curve.never_ends:
        assert curve.end_pa == float("inf")
        assert curve.flow_m3_s(1e12) == curve.points[-1][1] > 0
    elif curve.points[0][1] > 0:
        most = curve.flow_m3_s(0.0)
        assert curve.flow_m3_s(curve.end_pa) == pytest.approx(0.0, abs=1e-9 * most)
        assert curve.flow_m3_s(curve.end_pa * 0.99) >= 0.0
        assert curve.flow_m3_s(curve.end_pa * 1.01) == 0.0


@pytest.mark.parametrize(
    ("last", "never_ends"), [((4e5, 7e-5), True), ((4e5, 6.999e-5), False), ((4e5, 7.001e-5), False)]
)
def test_two_last_points_of_one_flow_never_end(last: tuple[float, float], never_ends: bool) -> None:
    points = ((2e5, 9e-5), (3e5, 7e-5), last) if last[1] <= 7e-5 else ((2e5, 9e-5), (3e5, 7.1e-5), last)
    assert Curve(13.5, points).never_ends is never_ends


def test_two_last_points_without_flow_do_end() -> None:
    assert not Curve(13.5, ((2e5, 9e-5), (3e5, 0.0), (4e5, 0.0))).never_ends


def test_one_point_alone_loses_a_hundredth_for_each_psi() -> None:
    """And gains as much below; it ends 100 psi above its point."""
    curve = Curve(13.5, ((40 * PSI, 8e-5),))
    assert curve.flow_m3_s(40 * PSI) == pytest.approx(8e-5)
    assert curve.flow_m3_s(50 * PSI) == pytest.approx(7.2e-5)
    assert curve.flow_m3_s(20 * PSI) == pytest.approx(9.6e-5)
    assert curve.flow_m3_s(140.1 * PSI) == 0.0
    assert curve.flow_m3_s(139.9 * PSI) > 0.0
    assert curve.end_pa == pytest.approx(140 * PSI)
    assert not curve.never_ends


@pytest.mark.parametrize(
    ("pressure", "reached"),
    [(2e5, True), (6e5, True), (4e5, True), (2e5 - 1, False), (6e5 + 1, False), (0.0, False)],
)
def test_what_the_points_reach(pressure: float, reached: bool) -> None:
    """Both ends are still reached; a pascal beyond them is a guess."""
    assert SHEET.reaches(pressure) is reached
    assert Pump((SHEET,)).extrapolates(pressure, 13.5) is not reached


def test_one_point_alone_is_always_a_guess() -> None:
    curve = Curve(13.5, ((3e5, 8e-5),))
    assert not curve.reaches(3e5)
    assert Pump((curve,)).extrapolates(3e5, 13.5)


@settings(deadline=None)
@given(pressure=PRESSURES, volts=st.floats(5.0, 24.0))
def test_one_sheet_is_carried_by_the_affinity_laws(pressure: float, volts: float) -> None:
    """Q(P, V) = s Q0(P / s^2), s = V/V0: flow with the speed, pressure with its square."""
    speed = volts / 13.5
    expected = speed * SHEET.flow_m3_s(pressure / speed**2)
    assert Pump((SHEET,)).flow_m3_s(pressure, volts) == pytest.approx(expected)


@settings(deadline=None)
@given(pressure=PRESSURES, volts=st.floats(5.0, 20.0), more=st.floats(0.01, 4.0))
def test_more_volts_never_give_less_flow(pressure: float, volts: float, more: float) -> None:
    pump = Pump((SHEET,))
    assert pump.flow_m3_s(pressure, volts + more) >= pump.flow_m3_s(pressure, volts)


@pytest.mark.parametrize(
    ("volts", "weights"),
    [
        (9.0, [(LOW_SHEET, 1.0)]),
        (12.0, [(LOW_SHEET, 1.0)]),
        (12.375, [(LOW_SHEET, 0.75), (SHEET, 0.25)]),
        (13.5, [(SHEET, 1.0)]),
        (16.0, [(SHEET, 1.0)]),
    ],
)
def test_which_sheets_count_at_a_voltage(volts: float, weights: Any) -> None:
    """The two that bracket it, linearly; outside them the nearest; at a sheet's own voltage that alone."""
    assert Pump((LOW_SHEET, SHEET)).weights(volts) == weights


def test_of_three_sheets_the_far_one_does_not_count() -> None:
    far = Curve(16.0, ((2e5, 12e-5), (6e5, 7e-5)))
    assert [curve for curve, _ in Pump((LOW_SHEET, SHEET, far)).weights(14.0)] == [SHEET, far]


def test_a_voltage_outside_the_sheets_is_no_guess_by_itself() -> None:
    """Only the pressure, carried to the sheet's voltage, is asked about."""
    pump = Pump((LOW_SHEET, SHEET))
    assert not pump.extrapolates(4e5 * (10 / 12) ** 2, 10.0)
    assert pump.extrapolates(5e5, 10.0)


def test_a_sheet_without_weight_guesses_nothing() -> None:
    """550 kPa lies beyond the 12 V sheet alone, which does not count at 13.5 V."""
    pump = Pump((LOW_SHEET, SHEET))
    assert not pump.extrapolates(5.5e5, 13.5)
    assert pump.extrapolates(5.5e5, 12.5)


@pytest.mark.parametrize("volts", [0.0, -1.0])
def test_a_pump_without_volts_gives_nothing(volts: float) -> None:
    pump = Pump((SHEET,))
    assert pump.flow_m3_s(1e5, volts) == 0.0
    assert pump.end_pa(volts) == 0.0
    assert pump.extrapolates(1e5, volts)


@settings(deadline=None)
@given(volts=st.floats(6.0, 20.0))
def test_flow_of_mixed_sheets_ends_at_the_later_end(volts: float) -> None:
    pump = Pump((LOW_SHEET, SHEET))
    end = pump.end_pa(volts)
    assert pump.flow_m3_s(end * (1 + 1e-9), volts) == pytest.approx(0.0, abs=1e-18)
    assert pump.flow_m3_s(end * 0.999, volts) > 0.0


def test_one_endless_sheet_makes_the_pump_endless() -> None:
    endless = Curve(16.0, ((2e5, 9e-5), (3e5, 9e-5)))
    assert Pump((SHEET, endless)).never_ends
    assert not Pump((SHEET, LOW_SHEET)).never_ends


def test_current_that_no_sheet_tells() -> None:
    assert Pump((SHEET,)).current_A(3e5) is None


def test_one_current_holds_for_every_pressure() -> None:
    pump = Pump((SHEET,), ((3e5, 9.0),))
    assert [pump.current_A(pressure) for pressure in (0.0, 3e5, 9e5)] == [9.0, 9.0, 9.0]


@pytest.mark.parametrize(
    ("pressure", "current"), [(3e5, 8.0), (4e5, 9.0), (5e5, 10.0), (6e5, 13.0), (7e5, 16.0), (1e5, 6.0)]
)
def test_current_is_linear_and_its_end_slopes_carry_on(pressure: float, current: float) -> None:
    pump = Pump((SHEET,), ((3e5, 8.0), (5e5, 10.0), (6e5, 13.0)))
    assert pump.current_A(pressure) == pytest.approx(current)


def test_current_is_never_below_zero() -> None:
    falling = Pump((SHEET,), ((3e5, 8.0), (5e5, 2.0)))
    assert falling.current_A(6e5) == 0.0
    assert falling.current_A(5.6e5) > 0.0
