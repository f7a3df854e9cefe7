"""What is asked: one entry a question, written in the TOML files of this room and read step by step."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from fuelwiz.errors import FactError


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its id, its name, the name where room is short, and the files that hold its questions."""

    id: str
    name: str
    short: str
    files: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer to pick.

    `value` is what stands for it: the word or quantity that the key takes, or, where a question writes
    several keys, a word that its form knows. `say` is the answer in the builder's words; `note` may say more.
    """

    value: str
    say: str
    note: str


@dataclass(frozen=True, slots=True)
class Help:
    """The eight parts of the page that F1 opens on a question."""

    what: str
    why: str
    rule: str
    usual: str
    wrong: str
    unsure: str
    units: str
    source: str


@dataclass(frozen=True, slots=True)
class Question:
    """One question in words.

    `key` is the key of the session file that it answers (list items without index), or its own where it
    writes several. `more` tells the ones that wait until more is wanted. `fallback` says why the fallback is
    what it is, or why there is none, and reads on after "43.5 psi is taken: ". `choices` are answers to pick;
    where the key takes a quantity, one may be typed as well.
    """

    key: str
    step: str
    more: bool
    label: str
    why: str
    usual: str
    fallback: str
    choices: tuple[Choice, ...]
    help: Help
    writes: tuple[str, ...]


STEPS = (
    Step("goal", "Goal", "Goal", ("goal", "goal_more")),
    Step("fuel", "Fuel", "Fuel", ("fuel",)),
    Step("pressure", "Pressure", "Pressure", ("pressure",)),
    Step("pump", "Pump", "Pump", ("pump",)),
    Step("lines", "Lines", "Lines", ("lines", "lines_runs", "lines_more")),
    Step("inlet", "Inlet & return", "Inlet", ("inlet_return", "inlet_return_more")),
    Step("wiring", "Wiring", "Wiring", ("wiring",)),
    Step("injectors", "Injectors", "Injectors", ("injectors",)),
    Step("stress", "Stress", "Stress", ("stress",)),
    Step("sheet", "Sheet", "Sheet", ("sheet",)),
)


def catalogue() -> Mapping[str, Question]:
    """Every question by its key, in the order of asking."""
    return MappingProxyType({asked.key: asked for step in STEPS for asked in step_questions(step.id)})


@cache
def step_questions(step: str) -> tuple[Question, ...]:
    """The questions of one step in the order of asking; FactError where there is no such step."""
    found = next((known for known in STEPS if known.id == step), None)
    if found is None:
        raise FactError(f"no step {step}: there are {', '.join(known.id for known in STEPS)}")
    return tuple(_question(key, step, entry) for file in found.files for key, entry in _entries(file).items())


@cache
def _entries(file: str) -> dict[str, dict[str, Any]]:
    """The entries of one file as they are written, by key."""
    return tomllib.loads((files(__package__) / f"{file}.toml").read_text(encoding="utf-8"))


def _question(key: str, step: str, entry: dict[str, Any]) -> Question:
    whole = _filled_in(entry)
    return Question(
        key=key,
        step=step,
        more=whole.get("more", False),
        label=whole["label"],
        why=whole["why"],
        usual=whole["usual"],
        fallback=whole["fallback"],
        choices=tuple(Choice(c["value"], c["say"], c.get("note", "")) for c in whole.get("choices", ())),
        help=Help(**whole["help"]),
        writes=tuple(entry.get("writes", (key,))),
    )


def _filled_in(entry: dict[str, Any]) -> dict[str, Any]:
    """An entry that says `like = "feed.run.length"` takes what it does not say itself from that entry."""
    if "like" not in entry:
        return entry
    model = _entry(entry["like"])
    return {**model, **entry, "help": {**model["help"], **entry.get("help", {})}}


def _entry(key: str) -> dict[str, Any]:
    return next(_entries(file)[key] for step in STEPS for file in step.files if key in _entries(file))
