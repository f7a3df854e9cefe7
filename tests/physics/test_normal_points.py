"""Points that fill a space evenly, and the percentiles of sums of independent effects."""

from __future__ import annotations

import math
import statistics
from statistics import NormalDist
from typing import Any

import pytest

from fuelwiz.physics.additive import AdditiveModel, Effect, percentile_of
from fuelwiz.physics.normal_points import MOST_INPUTS, normal_points

# JCGM 101:2008, 9.2.2, table 2: four standard normal inputs added up; standard uncertainty 2.0, and 95 in 100 of the
# sums within 3.92 of zero.
INPUTS, DEVIATION, HALF_WIDTH = 4, 2.0, 3.92


def sobol(inputs: int, count: int, **options: Any) -> Any:
    """Points of SciPy's; loading it takes a second, and each process that shares the tests reads this file."""
    from scipy.stats import qmc

    return qmc.Sobol(inputs, **options).random(count)


def sums(count: int) -> list[float]:
    return sorted(sum(point) for point in normal_points(count, INPUTS))


def test_the_additive_example_of_the_guide_through_the_draws() -> None:
    values = sums(8192)
    assert statistics.fmean(values) == pytest.approx(0.0, abs=0.01)
    assert statistics.pstdev(values) == pytest.approx(DEVIATION, abs=0.05)
    assert percentile_of(values, 0.025) == pytest.approx(-HALF_WIDTH, abs=0.05)
    assert percentile_of(values, 0.975) == pytest.approx(HALF_WIDTH, abs=0.05)
    assert sum(abs(value) <= HALF_WIDTH for value in values) / len(values) == pytest.approx(0.95, abs=0.005)


def test_the_additive_example_of_the_guide_in_closed_form() -> None:
    model = AdditiveModel(0.0, (Effect(1.0),) * INPUTS)
    assert model.percentile(0.975) == pytest.approx(HALF_WIDTH, abs=0.005)
    assert model.percentile(0.025) == pytest.approx(-HALF_WIDTH, abs=0.005)


def test_they_are_the_points_of_another_program() -> None:
    count = 512
    theirs = sobol(MOST_INPUTS, count, scramble=False) + 0.5 / count
    for mine, wanted in zip(normal_points(count, MOST_INPUTS), theirs, strict=True):
        assert [NormalDist().cdf(z) for z in mine] == pytest.approx(list(wanted), abs=1e-12)


@pytest.mark.parametrize("number", range(MOST_INPUTS))
def test_each_input_by_itself_is_filled_without_a_gap(number: int) -> None:
    count = 256
    places = sorted(
        round(NormalDist().cdf(point[number]) * count - 0.5, 6) for point in normal_points(count, MOST_INPUTS)
    )
    assert places == list(range(count))


@pytest.mark.parametrize("bend", [0.0, 0.05, -0.1])
def test_percentiles_of_a_bent_effect_beside_a_straight_one(bend: float) -> None:
    """Against very many points of another program; the expansion is to fourth order."""
    model = AdditiveModel(3.0, (Effect(0.5, bend), Effect(0.4), Effect(step=0.2)))
    points = [[NormalDist().inv_cdf(u) for u in row] for row in sobol(3, 2**15, seed=1)]
    values = sorted(model.at(point) for point in points)
    for share in (0.05, 0.5, 0.95):
        assert model.percentile(share) == pytest.approx(percentile_of(values, share), abs=0.02)


def test_cumulants_of_a_parabola_are_those_of_its_moments() -> None:
    """By Gauss and Hermite's rule, exact for these powers."""
    from numpy.polynomial.hermite_e import hermegauss

    effect = Effect(0.7, 0.3)
    nodes, weights = hermegauss(12)
    share = weights / math.sqrt(2 * math.pi)
    values = [effect.at(float(node)) for node in nodes]
    mean = sum(w * v for w, v in zip(share, values, strict=True))
    second, third, fourth = (
        sum(w * (v - mean) ** order for w, v in zip(share, values, strict=True)) for order in (2, 3, 4)
    )
    assert effect.cumulants == pytest.approx((mean, second, third, fourth - 3 * second**2), rel=1e-9)
