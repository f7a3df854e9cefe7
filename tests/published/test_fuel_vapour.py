"""Vapour pressure of gasoline and of its blends with ethanol."""

from __future__ import annotations

import math
from typing import Any

import pytest

from fuelwiz.facts import table
from fuelwiz.physics.fuel import REID_K, blend, blend_reid_pa, pure, vapour_pressure_pa

from .reference import PSI_PA, VALUES, celsius_of, kelvin, kelvin_from_f, near, printed, row

AP42 = VALUES["ap42"]
RVP = VALUES["ethanol_rvp"]
VOLATILITY = VALUES["volatility"]
BASE_GASOLINES = [at for at in AP42["rows"] if at["RVP_psi"] <= 13.0]


def ap42_psi(reid_psi: float, fahrenheit: float) -> float:
    """True vapour pressure of motor gasoline: EPA AP-42, chapter 7, figure 7.1-14b, slope 3.0."""
    root, log = math.sqrt(3.0), math.log10(reid_psi)
    rankine = fahrenheit + 459.6
    slope = (0.7553 - 413.0 / rankine) * root * log - (1.854 - 1042 / rankine) * root
    return math.exp(slope + (2416 / rankine - 2.013) * log - 8742 / rankine + 15.64)


def reid_psi(percent: float) -> float:
    """Reid pressure of our blend in psi."""
    return blend_reid_pa(percent / 100) / PSI_PA


def gasoline_vapour_pa(reid: float, temperature_k: float) -> float | None:
    """Vapour pressure of gasoline without ethanol, its Reid pressure given in psi."""
    return blend(ethanol=0.0, temperature_k=temperature_k, reid_pa=reid * PSI_PA).vapour_pressure_pa


@pytest.mark.parametrize("at", AP42["rows"], ids=lambda at: f"RVP{at['RVP_psi']:g}")
def test_the_law_is_that_of_ap42(at: dict[str, Any]) -> None:
    """With a row's own slope and its own pressure at 100 degF the law gives all its other pressures.

    EPA AP-42, figure 7.1-15, P = exp(A - B/T): five figures, and 0.1 K between 310.93 K and 100 degF.
    """
    at_100f = math.exp(at["A"] - at["B"] / (REID_K * 1.8)) * PSI_PA
    for key, pressure in at["P_kPa"].items():
        found = vapour_pressure_pa(
            reid_pa=at["RVP_psi"] * PSI_PA,
            true_over_reid=at_100f / (at["RVP_psi"] * PSI_PA),
            slope_k=at["B"] / 1.8,
            temperature_k=kelvin(celsius_of(key)),
        )
        assert found == near(pressure * 1e3, AP42["tol"]["formula_rel"])


def test_our_gasoline() -> None:
    """EPA AP-42 for 9.0 psi: over -10 to 60 degC within 0.5 %, the digits of our two constants."""
    at = row(AP42["rows"], RVP_psi=9.0)
    for key, pressure in at["P_kPa"].items():
        assert gasoline_vapour_pa(9.0, kelvin(celsius_of(key))) == near(pressure * 1e3, 0.005)


@pytest.mark.parametrize("at", BASE_GASOLINES, ids=lambda at: f"RVP{at['RVP_psi']:g}")
def test_other_gasolines(at: dict[str, Any]) -> None:
    """EPA AP-42, 7 to 13 psi between 40 and 120 degF: one slope for all costs up to 6 % at the cold end."""
    for key, pressure in at["P_psia"].items():
        fahrenheit = float(key.removesuffix("F"))
        if 40 <= fahrenheit <= 120:
            assert ap42_psi(at["RVP_psi"], fahrenheit) == near(pressure, 0.001)
            found = gasoline_vapour_pa(at["RVP_psi"], kelvin_from_f(fahrenheit))
            assert found == near(pressure * PSI_PA, 0.06)


@pytest.mark.parametrize("reid", [7, 10, 13])
def test_printed_table_of_ap42(reid: int) -> None:
    """EPA AP-42 table 7.1-2, one decimal in psia: up to 2.5 % of the smallest; the slope costs 6 % more."""
    rows = AP42["table_7_1_2"]
    for fahrenheit, pressure in zip(rows["T_F"], rows[f"RVP{reid}"], strict=True):
        assert ap42_psi(reid, fahrenheit) == near(pressure, AP42["tol"]["table_rel"])
        found = gasoline_vapour_pa(reid, kelvin_from_f(fahrenheit))
        assert found == near(pressure * PSI_PA, 0.06 + AP42["tol"]["table_rel"])


