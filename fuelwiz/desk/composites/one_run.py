"""Questions about one run, filter or curve: the field of the list that each is answered in."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State
from fuelwiz.session import list_key_paths, path_of

SEVERAL = "several: see the runs"

_ONE_RUN = {
    "feed.length": "feed.run",
    "feed.hose": "feed.run",
    "feed.hoses": "feed.run",
    "feed.bends": "feed.run",
    "inlet.line": "inlet.run",
    "inlet.size": "inlet.run",
    "return.length": "return_line.run",
    "return.hose": "return_line.run",
    "return.hoses": "return_line.run",
    "return.bends": "return_line.run",
}
_FIELDS = {
    "feed.length": "feed.run.0.length",
    "feed.hose": "feed.run.0.hose",
    "feed.filter": "feed.filter.0.rated_flow",
    "pump.amps": "pump.amps.0",
    "filter.loss": "feed.filter.0.rated_loss",
    "feed.fitted": "feed.chosen",
    "return.fitted": "return_line.chosen",
    "inlet.line": "inlet.run.0.length",
    "inlet.size": "inlet.run.0.size",
    "return.length": "return_line.run.0.length",
    "return.hose": "return_line.run.0.hose",
    "pump.figure.flow": "pump.curve.0.points.0.1",
    "pump.figure.pressure": "pump.curve.0.points.0.0",
}
_QUESTIONS = {field: question for question, field in _FIELDS.items()}


def question_of(field: str) -> str:
    """The question of another name that is answered in a field, else the field's own."""
    return _QUESTIONS.get(field, field)


@cache
def _lists() -> tuple[str, ...]:
    """The paths of all lists of tables."""
    return tuple(path_of(key_path) for key_path in list_key_paths())


def field_of(path: str) -> str:
    """The field that a question is answered in: that of the first run, filter or curve where it names none."""
    if path in _FIELDS:
        return _FIELDS[path]
    for section in _lists():
        if (
            path.startswith(f"{section}.")
            and not path[len(section) + 1 :].split(".", maxsplit=1)[0].isdecimal()
        ):
            return f"{section}.0.{path[len(section) + 1 :]}"
    return path


def has_several_runs(state: State, path: str) -> bool:
    """Whether a question about one run meets more than one, or one with other ends than it can tell."""
    if path not in _ONE_RUN:
        return False
    runs = value_at(state.plain, tuple(_ONE_RUN[path].split("."))) or []
    if len(runs) > 1:
        return True
    return bool(runs) and path.endswith((".hoses", ".bends")) and not _is_simple(runs[0])


def _is_simple(run: Mapping[str, Any]) -> bool:
    fittings = run.get("fittings") or {}
    if any(number for name, number in fittings.items() if name not in {"straight", "swept_90"}):
        return False
    return run.get("hose") == "tube" or hose_ends(fittings) % 2 == 0


def hose_ends(fittings: Mapping[str, int]) -> int:
    """How many straight and swept hose ends there are."""
    return fittings.get("straight", 0) + fittings.get("swept_90", 0)


def without_item(state: State, path: str) -> State:
    """The build without the run or filter that a question is about."""
    section, _, _ = field_of(path).partition(".0.")
    return state.without(section)
