"""Pumps on their wiring: arrangement, volts, the working point and its limits."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.circuit import PumpSet, Supply
from fuelwiz.physics.curve import Curve, Points
from fuelwiz.physics.pump import Pump

SHEET = Curve(13.5, ((0.0, 10e-5), (3e5, 7e-5), (6e5, 3e-5)))  # a straight line beyond, ends at 825 kPa
END_PA = 8.25e5
RISING_CURRENT = ((2e5, 6.0), (8e5, 15.0))
FALLING_CURRENT = ((2e5, 15.0), (8e5, 6.0))
STEADY = Supply(13.5, measured=True)
THIN_WIRE = Supply(13.8, connections=0.2, resistance_ohm=0.06)


def pumps(
    running: int = 1,
    *,
    in_series: bool = False,
    supply: Supply = STEADY,
    current: Points = RISING_CURRENT,
    curve: Curve = SHEET,
) -> PumpSet:
    """Running pumps of the sample sheet."""
    return PumpSet(Pump((curve,), current), running, in_series, supply)


def system(static: float, bend: float) -> Callable[[float], float]:
    """What a system asks for: a pressure at no flow and more with the square of the flow."""
    return lambda flow: static + bend * (flow / 1e-4) ** 2


@pytest.mark.parametrize(
    ("running", "circuits", "fullest"), [(1, 1, 1), (3, 1, 3), (3, 2, 2), (3, 3, 1), (2, 3, 1), (5, 3, 2)]
)
def test_pumps_on_the_fullest_circuit(running: int, circuits: int, fullest: int) -> None:
    """Rounded up; pumps that do not run need no circuit."""
    assert pumps(running, supply=Supply(13.8, circuits=circuits)).on_fullest_circuit == fullest


@pytest.mark.parametrize(("circuits", "volts"), [(1, 13.8 - 0.2 - 2 * 9 * 0.06), (2, 13.8 - 0.2 - 9 * 0.06)])
def test_volts_are_those_that_wire_and_connections_leave(circuits: int, volts: float) -> None:
    """9 A a pump at 400 kPa."""
    supply = Supply(13.8, connections=0.2, resistance_ohm=0.06, circuits=circuits)
    assert pumps(2, supply=supply).volts(4e5) == pytest.approx(volts)


def test_measured_volts_are_taken_as_they_are() -> None:
    supply = Supply(13.1, connections=1.0, resistance_ohm=0.5, measured=True)
    assert pumps(2, supply=supply).volts(8e5) == 13.1


def test_without_a_current_only_connections_lose() -> None:
    assert pumps(supply=THIN_WIRE, current=()).volts(5e5) == pytest.approx(13.6)


def test_volts_are_never_below_zero_and_nothing_flows_without() -> None:
    drowned = pumps(supply=Supply(13.8, resistance_ohm=5.0))
    assert drowned.volts(4e5) == 0.0
    assert drowned.flow_m3_s(4e5) == 0.0
    assert drowned.capacity_m3_s(system(4e5, 1e5)) == 0.0


@given(count=st.integers(1, 6), rise=st.floats(0.0, 8e5))
def test_parallel_pumps_add_their_flows(count: int, rise: float) -> None:
    assert pumps(count).flow_m3_s(rise) == pytest.approx(count * pumps().flow_m3_s(rise))


@given(count=st.integers(1, 6), rise=st.floats(0.0, 8e5))
def test_pumps_in_series_add_their_pressures(count: int, rise: float) -> None:
    assert pumps(count, in_series=True).flow_m3_s(count * rise) == pytest.approx(pumps().flow_m3_s(rise))


@settings(deadline=None)
@given(
    static=st.floats(0.0, 7e5),
    bend=st.floats(1.0, 1e6),
    running=st.integers(1, 4),
    in_series=st.booleans(),
    supply=st.sampled_from([STEADY, THIN_WIRE]),
    current=st.sampled_from([(), RISING_CURRENT, FALLING_CURRENT]),
)
def test_capacity_is_where_pumps_and_system_agree(
    *, static: float, bend: float, running: int, in_series: bool, supply: Supply, current: Points
) -> None:
    some, asks = pumps(running, in_series=in_series, supply=supply, current=current), system(static, bend)
    flow = some.capacity_m3_s(asks)
    if flow > 0:
        assert some.flow_m3_s(asks(flow)) == pytest.approx(flow, rel=1e-6)
    else:
        assert some.flow_m3_s(asks(0.0)) == 0.0


@settings(deadline=None)
@given(static=st.floats(0.0, 8e5), bend=st.floats(1e3, 1e6), more=st.floats(1.01, 10.0))
def test_a_harder_system_never_gets_more(static: float, bend: float, more: float) -> None:
    assert pumps().capacity_m3_s(system(static, bend * more)) <= pumps().capacity_m3_s(system(static, bend))


def test_just_below_and_at_the_end_of_the_pump() -> None:
    """The sheet's line ends at 825 kPa: a system that asks for that gets nothing, a pascal less flows."""
    assert pumps().capacity_m3_s(system(END_PA - 1, 1e5)) > 0.0
    assert pumps().capacity_m3_s(system(END_PA + 1e-3, 1e5)) == 0.0