def test_true_over_reid() -> None:
    """EPA AP-42 at 100 degF, 7 to 13 psi: 1.061 to 1.069 times the Reid pressure."""
    for at in BASE_GASOLINES:
        found = gasoline_vapour_pa(at["RVP_psi"], REID_K)
        assert found == near(at["P_psia"]["100F"] * PSI_PA, 0.005)


def test_ten_percent_lifts_by_about_one_psi() -> None:
    """NREL memo of 26 March 2012 (10 % raises it by about 1 psi, 15 % is as 10 %) and 42 USC 7545(h)."""
    assert 0.7 <= reid_psi(10) - reid_psi(0) <= 1.5
    assert abs(reid_psi(15) - reid_psi(10)) < 0.2


def test_shape_of_reid_pressure_over_ethanol() -> None:
    """The highest between 5 and 20 %, below the base somewhere between 35 and 60 %, E85 below gasoline.

    UNIFAC bubble pressures (thermo 0.6.1) and the NREL memo of 26 March 2012.
    """
    peak = max(range(101), key=reid_psi)
    assert 5 <= peak <= 20
    falls_below = next(percent for percent in range(1, 101) if reid_psi(percent) < reid_psi(0))
    assert 35 <= falls_below <= 60
    assert reid_psi(85) < reid_psi(0)
    assert all(reid_psi(percent) >= reid_psi(percent + 1) for percent in range(peak, 100))


def test_reid_pressure_of_pure_alcohols() -> None:
    """Vapour pressure at 100 degF: CoolProp 8.0.0, 2.31 psi for ethanol; AFDC prints 2.3 and 4.6 psi."""
    assert reid_psi(100) == pytest.approx(2.31, abs=0.1)
    for name, fuel in [
        ("ethanol", blend(ethanol=1.0, temperature_k=REID_K)),
        ("methanol", pure("methanol", temperature_k=REID_K)),
    ]:
        assert fuel.vapour_pressure_pa / PSI_PA == printed(VALUES["afdc"][name]["RVP_psi"], 1)


@pytest.mark.parametrize("at", RVP["unifac_bubble_37p78C"], ids=lambda at: f"E{at['E']:g}")
def test_lift_over_the_base(at: dict[str, Any]) -> None:
    """UNIFAC bubble pressures on a base of 8.25 psi, ours on 9: on a row of our table to 0.2 psi.

    Between rows our straight line lies under the bend, by 0.4 psi at E2; pure ethanol has one pressure.
    """
    if at["E"] == 100:
        assert blend_reid_pa(1.0) == near(at["P_kPa"] * 1e3, 0.005)
        return
    on_a_row = at["E"] in table("fuels")["blend"]["ethanol_percent"]
    assert reid_psi(at["E"]) - reid_psi(0) == pytest.approx(at["delta_psi"], abs=0.2 if on_a_row else 0.4)


@pytest.mark.parametrize(("low", "high"), [(10, 20), (20, 30), (30, 50), (50, 70)])
def test_from_row_to_row_it_changes_as_modelled(low: int, high: int) -> None:
    """UNIFAC bubble pressures: what one percent more ethanol changes in the middle of our table, to 0.003 psi."""
    modeled = {at["E"]: at["delta_psi"] for at in RVP["unifac_bubble_37p78C"]}
    wanted = (modeled[high] - modeled[low]) / (high - low)
    assert (reid_psi(high) - reid_psi(low)) / (high - low) == pytest.approx(wanted, abs=0.003)


def test_classes_of_specifications() -> None:
    """ASTM D4814 class A: 9.0 psi at most, as 42 USC 7545(h); D5798 class 1, E51 to E83: 5.5 to 9.0 psi."""
    assert reid_psi(0) == VOLATILITY["D4814_max_psi"]["A"]
    low, high = VOLATILITY["D5798_psi"]["class1"]
    assert all(low <= reid_psi(percent) <= high for percent in range(*VOLATILITY["D5798_ethanol_vol_pct"]))


def test_a_blend_gains_pressure_with_heat_between_gasoline_and_ethanol() -> None:
    """The more ethanol, the steeper, from AP-42's gasoline to CoolProp's ethanol, which are checked above."""
    heats = []
    for part in table("fuels")["blend"]["ethanol_percent"]:
        hot, warm = (
            blend(ethanol=part / 100, temperature_k=kelvin(t)).vapour_pressure_pa for t in (60.0, 37.8)
        )
        heats.append(hot / warm)
    assert heats == sorted(set(heats))
