"""Boost in step with power, worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.physics.boost import boost_in_step_pa, power_share_at

ATMOSPHERE = 101325.0


def test_boost_in_step_with_power() -> None:
    """At 1.4 bar over an atmosphere of 1.0 half of the power is left at 0.2 bar, five twelfths at none."""
    assert boost_in_step_pa(boost_pa=1.4e5, share=0.5, atmosphere_pa=1e5) == pytest.approx(2e4)
    assert boost_in_step_pa(boost_pa=1.4e5, share=5 / 12, atmosphere_pa=1e5) == pytest.approx(0, abs=1e-6)
    assert boost_in_step_pa(boost_pa=1.4e5, share=0.3, atmosphere_pa=1e5) == 0.0


def test_no_boost_stays_none() -> None:
    assert boost_in_step_pa(boost_pa=0.0, share=1.5, atmosphere_pa=ATMOSPHERE) == 0.0


@given(boost=st.floats(1e3, 3e5), more=st.floats(0.0, 5e4))
def test_both_ways_agree(boost: float, more: float) -> None:
    share = power_share_at(boost_pa=boost, more_pa=more, atmosphere_pa=ATMOSPHERE)
    again = boost_in_step_pa(boost_pa=boost, share=share, atmosphere_pa=ATMOSPHERE)
    assert again == pytest.approx(boost + more)