def test_a_system_that_asks_for_less_as_it_flows() -> None:
    """The flow lies beyond the one that the pump gives against the pressure at no flow, and is found."""
    flow = pumps().capacity_m3_s(lambda flow: 5e5 - 2e5 * flow / 1e-4)
    assert flow > pumps().flow_m3_s(5e5)
    assert pumps().flow_m3_s(5e5 - 2e5 * flow / 1e-4) == pytest.approx(flow)


@settings(deadline=None)
@given(
    flow=st.floats(1e-7, 9e-5),
    running=st.integers(1, 3),
    in_series=st.booleans(),
    supply=st.sampled_from([STEADY, THIN_WIRE]),
    current=st.sampled_from([(), RISING_CURRENT, FALLING_CURRENT]),
)
def test_highest_rise_is_the_last_at_which_the_flow_is_there(
    *, flow: float, running: int, in_series: bool, supply: Supply, current: Points
) -> None:
    some = pumps(running, in_series=in_series, supply=supply, current=current)
    rise = some.highest_rise_pa(flow)
    assert rise is not None
    if rise != -math.inf:
        assert some.flow_m3_s(rise) == pytest.approx(flow, rel=1e-6)
        assert all(some.flow_m3_s(rise + more) < flow for more in (10.0, 1e4, 1e5, 3e5, 9e5))


def test_a_flow_that_has_to_be_pushed_through_the_pump() -> None:
    """The sheet gives 10e-5 m3/s at no pressure, and 1e-5 more for each 100 kPa of push."""
    assert 0.0 < pumps().highest_rise_pa(9.9e-5) < 15e3
    assert pumps().highest_rise_pa(10.1e-5) == pytest.approx(-10e3)
    assert pumps(2).highest_rise_pa(10.1e-5) > 0.0
    assert pumps(2, in_series=True).highest_rise_pa(10.1e-5) == pytest.approx(-20e3)


def test_a_flow_that_nothing_could_push_through() -> None:
    """A pump that its wire leaves without volts, and a sheet that rests at its most."""
    assert pumps(supply=Supply(13.8, connections=13.8)).highest_rise_pa(1e-6) == -math.inf
    at_rest = Curve(13.5, ((0.0, 7e-5), (3e5, 7e-5), (6e5, 3e-5)))
    assert pumps(curve=at_rest).highest_rise_pa(7.1e-5) == -math.inf
    assert pumps(curve=at_rest).highest_rise_pa(6.9e-5) > 3e5


def test_a_pump_whose_flow_never_ends_has_no_highest_rise_below_it() -> None:
    endless = pumps(curve=Curve(13.5, ((0.0, 10e-5), (3e5, 7e-5), (6e5, 7e-5))))
    assert endless.highest_rise_pa(6.9e-5) is None
    assert endless.highest_rise_pa(7.1e-5) < 3e5
    assert endless.end_pa is None


@pytest.mark.parametrize("in_series", [False, True])
def test_end_of_one_pump_whatever_the_arrangement(in_series: bool) -> None:
    assert pumps(3, in_series=in_series).end_pa == pytest.approx(END_PA)


@pytest.mark.parametrize("current", [RISING_CURRENT, FALLING_CURRENT])
def test_end_of_a_pump_behind_a_thin_wire(current: tuple[tuple[float, float], tuple[float, float]]) -> None:
    """Where its flow ends with the volts that its current leaves it there."""
    some = pumps(supply=THIN_WIRE, current=current)
    assert some.end_pa is not None
    assert some.end_pa == pytest.approx(END_PA * (some.volts(some.end_pa) / 13.5) ** 2)
    assert some.flow_m3_s(some.end_pa * 0.999) > 0.0
    assert some.flow_m3_s(some.end_pa * 1.001) == 0.0


def test_end_of_a_pump_that_its_wire_starves() -> None:
    """The flow stops, and comes back where a falling current lets the volts rise; the lower end counts."""
    some = pumps(supply=Supply(13.5, resistance_ohm=0.8), current=((0.0, 8.0), (1e5, 12.0), (3e5, 0.0)))
    assert 0 < some.end_pa < 1.5e5
    assert some.flow_m3_s(some.end_pa * 1.01) == 0.0
    assert some.flow_m3_s(4e5) > 0.0
    assert some.highest_rise_pa(1e-6) > 4e5


@pytest.mark.parametrize(("in_series", "share"), [(False, 1), (True, 2)])
def test_pressure_across_a_pump_that_sends_nothing(in_series: bool, share: int) -> None:
    """Its own end; where it has none, its share of what is asked."""
    endless = Curve(13.5, ((0.0, 10e-5), (3e5, 7e-5), (6e5, 7e-5)))
    assert pumps(2, in_series=in_series).at_no_flow_pa(20e5) == pytest.approx(END_PA)
    assert pumps(2, in_series=in_series, curve=endless).at_no_flow_pa(20e5) == 20e5 / share


def test_pick_ups_and_stages() -> None:
    beside, behind = pumps(3), pumps(3, in_series=True)
    assert (beside.flow_ways, beside.stages) == (3, 1)
    assert (behind.flow_ways, behind.stages) == (1, 3)


def test_a_thin_wire_costs_flow() -> None:
    """One pump more on the same wire gives less than twice the flow."""
    one, two = (pumps(n, supply=THIN_WIRE).flow_m3_s(4e5) for n in (1, 2))
    assert one < two < 2 * one
    assert math.isclose(pumps(2).flow_m3_s(4e5), 2 * pumps().flow_m3_s(4e5))
