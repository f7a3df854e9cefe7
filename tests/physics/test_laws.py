"""How a sheet is carried to other volts: by a bladed wheel, by what is swept, by the lower and the higher of both."""

from __future__ import annotations

import math
from itertools import accumulate

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.circuit import PumpSet, Supply
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.pump import Law, Pump, carried_end_pa, carried_m3_s

SHEET = Curve(12.0, ((2e5, 8e-5), (4e5, 6e-5), (6e5, 3e-5)))  # 10e-5 at no pressure, ends at 800 kPa
LAWS: tuple[Law, ...] = ("turbine", "displacement", "lower", "higher")
PRESSURES = st.floats(0.0, 12e5)
VOLTS = st.floats(6.0, 18.0)


@st.composite
def sheets(draw: st.DrawFn) -> Curve:
    """A sheet that falls from point to point."""
    steps = draw(st.lists(st.floats(2e4, 2e5), min_size=1, max_size=5))
    drops = draw(st.lists(st.floats(1e-6, 2e-5), min_size=len(steps), max_size=len(steps)))
    last = draw(st.floats(0.0, 5e-5))
    flows = list(accumulate(drops, initial=last))
    return Curve(12.0, tuple(zip(accumulate(steps, initial=0.0), reversed(flows), strict=True)))


def flow(law: Law, pressure: float, volts: float, curve: Curve = SHEET) -> float:
    return carried_m3_s(curve, pressure_pa=pressure, volts=volts, law=law)


def test_what_is_swept_grows_by_the_same_at_every_pressure() -> None:
    """A tenth more volts adds a tenth of the 10e-5 that flow against nothing."""
    for pressure, known in SHEET.points:
        assert flow("displacement", pressure, 13.2) == pytest.approx(known + 1e-5)
        assert flow("displacement", pressure, 10.8) == pytest.approx(known - 1e-5)


def test_a_wheel_moves_flow_with_the_speed_and_pressure_with_its_square() -> None:
    for pressure, known in SHEET.points:
        assert flow("turbine", pressure * 1.21, 13.2) == pytest.approx(1.1 * known)


def test_what_is_swept_ends_where_the_leak_takes_all_of_it() -> None:
    """Past the sheet the line falls by 1.5e-5 each 100 kPa: 800 kPa is its end, 1e-5 more takes 66.7 kPa."""
    assert carried_end_pa(SHEET, volts=13.2, law="displacement") == pytest.approx(8e5 + 1e5 / 1.5)
    assert flow("displacement", 8e5 + 1e5 / 1.5 + 1, 13.2) == 0.0
    assert flow("displacement", 8e5 + 1e5 / 1.5 - 1, 13.2) > 0.0
    assert carried_end_pa(SHEET, volts=10.8, law="displacement") == pytest.approx(8e5 - 1e5 / 1.5)


def test_an_end_inside_the_sheet() -> None:
    """At 4.8 V 6e-5 are taken from every point: nothing is left at 400 kPa."""
    assert carried_end_pa(SHEET, volts=4.8, law="displacement") == pytest.approx(4e5)


@pytest.mark.parametrize("law", LAWS)
def test_at_the_sheets_own_volts_every_law_is_the_sheet(law: Law) -> None:
    assert all(flow(law, pressure, 12.0) == SHEET.flow_m3_s(pressure) for pressure in (1e5, 3e5, 7e5, 9e5))
    assert carried_end_pa(SHEET, volts=12.0, law=law) == SHEET.end_pa


@pytest.mark.parametrize("law", LAWS)
@pytest.mark.parametrize("volts", [0.0, -1.0])
def test_without_volts_nothing(law: Law, volts: float) -> None:
    assert flow(law, 1e5, volts) == 0.0
    assert carried_end_pa(SHEET, volts=volts, law=law) == 0.0


@settings(deadline=None)
@given(curve=sheets(), pressure=PRESSURES, volts=VOLTS)
def test_the_lower_lies_below_both_and_the_higher_above(curve: Curve, pressure: float, volts: float) -> None:
    wheel, swept = flow("turbine", pressure, volts, curve), flow("displacement", pressure, volts, curve)
    assert flow("lower", pressure, volts, curve) == min(wheel, swept)
    assert flow("higher", pressure, volts, curve) == max(wheel, swept)


@settings(deadline=None)
@given(pressure=PRESSURES, volts=VOLTS)
def test_a_wheel_loses_more_below_the_sheets_volts_and_gains_more_above(
    pressure: float, volts: float
) -> None:
    wheel, swept = flow("turbine", pressure, volts), flow("displacement", pressure, volts)
    if volts < 12.0:
        assert wheel <= swept + 1e-18
    else:
        assert wheel >= swept - 1e-18


@pytest.mark.parametrize("law", LAWS)
@settings(deadline=None, max_examples=50)
@given(curve=sheets(), pressure=PRESSURES, volts=VOLTS, more=st.floats(0.01, 4.0))
def test_more_volts_never_give_less(
    law: Law, curve: Curve, pressure: float, volts: float, more: float
) -> None:
    assert flow(law, pressure, volts + more, curve) >= flow(law, pressure, volts, curve) - 1e-18


