"""Friction factors against charts, lists and formulas of handbooks."""

from __future__ import annotations

import math
from typing import Any

import pytest

from fuelwiz.physics.line import friction_factor

from .reference import VALUES, near, printed

FRICTION = VALUES["friction"]


@pytest.mark.parametrize("point", FRICTION["colebrook"], ids=lambda p: f"Re{p['Re']:g}-eD{p['eD']:g}")
def test_colebrook_points(point: dict[str, Any]) -> None:
    """Colebrook solved by fluids 1.3.1 and by an independent Newton iteration; eight decimals are printed."""
    factor = friction_factor(reynolds=point["Re"], relative_roughness=point["eD"])
    assert factor == near(point["f"], FRICTION["colebrook_tol_rel"])


@pytest.mark.parametrize(
    ("reynolds", "roughness", "factor", "decimals"),
    [
        (4e3, 0.0, 0.0399, 4),
        (1e5, 0.0, 0.0180, 4),
        (1e7, 0.0, 0.0081, 4),
        (1e6, 1e-4, 0.0134, 4),
        (1e6, 1e-3, 0.0199, 4),
        (1e6, 1e-2, 0.0380, 4),
    ],
)
def test_textbook_lists(reynolds: float, roughness: float, factor: float, decimals: int) -> None:
    """White, Fluid Mechanics, 8 ed., 6.6 (smooth walls); Cengel & Cimbala 8-5 (Re 1e6); both from memory."""
    assert friction_factor(reynolds=reynolds, relative_roughness=roughness) == printed(factor, decimals)


@pytest.mark.parametrize("reynolds", [4000.0, 5e3, 2e4, 6e4, 1e6, 1e8])
@pytest.mark.parametrize("roughness", [0.0, 1.5e-6 / 8.7e-3, 1e-3, 0.05])
def test_fits_colebrooks_own_equation(reynolds: float, roughness: float) -> None:
    """Colebrook, J. Inst. Civ. Eng. 1939, 11, 133: 1/sqrt(f) = -2 log10(e/(3.7 D) + 2.51/(Re sqrt(f)))."""
    side = 1 / math.sqrt(friction_factor(reynolds=reynolds, relative_roughness=roughness))
    assert side == near(-2 * math.log10(roughness / 3.7 + 2.51 * side / reynolds), 1e-6)


@pytest.mark.parametrize("point", FRICTION["laminar"], ids=lambda p: f"Re{p['Re']:g}")
def test_laminar_points(point: dict[str, Any]) -> None:
    """Hagen and Poiseuille, 64/Re; the points as the tests and the tutorial of fluids print them."""
    factor = friction_factor(reynolds=point["Re"], relative_roughness=0.01)
    assert factor == near(point["f"], FRICTION["laminar_tol_rel"])


def test_explicit_formulas_stand_close_by() -> None:
    """Haaland, Churchill 1977 and Serghides as fluids tests them: good to 2 % of Colebrook, as they claim."""
    factor = friction_factor(reynolds=1e5, relative_roughness=1e-4)
    for formula in ("Haaland", "Churchill_1977", "Serghides_2"):
        value = FRICTION["explicit_at_Re1e5_eD1e4"][formula]
        assert factor == near(value, FRICTION["explicit_formula_tol_rel"])


def test_blasius_stands_close_by() -> None:
    """Blasius at Re 1e4, 0.3164 Re^-0.25, 2 to 3 % over Colebrook there (White 6.6, from memory)."""
    factor = friction_factor(reynolds=FRICTION["blasius"]["Re"], relative_roughness=0.0)
    assert factor == near(FRICTION["blasius"]["f"], 0.03)


def test_fully_rough() -> None:
    """Von Karman's fully rough law, as fluids tests it: what Colebrook comes to as Re grows without end."""
    rough = FRICTION["fully_rough_von_karman"]
    assert friction_factor(reynolds=1e13, relative_roughness=rough["eD"]) == near(rough["f"], 1e-6)
