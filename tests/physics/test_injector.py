"""Injectors: at their rating, without pressure, and what must grow with what."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.physics.injector import TEST_FLUID_KG_M3, wide_open_flow_kg_s


def flow(
    *, density: float = 745.0, pressure: float = 3e5, rated_flow: float = 1e-5, rated_pressure: float = 3e5
) -> float:
    """Mass flow of an injector held open."""
    return wide_open_flow_kg_s(
        rated_flow_m3_s=rated_flow,
        rated_pressure_pa=rated_pressure,
        density_kg_m3=density,
        pressure_pa=pressure,
    )


@given(rated=st.floats(1e-7, 2e-4), pressure=st.floats(3e4, 2e6))
def test_on_its_test_fluid_at_its_pressure_it_gives_its_rating(rated: float, pressure: float) -> None:
    found = flow(density=TEST_FLUID_KG_M3, pressure=pressure, rated_flow=rated, rated_pressure=pressure)
    assert found == pytest.approx(rated * TEST_FLUID_KG_M3)


@pytest.mark.parametrize("pressure", [0.0, -1e-9, -2e5])
def test_nothing_flows_without_pressure(pressure: float) -> None:
    assert flow(pressure=pressure) == 0.0


def test_just_above_no_pressure_a_little_flows() -> None:
    assert 0 < flow(pressure=1e-6) < flow(pressure=1.0)


@given(pressure=st.floats(1.0, 1e6), times=st.floats(1.01, 100.0))
def test_flow_grows_with_the_root_of_pressure_and_density(pressure: float, times: float) -> None:
    assert flow(pressure=pressure * times) == pytest.approx(flow(pressure=pressure) * times**0.5)
    assert flow(pressure=pressure, density=745.0 * times) == pytest.approx(
        flow(pressure=pressure) * times**0.5
    )
