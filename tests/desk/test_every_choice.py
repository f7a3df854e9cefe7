"""Every answer that a question offers can be picked, and is the one that is then read back."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk, NoSuchField
from fuelwiz.desk.composites import FITTED_SIZES, field_of
from fuelwiz.desk.edits import NOTHING_WITHOUT
from fuelwiz.questions import catalogue
from fuelwiz.session import field_at
from fuelwiz.terms import ON_THE_CAR

from .desks import opened, told

COUNTED = tuple(key for key in catalogue() if key.endswith(".fittings"))
OFFERED = [
    (asked.key, answer)
    for asked in catalogue().values()
    for answer in asked.answers
    if asked.key not in COUNTED
]


def standing(desk: Desk, key: str) -> set[str]:
    """What the field of a question shows, without its unit and with it."""
    field = desk.text_in_field(key)
    return {field.text, f"{field.text} {field.unit}"}


def test_choices_are_read_from_the_questions() -> None:
    assert ("fuel.which", "methanol") in OFFERED
    assert ("pump.known", "sample") in OFFERED
    assert len({key for key, _ in OFFERED}) > 12


@pytest.mark.parametrize(("key", "answer"), OFFERED)
@pytest.mark.parametrize("example", ["mild", ""])
def test_a_choice_is_read_back(tmp_path: Path, key: str, answer: str, example: str) -> None:
    desk = opened(tmp_path, example) if example else told(tmp_path)
    desk.choose(key, answer)
    if key in {*NOTHING_WITHOUT, *FITTED_SIZES} and answer == "none":
        assert not desk.is_given(key)
    else:
        shown = ON_THE_CAR[answer] if key == "fitted.has" else answer
        assert shown in standing(desk, key)
        assert desk.is_given(key)
    assert key not in desk.refused


@pytest.mark.parametrize("key", sorted({key for key, _ in OFFERED}))
def test_an_answer_that_is_not_on_offer_is_refused(tmp_path: Path, key: str) -> None:
    desk = opened(tmp_path, "mild")
    before = desk.plain
    with pytest.raises(NoSuchField, match="has no answer no such answer"):
        desk.choose(key, "no such answer")
    assert desk.plain == before


@pytest.mark.parametrize("key", COUNTED)
def test_every_fitting_on_offer_can_be_counted(tmp_path: Path, key: str) -> None:
    desk = opened(tmp_path, "mild")
    answers = catalogue()[key].answers
    assert set(answers) == set(field_at(key).choices)
    for number, answer in enumerate(answers, 1):
        desk.type(f"{field_of(key)}.{answer}", str(number))
    assert {answer: desk.text_in_field(f"{field_of(key)}.{answer}").text for answer in answers} == {
        answer: str(number) for number, answer in enumerate(answers, 1)
    }
