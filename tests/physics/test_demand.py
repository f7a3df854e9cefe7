"""Demand: goals at the crank and at the wheels, and what efficiency is credible."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.physics.demand import (
    BRAKE_EFFICIENCY,
    CREDIBLE_EFFICIENCY,
    crank_power_w,
    thermal_efficiency,
    usual_bsfc_kg_J,
)


@pytest.mark.parametrize("loss", [0.0, 0.15, 0.5])
def test_a_goal_at_the_crank_knows_no_driveline(loss: float) -> None:
    assert crank_power_w(power_w=3e5, at_wheels=False, driveline_loss=loss) == 3e5


@given(power=st.floats(1e3, 4e6), loss=st.floats(0.0, 0.5))
def test_what_the_driveline_takes_is_missing_at_the_wheels(power: float, loss: float) -> None:
    crank = crank_power_w(power_w=power, at_wheels=True, driveline_loss=loss)
    assert crank * (1 - loss) == pytest.approx(power)


@pytest.mark.parametrize("induction", BRAKE_EFFICIENCY)
@given(heating_value=st.floats(5e6, 60e6))
def test_usual_bsfc_gives_its_efficiency_back(induction: str, heating_value: float) -> None:
    bsfc = usual_bsfc_kg_J(lhv_J_kg=heating_value, induction=induction)
    found = thermal_efficiency(bsfc_kg_J=bsfc, lhv_J_kg=heating_value)
    assert found == pytest.approx(BRAKE_EFFICIENCY[induction])
    low, high = CREDIBLE_EFFICIENCY
    assert low <= found <= high


def test_boost_burns_more() -> None:
    none, turbo, supercharger = (
        usual_bsfc_kg_J(lhv_J_kg=43e6, induction=kind) for kind in ("none", "turbo", "supercharger")
    )
    assert none < turbo < supercharger


def test_an_induction_that_there_is_not() -> None:
    with pytest.raises(KeyError):
        usual_bsfc_kg_J(lhv_J_kg=43e6, induction="nitrous")
