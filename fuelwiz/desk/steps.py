"""Which step a field belongs to, and how the steps stand."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from fuelwiz.desk.plain import Plain
from fuelwiz.questions import STEPS

StepState = Literal["untouched", "done", "look"]

_FIRST_FIVE = ("goal", "fuel", "pressure", "pump", "lines")
_BY_SECTION = {
    "format": "goal",
    "name": "goal",
    "notes": "goal",
    "show_units": "goal",
    "show_power": "goal",
    "units": "goal",
    "goal": "goal",
    "engine": "goal",
    "pull": "goal",
    "fuel": "fuel",
    "filter": "lines",
    "pressure": "pressure",
    "pump": "pump",
    "feed": "lines",
    "bands": "lines",
    "inlet": "inlet",
    "return": "inlet",
    "return_line": "inlet",
    "surge": "inlet",
    "tank": "summary",
    "wiring": "wiring",
    "injectors": "injectors",
    "stress": "stress",
    "tolerance": "stress",
    "bench": "measured",
    "gauge": "measured",
    "log": "measured",
    "measured": "measured",
    "fitted": "summary",
    "record": "summary",
}


def step_of(path: str) -> str:
    """The step that asks for the field or question at a path."""
    if path.startswith("tank.pressure"):
        return "inlet"
    return _BY_SECTION.get(path.partition(".")[0], "summary")


def steps_in(plain: Plain) -> frozenset[str]:
    """The steps that a file answers something of."""
    tables = (
        f"{section}.{key}"
        for section, value in plain.items()
        if isinstance(value, dict)
        for key in value or ("",)
    )
    singles = (
        key for key, value in plain.items() if not isinstance(value, dict) and key not in {"format", "name"}
    )
    return frozenset(step_of(path) for path in (*tables, *singles) if not path.startswith("record"))


class Progress:
    """Which steps were looked at, and which question the pointer is on."""

    def __init__(self, plain: Plain) -> None:
        self.from_file = steps_in(plain)
        self.seen = set(self.from_file)
        self.visited: set[str] = set()
        self._question: str | None = None

    def visit(self, path: str) -> None:
        """The pointer enters a question; the step that it leaves counts as seen."""
        if self._question is not None and step_of(self._question) != step_of(path):
            self.seen.add(step_of(self._question))
        self._question = path
        self.visited.add(path)

    def state(self, step: str, look: Iterable[str]) -> StepState:
        """How a step stands, given those that have to be looked at."""
        if step in look:
            return "look"
        return "done" if step in self.seen else "untouched"

    def needs_attention(self, look: Iterable[str]) -> str:
        """The first step to look at, else the first of the five that is untouched, else the first of all."""
        wanted = set(look)
        for step in STEPS:
            if step.id in wanted:
                return step.id
        return next((step for step in _FIRST_FIVE if step not in self.seen), _FIRST_FIVE[0])
