"""Fuels: the ends of the blend, what a session's own figures change, and what must fall as it warms."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.facts import table
from fuelwiz.physics.fuel import (
    PSI_PA,
    REFERENCE_K,
    REID_K,
    Fuel,
    blend,
    blend_reid_pa,
    blend_row,
    component_density_kg_m3,
    component_viscosity_pa_s,
    ethanol_mass_fraction,
    own,
    pure,
    vapour_pressure_pa,
)

PARTS = st.floats(0.0, 1.0)
TEMPERATURES = st.floats(233.15, 363.15)
COMPONENTS = ["gasoline", "ethanol", "methanol"]


@pytest.mark.parametrize(("ethanol", "name"), [(0.0, "gasoline"), (1.0, "ethanol")])
def test_the_ends_of_the_blend_are_its_components(ethanol: float, name: str) -> None:
    facts, fuel = table("fuels")[name], blend(ethanol=ethanol, temperature_k=310.0)
    assert fuel.density_kg_m3 == pytest.approx(component_density_kg_m3(name, 310.0))
    dynamic = component_viscosity_pa_s(name, 310.0)
    assert fuel.viscosity_m2_s * fuel.density_kg_m3 == pytest.approx(dynamic)
    assert (fuel.lhv_J_kg, fuel.stoich, fuel.cp_J_kgK) == (facts["lhv"], facts["stoich"], facts["cp"])


@settings(deadline=None)
@given(ethanol=PARTS, temperature=TEMPERATURES)
def test_a_blend_lies_between_its_components(ethanol: float, temperature: float) -> None:
    fuel = blend(ethanol=ethanol, temperature_k=temperature)
    bounds: list[tuple[float | None, Callable[[str], float]]] = [
        (fuel.density_kg_m3, lambda name: component_density_kg_m3(name, temperature)),
        (fuel.viscosity_m2_s * fuel.density_kg_m3, lambda name: component_viscosity_pa_s(name, temperature)),
        (fuel.lhv_J_kg, lambda name: table("fuels")[name]["lhv"]),
        (fuel.stoich, lambda name: table("fuels")[name]["stoich"]),
    ]
    for value, at in bounds:
        low, high = sorted([at("gasoline"), at("ethanol")])
        assert low * (1 - 1e-9) <= value <= high * (1 + 1e-9)


@settings(deadline=None)
@given(ethanol=PARTS, temperature=TEMPERATURES, warmer=st.floats(0.1, 50.0))
def test_warm_fuel_is_lighter_thinner_and_boils_sooner(
    ethanol: float, temperature: float, warmer: float
) -> None:
    for cold, warm in (
        [blend(ethanol=ethanol, temperature_k=at) for at in (temperature, temperature + warmer)],
        [pure("methanol", temperature_k=at) for at in (temperature, temperature + warmer)],
    ):
        assert warm.density_kg_m3 < cold.density_kg_m3
        assert warm.viscosity_m2_s < cold.viscosity_m2_s
        assert warm.vapour_pressure_pa > cold.vapour_pressure_pa


@given(ethanol=PARTS, more=st.floats(1e-6, 1.0))
def test_mass_fraction_rises_with_volume_fraction(ethanol: float, more: float) -> None:
    """From 0 to 1, and above the volume fraction as ethanol is the heavier."""
    assert ethanol <= ethanol_mass_fraction(ethanol) <= 1 + 1e-12
    if ethanol + more <= 1:
        assert ethanol_mass_fraction(ethanol + more) > ethanol_mass_fraction(ethanol)


@pytest.mark.parametrize("ethanol", [0.1, 0.5, 0.85])
def test_heat_capacity_mixes_by_mass_and_true_over_reid_by_volume(ethanol: float) -> None:
    gasoline, alcohol = table("fuels")["gasoline"], table("fuels")["ethanol"]
    fuel, by_mass = blend(ethanol=ethanol, temperature_k=REID_K), ethanol_mass_fraction(ethanol)
    assert fuel.cp_J_kgK == pytest.approx((1 - by_mass) * gasoline["cp"] + by_mass * alcohol["cp"])
    ratio = (1 - ethanol) * gasoline["true_over_reid"] + ethanol * alcohol["true_over_reid"]
    assert fuel.vapour_pressure_pa == pytest.approx(ratio * blend_reid_pa(ethanol))


@pytest.mark.parametrize("column", ["reid_psi", "clausius_K"])
def test_blend_table_at_its_rows_and_between(column: str) -> None:
    rows = table("fuels")["blend"]
    percents, values = rows["ethanol_percent"], rows[column]
    for percent, value in zip(percents, values, strict=True):
        assert blend_row(percent / 100, column) == pytest.approx(value)
    for i in range(len(percents) - 1):
        middle = (percents[i] + percents[i + 1]) / 200
        assert blend_row(middle, column) == pytest.approx((values[i] + values[i + 1]) / 2)


def test_blend_table_holds_its_last_row_beyond_its_end() -> None:
    """A rounding above 100 % still finds pure ethanol."""
    assert blend_row(1.0 + 1e-12, "reid_psi") == table("fuels")["blend"]["reid_psi"][-1]


def test_density_is_tabled_at_15_degrees_and_viscosity_at_20() -> None:
    for name in COMPONENTS:
        facts = table("fuels")[name]
        assert component_density_kg_m3(name, REFERENCE_K) == facts["rho_15"]
        assert component_viscosity_pa_s(name, 293.15) == facts["mu_20"]


@pytest.mark.parametrize("ethanol", [0.0, 0.1, 0.85, 1.0])
def test_a_measured_reid_pressure_wins_over_the_table(ethanol: float) -> None:
    tabled = blend(ethanol=ethanol, temperature_k=300.0)
    same = blend(ethanol=ethanol, temperature_k=300.0, reid_pa=blend_reid_pa(ethanol))
    twice = blend(ethanol=ethanol, temperature_k=300.0, reid_pa=2 * blend_reid_pa(ethanol))
    assert same == tabled
    assert twice.vapour_pressure_pa == pytest.approx(2 * tabled.vapour_pressure_pa)


def test_a_measured_reid_pressure_of_methanol_wins_over_the_table() -> None:
    assert pure("methanol", temperature_k=REID_K, reid_pa=20e3).vapour_pressure_pa == pytest.approx(20e3)
    assert pure("methanol", temperature_k=REID_K).vapour_pressure_pa == table("fuels")["methanol"]["reid"]


def test_vapour_pressure_at_the_reid_temperature_is_reid_times_the_ratio() -> None:
    found = vapour_pressure_pa(reid_pa=60e3, true_over_reid=1.05, slope_k=3000.0, temperature_k=REID_K)
    assert found == pytest.approx(63e3)


def own_fuel(**values: float) -> Fuel:
    """A fuel of one's own, measured at 40 degC."""
    given = {"density_kg_m3": 780.0, "viscosity_m2_s": 8e-7, "lhv_J_kg": 40e6, "given_at_k": 313.15}
    return own(**(given | {"temperature_k": 313.15} | values))


