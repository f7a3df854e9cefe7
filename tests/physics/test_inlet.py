"""The atmosphere over the range of altitudes that a session may give."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA, atmosphere_pa


def test_sea_level() -> None:
    assert atmosphere_pa(0.0) == 101325.0


@given(altitude=st.floats(-500.0, 6000.0), higher=st.floats(0.1, 1000.0))
def test_air_thins_with_height(altitude: float, higher: float) -> None:
    assert atmosphere_pa(altitude + higher) < atmosphere_pa(altitude)


def test_lapse_at_sea_level() -> None:
    """The weight of a meter of air at 15 degC, 1.225 kg/m3 (ISO 2533): 12.0 Pa."""
    assert atmosphere_pa(-0.5) - atmosphere_pa(0.5) == pytest.approx(1.225 * 9.80665, rel=1e-3)


def test_a_pump_outside_the_tank_needs_more() -> None:
    assert LEAST_VAPOUR_MARGIN_PA == {"tank": 0.0, "surge": 0.0, "outside": 20e3}
