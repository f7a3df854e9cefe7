"""The catalogue is complete, in order, and agrees with the session's model."""

from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from fuelwiz import units
from fuelwiz.errors import FactError, UnitError
from fuelwiz.questions import STEPS, catalogue, step_questions
from fuelwiz.questions.catalogue import _entries
from fuelwiz.session import field_at, leaf_paths

QUESTIONS = catalogue()
LEAVES = tuple(path for path in leaf_paths() if path != "format" and not path.startswith("record."))
LISTS = (
    "feed.run",
    "feed.part",
    "inlet.run",
    "return_line.run",
    "return_line.part",
    "pump.curve",
    "pull",
    "stress.case",
    "bench",
    "gauge",
)
AT_ONCE = {
    "goal": "units goal.power goal.next_power goal.power_at goal.driveline_loss engine.induction "
    "engine.cylinders",
    "fuel": "fuel.which fuel.ethanol fuel.temperature fuel.density fuel.viscosity fuel.lhv fuel.stoich",
    "pressure": "pressure.boost pressure.regulator pressure.base pressure.reference pressure.idle_vacuum",
    "pump": "pump.known pump.figure.flow pump.figure.pressure pump.amps pump.curve.voltage "
    "pump.curve.points pump.current pump.count pump.place pump.kind pump.volts",
    "lines": "feed.fitted feed.length feed.hose feed.hoses feed.bends filter.have feed.filter filter.loss",
    "inlet": "inlet.strainer.have inlet.strainer.rated_flow inlet.strainer.rated_loss "
    "inlet.strainer.carries inlet.fuel_head inlet.line inlet.size return.fitted return.length return.hose "
    "return.hoses return.bends return_line.regulator.have return_line.regulator.rated_flow "
    "return_line.regulator.rated_loss surge.have surge.volume surge.lift_flow surge.return_to",
    "wiring": "wiring.supply wiring.wire wiring.length wiring.return_path wiring.circuits",
    "injectors": "injectors.rated_flow injectors.rated_pressure injectors.count",
    "stress": "stress.case stress.case.name stress.case.change",
    "measured": "bench bench.date bench.at bench.pressure bench.volts bench.pumps bench.volume bench.mass "
    "bench.time gauge gauge.date gauge.hose_off gauge.idle gauge.full_power gauge.volts gauge.current log.file",
    "summary": "fitted.has fitted.line fitted.return_line fitted.pump fitted.regulator fitted.injectors fitted.filter "
    "tank.volume tank.fill",
}
WORDS_OF_FORMS = {
    "units": {"metric_hp"},
    "fuel.which": {"blend", "methanol", "own"},
    "pump.known": {"none", "figure", "curve", "sample"},
    "feed.fitted": {"none"},
    "return.fitted": {"none"},
    "filter.have": {"known", "unknown", "none"},
    "inlet.strainer.have": {"known", "unknown", "none"},
    "return_line.regulator.have": {"known", "unknown", "none"},
    "inlet.line": {"none"},
    "surge.have": {"yes", "no"},
}
"""What a question that writes several keys takes beside their own values."""


def test_every_key_of_the_file_has_an_entry() -> None:
    assert set(LEAVES) <= set(QUESTIONS)


def test_every_key_of_the_file_is_written_by_some_question() -> None:
    written = {path for question in QUESTIONS.values() for path in question.writes}
    assert written - set(LISTS) == set(LEAVES)


def test_steps_in_the_order_of_the_job() -> None:
    assert [step.id for step in STEPS] == list(AT_ONCE)
    assert [step.short for step in STEPS][5] == "In/return"
    assert [question.step for question in QUESTIONS.values()] == [
        step.id for step in STEPS for _ in step_questions(step.id)
    ]


@pytest.mark.parametrize("step", AT_ONCE)
def test_what_is_asked_at_once(step: str) -> None:
    at_once = [question.key for question in step_questions(step) if not question.more]
    assert at_once == AT_ONCE[step].split()


