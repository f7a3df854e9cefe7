"""What is on the car already: its size is chosen with it, and it need not be bought."""

from __future__ import annotations

import re
from typing import Any

from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.state import State
from fuelwiz.record import record
from fuelwiz.session import field_at
from fuelwiz.terms import HOSES, Hose

_HAS = ("fitted", "has")
_OF = re.compile(
    r"(.*?)[ ,]*\b(hard|pipe|tube|tubing|rubber|ptfe)( (?:pipe|line|hose))?", re.IGNORECASE | re.DOTALL
)

_LENGTH = re.compile(r"[0-9]\s*[a-zA-Z\"]")
"""A size that is given as a length with its unit, not as a dash number."""


def size_and_kind(typed: str) -> tuple[str, Hose | None]:
    """A size without the word for what the line is made of, and that: "3/8 pipe" is 3/8 of hard pipe."""
    found = _OF.fullmatch(typed.strip())
    if found is None or not found[1]:
        return typed, None
    word = found[2].lower()
    kind: Hose = "rubber" if word == "rubber" else "ptfe" if word == "ptfe" else "tube"
    return found[1], kind


def is_on_car(state: State, word: str) -> bool:
    """Whether a part is said to be on the car."""
    return word in _words(state)


def on_the_car(state: State, word: str) -> State:
    """The build with a part on the car."""
    words = _words(state)
    if word in words:
        return state
    order = field_at("fitted.has").choices
    return state.with_value("fitted.has", [one for one in order if one in words or one == word])


def off_the_car(state: State, word: str) -> State:
    """The build with a part that is still to be bought."""
    words = _words(state)
    if word not in words:
        return state
    left = [one for one in words if one != word]
    return state.with_value("fitted.has", left) if left else state.without("fitted.has")


def _words(state: State) -> list[str]:
    held: Any = value_at(state.plain, _HAS)
    return [str(word) for word in held] if isinstance(held, list) else []


@record
class FittedSize:
    """The size of a line that is on the car: the chosen size, as long as the line counts as fitted."""

    chosen: str
    word: str
    run: str

    def read(self, state: State) -> str | None:
        """The size on the car; None where nothing is."""
        if not is_on_car(state, self.word):
            return None
        size = value_at(state.plain, value_path(self.chosen))
        return None if size is None else str(size)

    def write(self, state: State, size: str, hose: Hose | None = None) -> State:
        """The build with a line of that size on the car, of a kind that was typed with it where it is one run."""
        state = on_the_car(state.with_value(self.chosen, size), self.word)
        runs = self._runs(state)
        if hose is None or len(runs) > 1 or not (runs or self.run == "feed.run"):
            return state
        return state.with_value(f"{self.run}.0.hose", hose)

    def kind(self, state: State) -> str:
        """What the line is made of, where that is said of its one run, and which diameter a length is."""
        runs = self._runs(state)
        hose = runs[0].get("hose", "") if len(runs) == 1 else ""
        name = HOSES.get(hose, "")
        if not _LENGTH.search(self.read(state) or ""):
            return name
        return "pipe outside" if hose == "tube" else f"{name} bore".strip()

    def _runs(self, state: State) -> list[dict[str, Any]]:
        held: Any = value_at(state.plain, value_path(self.run))
        return held if isinstance(held, list) else []

    def clear(self, state: State) -> State:
        """The build with no such line on the car yet; a size that was chosen to be bought stays."""
        if not is_on_car(state, self.word):
            return state
        return off_the_car(state.without(self.chosen), self.word)


FITTED_SIZES = {
    "feed.fitted": FittedSize("feed.chosen", "line", "feed.run"),
    "return.fitted": FittedSize("return_line.chosen", "return_line", "return_line.run"),
}
"""The questions about a size on the car."""
