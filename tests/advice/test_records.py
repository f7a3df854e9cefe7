"""One record for each limit and each bad day: none is missing, and each says all that is read from it."""

from __future__ import annotations

import re

import pytest

from fuelwiz.advice.assumed import count_in_words, matters_most
from fuelwiz.advice.cases import BY_CASE, times
from fuelwiz.advice.limits import WORDS, cured_at, limit_phrase, short_why
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.steps import step_of
from fuelwiz.questions import STEPS
from fuelwiz.sizing.figures import NOT_GIVEN, Assumption
from fuelwiz.sizing.vocabulary import CASES, LIMITS, SIZE_LIMITS, Limit

from .builds import spaced, texts
from .scenarios import ALL, made

WIZARD_TALK = re.compile(r"\bF\d+\b|\bNext:|\bthis step\b|\bhere, then\b|\bEnter\.|\bTab\b")


def test_every_limit_and_every_bad_day_has_its_record() -> None:
    assert tuple(WORDS) == LIMITS
    assert tuple(BY_CASE) == CASES


@pytest.mark.parametrize("limit", LIMITS)
def test_a_record_is_whole(limit: Limit) -> None:
    one = made(f"limit: {limit}")
    subject = Subject(one.session, one.figures)
    assert step_of(cured_at(subject, limit)) in {step.id for step in STEPS}
    for text in (short_why(subject, limit), WORDS[limit].cure):
        assert text and text[0].islower() and not text.endswith(".") and "{" not in text, text


def test_several_pumps_are_too_small_together() -> None:
    one, several = made("limit: pump"), made("remark: one pump dead")
    assert short_why(Subject(one.session, one.figures), "pump") == "the pump is too small"
    assert short_why(Subject(several.session, several.figures), "pump") == "the pumps are too small"


@pytest.mark.parametrize("limit", SIZE_LIMITS)
def test_a_phrase_has_a_figure_and_the_limit_that_judges_it(limit: str) -> None:
    one = made(f"limit: {limit}")
    subject = Subject(one.session, one.figures)
    row = one.figures.pick
    for known in row.limits:
        assert re.search(r"\d", limit_phrase(subject, row, known)), known


@pytest.mark.parametrize("name", ALL)
def test_no_key_and_no_step_of_the_wizard_on_a_sheet(name: str) -> None:
    one = made(name)
    for text in texts(one):
        assert text == one.words.next_step or not WIZARD_TALK.search(text), text


@pytest.mark.parametrize(("values", "sections", "words"), [
    (8, 4, "8 values assumed, 4 sections left out"),
    (1, 1, "1 value assumed, 1 section left out"),
    (0, 2, "2 sections left out"),
    (3, 0, "3 values assumed"),
    (0, 0, ""),
])  # fmt: skip
def test_values_and_sections_are_counted_apart(values: int, sections: int, words: str) -> None:
    left_out = [Assumption("goal.reserve", "15 %")] * values + [Assumption("pump", NOT_GIVEN)] * sections
    assert count_in_words(left_out) == words


@pytest.mark.parametrize("name", ALL)
def test_the_count_of_a_finding_is_the_count_everywhere(name: str) -> None:
    one = made(name)
    counted = [text for text in map(spaced, texts(one)) if re.search(r"\bvalues? assumed\b", text)]
    assert all(text.startswith(count_in_words(one.figures.assumed)) for text in counted)
    assert bool(counted) == (matters_most(one.figures.assumed) is not None)


def test_what_follows_from_an_answer_does_not_matter_most() -> None:
    boost, fuel_use = Assumption("pressure.boost", "0 psi"), Assumption("engine.bsfc", "0.5 lb/(hp*h)")
    assert matters_most([boost, fuel_use]) == "engine.bsfc"
    assert matters_most([Assumption("pressure.boost", "15 psi"), fuel_use]) == "pressure.boost"
    assert matters_most([boost]) is None


def test_factors_as_adverbs() -> None:
    assert [times(factor) for factor in (2, 3.0, 1.5)] == ["twice", "3 times", "1.5 times"]
