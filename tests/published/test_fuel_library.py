"""Density, viscosity and vapour pressure of the pure fuels against CoolProp, run here."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest

from fuelwiz.facts import table
from fuelwiz.physics.fuel import Fuel, blend, pure

from .reference import VALUES, kelvin, near

FLUID = VALUES["fluid"]
TOL = FLUID["tol"]
CELSIUS = [-10, -5, 0, 5, 10, 15, 20, 25, 30, 37.8, 40, 45, 50, 55, 60]
ATMOSPHERE_PA = 101325.0


def props_si(*asked: Any) -> float:
    """CoolProp's own; loading it takes two seconds, and each process that shares the tests reads this file."""
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI(*asked))


def ours(name: str, temperature_k: float) -> Fuel:
    """Pure ethanol or methanol as the program has it."""
    return (
        blend(ethanol=1.0, temperature_k=temperature_k)
        if name == "ethanol"
        else pure("methanol", temperature_k=temperature_k)
    )


def vapour_tolerance(celsius: float) -> float:
    """What correlations of vapour pressure differ by among themselves; more below freezing."""
    return TOL["psat_rel_below_0C"] if celsius < 0 else TOL["psat_rel"]


@pytest.mark.parametrize("celsius", CELSIUS)
@pytest.mark.parametrize("name", ["ethanol", "methanol"])
def test_pure_alcohols(name: str, celsius: float) -> None:
    """CoolProp (Schroeder 2014 and Kiselev 2005; de Reuck & Craven 1993 and Xiang 2006) at 101.325 kPa.

    Tolerances are the spread between CoolProp, DIPPR and VDI correlations, not printed digits.
    """
    temperature = kelvin(celsius)
    density = props_si("D", "T", temperature, "P", ATMOSPHERE_PA, name)
    viscosity = props_si("V", "T", temperature, "P", ATMOSPHERE_PA, name) / density
    vapour = props_si("P", "T", temperature, "Q", 0, name)
    fuel = ours(name, temperature)
    assert fuel.density_kg_m3 == near(density, TOL["rho_rel"])
    assert fuel.viscosity_m2_s == near(viscosity, TOL["nu_rel"])
    assert fuel.vapour_pressure_pa == near(vapour, vapour_tolerance(celsius))


@pytest.mark.parametrize("name", ["ethanol", "methanol"])
def test_pure_alcohols_as_tabled(name: str) -> None:
    """The same from CoolProp 8.0.0 as it stood, so that a later library cannot move the ground unseen."""
    for at in FLUID["rows"][name]:
        fuel = ours(name, kelvin(at["T_C"]))
        assert fuel.density_kg_m3 == near(at["rho_kg_m3"], TOL["rho_rel"])
        assert fuel.viscosity_m2_s == near(at["nu_mm2_s"] * 1e-6, TOL["nu_rel"])
        assert fuel.vapour_pressure_pa == near(at["psat_kPa"] * 1e3, vapour_tolerance(at["T_C"]))


@pytest.mark.parametrize("name", ["ethanol", "methanol"])
def test_expansion_of_alcohols(name: str) -> None:
    """Thermal expansion at 20 degC, CoolProp 8.0.0."""
    expansion = FLUID["extra"][name]["beta_20C_per_K"]
    low, high = ours(name, kelvin(15)).density_kg_m3, ours(name, kelvin(25)).density_kg_m3
    assert (low - high) / 10 / ours(name, kelvin(20)).density_kg_m3 == near(expansion, TOL["beta_rel"])


@pytest.mark.parametrize("name", ["ethanol", "methanol"])
def test_heat_capacity_of_alcohols(name: str) -> None:
    """CoolProp near 20 degC; the table rounds to 50 J/(kg K)."""
    heat = props_si("C", "T", kelvin(20), "P", ATMOSPHERE_PA, name)
    assert ours(name, kelvin(20)).cp_J_kgK == pytest.approx(heat, abs=50)


def slope_of_viscosity(name: str) -> float:
    """Andrade's slope of a liquid between -10 and 60 degC, in kelvin."""
    cold, hot = kelvin(-10), kelvin(60)
    ratio = props_si("V", "T", cold, "P", ATMOSPHERE_PA, name) / props_si(
        "V", "T", hot, "P", ATMOSPHERE_PA, name
    )
    return math.log(ratio) / (1 / cold - 1 / hot)


def test_gasoline_thins_as_its_parts_do() -> None:
    """CoolProp over -10 to 60 degC: 968 K for n-heptane, 1079 K for toluene; gasoline is made of such."""
    heptane, toluene = slope_of_viscosity("n-Heptane"), slope_of_viscosity("Toluene")
    assert heptane == pytest.approx(968, abs=2)
    assert toluene == pytest.approx(1079, abs=2)
    assert heptane < table("fuels")["gasoline"]["andrade_K"] < toluene


@pytest.mark.parametrize("name", ["n_heptane", "isooctane"])
def test_gasoline_thins_as_alkanes_do_step_by_step(name: str) -> None:
    """n-heptane (CoolProp 8.0.0) and isooctane (thermo 0.6.1): 10 K change viscosity alike to 3 %."""
    rows = FLUID["rows"][name]
    for cold, hot in pairwise([at for at in rows if at["T_C"] % 10 == 0]):
        expected = cold["mu_mPa_s"] / hot["mu_mPa_s"]
        before, after = (blend(ethanol=0.0, temperature_k=kelvin(at["T_C"])) for at in (cold, hot))
        ratio = before.viscosity_m2_s * before.density_kg_m3 / (after.viscosity_m2_s * after.density_kg_m3)
        assert ratio == near(expected, 0.03)


def test_gasoline_is_a_little_heavier_and_much_more_volatile_than_heptane() -> None:
    """n-heptane of CoolProp, the fluid on which injectors are rated: 684 kg/m3 at 20 degC."""
    heptane = props_si("D", "T", kelvin(20), "P", ATMOSPHERE_PA, "n-Heptane")
    gasoline = blend(ethanol=0.0, temperature_k=kelvin(20))
    assert 1.0 < gasoline.density_kg_m3 / heptane < 1.15
    assert gasoline.vapour_pressure_pa > 5 * props_si("P", "T", kelvin(20), "Q", 0, "n-Heptane")
