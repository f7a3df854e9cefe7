"""What stands in braces in the entries is filled in, in both systems, and follows what is declared elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import astuple, replace
from typing import Any

import pytest

from fuelwiz import units
from fuelwiz.errors import FactError
from fuelwiz.facts import table
from fuelwiz.physics import circuit, curve, demand, injector, inlet, line
from fuelwiz.questions import Question, catalogue, glossary, placeholders, step_questions, taken
from fuelwiz.questions.constants import CONSTANTS
from fuelwiz.questions.placeholders import filled
from fuelwiz.questions.round_figures import METRIC, NEAR_ENOUGH, readable
from fuelwiz.session import OPEN_REGULATOR, USUAL_BOOST, USUAL_VACUUM, FieldSpec, field_at
from fuelwiz.sizing import thresholds
from fuelwiz.units import UnitSystem

BASE = "pressure.base"
BRACES = re.compile(r"\{([^{}|]*)\}")


def texts(question: Question) -> tuple[str, ...]:
    """Everything that the entry says in one system of units."""
    choices = [text for choice in question.choices for text in (choice.say, choice.note)]
    return (question.why, question.usual, question.fallback, *choices, *astuple(question.help))


def written(entry: Any) -> Iterator[str]:
    """Every text of an entry as it is written."""
    if isinstance(entry, str):
        yield entry
    elif isinstance(entry, dict):
        for value in entry.values():
            yield from written(value)
    elif isinstance(entry, list):
        for value in entry:
            yield from written(value)


def everything(units_shown: UnitSystem) -> str:
    said = "\n".join(glossary(units_shown).values())
    return said + "\n".join(text for question in catalogue(units_shown).values() for text in texts(question))


@pytest.fixture(autouse=True)
def fresh() -> Iterator[None]:
    """No text of another test is kept."""
    yield
    forget()


def forget() -> None:
    step_questions.cache_clear()
    glossary.cache_clear()
    placeholders._worth.cache_clear()


@pytest.mark.parametrize("shown", ["us", "metric"])
def test_no_brace_is_left_in_any_text(shown: UnitSystem) -> None:
    assert not re.findall(r"[{}]", everything(shown))


@pytest.mark.parametrize(
    ("said", "us", "metric"),
    [
        ("{5 to 12 psi}", "5 to 12 psi", "0.35 to 0.8 bar"),
        ("{150 to 1200 hp}", "150 to 1200 hp", "110 to 900 kW"),
        ("{10 to 18 ft} of hose", "10 to 18 ft of hose", "3 to 5.5 m of hose"),
        ("{85 to 120 °F}", "85 to 120 °F", "30 to 50 °C"),
        ("{80 gal/h|300 L/h}", "80 gal/h", "300 L/h"),
        ("{−1 to 0 ft}", "−1 to 0 ft", "−0.3 to 0 m"),
        ("{fallback}", "43.5 psi", "3 bar"),
        ("{fallback bands.inlet}", "2, 3, 4 and 5 ft/s", "0.61, 0.91, 1.22 and 1.52 m/s"),
        ("{margin outside}", "2.9 psi", "0.2 bar"),
        ("{low} to {high}", "5 psi to 150 psi", "0.35 bar to 10 bar"),
    ],
)
def test_quantities_read_well_in_both_systems(said: str, us: str, metric: str) -> None:
    assert filled(said, BASE, "us").replace("\u00a0", " ") == us
    assert filled(said, BASE, "metric").replace("\u00a0", " ") == metric


@pytest.mark.parametrize("value", [0.0138, 0.117, 0.345, 2.07, 3.66, 14.9, 111.9, 894.8, 6562.0])
def test_a_round_number_stays_near(value: float) -> None:
    shown = readable(value)
    assert float(shown) == pytest.approx(value, rel=NEAR_ENOUGH)
    assert len(shown.replace(".", "").strip("0")) <= 2


def test_number_and_unit_stay_on_one_line() -> None:
    assert filled("at 12 psi, 85 % and 12 AWG", BASE, "us") == "at 12\u00a0psi, 85\u00a0% and 12\u00a0AWG"


def test_braces_that_say_nothing_known_are_refused() -> None:
    with pytest.raises(FactError, match=r"pressure\.base: \{weight of the driver\} is no quantity"):
        filled("{weight of the driver}", BASE, "us")
    with pytest.raises(FactError, match="no fallback"):
        filled("{fallback}", "goal.power", "us")


def test_metric_texts_speak_no_us_units() -> None:
    """But where a rule, a size of a part or an example of what may be typed is in them."""
    loose = re.compile(r"(?<!or )\d (?:gal/h|ft|ft/s|hp|°F|lb/hp·h|gal)\b")
    for key, question in catalogue("metric").items():
        for text in (
            question.why,
            question.usual,
            question.help.what,
            question.help.wrong,
            question.help.why,
        ):
            assert not loose.search(text.replace("\u00a0", " ")), f"{key}: {text}"


@pytest.mark.parametrize("key", catalogue())
def test_words_for_each_system_say_the_same_quantity(key: str) -> None:
    """`{80 gal/h|300 L/h}`: both halves mean nearly the same."""
    for text in written(catalogue()[key].entry):
        for us, metric in re.findall(r"\{([^{}|]*)\|([^{}|]*)\}", text):
            number_us, _, unit_us = us.rpartition(" ")
            number_metric, _, unit_metric = metric.rpartition(" ")
            if unit_us in METRIC and "°" not in unit_us and re.fullmatch(r"[\d.]+", number_us):
                assert unit_metric == METRIC[unit_us]
                assert units.to_si(float(number_metric), unit_metric) == pytest.approx(
                    units.to_si(float(number_us), unit_us), rel=0.05
                ), text


CHANGED: dict[str, tuple[Any, str, Any]] = {
    "efficiency without boost": (demand.BRAKE_EFFICIENCY, "none", 0.31),
    "efficiency with a turbo": (demand.BRAKE_EFFICIENCY, "turbo", 0.31),
    "efficiency with a supercharger": (demand.BRAKE_EFFICIENCY, "supercharger", 0.31),
    "idle share": (demand, "IDLE_SHARE", 0.07),
    "turbo boost": (USUAL_BOOST, "turbo", "11 psi"),
    "supercharger boost": (USUAL_BOOST, "supercharger", "11 psi"),
    "idle vacuum": (USUAL_VACUUM, "manifold", "7 psi"),
    "regulator flow": (OPEN_REGULATOR, "rated_flow", "71 gal/h"),
    "regulator loss": (OPEN_REGULATOR, "rated_loss", "7.1 psi"),
    "sag limit": (thresholds, "MOST_SAG", 0.07),
    "margin outside": (inlet.LEAST_VAPOUR_MARGIN_PA, "outside", 33e3),
    "one point slope": (curve, "ONE_POINT_SLOPE", 3e-6),
    "usual volts": (circuit, "ASSUMED_VOLTS", 12.1),
    "other ethanol": (thresholds, "OTHER_ETHANOL", 0.22),
    "mountain altitude": (thresholds, "HIGH_ALTITUDE_M", 2500.0),
    "test fluid": (injector, "TEST_FLUID_KG_M3", 701.0),
    "laminar below": (line, "LAMINAR_BELOW", 2300.0),
    "turbulent from": (line, "TURBULENT_FROM", 4300.0),
    "copper": (table("wire"), "temperature_coefficient", 0.0047),
}


def test_every_constant_has_a_change() -> None:
    assert set(CHANGED) == set(CONSTANTS)


@pytest.mark.parametrize("name", CHANGED)
@pytest.mark.parametrize("shown", ["us", "metric"])
def test_a_constant_that_changes_changes_the_words(
    name: str, shown: UnitSystem, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = everything(shown)
    home, key, value = CHANGED[name]
    if isinstance(home, dict):
        monkeypatch.setitem(home, key, value)
    else:
        monkeypatch.setattr(home, key, value)
    forget()
    assert everything(shown) != before


SPOKEN_OF = sorted(
    {
        other or question.writes[0]
        for question in catalogue().values()
        for text in written(question.entry)
        for word, _, other in (found.partition(" ") for found in BRACES.findall(text))
        if word == "fallback"
    }
)


def test_fallbacks_are_spoken_of() -> None:
    assert len(SPOKEN_OF) > 20


@pytest.mark.parametrize("key", SPOKEN_OF)
def test_a_fallback_that_changes_changes_the_words(key: str, monkeypatch: pytest.MonkeyPatch) -> None:
    before = everything("us")

    def with_other_fallback(path: str) -> FieldSpec:
        spec = field_at(path)
        if path != key:
            return spec
        return replace(spec, fallback=_other(spec))

    monkeypatch.setattr(taken, "field_at", with_other_fallback)
    forget()
    assert everything("us") != before


def _other(spec: FieldSpec) -> Any:
    if isinstance(spec.fallback, list):
        return [*spec.fallback[:-1], f"{spec.fallback[-1].replace('ft/s', '').strip()}7 ft/s"]
    if spec.kind is None:
        return f"{spec.fallback}7"
    number, _, unit = spec.fallback.partition(" ")
    return f"{float(number) + 7} {unit}"
