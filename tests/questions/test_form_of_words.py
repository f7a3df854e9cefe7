"""The texts keep to the room that they have, are whole, and speak plainly."""

from __future__ import annotations

import re
from dataclasses import fields

import pytest

from fuelwiz.questions import STEPS, Help, Question, catalogue, step_questions

QUESTIONS = catalogue()
PARTS = tuple(field.name for field in fields(Help))
SENTENCE_END = re.compile(r"(?<=[.?!])\s+")
every_step = pytest.mark.parametrize("step", [step.id for step in STEPS])

NAMES = {
    "standards and rules": "SAE J1832 MIL-H-8788 FAA AC API RP ISO EN ASTM B258 D1250 D4814 D5798 CFR EPA "
    "AP-42 DOE AFDC IACS TP-410",
    "relations": "Colebrook Weisbach Fritsch Butland Rennels",
    "materials, fuels and gauges": "PTFE E85 E10 E10's AWG",
    "units and symbols": "V A K F C US L/h PS MJ/kg V/V0",
    "steps, questions and keys of the program": "Pump Injectors Wiring Sheet Fuel F6 Enter",
    "months and an invented car": "May March Gravel-rally",
}
ALLOWED = {word for words in NAMES.values() for word in words.split()}


def texts(question: Question) -> list[str]:
    """Everything that the entry says."""
    return [
        question.label,
        question.why,
        question.usual,
        question.fallback,
        *(text for choice in question.choices for text in (choice.say, choice.note)),
        *(getattr(question.help, part) for part in PARTS),
    ]


@every_step
def test_the_label_fits_its_column(step: str) -> None:
    for question in step_questions(step):
        assert 1 <= len(question.label) <= 17, question.key


@every_step
def test_why_is_short_and_its_first_sentence_stands_alone(step: str) -> None:
    for question in step_questions(step):
        why = question.why
        assert len(SENTENCE_END.split(why)[0]) <= 54, question.key
        assert len(why) <= 150, question.key
        assert why.endswith("."), question.key


@every_step
def test_the_usual_range_is_a_few_words(step: str) -> None:
    for question in step_questions(step):
        assert 1 <= len(question.usual) <= 60, question.key


@every_step
def test_the_fallback_has_a_reason_that_reads_on(step: str) -> None:
    for question in step_questions(step):
        fallback = question.fallback
        assert fallback, question.key
        assert fallback[0].islower(), question.key
        assert fallback[-1] not in ".!?", question.key


@every_step
def test_the_help_has_all_its_parts(step: str) -> None:
    for question in step_questions(step):
        for part in PARTS:
            text = getattr(question.help, part)
            assert 1 <= len(text) <= 400, question.key
            if part != "rule":
                assert text.endswith("."), question.key


@every_step
def test_choices_are_short_in_words(step: str) -> None:
    for question in step_questions(step):
        for choice in question.choices:
            assert 1 <= len(choice.say) <= 24, question.key
            assert len(choice.note) <= 70, question.key


@every_step
def test_only_what_can_be_printed(step: str) -> None:
    for question in step_questions(step):
        for text in texts(question):
            assert text.isprintable(), question.key
            assert text == " ".join(text.split()), question.key


@every_step
def test_a_source_is_named_or_its_lack_is(step: str) -> None:
    for question in step_questions(step):
        source = question.help.source
        if "ommon practice" in source:
            assert "no published source" in source, question.key


@every_step
def test_no_names_but_those_of_standards_relations_and_the_program(step: str) -> None:
    """Capitals within a sentence are names; a maker's would be one too."""
    for question in step_questions(step):
        for text in texts(question):
            for sentence in re.split(r"(?<=[.?!:;]) |(?<=: )", text):
                words = re.findall(r"(?<![\w/.-])[A-Za-zÀ-ž][\w/'-]*", sentence)
                capital = {word for word in words[1:] if word[0].isupper()}
                assert capital <= ALLOWED, (question.key, sentence)


@every_step
def test_british_spelling_and_no_hype(step: str) -> None:
    for question in step_questions(step):
        found = re.findall(
            r"\b(?:color|gray|center|vapor|favorite|carburetor|aluminum|amazing|ultimate|best-in-class)\b",
            " ".join(texts(question)),
        )
        assert not found, question.key


def test_fuel_under_pressure_is_warned_of_where_a_line_is_opened() -> None:
    for key in ("pressure.base", "pressure.regulator", "feed.filter.rated_loss"):
        assert "reliev" in QUESTIONS[key].help.unsure.lower(), key
    for key in ("pressure.base", "pump.curve.points", "pump.relief", "feed.run.pressure_rating"):
        words = QUESTIONS[key].help
        assert "burns" in f"{words.why} {words.unsure}", key


def test_ratings_for_alcohol_are_asked_for_where_the_fuel_is() -> None:
    for key in ("fuel.which", "feed.hose", "feed.filter", "inlet.strainer.have", "inlet.line"):
        words = QUESTIONS[key].help
        assert "rated for" in f"{words.wrong} {words.unsure}", key


def test_what_e85_may_hold_is_said_where_it_is_chosen() -> None:
    """ASTM D5798: 51 to 83 % by volume."""
    e85 = next(choice for choice in QUESTIONS["fuel.which"].choices if choice.say == "E85")
    assert "51 to 83 %" in e85.note
    assert "51 to 83 %" in QUESTIONS["fuel.which"].help.usual
    assert "reckoned at 85 %" in QUESTIONS["fuel.which"].help.usual
    assert "ASTM D5798" in QUESTIONS["fuel.which"].help.source


def test_where_volts_are_measured_is_said() -> None:
    words = QUESTIONS["pump.volts"].help.unsure
    for said in ("pump's own two terminals", "engine running", "full flow"):
        assert said in words
