"""What an answer does to a build: typed, picked, or left to its fallback."""

from __future__ import annotations

from fuelwiz.desk.composites import COUNTED, PICKED, Counted, field_of, several, without_item
from fuelwiz.desk.curves import type_cell
from fuelwiz.desk.errors import NoSuchField
from fuelwiz.desk.fields import NOT_TYPED, cell_of, place_exists, spec_at
from fuelwiz.desk.plain import value_at, way
from fuelwiz.desk.state import State
from fuelwiz.desk.taking import take
from fuelwiz.desk.words import Refusal, emptied, label, question_of
from fuelwiz.session import FieldSpec
from fuelwiz.units import UnitSystem

ALWAYS_WANTED = ("goal.power",)

_SEVERAL = Refusal(
    "several: see the runs", "There is more than one run, or more on it: change them one by one under more."
)
NOTHING_WITHOUT = {
    "feed.filter": "feed.filter",
    "inlet.line": "inlet.run",
    "return.length": "return_line.run",
}
_MAKES_A_RUN = ("feed.length", "feed.hose")


def typed(state: State, path: str, raw: str, system: UnitSystem) -> State:
    """The build with a text typed into a field; one that is refused stands in the field all the same.

    Raises:
        NoSuchField: the path leads to no field.
    """
    if path in PICKED:
        return picked(state, path, raw.strip(), system)
    at = _known_place(state, path)
    cell = cell_of(at)
    if cell is not None:
        return type_cell(state, cell, raw, system)
    if not raw.strip():
        return _emptied(state, path, at)
    try:
        return taken(state, path, raw, system)
    except Refusal:
        return state.with_raw(at, raw)


def place_of(state: State, path: str) -> str:
    """Where a question's text stands: in its field, or under its own name where it is about several keys."""
    return path if path in COUNTED or several(state, path) else field_of(path)


def _known_place(state: State, path: str) -> str:
    """As `place_of`; NoSuchField where nothing can be put there."""
    field = field_of(path)
    if path not in COUNTED and (spec_at(field).type in NOT_TYPED or not place_exists(state.plain, field)):
        raise NoSuchField(f"there is no {path} in this build yet")
    return place_of(state, path)


def taken(state: State, path: str, raw: str, system: UnitSystem) -> State:
    """The build with a text taken.

    Raises:
        Refusal: the text cannot be taken.
        NoSuchField: the path leads to no field.
    """
    if several(state, path):
        raise _SEVERAL
    if path in COUNTED:
        counted = COUNTED[path]
        number = take(_spec_of_count(counted), raw, system, label(path))
        return counted.write(state, number).without_raw(path)
    at = field_of(path)
    spec = spec_at(at)
    if not raw.strip():
        raise emptied(label(at), spec)
    value = take(spec, raw, system, label(at))
    return state.without_raw(path).with_value(at, value)


def _spec_of_count(counted: Counted) -> FieldSpec:
    return FieldSpec("count", low="0", high=str(counted.most))


def _emptied(state: State, path: str, at: str) -> State:
    """The build with a value taken out; a filter or hose that has nothing else goes with it."""
    if several(state, path):
        return state.without_raw(path)
    if path in COUNTED:
        return COUNTED[path].clear(state).without_raw(path)
    state = state.without(at)
    if at in ALWAYS_WANTED:
        return state.with_raw(at, "")
    return _without_bare_item(state, path)


def _without_bare_item(state: State, path: str) -> State:
    section = NOTHING_WITHOUT.get(path)
    if section and value_at(state.plain, way(section)) == [{}]:
        return state.without(section)
    return state


def picked(state: State, path: str, answer: str, system: UnitSystem) -> State:
    """The build with one of the answers of a question.

    Raises:
        NoSuchField: the path leads to no field, or the question has no such answer.
    """
    if path in PICKED:
        asked = question_of(path)
        if asked is None or answer not in {choice.value for choice in asked.choices}:
            raise NoSuchField(f"{path} has no answer {answer}")
        return PICKED[path].write(state, answer)
    at = _known_place(state, path)
    if path in NOTHING_WITHOUT and answer == "none":
        return without_item(state, path)
    if spec_at(field_of(path)).type == "choice" and answer not in spec_at(field_of(path)).choices:
        raise NoSuchField(f"{path} has no answer {answer}")
    state = state.without_raw(at)
    if spec_at(field_of(path)).type == "choice":
        return state if several(state, path) else state.with_value(at, answer)
    return typed(state, path, answer, system)


def left(state: State, path: str) -> State:
    """The build with a question left to its fallback; one that has none keeps what it holds.

    Raises:
        NoSuchField: the path leads to no field.
    """
    if path == "fuel.which":
        return state.without("fuel.kind").without("fuel.ethanol").without_picked(path)
    if path in PICKED:
        return PICKED[path].write(state, PICKED[path].fallback)
    if several(state, path):
        return state
    if path in COUNTED:
        return COUNTED[path].clear(state).without_raw(path)
    at = field_of(path)
    if path in {"feed.filter", "inlet.line"}:
        return without_item(state, path)
    if spec_at(at).type in {"kept", "flag"}:
        raise NoSuchField(f"there is no {path} to be left")
    if spec_at(at).required or cell_of(at) is not None:
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
            state = _taken_or_left(state, path, raw, system)
    return state


def _taken_or_left(state: State, path: str, raw: str, system: UnitSystem) -> State:
    try:
        return taken(state, path, raw, system)
    except Refusal:
        return state


def refusal_of(state: State, path: str, system: UnitSystem) -> Refusal | None:
    """Why the text that stands at a path is not taken; None where it is only waiting for another."""
    raw = state.raw[path]
    try:
        if cell_of(path) is not None:
            take(spec_at(path), raw, system, label(path)) if raw.strip() else None
        else:
            taken(state, path, raw, system)
    except Refusal as refusal:
        return refusal
    return None
