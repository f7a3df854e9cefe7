"""The result as JSON: keys in their documented order, figures as an independent solver gives them."""

from __future__ import annotations

import json
from dataclasses import replace
from math import inf, isfinite, nan
from typing import Any

import pytest
from independent import NOT_SOLVED_BUT_SAID

from fuelwiz import __version__
from fuelwiz.report.json_form import json_text, plain_result

from .builds import EXAMPLES, NAMES, example

# The keys of the result, in their order.
TOP = """
format name version fuel demand pressure sizes recommended line_to_fit comfortable chosen verdict pump_target
pump return_line inlet wiring injectors heat surge ceilings next pull stress spread changes
way_out assumed findings cautions
gauge wire_choices injector_choices one_volt path return_check metric_wire_choices bench log
"""
INSIDE = {
    "fuel": "density_kg_m3 viscosity_m2_s lhv_J_kg stoich vapour_pressure_Pa",
    "demand": """crank_power_W bsfc_kg_J thermal_efficiency mass_flow_kg_s volume_flow_m3_s target_flow_m3_s
        air_flow_kg_s""",
    "pressure": "rail_Pa injector_Pa idle_rail_Pa atmosphere_Pa",
    "sizes": """size bore_m nominal_velocity_m_s velocity_m_s reynolds friction_factor band feed_loss_Pa
        line_loss_Pa pump_rise_Pa target_rise_Pa capacity_m3_s margin max_power_W pump_volts_V pump_current_A
        full_delivery_velocity_m_s full_delivery_band full_delivery_loss_Pa rail_at_goal_Pa rail_sag_Pa
        vapour_margin_Pa extrapolated least line_works works limits ladder explanation""",
    "sizes.least": "at margin",
    "sizes.ladder": """base_Pa boost_Pa filters_Pa friction_Pa fittings_Pa parts_Pa rise_Pa inlet_Pa
        could_make_Pa""",
    "sizes.explanation": "no means costs next smaller",
    "verdict": "size works limits answer",
    "pump_target": "size flow_m3_s rise_Pa hardest",
    "pump_target.hardest": "at flow_m3_s rise_Pa",
    "pump": """capacity_without_feed_loss_m3_s capacity_turbine_m3_s capacity_displacement_m3_s dead_head_Pa
        lowest_rating_Pa stages""",
    "pump.stages": "pumps power_W boost_Pa",
    "return_line": """size flow_m3_s velocity_m_s back_pressure_Pa regulator_loss_Pa holds at_ease creep_Pa
        creep_all_on_Pa smallest_that_holds smallest_at_ease sizes""",
    "return_line.sizes": """size flow_m3_s velocity_m_s back_pressure_Pa regulator_loss_Pa holds at_ease creep_Pa
        creep_all_on_Pa""",
    "inlet": "velocity_m_s band pressure_abs_Pa vapour_margin_Pa",
    "wiring": "pump_volts_V loss_V current_A total_A peak_current_A fuse_A ampacity_A smallest_wire",
    "injectors": "count wide_open_flow_each_kg_s duty smallest_rating_m3_s within_limit",
    "heat": "rise_K_per_h lasts_s",
    "surge": "lift_needed_m3_s lift_margin holds_s",
    "ceilings": "part max_power_W basis",
    "next": "crank_power_W boost_Pa recommended margin works limits target_flow_m3_s target_rise_Pa changes way_out",
    "next.changes": "change what margin works cures brings max_power_W",
    "pull": "rpm crank_power_W boost_Pa rail_Pa flow_m3_s capacity_m3_s margin duty limits",
    "stress": "case what margin vapour_margin_Pa works limits",
    "spread": "draws chance short margin limits inputs",
    "spread.margin": "low middle high",
    "spread.limits": "limit share",
    "spread.inputs": "input tolerance low high breaks limit",
    "changes": "change what margin works cures brings max_power_W",
    "assumed": "key value effect",
    "findings": "severity about text",
    "gauge": "when rail_Pa pump_Pa",
    "wire_choices": "gauge loss_V ampacity_A does given area_m2 carries_fuse",
    "metric_wire_choices": "gauge loss_V ampacity_A does given area_m2 carries_fuse",
    "injector_choices": "rating_m3_s duty does given",
    "one_volt": "share turbine displacement",
    "path": "kind number velocity_m_s loss_Pa",
    "return_check": "pressure_Pa volts_V pumps flow_m3_s",
}
TEXTS = {"format", "name", "version", "explanation", "answer", "what", "findings", "cautions"}
NOT_SAID_HERE = {"bench", "log"}
"""What the independent solver gives beyond this result."""
DRAWN = {"draws", "chance", "short", "margin", "limits"}
"""What hangs on how many draws are made; the tests of the figures hold it."""


