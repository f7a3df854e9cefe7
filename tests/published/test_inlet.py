"""The atmosphere, and what is left over the fuel's vapour pressure at a pump's inlet."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.physics.fuel import blend
from fuelwiz.physics.inlet import atmosphere_pa
from fuelwiz.physics.line import GRAVITY, Run, run_loss

from .reference import FOOT_M, POUND_KG, PSI_PA, VALUES, kelvin, near

NPSH = VALUES["npsh"]


@pytest.mark.parametrize("at", NPSH["atmosphere"], ids=lambda at: f"{at['z_m']:g} m")
def test_atmosphere(at: dict[str, Any]) -> None:
    """US Standard Atmosphere 1976 by fluids 1.3.1, which ISO 2533 shares in the troposphere.

    ISO 2533 counts geopotential meters, 0.03 % shorter than plain ones at 3000 m.
    """
    assert atmosphere_pa(at["z_m"]) == near(at["P_Pa"], NPSH["atmosphere_tol_rel"])


def test_higher_up() -> None:
    """The example of the fluids docs, 5000 m: 54048.2861457 Pa."""
    assert atmosphere_pa(5000.0) == near(54048.2861457, 0.0006)


def test_water_lifted_from_a_tank() -> None:
    """TP-410 example 7-32: a lift of 25 ft and a loss of 6 ft, in feet of water."""
    given = NPSH["tp410_7_32"]
    density = given["rho_lb_ft3"] * POUND_KG / FOOT_M**3
    lift = run_loss(
        Run(0.1, 0.0, 0.0, 0.0, rise_m=(given["lift_ft"] + given["loss_ft"]) * FOOT_M),
        flow_m3_s=0.01,
        density_kg_m3=density,
        viscosity_m2_s=1e-6,
    )
    above_vapour = (given["P_tank_gauge_psi"] + given["P_atm_psi"] - given["Psat_psi"]) * PSI_PA
    head_ft = (above_vapour - lift.total_pa) / (density * GRAVITY) / FOOT_M
    assert head_ft == near(given["NPSHa_ft"], given["tol_rel"])


@pytest.mark.parametrize("case", NPSH["fuel_cases"], ids=lambda case: f"{case['T_C']:g} degC")
def test_gasoline_at_a_flooded_inlet(case: dict[str, Any]) -> None:
    """EPA AP-42 (slope 3.0), US Standard Atmosphere 1976 and hydrostatics; 0.15 kPa for our constants."""
    fuel = blend(ethanol=0.0, temperature_k=kelvin(case["T_C"]), reid_pa=case["RVP_psi"] * PSI_PA)
    flooding = run_loss(
        Run(0.01, 0.0, 0.0, 0.0, rise_m=-case["liquid_above_inlet_m"]),
        flow_m3_s=0.0,
        density_kg_m3=case["rho_kg_m3"],
        viscosity_m2_s=6e-7,
    )
    inlet = atmosphere_pa(case["altitude_m"]) - flooding.total_pa - case["suction_loss_kPa"] * 1e3
    assert inlet / 1e3 == near(case["p_inlet_abs_kPa"], 1e-6)
    margin = inlet - fuel.vapour_pressure_pa
    assert margin / 1e3 == pytest.approx(case["margin_kPa"], abs=NPSH["fuel_tol"]["margin_abs_kPa"])
    head_m = margin / (case["rho_kg_m3"] * GRAVITY)
    assert head_m == near(case["NPSHa_m"], 0.01)
