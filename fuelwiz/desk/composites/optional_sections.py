"""A section that is there or not: strainer, surge pot."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State


def _has(section: str) -> Callable[[State], str | None]:
    def read(state: State) -> str | None:
        held = value_at(state.plain, tuple(section.split(".")))
        if held is not None:
            return "yes" if held is not False else "no"
        return state.picked.get(f"{section}.have")

    return read


def _with(section: str, empty_stands: bool, assumed: bool) -> Callable[[State, str], State]:
    """A section that is there or not; what it held is stashed with no, and comes back with yes.

    `assumed` where a section that is left out is assumed, so that no has to be written.
    """
    at = tuple(section.split("."))

    def write(state: State, answer: str) -> State:
        held = value_at(state.plain, at)
        if answer == "no":
            if held:
                state = state.with_stashed(section, held)
            state = state.with_value(section, False) if assumed else state.without(section)
            return state.with_picked(f"{section}.have", answer)
        state = state.with_picked(f"{section}.have", answer)
        if held:
            return state
        if held is False:
            state = state.without(section)
        back = state.stashed.get(section) or ({} if empty_stands else None)
        return state if back is None else state.with_value(section, back)

    return write


def _question(section: str, *, empty_stands: bool, assumed: bool) -> ChoiceQuestion:
    write = _with(section, empty_stands, assumed)
    clear = (lambda state: state.without(section).without_picked(f"{section}.have")) if assumed else None
    return ChoiceQuestion(f"{section}.have", _has(section), write, "yes" if assumed else "no", clear)


STRAINER = _question("inlet.strainer", empty_stands=False, assumed=True)
SURGE_POT = _question("surge", empty_stands=True, assumed=False)
