"""Heat: an account of energy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.physics.heat import rise_k_per_h


@given(
    volts=st.floats(5.0, 24.0),
    current=st.floats(0.0, 200.0),
    density=st.floats(500.0, 1500.0),
    volume=st.floats(5e-4, 2.0),
    cp=st.floats(1500.0, 4200.0),
)
def test_what_an_hour_puts_in_is_what_the_fuel_holds(
    volts: float, current: float, density: float, volume: float, cp: float
) -> None:
    rise = rise_k_per_h(volts=volts, current_a=current, density_kg_m3=density, volume_m3=volume, cp_J_kgK=cp)
    assert rise * density * volume * cp == pytest.approx(volts * current * 3600)


def test_a_litre_of_water_under_an_immersion_heater() -> None:
    """1 kW into a kilogram of water of 4186 J/(kg K), the calorie's definition: 860 K in an hour."""
    rise = rise_k_per_h(volts=10.0, current_a=100.0, density_kg_m3=1000.0, volume_m3=1e-3, cp_J_kgK=4186.0)
    assert rise == pytest.approx(860.0, abs=0.5)
