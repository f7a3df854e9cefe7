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
    "AP-42 DOE AFDC IACS Properties Comparison",
    "relations": "Colebrook Weisbach Darcy Ohm's Reid Reynolds BSFC LHV Re",
    "materials, fuels and gauges": "PTFE E85 E70 E10 E10's AWG AN AN8",
    "units and symbols": "V A K F C US L/h PS MJ/kg V/V0",
    "steps, questions and keys of the program": "Pump Injectors Wiring Summary Units Fuel F6 Enter On",
    "months and an invented car": "May March Gravel-rally",
}
ALLOWED = {word for words in NAMES.values() for word in words.split()}


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def texts(question: Question) -> list[str]:
    """Everything that the entry says."""
    return [
        question.label,
        question.noun,
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
def test_the_parts_of_the_help_are_whole_sentences(step: str) -> None:
    for question in step_questions(step):
        for part in PARTS:
            text = getattr(question.help, part)
            assert len(text) <= 400, question.key
            assert text or part not in ("what", "why"), question.key
            if text and part != "rule":
                assert text.endswith("."), question.key


@every_step
def test_a_part_with_nothing_to_say_is_left_out(step: str) -> None:
    """No page of filling: nothing breaks, no source is needed, none: pick one."""
    for question in step_questions(step):
        for text in texts(question):
            found = re.search(r"Nothing breaks|No (?:published )?source is needed|None: pick one", text)
            assert not found, question.key


@every_step
def test_the_noun_can_stand_in_a_sentence(step: str) -> None:
    for question in step_questions(step):
        noun = question.noun
        assert 1 <= len(noun) <= 40, question.key
        assert noun[0].islower() or noun == "Reid pressure", question.key
        assert not re.match(r"(?:it|its|of|at|for|how|what|which|where|wide) ", noun), question.key


LISTED = ("feed.run.", "feed.filter.", "feed.part.", "inlet.run.", "return_line.run.", "return_line.part.")


@every_step
def test_no_two_questions_of_a_step_have_one_noun(step: str) -> None:
    """Those of an entry of a list aside: the same is asked of each entry."""
    nouns = [question.noun for question in step_questions(step) if not question.key.startswith(LISTED)]
    assert len(set(nouns)) == len(nouns)


@every_step
def test_choices_are_short_in_words(step: str) -> None:
    for question in step_questions(step):
        for choice in question.choices:
            assert 1 <= len(choice.say) <= 24, question.key
            assert len(choice.note) <= 70, question.key


@every_step
def test_only_what_can_be_printed(step: str) -> None:
    for question in step_questions(step):
        for text in map(plain, texts(question)):
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
            for sentence in re.split(r"(?<=[.?!:;])[ \u00a0]|(?<=: )", text):
                words = re.findall(r"(?<![\w/.-])[A-Za-zÀ-ž][\w/'-]*", sentence)
                capital = {word for word in words[1:] if word[0].isupper()}
                assert capital <= ALLOWED, f"{question.key}: {sentence}"


@every_step
def test_american_spelling_and_no_hype(step: str) -> None:
    wrong = re.compile(
        r"\b(?:colour|grey|centre|vapour|favourite|carburettor|aluminium|tyres?|spanner|loom|saloon|boot|burnt"
        r"|car's handbook|litres?|metres?|catalogue|amazing|ultimate|best-in-class)\b"
    )
    for question in step_questions(step):
        assert not wrong.search(" ".join(texts(question))), question.key


@every_step
def test_plain_trade_english(step: str) -> None:
    """No turns that sound translated: a part needs, loses, reaches its limit; only the reader may want."""
    archaic = re.compile(
        r"\b(?:nought|reckon\w*|told|tells?|settled? on|lets? go|eats?|eaten|gives? out|presses|mostly|whoever"
        r"|whatever|wants|hold against|unfit|strained)\b|(?<!you )(?<!you may )\bwant\b"
    )
    for question in step_questions(step):
        for text in texts(question):
            assert not archaic.search(text), f"{question.key}: {text}"


def test_fuel_under_pressure_is_warned_of_where_a_line_is_opened() -> None:
    for key in ("pressure.base", "pressure.regulator", "feed.filter.rated_loss"):
        assert "reliev" in QUESTIONS[key].help.unsure.lower(), key
    for key in ("pressure.base", "pump.curve.points", "pump.relief", "feed.run.pressure_rating"):
        words = QUESTIONS[key].help
        assert "burns" in f"{words.why} {words.unsure}", key


def test_methanols_flame_and_poison_are_said_where_it_is_chosen() -> None:
    for key in ("fuel.which", "fuel.kind"):
        question = QUESTIONS[key]
        note = next(choice.note for choice in question.choices if choice.value == "methanol")
        for text in (note, question.help.wrong):
            assert "poison" in text, key
            assert "skin" in text, key
            assert re.search(r"flame you cannot see|no visible flame", text), key


def test_nobody_is_sent_to_block_a_line_or_to_pump_into_a_can() -> None:
    assert "Never block or pinch a line" in QUESTIONS["pump.relief"].help.unsure
    assert "don't test one at home" in QUESTIONS["pump.curve.points"].help.unsure
    assert "don't pump fuel into a can" in QUESTIONS["surge.lift_flow"].help.unsure


@pytest.mark.parametrize("key", ["pressure.boost", "engine.bsfc", "engine.lambda", "pump.volts"])
def test_what_needs_full_load_is_measured_on_a_dyno(key: str) -> None:
    assert "full load on a dyno" in QUESTIONS[key].help.unsure


def test_a_smooth_bore_is_meant_by_ptfe() -> None:
    for key in ("feed.hose", "feed.run.hose"):
        assert "convoluted one has up to three times the friction" in QUESTIONS[key].help.usual


def test_ratings_for_alcohol_are_asked_for_where_the_fuel_is() -> None:
    for key in ("fuel.which", "feed.hose", "feed.filter", "inlet.strainer.have", "inlet.line"):
        words = QUESTIONS[key].help
        assert "rated for" in f"{words.wrong} {words.unsure}", key


def test_what_e85_may_hold_is_said_where_it_is_chosen() -> None:
    """ASTM D5798: 51 to 83 % by volume."""
    e85 = next(choice for choice in QUESTIONS["fuel.which"].choices if choice.say == "E85")
    assert "51 to 83 %" in plain(e85.note)
    usual = plain(QUESTIONS["fuel.which"].help.usual)
    assert "51 to 83 %" in usual
    assert "calculated at 85 %" in usual
    assert "ASTM D5798" in QUESTIONS["fuel.which"].help.source


def test_where_volts_are_measured_is_said() -> None:
    words = QUESTIONS["pump.volts"].help.unsure
    for said in ("pump's own two terminals", "engine running", "full flow"):
        assert said in words
