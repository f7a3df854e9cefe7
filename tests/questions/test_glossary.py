"""The page of words explains what a beginner meets, plainly and in the units of the build."""

from __future__ import annotations

import re

import pytest

from fuelwiz.questions import glossary
from fuelwiz.units import UnitSystem

MET_FIRST_HERE = (
    "dash (AN) size", "rail", "base pressure", "duty", "relief", "dead head", "creep", "surge pot", "Reid pressure",
    "lambda", "Re", "K", "sag", "spare", "reserve", "ceiling", "fuel use (BSFC)", "flooded inlet", "cut-off",
)  # fmt: skip


@pytest.mark.parametrize("word", MET_FIRST_HERE)
def test_it_is_explained(word: str) -> None:
    assert 20 < len(glossary()[word]) <= 260


@pytest.mark.parametrize("system", ["us", "metric"])
def test_meanings_are_whole_sentences_with_nothing_left_to_fill_in(system: UnitSystem) -> None:
    for word, meaning in glossary(system).items():
        assert meaning.endswith((".", ")")), word
        assert meaning[0].isupper() or meaning[0].isdigit(), word
        assert not re.search(r"[{}]|\b(?:reckon|eats|wants|whoever|nought)\b", meaning), word


def test_figures_are_in_the_units_of_the_build() -> None:
    assert "43.5\u00a0psi" in glossary("us")["base pressure"]
    assert "3\u00a0bar" in glossary("metric")["base pressure"]
    assert "38\u00a0°C" in glossary("metric")["Reid pressure"]


def test_the_most_important_word_stands_first() -> None:
    assert next(iter(glossary())) == "dash (AN) size"
