"""Wire and fuse: between gauges, at the edges of the fuse ratings, and the smallest wire that does."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.facts import table
from fuelwiz.physics.wire import (
    ampacity_A,
    awg_area_m2,
    copper_resistivity_ohm_m,
    fuse_A,
    gauge_of,
    gauges_m2,
    loop_resistance_ohm,
    wire_at,
)

GAUGES = sorted((int(gauge) for gauge in table("wire")["ampacity_105C"]), reverse=True)
FUSES = table("wire")["fuses"]
WARM_K = 313.15


def loop_ohm(
    gauge: int, length_m: float, *, by_chassis: bool = False, temperature_k: float = WARM_K
) -> float:
    """Resistance of a loop of that gauge."""
    return loop_resistance_ohm(
        area_m2=awg_area_m2(gauge), length_m=length_m, by_chassis=by_chassis, temperature_k=temperature_k
    )


def test_three_gauges_double_the_area() -> None:
    """The rule of thumb that follows from 92^(6/39) = 2.005."""
    for gauge in range(4, 22):
        assert awg_area_m2(gauge) / awg_area_m2(gauge + 3) == pytest.approx(2.005, rel=1e-3)


@given(gauge=st.sampled_from(GAUGES), length=st.floats(0.1, 30.0), temperature=st.floats(233.0, 423.0))
def test_the_chassis_halves_the_loop(gauge: int, length: float, temperature: float) -> None:
    both_ways = loop_ohm(gauge, length, temperature_k=temperature)
    assert loop_ohm(gauge, length, by_chassis=True, temperature_k=temperature) == pytest.approx(both_ways / 2)


def test_warm_copper_resists_more() -> None:
    assert copper_resistivity_ohm_m(WARM_K + 50) > copper_resistivity_ohm_m(WARM_K)


def test_no_wire_no_resistance() -> None:
    assert loop_ohm(12, 0.0) == 0.0


@pytest.mark.parametrize(("thin", "thick"), list(pairwise(GAUGES)))
def test_a_wire_between_two_gauges_carries_in_proportion_to_its_area(thin: int, thick: int) -> None:
    """A quarter of the way in area is a quarter of the way in ampacity."""
    small, large = awg_area_m2(thin), awg_area_m2(thick)
    less, more = ampacity_A(small), ampacity_A(large)
    assert less < more
    assert ampacity_A(small + (large - small) / 4) == pytest.approx(less + (more - less) / 4)


def test_a_metric_wire_between_the_gauges() -> None:
    """4 mm2 lies between 12 AWG (3.309 mm2, 45 A) and 10 AWG (5.261 mm2, 60 A): 50.3 A, 42.8 in an engine space."""
    by_hand = 0.85 * (45 + 15 * (4 - 3.309) / (5.261 - 3.309))
    assert ampacity_A(4e-6) == pytest.approx(by_hand, rel=1e-3)


def test_below_the_table_nothing_and_above_it_the_thickest() -> None:
    assert ampacity_A(awg_area_m2(20)) == 0.0
    assert ampacity_A(awg_area_m2(GAUGES[0]) * 0.999) == 0.0
    assert ampacity_A(awg_area_m2(0)) == ampacity_A(awg_area_m2(GAUGES[-1]))


@pytest.mark.parametrize("rating", FUSES)
def test_fuse_at_the_edge_of_a_rating(rating: float) -> None:
    """1.25 times the highest working current, and a little more takes the next; none is above the last."""
    edge = rating / 1.25
    after = dict(zip(FUSES, [*FUSES[1:], None], strict=True))[rating]
    assert fuse_A(edge) == rating
    assert fuse_A(edge * 1.0001) == after


def test_fuse_without_current() -> None:
    assert fuse_A(0.0) == FUSES[0]


@settings(deadline=None)
@given(
    current=st.floats(0.1, 120.0),
    fuse=st.sampled_from(FUSES),
    length=st.floats(0.1, 30.0),
    by_chassis=st.booleans(),
    gauge=st.sampled_from(GAUGES),
)
def test_a_gauge_does_that_loses_little_and_carries_the_fuse(
    current: float, fuse: float, length: float, by_chassis: bool, gauge: int
) -> None:
    area = awg_area_m2(gauge)
    found = wire_at(
        area,
        current_a=current,
        fuse_a=fuse,
        length_m=length,
        by_chassis=by_chassis,
        temperature_k=WARM_K,
    )
    volts = current * loop_ohm(gauge, length, by_chassis=by_chassis)
    assert found.area_m2 == area and found.loss_v == pytest.approx(volts)
    assert found.does == (volts <= 0.5 and ampacity_A(area) >= fuse)


def first_that_does(current_a: float, fuse_a: float, length_m: float) -> int | None:
    """The thinnest gauge of the table, out and back in warm copper."""
    found = (
        wire_at(
            area,
            current_a=current_a,
            fuse_a=fuse_a,
            length_m=length_m,
            by_chassis=False,
            temperature_k=WARM_K,
        )
        for area in gauges_m2()
    )
    return next((gauge_of(wire.area_m2) for wire in found if wire.does), None)


@pytest.mark.parametrize(("lost_V", "gauge"), [(0.4999, 12), (0.5001, 10)])
def test_half_a_volt_is_the_most_that_a_wire_may_lose(lost_V: float, gauge: int) -> None:
    """Common practice, no source."""
    assert first_that_does(lost_V / loop_ohm(12, 4.0), 20, 4.0) == gauge


def test_no_wire_of_the_table_carries_a_great_current_far() -> None:
    assert first_that_does(100, 100, 30) is None
