"""How figures are shown: half up, true minus, units, and never onto or across their limit."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from fuelwiz.advice.numbers import Numbers, Role, guarded, guarded_pair, half_up, written
from fuelwiz.units import UnitSystem

US, METRIC = Numbers("us", 1.0), Numbers("metric", 1.0)

shown_numbers = st.floats(min_value=-1e4, max_value=1e4, allow_nan=False).filter(
    lambda x: x == 0 or abs(x) > 1e-6
)


def side(first: Decimal | float, second: Decimal | float) -> int:
    return (first > second) - (first < second)


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (0.3125, 3, "0.313"),
        (2.5, 0, "3"),
        (0.05, 1, "0.1"),
        (14.8, 0, "15"),
        (-0.2, 0, "0"),
        (-20.4, 0, "−20"),
    ],
)
def test_half_up_as_written(value: float, places: int, text: str) -> None:
    assert written(half_up(value, places)) == text


def test_bore_of_five_sixteenths() -> None:
    """5/16 in is 7.9375 mm; shown as 0.313 in and 7.9 mm."""
    assert US.figure("bore", 0.0079375) == "0.313\u00a0in"
    assert METRIC.figure("bore", 0.0079375) == "7.9\u00a0mm"


@pytest.mark.parametrize(
    ("role", "value", "us", "metric"),
    [
        ("power", 559274.904, "750 hp", "559 kW"),
        ("pressure", 300000.0, "43.5 psi", "3.00 bar"),
        ("velocity", 1.2192, "4.0 ft/s", "1.2 m/s"),
        ("flow", 1e-4, "95 gal/h", "360 L/h"),
        ("percent", 0.148, "15 %", "15 %"),
        ("temperature", 313.15, "104 °F", "40 °C"),
        ("altitude", 2000.0, "6562 ft", "2000 m"),
        ("warming", 25.0, "45 °F", "25 °C"),
    ],
)
def test_units_of_both_systems(role: Role, value: float, us: str, metric: str) -> None:
    """NIST SP 811 (2008), appendix B.8: hp 745.6999 W, psi 6894.757 Pa, ft 0.3048 m, US gal 3.785412 l."""
    assert US.figure(role, value) == us.replace(" ", "\u00a0")
    assert METRIC.figure(role, value) == metric.replace(" ", "\u00a0")


def test_power_at_the_wheels() -> None:
    assert (
        Numbers("us", 0.85).figure("power", 559274.904) == "638\u00a0hp"  # 0.85 of 750 hp is 637.5
    )  # 0.85 of 750 hp is 637.5 less a hair


def test_limit_without_needless_zeros() -> None:
    assert US.limit("percent", 0.15) == "15\u00a0%"
    assert US.limit("percent", 0.125) == "12.5\u00a0%"
    assert US.limit("velocity", 8 * 0.3048) == "8\u00a0ft/s"


def test_one_more_digit_where_the_limit_is_near() -> None:
    assert US.pair("percent", 0.148, 0.15) == ("14.8\u00a0%", "15")
    assert US.pair("percent", 0.1504, 0.15) == ("15.04\u00a0%", "15")
    assert US.figure("velocity", 4.03 * 0.3048, 4 * 0.3048) == "4.03\u00a0ft/s"
    assert METRIC.pair("velocity", 2.43, 8 * 0.3048) == ("2.43\u00a0m/s", "2.44")


@given(shown_numbers, shown_numbers, st.integers(0, 3))
def test_shown_figure_stays_on_its_side(value: float, limit: float, places: int) -> None:
    assume(abs(value - limit) > 1e-9 * max(abs(value), abs(limit)))
    assert side(guarded(value, places, (limit,)), Decimal(limit)) == side(value, limit)


@given(shown_numbers, st.floats(-2.0, 2.0), st.integers(0, 3), st.integers(0, 2))
def test_figure_beside_its_limit_reads_as_it_was_judged(
    limit: float, away: float, places: int, limit_places: int
) -> None:
    value = limit + away
    assume(abs(away) > 1e-8 * max(abs(value), abs(limit), 1.0))
    shown, against = guarded_pair(value, limit, places, limit_places)
    assert side(shown, against) == side(value, limit)


@given(shown_numbers, st.integers(0, 3))
def test_rounding_moves_a_figure_by_half_a_digit_at_most(value: float, places: int) -> None:
    assert abs(half_up(value, places) - Decimal(value)) <= Decimal("0.5000001") * Decimal(1).scaleb(-places)


@given(st.floats(0.0, 0.5), st.sampled_from(["us", "metric"]))
def test_a_share_short_of_fifteen_percent_never_reads_fifteen(share: float, system: UnitSystem) -> None:
    assume(abs(share - 0.15) > 1e-9)
    figure, wanted = Numbers(system, 1.0).pair("percent", share, 0.15)
    assert wanted == "15"
    assert side(Decimal(figure.removesuffix("\u00a0%")), 15) == side(share, 0.15)


def test_a_vacuum_is_typed_in_the_unit_of_its_row() -> None:
    """9 psi is 18.3 inHg and 62.1 kPa (NIST SP 811: 3386.389 Pa, 6894.757 Pa); by its unit alone it is a pressure."""
    assert US.typed("9 psi", "vacuum") == "18.3\u00a0inHg"
    assert METRIC.typed("9 psi", "vacuum") == "62.1\u00a0kPa"
    assert US.typed("9 psi") == "9\u00a0psi" and US.typed("150 kPa") == "150\u00a0kPa"
