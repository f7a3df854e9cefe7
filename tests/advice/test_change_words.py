"""Each change in words: what is fitted or done, with its figure."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.advice import result
from fuelwiz.advice.changes import WORDS
from fuelwiz.session import validate
from fuelwiz.sizing import in_steps, quick_figures
from fuelwiz.sizing.vocabulary import CHANGES, Change

from .builds import changed, plain


def words_of(name: str, **changes: Any) -> dict[Change, str]:
    """What each change that applies to an example is."""
    session = validate(changed(plain(name), changes), name)
    first = quick_figures(session)
    figures = next(step for step in in_steps(session, first) if step.changes)
    texts = result(session, figures).words.changes
    return {
        found.change: text.replace("\u00a0", " ") for found, text in zip(figures.changes, texts, strict=True)
    }


def test_each_change_has_its_record() -> None:
    assert tuple(WORDS) == CHANGES


def test_what_is_fitted_in_place_of_what() -> None:
    found = words_of("full-session", pump__count=2, pump__running_at_idle=1, wiring__circuits=1)
    assert found["feed"] == "feed line -10 in place of -8"
    assert found["return"] == "return line -8 in place of -6"
    assert found["wire"] == "10 AWG in place of 12"
    assert found["pump"] == "a third pump of the same; 1 runs at idle, as today"
    assert found["circuits"] == "a circuit of its own for each pump"
    assert found["regulator"] == "a larger regulator: 200 gal/h at 6 psi"
    assert found["filters"] == "a filter of twice the flow"
    assert found["cooler"] == "fuel 27 °F cooler"


def test_wire_by_its_area() -> None:
    assert words_of("full-session", wiring__wire="4 mm^2")["wire"] == "6 mm² in place of 4"


@pytest.mark.parametrize(("units", "base"), [("us", "58 psi (4 bar)"), ("metric", "4 bar")])
def test_a_base_pressure_says_what_has_to_follow(units: str, base: str) -> None:
    text = words_of("full-session", show_units=units)["higher base"]
    assert text.startswith(f"base pressure {base};")
    assert "engine computer" in text and "must follow" in text and "runs lean" in text


def test_injectors_by_their_rating_in_steps_as_they_are_sold() -> None:
    text = words_of("full-session", goal__power="480 hp")["injectors"]
    rating, unit = text.removeprefix("injectors of ").split()
    assert unit == "cc/min" and int(rating) % 50 == 0 and int(rating) > 1120


def test_what_is_cleaned() -> None:
    assert words_of("full-session", feed__filter__0__clogging=2.0)["clean"] == "a clean filter"
    both = words_of("full-session", feed__filter__0__clogging=2.0, inlet__strainer__clogging=1.5)
    assert both["clean"] == "a clean filter and strainer"
