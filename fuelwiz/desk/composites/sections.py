"""A section that is there or not: strainer, surge pot."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State


def _has(section: str) -> Callable[[State], str | None]:
    def read(state: State) -> str | None:
        if value_at(state.plain, tuple(section.split("."))) is not None:
            return "yes"
        return state.picked.get(f"{section}.have")

    return read


def _with(section: str, empty_stands: bool) -> Callable[[State, str], State]:
    """A section that is there or not; what it held is stashed with no, and comes back with yes."""
    at = tuple(section.split("."))

    def write(state: State, answer: str) -> State:
        held = value_at(state.plain, at)
        if answer == "no":
            if held:
                state = state.with_stashed(section, held)
            return state.without(section).with_picked(f"{section}.have", answer)
        state = state.with_picked(f"{section}.have", answer)
        if held is not None:
            return state
        back = state.stashed.get(section) or ({} if empty_stands else None)
        return state if back is None else state.with_value(section, back)

    return write


def _question(section: str, *, empty_stands: bool) -> ChoiceQuestion:
    return ChoiceQuestion(f"{section}.have", _has(section), _with(section, empty_stands), "no")


STRAINER = _question("inlet.strainer", empty_stands=False)
SURGE_POT = _question("surge", empty_stands=True)
