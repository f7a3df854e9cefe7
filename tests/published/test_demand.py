"""Fuel burned for power: identities, and the figures of handbooks."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.physics.demand import CREDIBLE_EFFICIENCY, thermal_efficiency, usual_bsfc_kg_J

from .reference import VALUES, near

BSFC = VALUES["bsfc"]
G_KWH = 1e-3 / 3.6e6  # kg/J


@pytest.mark.parametrize("case", BSFC["identity_cases"], ids=lambda case: f"{case['bsfc_g_kWh']:g}")
def test_efficiency(case: dict[str, Any]) -> None:
    """eta = 3600/(bsfc LHV) in g/kWh and MJ/kg, by arithmetic; seven figures."""
    found = thermal_efficiency(bsfc_kg_J=case["bsfc_g_kWh"] * G_KWH, lhv_J_kg=case["LHV"] * 1e6)
    assert found == near(case["eta"], 1e-6)


def test_best_of_heywood() -> None:
    """Heywood 1988, section 2.8 (from memory): the best spark engines burn 270 g/kWh."""
    best = BSFC["heywood_best"]
    efficiency = thermal_efficiency(bsfc_kg_J=best["g_kWh"] * G_KWH, lhv_J_kg=44e6)
    assert efficiency == near(best["brake_efficiency_LHV44"], 1e-4)
    assert efficiency <= CREDIBLE_EFFICIENCY[1]


@pytest.mark.parametrize("example", BSFC["scale_examples"], ids=lambda example: example["fuel"])
@pytest.mark.parametrize("induction", ["none", "turbo", "supercharger"])
def test_a_leaner_fuel_is_burned_in_proportion(example: dict[str, Any], induction: str) -> None:
    """At the same efficiency a fuel burns as the other's heating value over its own, by arithmetic."""
    gasoline, other = (
        usual_bsfc_kg_J(lhv_J_kg=example[key] * 1e6, induction=induction) for key in ("LHV_gas", "LHV")
    )
    assert other / gasoline == near(example["factor"], 1e-4)


@pytest.mark.parametrize(
    ("induction", "case"),
    [
        ("none", "NA gasoline, wide open throttle, slightly rich"),
        ("turbo", "boosted gasoline, enriched full load"),
        ("supercharger", "boosted gasoline, enriched full load"),
    ],
)
def test_what_is_usual_lies_in_the_range_of_full_load(induction: str, case: str) -> None:
    """Heywood chapter 15 and Taylor chapter 12 (from memory), and what lambda 0.75 to 0.85 comes to."""
    (limits,) = [limits for limits in BSFC["ranges"] if limits["case"] == case]
    found = usual_bsfc_kg_J(lhv_J_kg=43.4e6, induction=induction) / G_KWH
    assert limits["lo_g_kWh"] <= found <= limits["hi_g_kWh"]
