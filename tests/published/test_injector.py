"""Injectors as orifices, and the arithmetic of their size."""

from __future__ import annotations

import math
from typing import Any

import pytest

from fuelwiz.physics.injector import TEST_FLUID_KG_M3, wide_open_flow_kg_s

from .reference import HORSEPOWER_W, POUND_KG, PSI_PA, VALUES, near, row

INJECTOR = VALUES["injector"]
BAR3_PA = 3e5
CC_MIN = 1e-6 / 60


def flow(
    pressure_pa: float,
    *,
    density: float = TEST_FLUID_KG_M3,
    rated: float = 440 * CC_MIN,
    rated_pressure_pa: float = BAR3_PA,
) -> float:
    """Mass flow of an injector held open."""
    return wide_open_flow_kg_s(
        rated_flow_m3_s=rated,
        rated_pressure_pa=rated_pressure_pa,
        density_kg_m3=density,
        pressure_pa=pressure_pa,
    )


@pytest.mark.parametrize("case", INJECTOR["sqrt_law"])
def test_square_root_of_pressure(case: dict[str, Any]) -> None:
    """Q = Cd A sqrt(2 dp/rho): the ratio of flows is the root of the ratio of pressures; ten figures."""
    scale, unit = (1e3, "kPa") if "p1_kPa" in case else (PSI_PA, "psi")
    before, after = case[f"p1_{unit}"] * scale, case[f"p2_{unit}"] * scale
    assert flow(after) / flow(before) == near(case["ratio"], INJECTOR["sqrt_tol_rel"])


def test_rated_on_heptane() -> None:
    """SAE J1832 practice (from memory): a rating is a flow of n-heptane, which CoolProp has at 684 kg/m3."""
    heptane = row(VALUES["fluid"]["rows"]["n_heptane"], T_C=20.0)["rho_kg_m3"]
    assert near(heptane, 0.0005) == TEST_FLUID_KG_M3
    assert flow(BAR3_PA) == near(440 * CC_MIN * heptane, 0.0005)


def test_a_denser_fuel() -> None:
    """By the orifice's law: more mass and less volume, both by the root of the ratio of densities."""
    orifice = INJECTOR["orifice"]
    by_mass = flow(BAR3_PA, density=740.0) / flow(BAR3_PA)
    assert by_mass == near(orifice["mass_ratio_gasoline740_over_heptane684"], orifice["tol_rel"])
    assert by_mass * TEST_FLUID_KG_M3 / 740.0 == near(orifice["volume_ratio"], orifice["tol_rel"])


def test_orifice_of_a_flow_meter() -> None:
    """An orifice in water by Cd A sqrt(2 rho dp), rated on heptane and then used on water, by arithmetic."""
    area, discharge, drop = math.pi / 4 * 0.5e-3**2, 0.6, 2.5e5
    rated = discharge * area * math.sqrt(2 * BAR3_PA / TEST_FLUID_KG_M3)
    assert flow(drop, density=998.2, rated=rated) == near(
        discharge * area * math.sqrt(2 * 998.2 * drop), 1e-9
    )


def test_size_in_pounds() -> None:
    """500 hp at 0.55 lb/(hp h), eight injectors, duty 80 %: 42.97 lb/h each, by arithmetic."""
    case = row(INJECTOR["sizing"], id="INJ1")
    needed = case["power_hp"] * HORSEPOWER_W * case["bsfc_lb_hp_h"] * POUND_KG / (HORSEPOWER_W * 3600)
    rated = case["flow_lb_h"] * POUND_KG / 3600 / TEST_FLUID_KG_M3
    duty = needed / (case["n"] * flow(BAR3_PA, rated=rated))
    assert duty == near(case["duty"], case["tol_rel"])
    assert case["flow_g_min"] / 60e3 == near(flow(BAR3_PA, rated=rated), case["tol_rel"])


def test_size_in_grams() -> None:
    """300 kW at 340 g/kWh, six injectors, duty 85 %: 333.3 g/min each, by arithmetic."""
    case = row(INJECTOR["sizing"], id="INJ2")
    needed = case["power_kW"] * case["bsfc_g_kWh"] / 3.6e6
    rated = case["flow_g_min"] / 60e3 / TEST_FLUID_KG_M3
    duty = needed / (case["n"] * flow(BAR3_PA, rated=rated))
    assert duty == near(case["duty"], case["tol_rel"])


def test_size_on_gasoline() -> None:
    """333.3 g/min of a fuel of 745 kg/m3 are 447.4 cc/min of it, by arithmetic; the rating is on heptane."""
    case = row(INJECTOR["sizing"], id="INJ2")
    rated = case["flow_cc_min_at_0p745"] * CC_MIN * math.sqrt(745.0 / TEST_FLUID_KG_M3)
    assert flow(BAR3_PA, rated=rated, density=745.0) * 60e3 == near(case["flow_g_min"], case["tol_rel"])
