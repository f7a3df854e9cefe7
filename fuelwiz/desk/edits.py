"""What an answer does to a build: typed, picked, or left to its fallback."""

from __future__ import annotations

from fuelwiz.desk.composites import (
    CHOICE_QUESTIONS,
    COUNT_QUESTIONS,
    FITTED_SIZES,
    CountQuestion,
    field_of,
    has_several_runs,
    size_and_kind,
    without_item,
)
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_questions import answers_to, changed_on_a_day, noun_of
from fuelwiz.desk.field_specs import NOT_TYPED, amps_number, cell_of, place_exists, spec_at
from fuelwiz.desk.nouns import noun_here
from fuelwiz.desk.parse_field import parse_field
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.points.amps import amps_of, with_amps
from fuelwiz.desk.points.head_units import spec_in_row
from fuelwiz.desk.points.point_cells import type_cell
from fuelwiz.desk.refusals import Refusal, emptied, emptied_on_a_day
from fuelwiz.desk.spoken_figures import as_written
from fuelwiz.desk.state import State
from fuelwiz.session import FieldSpec
from fuelwiz.units import UnitSystem

ALWAYS_WANTED = ("goal.power",)

_SEVERAL = Refusal(
    "several: see the runs",
    "There is more than one run, or other parts on it: edit the runs one by one under more.",
)
NOTHING_WITHOUT = {
    "inlet.line": "inlet.run",
    "return.length": "return_line.run",
}
_MAKES_A_RUN = ("feed.length", "feed.hose")


def is_given(state: State, path: str) -> bool:
    """Whether something is said at a path, refused or not; NoSuchField where it leads to no field."""
    if place_of(state, path) in state.raw:
        return True
    for questions in (CHOICE_QUESTIONS, COUNT_QUESTIONS, FITTED_SIZES):
        if path in questions:
            return questions[path].read(state) is not None
    at = field_of(path)
    spec_at(at)
    number = amps_number(at)
    if number is not None:
        return amps_of(state.plain, number) is not None
    return value_at(state.plain, value_path(at)) is not None


def with_typed(state: State, path: str, raw: str, system: UnitSystem) -> State:
    """The build with a text typed into a field; one that is refused stands in the field all the same.

    Raises:
        NoSuchField: the path leads to no field.
    """
    if path in CHOICE_QUESTIONS:
        return CHOICE_QUESTIONS[path].write_typed(state, raw)
    at = _known_place(state, path)
    cell = cell_of(at)
    if cell is not None:
        return type_cell(state, cell, raw, system)
    if not raw.strip():
        return _emptied(state, path, at)
    try:
        return with_read(state, path, raw, system)
    except Refusal:
        return state.with_raw(at, raw)


def place_of(state: State, path: str) -> str:
    """Where a question's text stands: in its field, or under its own name where it is about several keys."""
    by_itself = path in COUNT_QUESTIONS or path in FITTED_SIZES
    return path if by_itself or has_several_runs(state, path) else field_of(path)


def _known_place(state: State, path: str) -> str:
    """As `place_of`; NoSuchField where nothing can be put there."""
    field = field_of(path)
    if path not in COUNT_QUESTIONS and (
        spec_at(field).type in NOT_TYPED or not place_exists(state.plain, field)
    ):
        raise NoSuchField(f"there is no {path} in this build yet")
    return place_of(state, path)


def with_read(state: State, path: str, raw: str, system: UnitSystem) -> State:
    """The build with a text taken.

    Raises:
        Refusal: the text cannot be taken.
        NoSuchField: the path leads to no field.
    """
    if has_several_runs(state, path):
        raise _SEVERAL
    number = amps_number(field_of(path))
    if number is not None:
        spec = spec_in_row(state, path, system)
        return with_amps(state, number, parse_field(spec, raw, system, noun_of(path))).without_raw(path)
    if path in COUNT_QUESTIONS:
        counted = COUNT_QUESTIONS[path]
        number = parse_field(_spec_of_count(counted), raw, system, noun_of(path))
        return counted.write(state, number).without_raw(path)
    at = field_of(path)
    spec = spec_in_row(state, at, system)
    if not raw.strip():
        raise emptied_on_a_day(noun_of(at)) if changed_on_a_day(at) else emptied(noun_of(at), spec)
    if path in FITTED_SIZES:
        typed, hose = size_and_kind(raw)
        size = parse_field(spec, typed, system, noun_of(path))
        return FITTED_SIZES[path].write(state.without_raw(path), size, hose)
    state, raw = as_written(state, at, raw)
    value = parse_field(spec, raw, system, noun_of(path))
    return state.without_raw(path).with_value(at, value)