@pytest.mark.parametrize("step", AT_ONCE)
def test_what_waits_comes_after_what_is_asked_at_once(step: str) -> None:
    waits = [question.more for question in step_questions(step)]
    assert waits == sorted(waits)


def test_an_unknown_step_is_refused_in_words() -> None:
    with pytest.raises(FactError, match="no step brakes: there are goal, fuel"):
        step_questions("brakes")


def test_a_step_reads_no_more_than_its_own_files() -> None:
    step_questions.cache_clear()
    _entries.cache_clear()
    step_questions("wiring")
    assert _entries.cache_info().currsize == 1


def test_what_was_read_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        QUESTIONS["goal.power"].label = "Torque"  # type: ignore[misc]
    with pytest.raises(TypeError):
        QUESTIONS["goal.torque"] = QUESTIONS["goal.power"]


def test_an_entry_like_another_keeps_what_is_its_own() -> None:
    other, own = QUESTIONS["feed.run.length"], QUESTIONS["inlet.run.length"]
    assert (own.key, own.step, own.writes) == ("inlet.run.length", "inlet", ("inlet.run.length",))
    assert own.label == other.label
    assert own.help.rule == other.help.rule
    assert own.help.wrong != other.help.wrong


@pytest.mark.parametrize("file", [file for step in STEPS for file in step.files])
def test_entries_hold_no_key_that_nobody_reads(file: str) -> None:
    known = {"more", "label", "sure", "noun", "why", "usual", "fallback", "choices", "help", "writes", "like"}
    for key, entry in _entries(file).items():
        assert set(entry) <= known, key
        for choice in entry.get("choices", ()):
            assert set(choice) <= {"value", "say", "note"} or set(choice) == {"all_of"}, key


def test_all_of_stands_for_the_answers_that_are_not_written_beside_it() -> None:
    assert QUESTIONS["return.hose"].choices == QUESTIONS["feed.hose"].choices
    assert QUESTIONS["feed.run.hose"].answers == (*QUESTIONS["feed.hose"].answers, "nominal")
    assert QUESTIONS["fuel.which"].answers == ("10 %", "30 %", "85 %", "0 %", *QUESTIONS["fuel.kind"].answers)
    blends = [choice.say for choice in QUESTIONS["fuel.which"].choices if choice.value == "blend"]
    assert blends == ["another blend"]


def takes(path: str, value: str) -> bool:
    """Whether a key of the file takes a value: one of its words, or a quantity within its range."""
    spec = field_at(path)
    if spec.kind is None:
        return value in spec.choices
    try:
        found = units.parse(value, spec.kind)
    except UnitError:
        return False
    assert spec.low is not None and spec.high is not None
    return units.parse(spec.low, spec.kind) <= found <= units.parse(spec.high, spec.kind)


@pytest.mark.parametrize("key", [key for key, question in QUESTIONS.items() if question.choices])
def test_choices_are_answers_that_the_model_takes(key: str) -> None:
    question = QUESTIONS[key]
    values = [choice.value for choice in question.choices]
    assert len(set(values)) == len(values)
    for value in set(values) - WORDS_OF_FORMS.get(key, set()):
        assert any(takes(path, value) for path in question.writes), value


@pytest.mark.parametrize("key", [key for key in LEAVES if field_at(key).choices])
def test_every_word_that_the_model_takes_can_be_chosen(key: str) -> None:
    assert {choice.value for choice in QUESTIONS[key].choices} == set(field_at(key).choices)


def test_symptoms_stand_for_figures() -> None:
    """The choices for a beginner (common practice, no source): cams by vacuum, wiring by volts."""
    assert [choice.value for choice in QUESTIONS["pressure.idle_vacuum"].choices] == [
        "18 inHg",
        "12 inHg",
        "8 inHg",
    ]
    assert [choice.value for choice in QUESTIONS["pump.volts"].choices] == ["12.5 V", "13.0 V", "13.5 V"]
    assert [choice.value for choice in QUESTIONS["fuel.which"].choices[:3]] == ["10 %", "30 %", "85 %"]
