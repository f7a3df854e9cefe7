"""The monotone cubic and the root finder against scipy, run here on random cases."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from fuelwiz.physics.curve import Curve, pchip_slopes
from fuelwiz.physics.roots import root

from .reference import near

STEPS = st.floats(0.01, 100.0)


@st.composite
def falling_points(draw: st.DrawFn) -> list[tuple[float, float]]:
    """Two to twelve points, rising in pressure and not rising in flow; some steps are flat."""
    count = draw(st.integers(2, 12))
    pressure, flow = draw(st.floats(0.0, 100.0)), 0.0
    points = [(pressure, flow)]
    for _ in range(count - 1):
        pressure += draw(STEPS)
        flow -= draw(st.one_of(st.just(0.0), STEPS))
        points.append((pressure, flow))
    lift = draw(st.floats(0.0, 10.0)) - flow
    return [(pressure, flow + lift) for pressure, flow in points]


@settings(deadline=None)
@given(points=falling_points())
def test_slopes_are_those_of_scipy(points: tuple[tuple[float, float], ...]) -> None:
    """scipy's PchipInterpolator, its first derivative at the points."""
    x, y = zip(*points, strict=True)
    expected = PchipInterpolator(x, y).derivative()(x)
    steepest = max(abs(slope) for slope in expected)
    for ours, theirs in zip(pchip_slopes(x, y), expected, strict=True):
        assert ours == pytest.approx(theirs, rel=1e-9, abs=1e-9 * steepest)


@settings(deadline=None)
@given(points=falling_points(), share=st.floats(0.0, 1.0))
def test_curve_is_that_of_scipy(points: tuple[tuple[float, float], ...], share: float) -> None:
    """scipy's PchipInterpolator between the points."""
    x, y = zip(*points, strict=True)
    pressure = x[0] + share * (x[-1] - x[0])
    expected = max(0.0, float(PchipInterpolator(x, y)(pressure)))
    assert Curve(13.5, tuple(points)).flow_m3_s(pressure) == pytest.approx(
        expected, rel=1e-9, abs=1e-9 * y[0]
    )


@settings(deadline=None)
@given(
    x=st.lists(st.floats(-1e3, 1e3).map(lambda x: round(x, 2)), min_size=3, max_size=10, unique=True).map(
        sorted
    ),
    data=st.data(),
)
def test_slopes_of_points_that_rise_and_fall(x: Any, data: Any) -> None:
    """scipy's PchipInterpolator on data of any shape, its ends included."""
    y = data.draw(st.lists(st.floats(-1e3, 1e3).map(lambda y: round(y, 2)), min_size=len(x), max_size=len(x)))
    expected = PchipInterpolator(x, y).derivative()(x)
    steepest = max(abs(slope) for slope in expected)
    assert pchip_slopes(x, y) == pytest.approx(list(expected), rel=1e-9, abs=1e-9 * steepest + 1e-300)


FUNCTIONS = {
    "cubic": (lambda x: x**3 - 2 * x - 5, 2.0, 3.0),
    "cosine": (lambda x: math.cos(x) - x, 0.0, 1.0),
    "steep": (lambda x: math.exp(20 * x) - 7, -1.0, 2.0),
    "flat": (lambda x: (x - 0.3) ** 9, 0.0, 1.0),
    "tiny": (lambda x: x * 1e9 - 0.02, 0.0, 1e-9),
    "square root": (lambda x: 1.7 - math.sqrt(x), 0.0, 50.0),
    "kinked": (lambda x: max(0.0, 1 - 2 * x) - x / 10, 0.0, 3.0),
}


@pytest.mark.parametrize("name", FUNCTIONS)
def test_roots_are_those_of_brent(name: str) -> None:
    """scipy's brentq; x^3 - 2 x - 5 is Wallis's own example of 1685 (from memory), 2.0945514815."""
    function, low, high = FUNCTIONS[name]
    expected = brentq(function, low, high, xtol=1e-300, rtol=1e-14, maxiter=1000)
    tolerance = 1e-3 if name == "flat" else 1e-10
    assert root(function, low, high) == near(expected, tolerance)


@settings(deadline=None)
@given(
    stiff=st.floats(1e-3, 1e3),
    bend=st.floats(0.0, 1e3),
    level=st.floats(1e-3, 1e3),
    high=st.floats(1e-2, 1e3),
)
def test_random_roots_are_those_of_brent(stiff: float, bend: float, level: float, high: float) -> None:
    """scipy's brentq on a x + b x^2 = c, which loss against pressure looks like."""

    def function(x: float) -> float:
        return stiff * x + bend * x * x - level

    if function(high) <= 0:
        high = level / stiff * 1.5
    expected = brentq(function, 0.0, high, xtol=1e-300, rtol=1e-14, maxiter=1000)
    assert root(function, 0.0, high) == near(expected, 1e-9)