def _spec_of_count(counted: CountQuestion) -> FieldSpec:
    return FieldSpec("count", low="0", high=str(counted.most))


def _emptied(state: State, path: str, at: str) -> State:
    """The build with a value taken out; a filter or hose that has nothing else goes with it."""
    if has_several_runs(state, path):
        return state.without_raw(path)
    if path in COUNT_QUESTIONS:
        return COUNT_QUESTIONS[path].clear(state).without_raw(path)
    number = amps_number(field_of(path))
    if number is not None:
        state = state.without_raw(path)
        return state if amps_of(state.plain, number) is None else with_amps(state, number, None)
    if path in FITTED_SIZES:
        return FITTED_SIZES[path].clear(state).without_raw(path)
    if changed_on_a_day(at):
        return state.with_raw(at, "")
    state = state.without(at)
    if at in ALWAYS_WANTED:
        return state.with_raw(at, "")
    return _without_bare_item(state, path)


def _without_bare_item(state: State, path: str) -> State:
    section = NOTHING_WITHOUT.get(path)
    if section and value_at(state.plain, value_path(section)) == [{}]:
        return state.without(section)
    return state


def with_choice(state: State, path: str, answer: str, system: UnitSystem) -> State:
    """The build with one of the answers of a question.

    Raises:
        NoSuchField: the path leads to no field, or the question has no such answer.
    """
    if path in CHOICE_QUESTIONS:
        return CHOICE_QUESTIONS[path].write(state, answer)
    at = _known_place(state, path)
    if path in FITTED_SIZES and answer == "none":
        return FITTED_SIZES[path].clear(state).without_raw(path)
    if path in NOTHING_WITHOUT and answer == "none":
        return without_item(state, path)
    spec = spec_at(field_of(path))
    if spec.type != "column" and answer not in (spec.choices if spec.type == "choice" else answers_to(path)):
        raise NoSuchField(f"{path} has no answer {answer}")
    state = state.without_raw(at)
    if spec.type == "choice":
        return state if has_several_runs(state, path) else state.with_value(at, answer)
    return with_typed(state, path, answer, system)


def use_fallback(state: State, path: str) -> State:
    """The build with a question left to its fallback; one that has none keeps what it holds.

    Raises:
        NoSuchField: the path leads to no field.
    """
    if path in CHOICE_QUESTIONS:
        return CHOICE_QUESTIONS[path].use_fallback(state)
    if has_several_runs(state, path):
        return state
    if path in COUNT_QUESTIONS:
        return COUNT_QUESTIONS[path].clear(state).without_raw(path)
    at = field_of(path)
    if path in FITTED_SIZES:
        return FITTED_SIZES[path].clear(state).without_raw(path)
    if path == "inlet.line":
        return without_item(state, path)
    if spec_at(at).type in {"kept", "flag"}:
        raise NoSuchField(f"there is no {path} to be left out")
    if spec_at(at).required or cell_of(at) is not None or amps_number(at) is not None:
        return state
    state = _without_bare_item(state.without(at), path)
    if path in _MAKES_A_RUN and not value_at(state.plain, ("feed", "run")):
        return state.with_value("feed.run", [{}])
    return state


def read_again(state: State, system: UnitSystem) -> State:
    """The build with each refused text taken that can be taken by now."""
    for path, raw in state.raw.items():
        cell = cell_of(path)
        if cell is not None:
            state = type_cell(state, cell, raw, system) if path in state.raw else state
        elif raw.strip():
            state = _read_or_left(state, path, raw, system)
    return state


def _read_or_left(state: State, path: str, raw: str, system: UnitSystem) -> State:
    try:
        return with_read(state, path, raw, system)
    except Refusal:
        return state


def refusal_of(state: State, path: str, system: UnitSystem) -> Refusal | None:
    """Why the text that stands at a path is not taken; None where it is only waiting for another."""
    raw = state.raw[path]
    try:
        if cell_of(path) is not None:
            spec = spec_in_row(state, path, system)
            parse_field(spec, raw, system, noun_here(state, path)) if raw.strip() else None
        else:
            with_read(state, path, raw, system)
    except Refusal as refusal:
        return refusal
    return None