def _dictionaries(value: Any, path: str = "") -> list[tuple[str, dict[str, Any]]]:
    """Every dictionary in a result, with its path, lists passed over."""
    if isinstance(value, list):
        return [found for item in value for found in _dictionaries(item, path)]
    if not isinstance(value, dict):
        return []
    below = [
        found
        for key, item in value.items()
        for found in _dictionaries(item, f"{path}.{key}" if path else key)
    ]
    return [(path, value), *below]


def _numbers_and_words(value: Any) -> Any:
    """A result without the texts and figures that the independent solver does not give."""
    if isinstance(value, dict):
        left_out = TEXTS | set(NOT_SOLVED_BUT_SAID) | NOT_SAID_HERE | (DRAWN if "draws" in value else set())
        return {key: _numbers_and_words(item) for key, item in value.items() if key not in left_out}
    if isinstance(value, list):
        return [_numbers_and_words(item) for item in value]
    return value


def _assert_same(found: Any, wanted: Any, path: str = "") -> None:
    """The same keys, lengths and words, and numbers within 1 part in 10 000."""
    if isinstance(wanted, dict):
        assert found.keys() == wanted.keys(), path
        for key, item in wanted.items():
            _assert_same(found[key], item, f"{path}.{key}")
    elif isinstance(wanted, list):
        assert len(found) == len(wanted), path
        for at, (one, other) in enumerate(zip(found, wanted, strict=True)):
            _assert_same(one, other, f"{path}.{at}")
    elif isinstance(wanted, float):
        assert found == pytest.approx(wanted, rel=1e-4, abs=1e-9), path
    else:
        assert found == wanted, path


@pytest.mark.parametrize("name", NAMES)
def test_keys_stand_in_their_order(name: str) -> None:
    found = json.loads(json_text(example(name)))
    for path, dictionary in _dictionaries(found):
        assert list(dictionary) == (INSIDE[path] if path else TOP).split(), path


def test_the_examples_hold_every_section() -> None:
    seen = {path for name in NAMES for path, _ in _dictionaries(plain_result(example(name)))}
    assert seen == {*INSIDE, ""}


@pytest.mark.parametrize("name", NAMES)
def test_figures_are_those_of_the_independent_solver(name: str) -> None:
    wanted = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    _assert_same(_numbers_and_words(json.loads(json_text(example(name)))), _numbers_and_words(wanted))


def test_format_name_and_version_come_first() -> None:
    found = json.loads(json_text(example("full-session")))
    assert list(found.items())[:3] == [
        ("format", 1),
        ("name", "Gravel-rally wagon"),
        ("version", __version__),
    ]


@pytest.mark.parametrize("name", NAMES)
def test_numbers_keep_all_their_digits(name: str) -> None:
    known = example(name)
    found = json.loads(json_text(known))
    assert found["demand"]["volume_flow_m3_s"] == known.figures.demand.volume_flow_m3_s
    assert [row["velocity_m_s"] for row in found["sizes"]] == [
        row.velocity_m_s for row in known.figures.sizes
    ]


@pytest.mark.parametrize("endless", [nan, inf, -inf])
def test_a_number_without_an_end_is_null(endless: float) -> None:
    known = example("mild")
    broken = replace(
        known, figures=replace(known.figures, demand=replace(known.figures.demand, air_flow_kg_s=endless))
    )
    text = json_text(broken)
    assert json.loads(text)["demand"]["air_flow_kg_s"] is None
    assert not isfinite(endless) and "NaN" not in text and "Infinity" not in text


@pytest.mark.parametrize("name", NAMES)
def test_texts_are_there_and_can_be_searched(name: str) -> None:
    text = json_text(example(name))
    found = json.loads(text)
    assert found["verdict"]["answer"] and all(case["what"] for case in found["stress"])
    assert all(row["explanation"]["means"] for row in found["sizes"])
    assert "\u00a0" not in text


def test_ascii_only_says_the_same() -> None:
    known = example("hill-climb-six")
    text = json_text(known, ascii_only=True)
    assert text.isascii() and json.loads(text) == json.loads(json_text(known))
