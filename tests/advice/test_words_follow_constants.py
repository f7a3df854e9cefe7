"""Each constant of a rule stands once: changed where it stands, every sentence that speaks of it changes with it."""

from __future__ import annotations

import sys
from types import ModuleType
from typing import Any

import pytest

from fuelwiz.advice import result
from fuelwiz.advice.findings import fuel as fuel_findings
from fuelwiz.physics import circuit, curve, demand, heat, inlet, wire
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.sizing import thresholds

from .builds import spaced, texts
from .scenarios import made

# The constant, what it is changed to, a scenario that speaks of it, what is said before and after.
Rule = tuple[ModuleType, str, Any, str, str, str]
RULES: list[Rule] = [
    (thresholds, "WEAK_SUPPLY_V", 11.5, "remark: E85", "No more than 12.8 V", "No more than 11.5 V"),
    (thresholds, "HOT_FUEL_K", 333.15, "remark: E85", "Fuel at 122 °F", "Fuel at 140 °F"),
    (thresholds, "SPIKE_PA", 5 * PSI_PA, "remark: E85", "Boost 3 psi higher", "Boost 5 psi higher"),
    (thresholds, "WORN", 0.75, "remark: E85", "10 % less flow", "25 % less flow"),
    (thresholds, "CLOGGED", 3, "remark: E85", "clogged twice as much", "clogged 3 times as much"),
    (thresholds, "OTHER_ETHANOL", 0.05, "E30", "Ethanol at 45 %", "Ethanol at 35 %"),
    (thresholds, "FLEX_FUEL_FROM", 0.6, "remark: E85", "Ethanol at 51 %", "Ethanol at 60 %"),
    (thresholds, "HIGH_ALTITUDE_M", 3000.0, "remark: E85", "At 6600 ft", "At 9800 ft"),
    (thresholds, "MOST_SAG", 0.01, "limit: sag", "(limit 2.9)", "(limit 0.6)"),
    (
        circuit,
        "ASSUMED_VOLTS",
        13.2,
        "remark: volts assumed",
        "13.0 V at the pump is",
        "13.2 V at the pump is",
    ),
    (circuit, "ASSUMED_VOLTS", 13.2, "remark: low volts", "under 13.0 V it slows", "under 13.2 V it slows"),
    (wire, "MOST_WIRE_LOSS_V", 0.4, "wire too long", "no more than 0.5 V", "no more than 0.4 V"),
    (demand, "CREDIBLE_EFFICIENCY", (0.12, 0.45), "remark: no such engine", "15 to 42 %", "12 to 45 %"),
    (heat, "MOST_RISE_K_PER_H", 30.0, "remark: tank warms", "above 45 °F", "above 54 °F"),
    (
        inlet,
        "LOW_VAPOUR_MARGIN_PA",
        {"tank": 15e3, "surge": 15e3, "outside": 30e3},
        "remark: near boiling",
        "keep 1.5 psi or more",
        "keep 2.2 psi or more",
    ),
    (
        curve,
        "ONE_POINT_SLOPE",
        0.02 / PSI_PA,
        "remark: one point",
        "costs 1 % of its flow",
        "costs 2 % of its flow",
    ),
    (
        thresholds,
        "LITTLE_BEFORE_RELIEF_PA",
        12 * PSI_PA,
        "remark: weeps early",
        "Keep 10 psi away",
        "Keep 12 psi away",
    ),
    (
        thresholds,
        "RATED_AT_PA",
        4e5,
        "remark: injectors to look for",
        "rated at 43.5 psi",
        "rated at 58.0 psi",
    ),
    (fuel_findings, "E85_SOLD", (0.6, 0.9), "remark: E85", "may hold 51 to 83 %", "may hold 60 to 90 %"),
]
# What no sentence gives in figures: they decide what is computed or said at all.
NOT_SAID = {
    "WORTH_MARGIN", "USUAL_SUPPLY_V", "PSI_PA", "COSTS_THE_PUMP", "CREEP_CALLED_OUT_PA", "DUTY_LIMIT", "COOLER_K",
    "FLEX_FUEL_AT_MOST", "FLEX_FUEL_TO", "LOW_BLENDS_TO", "SUMMER_REID", "SUMMER_REID_UP_TO", "LOWER_ABOVE_PA",
    "HIGHER_BELOW_PA", "LOWER_BASE_PA", "HIGHER_BASE_PA", "CC_MIN", "STEP_CC_MIN",
}  # fmt: skip


def changed(patch: pytest.MonkeyPatch, home: ModuleType, name: str, value: Any) -> None:
    """Change a constant where it stands, as if it had stood so when the other modules took it from there."""
    before = getattr(home, name)
    for module in [module for key, module in sys.modules.items() if key.startswith("fuelwiz")]:
        if getattr(module, name, None) is before:
            patch.setattr(module, name, value)


def said(scenario: str) -> str:
    one = made(scenario)
    return " ".join(spaced(text) for text in texts(result(one.session, one.figures)))


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: f"{rule[1]}, {rule[3]}")
def test_words_change_with_the_constant(rule: Rule, monkeypatch: pytest.MonkeyPatch) -> None:
    home, name, value, scenario, before, after = rule
    first = said(scenario)
    assert before in first and after not in first
    changed(monkeypatch, home, name, value)
    second = said(scenario)
    assert after in second
    assert before not in second


def test_every_threshold_is_changed_above() -> None:
    names = {name for name in vars(thresholds) if name.isupper()}
    assert names - NOT_SAID <= {name for _, name, *_ in RULES}
    assert names >= NOT_SAID
