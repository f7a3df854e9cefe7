"""Weighted mean and straight line against textbook examples and against sums worked by hand."""

from __future__ import annotations

import pytest

from fuelwiz.measured.statistics import (
    median_estimate,
    quantile,
    straight_line,
    through_origin,
    weighted_mean,
)

# NIST StRD, Linear Least Squares, data set Norris (36 observations), certified values; from memory.
NORRIS = (
    (0.1, 0.2), (338.8, 337.4), (118.1, 118.2), (888.0, 884.6), (9.2, 10.1), (228.1, 226.5), (668.5, 666.3),
    (998.5, 996.3), (449.1, 448.6), (778.9, 777.0), (559.2, 558.2), (0.3, 0.4), (0.1, 0.6), (778.1, 775.5),
    (668.8, 666.9), (339.3, 338.0), (448.9, 447.5), (10.8, 11.6), (557.7, 556.0), (228.3, 228.1), (998.0, 995.8),
    (888.8, 887.6), (119.6, 120.2), (0.3, 0.3), (0.6, 0.3), (557.6, 556.8), (339.3, 339.1), (888.0, 887.2),
    (998.5, 999.0), (778.9, 779.0), (10.2, 11.1), (117.6, 118.3), (228.9, 229.2), (668.4, 669.1), (449.2, 448.9),
    (0.2, 0.5),
)  # fmt: skip


def test_the_slope_of_norris_and_its_error() -> None:
    """B1 1.00211681802045, its standard deviation 0.429796848199937E-03; B0 -0.262323073774029."""
    line = straight_line([x for x, _ in _xy()], [y for _, y in _xy()])
    assert line is not None
    assert line.slope == pytest.approx(1.00211681802045, rel=1e-12)
    assert line.slope_error == pytest.approx(0.429796848199937e-3, rel=1e-10)
    assert line.at(0.0) == pytest.approx(-0.262323073774029, rel=1e-10)
    assert line.error_at(0.0) == pytest.approx(0.232818234301152, rel=1e-10)


def _xy() -> list[tuple[float, float]]:
    """The data set lists y before x."""
    return [(x, y) for y, x in NORRIS]


def test_a_weighted_mean_by_hand() -> None:
    """11 +- 1 and 12 +- 1 and 10 +- 3 (J. R. Taylor, An Introduction to Error Analysis, 7.2, from memory).

    Weights 1, 1, 1/9: (11 + 12 + 10/9) / (19/9) = 11.42; error 1 / sqrt(19/9) = 0.688.
    """
    found = weighted_mean([11.0, 12.0, 10.0], [1.0, 1.0, 3.0])
    assert found.value == pytest.approx(11.42, abs=0.005)
    assert found.error == pytest.approx(0.69, abs=0.005)


def test_a_median_and_its_error_by_hand() -> None:
    """Deviations of 1, 2, 3, 4, 100 from 3 are 2, 1, 0, 1, 97, their median 1: 1.4826 x 1.2533 / sqrt(5)."""
    found = median_estimate([1.0, 2.0, 100.0, 4.0, 3.0])
    assert found.value == 3.0
    assert found.error == pytest.approx(1.4826 * 1.2533 / 5**0.5, rel=1e-4)


def test_a_line_through_the_origin_by_hand() -> None:
    """x 1, 2, 3 and y 2, 4, 7: slope 31/14; left over 69 - 31^2/14 = 0.357; error sqrt(0.357 / 2 / 14)."""
    found = through_origin([1.0, 2.0, 3.0], [2.0, 4.0, 7.0])
    assert found.value == pytest.approx(31 / 14)
    assert found.error == pytest.approx((0.357142857 / 2 / 14) ** 0.5, rel=1e-6)


def test_no_line_without_a_spread() -> None:
    assert straight_line([1.0, 1.0, 1.0], [1.0, 2.0, 3.0]) is None
    assert straight_line([1.0, 2.0], [1.0, 2.0]) is None
    assert through_origin([0.0, 0.0], [1.0, 1.0]).error == float("inf")


def test_quantiles_are_values_of_the_list() -> None:
    assert [quantile([4.0, 1.0, 3.0, 2.0], share) for share in (0.0, 0.5, 1.0)] == [1.0, 3.0, 4.0]
