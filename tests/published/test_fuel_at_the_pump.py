"""What pumps sell under one name, and how much of it boils."""

from __future__ import annotations

import pytest

from fuelwiz.session import validate
from fuelwiz.sizing.blends import other_blends
from fuelwiz.sizing.stress import summer_fuel


@pytest.mark.parametrize(
    ("today", "more", "less"), [(0.85, 0.85, 0.51), (0.70, 0.83, 0.51), (0.51, 0.83, 0.51)]
)
def test_flex_fuel_holds_51_to_83_percent(today: float, more: float, less: float) -> None:
    """ASTM D5798 (from memory): 51 to 83 % of ethanol by volume; more in the tank than that is not made more."""
    assert other_blends(today) == (more, less)


@pytest.mark.parametrize("today", [0.0, 0.10, 0.15])
def test_gasoline_holds_up_to_15_percent(today: float) -> None:
    """ASTM D4814 covers gasoline with up to 15 % of ethanol (from memory)."""
    assert other_blends(today) == (0.15, 0.0)


def test_a_blend_of_ones_own_moves_by_15_points() -> None:
    assert other_blends(0.30) == pytest.approx((0.45, 0.15))
    assert other_blends(0.95) == pytest.approx((1.0, 0.80))


def test_summer_fuel_of_hot_places() -> None:
    """40 CFR 1090.215: 7.8 psi where 9.0 is allowed else; what was measured stays, and so does strong alcohol."""
    base = {"format": 1, "goal": {"power": "400 hp"}}
    summer = summer_fuel(validate(base | {"fuel": {"ethanol": "0 %"}}))
    assert summer.fuel.reid_pressure == pytest.approx(7.8 * 6894.757293168)
    measured = validate(base | {"fuel": {"ethanol": "0 %", "reid_pressure": "8 psi"}})
    assert summer_fuel(measured) is measured
    strong = validate(base | {"fuel": {"ethanol": "98 %"}})
    assert summer_fuel(strong) is strong
