"""A section that is there or not: a surge pot."""

from __future__ import annotations

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State

_SECTION = "surge"
_KEY = "surge.have"


def _read(state: State) -> str | None:
    if value_at(state.plain, (_SECTION,)) is not None:
        return "yes"
    return state.picked.get(_KEY)


def _put(state: State, answer: str) -> State:
    """What the section held is stashed with no, and comes back with yes."""
    held = value_at(state.plain, (_SECTION,))
    if answer == "no" and held:
        state = state.with_stashed(_SECTION, held)
    state = state.with_picked(_KEY, answer)
    if answer == "no":
        return state.without(_SECTION)
    return state if held else state.with_value(_SECTION, state.stashed.get(_SECTION) or {})


SURGE_POT = ChoiceQuestion(_KEY, _read, _put, "no")
