"""Every sentence of every build is plain: whole, of one unit system, no hole where a figure should be."""

from __future__ import annotations

import re

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import first_figures

from .builds import NAMES, independent, plain, spaced, texts, told
from .scenarios import ALL, made

US_UNITS = re.compile(r"\d\u00a0(psi|hp|gal/h|ft/s|ft|°F|in|lb/hp·h)\b")
METRIC_UNITS = re.compile(r"\d\u00a0(bar|kW|L/h|m/s|m|°C|mm|g/kWh)\b")
HOLES = re.compile(r"None|\bnan\b|\binf\b|\bTrue\b|\bFalse\b|\{|\}|  |\.\.|^ | $| [.,;:]")
BREAKS = re.compile(r"\d (psi|hp|gal/h|ft/s|bar|kW|L/h|m/s|V|A|%|cc/min)\b")


def both(name: str) -> tuple[Result, Result]:
    return made(name), made(name, "metric")


@pytest.mark.parametrize("name", ALL)
def test_sentences_are_whole(name: str) -> None:
    for said in both(name):
        for text in texts(said):
            assert text, name
            assert not HOLES.search(spaced(text)), text
            assert not re.search(r"\d-\d|−0[^.]", text), text


@pytest.mark.parametrize("name", ALL)
def test_units_of_one_system_alone(name: str) -> None:
    us, metric = both(name)
    for text in texts(us):
        assert not METRIC_UNITS.search(text), text
    for text in texts(metric):
        assert not US_UNITS.search(text), text
        assert "psi" not in text, text


@pytest.mark.parametrize("name", ALL)
def test_number_and_unit_do_not_part(name: str) -> None:
    for said in both(name):
        for text in texts(said):
            assert not BREAKS.search(text.replace("°C", "")), text


@pytest.mark.parametrize("name", ALL)
def test_short_forms_are_short(name: str) -> None:
    for said in both(name):
        assert 1 <= len(said.words.answer) <= 4
        for forms in said.words.answer_forms:
            assert len(forms[-1]) <= 56, forms
            assert "…" not in forms[-1], forms
            assert [len(form) for form in forms] == sorted((len(form) for form in forms), reverse=True), forms


@pytest.mark.parametrize("name", ALL)
def test_whole_sentences_end_and_begin(name: str) -> None:
    for said in both(name):
        words = said.words
        for text in (
            *words.answer,
            *(forms[-1] for forms in words.answer_forms),
            *words.stress,
            *words.cautions,
            *words.next_goal,
        ):
            assert text.endswith("."), text
            assert not text[0].islower(), text
        for finding in words.findings:
            assert finding.text.endswith("."), finding.text
            assert not re.search(r"\. [a-z]", finding.text), finding.text


@pytest.mark.parametrize("name", ALL)
def test_one_explanation_a_size_and_one_sentence_a_bad_day(name: str) -> None:
    for said in both(name):
        assert len(said.words.explanations) == len(said.figures.sizes)
        assert len(said.words.stress) == len(said.figures.stress)
        for row, one in zip(said.figures.sizes, said.words.explanations, strict=True):
            assert (one.no is not None) == bool(row.limits)
            assert one.means
            assert (one.costs is not None) == (row.feed_loss_Pa is not None)


@pytest.mark.parametrize("name", [name for name in NAMES if name != "goal-alone"])
def test_answer_speaks_of_the_line_to_fit_or_what_to_look_for(name: str) -> None:
    said = independent(name)
    assert said.figures.line_to_fit is not None
    assert said.words.line_to_fit is not None and said.figures.line_to_fit in said.words.line_to_fit


@pytest.mark.parametrize("name", NAMES)
def test_velocity_and_loss_are_the_solver_s(name: str) -> None:
    """Feet and psi as NIST SP 811 has them; only rows whose figures lie well off a rounding edge."""
    said = independent(name)
    for row, one in zip(said.figures.sizes, said.words.explanations, strict=True):
        if one.costs is None or row.feed_loss_Pa is None:
            continue
        psi = row.feed_loss_Pa / 6894.757
        if abs(psi * 10 % 1 - 0.5) > 0.01:
            assert spaced(one.costs).startswith(f"{psi:.1f} psi"), one.costs


def test_first_figures_have_their_words_too() -> None:
    """A screen shows the figures before the bad days are solved."""
    session = validate(plain("twins"), "twins")
    words = result(session, first_figures(session)).words
    assert words.stress == ()
    assert words.answer[0].startswith("Full power is fine")
    assert any(finding.about == "pump.count" for finding in words.findings)


def test_cautions_of_alcohol_only_with_alcohol() -> None:
    alcohol = "Alcohol in the fuel"
    assert any(alcohol in text for text in told("hill-climb-coupe").words.cautions)
    assert not any(alcohol in text for text in told("mild").words.cautions)


@pytest.mark.parametrize(
    "words",
    [
        "Relieve the pressure", "rated temperature", "No soft line", "same thread form", "relay and a fuse",
        "crash", "engine stops", "oil or rail pressure", "ground straps", "ventilated", "extinguisher",
        "Vent the tank", "licensed practice",
        "parts makers' ratings", "local codes", "sanctioning", "qualified people", "not an approval",
    ],
)  # fmt: skip
def test_standing_cautions(words: str) -> None:
    """Common practice around petrol under pressure, no source."""
    assert any(words in text for text in independent("goal-alone").words.cautions)