def test_own_fuel_at_its_own_temperature_is_as_given() -> None:
    fuel = own_fuel(stoich=13.5)
    assert fuel.density_kg_m3 == pytest.approx(780.0)
    assert fuel.viscosity_m2_s == pytest.approx(8e-7)
    assert (fuel.lhv_J_kg, fuel.stoich) == (40e6, 13.5)


def test_own_fuel_without_reid_pressure_or_air_need_keeps_quiet_about_them() -> None:
    fuel = own_fuel()
    assert fuel.vapour_pressure_pa is None
    assert fuel.stoich is None


@settings(deadline=None)
@given(measured=TEMPERATURES, today=TEMPERATURES)
def test_gasoline_given_as_own_fuel_is_gasoline_at_any_temperature(measured: float, today: float) -> None:
    at = blend(ethanol=0.0, temperature_k=measured)
    expected = blend(ethanol=0.0, temperature_k=today)
    carried = own(
        density_kg_m3=at.density_kg_m3,
        viscosity_m2_s=at.viscosity_m2_s,
        lhv_J_kg=at.lhv_J_kg,
        given_at_k=measured,
        temperature_k=today,
        reid_pa=9.0 * PSI_PA,
    )
    assert carried.density_kg_m3 == pytest.approx(expected.density_kg_m3)
    assert carried.viscosity_m2_s == pytest.approx(expected.viscosity_m2_s)
    assert carried.vapour_pressure_pa == pytest.approx(expected.vapour_pressure_pa)
    assert carried.cp_J_kgK == expected.cp_J_kgK