@pytest.mark.parametrize("law", LAWS)
@settings(deadline=None, max_examples=50)
@given(curve=sheets(), volts=VOLTS)
def test_the_flow_ends_where_it_is_said_to(law: Law, curve: Curve, volts: float) -> None:
    end = carried_end_pa(curve, volts=volts, law=law)
    assert flow(law, end * (1 + 1e-6) + 1e-3, volts, curve) <= 1e-12
    if end > 0:
        assert flow(law, end * 0.99, volts, curve) > 0.0


def test_two_sheets_are_read_at_the_same_pressure_whatever_the_kind() -> None:
    """A measured pair beats any law, and fewer volts never give more between them."""
    high = Curve(14.0, ((2e5, 9e-5), (6e5, 5e-5)))
    for law in LAWS:
        pump = Pump((SHEET, high), law=law)
        assert pump.flow_m3_s(4e5, 13.0) == pytest.approx((6e-5 + 7e-5) / 2)
        flows = [pump.flow_m3_s(5e5, 12 + step / 10) for step in range(21)]
        assert flows == sorted(flows)


@pytest.mark.parametrize(
    ("law", "pressure", "volts", "guessed"),
    [
        ("turbine", 7e5, 13.2, False),
        ("displacement", 7e5, 13.2, True),
        ("lower", 7e5, 13.2, True),
        ("lower", 5.5e5, 10.8, True),
        ("displacement", 5.5e5, 10.8, False),
    ],
)
def test_a_guess_is_judged_by_the_law_that_gives_less(
    law: Law, pressure: float, volts: float, guessed: bool
) -> None:
    """700 kPa at 13.2 V is 579 kPa on the sheet for a wheel; 550 kPa at 10.8 V is 679."""
    assert Pump((SHEET,), law=law).extrapolates(pressure, volts) is guessed


def relieved(relief: float | None, *, in_series: bool = False) -> PumpSet:
    return PumpSet(Pump((SHEET,)), 2, in_series, Supply(12.0, measured=True), relief)


def test_a_relief_caps_the_flow_at_the_one_that_opens_it() -> None:
    """The system asks for 300 kPa and 2 kPa more each 1e-6 m3/s: 400 kPa at 5e-5 of the flow that it could have."""

    def asks(flow: float) -> float:
        return 3e5 + 2e9 * flow

    assert relieved(None).capacity_m3_s(asks) > 5e-5
    assert relieved(4e5).capacity_m3_s(asks) == pytest.approx(5e-5)
    assert relieved(4e5).capacity_m3_s(asks, relieved=False) == relieved(None).capacity_m3_s(asks)
    assert relieved(3e5 - 1).capacity_m3_s(asks) == 0.0


@settings(deadline=None)
@given(
    static=st.floats(0.0, 7e5), bend=st.floats(0.0, 5e9), relief=st.floats(5e4, 1e6), less=st.floats(0, 2e5)
)
def test_a_lower_relief_never_raises_capacity(static: float, bend: float, relief: float, less: float) -> None:
    def asks(flow: float) -> float:
        return static + bend * flow

    most = relieved(relief).capacity_m3_s(asks)
    assert most <= relieved(None).capacity_m3_s(asks)
    assert relieved(max(0.0, relief - less)).capacity_m3_s(asks) <= most


@pytest.mark.parametrize("in_series", [False, True])
def test_nothing_stands_above_the_relief(in_series: bool) -> None:
    """Dead head, the highest rise, and a pump that sends nothing, in series its half."""
    some = relieved(5e5, in_series=in_series)
    assert some.dead_head_rise_pa == 5e5
    assert some.highest_rise_pa(1e-6) == 5e5
    assert some.at_no_flow_pa(2e6) == (2.5e5 if in_series else 5e5)
    assert relieved(None).dead_head_rise_pa == pytest.approx(8e5)


def test_a_sheet_that_never_ends_stands_at_its_relief() -> None:
    endless = Curve(12.0, ((2e5, 8e-5), (4e5, 6e-5), (6e5, 6e-5)))
    for relief in (None, 9e5):
        pumps = PumpSet(Pump((endless,)), 1, False, Supply(12.0, measured=True), relief)
        assert pumps.dead_head_rise_pa == relief
        assert pumps.highest_rise_pa(5e-5) == relief


def test_a_sheet_that_rests_at_no_flow_does_not_end_when_more_is_swept() -> None:
    """Its last two points say that no pressure takes the leak: a volt more then flows at any pressure."""
    rests = Curve(12.0, ((2e5, 8e-5), (4e5, 0.0), (6e5, 0.0)))
    assert math.isinf(carried_end_pa(rests, volts=13.0, law="displacement"))
    pumps = PumpSet(Pump((rests,), law="displacement"), 1, False, Supply(13.0, measured=True))
    assert pumps.dead_head_rise_pa is None
