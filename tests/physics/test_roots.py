"""The root finder: what it promises, at the ends of its interval and where there is no root."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.roots import MOST_STEPS, RELATIVE, root


@settings(deadline=None)
@given(
    at=st.floats(1e-9, 1e9),
    low=st.floats(0.0, 0.999),
    width=st.floats(1.001, 1e3),
    power=st.sampled_from([1, 3]),
)
def test_finds_a_known_root(at: float, low: float, width: float, power: int) -> None:
    found = root(lambda x: (x / at) ** power - 1, low * at, width * at)
    assert found == pytest.approx(at, rel=10 * RELATIVE, abs=0)


@settings(deadline=None)
@given(at=st.floats(-100.0, 100.0), jump=st.floats(1e-6, 1e6))
def test_finds_a_jump(at: float, jump: float) -> None:
    """A pump that stops all at once: the answer is where the sign changes, though nothing is 0 there."""
    found = root(lambda x: jump if x < at else -1.0, -101.0, 101.0)
    assert found == pytest.approx(at, rel=1e-9, abs=1e-9)


@settings(deadline=None)
@given(at=st.floats(0.01, 0.99))
def test_looks_nowhere_outside_the_interval(at: float) -> None:
    seen = []

    def function(x: float) -> float:
        seen.append(x)
        return x - at

    root(function, 0.0, 1.0)
    assert all(0.0 <= x <= 1.0 for x in seen)


@pytest.mark.parametrize("power", [1, 2, 9, 0.1])
def test_needs_few_looks(power: float) -> None:
    """Bisection alone would need about 40 looks; a root that lies flat may need a few times as many."""
    seen = []

    def function(x: float) -> float:
        seen.append(x)
        return abs(x - 0.3) ** power * (1 if x > 0.3 else -1)

    root(function, 0.0, 1.0)
    assert len(seen) < (20 if power == 1 else MOST_STEPS)


@pytest.mark.parametrize(("low", "high"), [(2.0, 5.0), (-1.0, 2.0)])
def test_a_root_at_an_end(low: float, high: float) -> None:
    assert root(lambda x: x - 2.0, low, high) == 2.0


@pytest.mark.parametrize(
    ("function", "end"), [(lambda x: x + 1, 0.0), (lambda x: x - 9, 5.0), (lambda x: 9 - x, 5.0)]
)
def test_without_a_change_of_sign_the_end_nearer_to_zero(function: Any, end: float) -> None:
    assert root(function, 0.0, 5.0) == end


def test_ends_may_come_in_either_order() -> None:
    assert root(lambda x: x * x - 2, 2.0, 0.0) == pytest.approx(2**0.5, rel=1e-11)


def test_a_root_at_zero_inside_the_interval() -> None:
    assert root(lambda x: x, -1.0, 3.0) == pytest.approx(0.0, abs=1e-25)
