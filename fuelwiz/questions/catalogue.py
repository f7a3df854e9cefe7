"""What is asked: one entry a question, written in the TOML files of this room and read step by step.

Texts are written once, for US units. What stands in braces is filled in when it is read: a quantity in the
units of the build, a constant or a limit from where it is declared (see `placeholders`).
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property
from pathlib import Path
from types import MappingProxyType
from typing import Any

from fuelwiz.errors import FactError
from fuelwiz.questions.placeholders import filled
from fuelwiz.record import record
from fuelwiz.units import UnitSystem


@record
class Step:
    """One step: its id, its name, the name where room is short, and the files that hold its questions."""

    id: str
    name: str
    short: str
    files: tuple[str, ...]
    letter: str
    """The key that goes to it from the page of all keys."""


@record
class Choice:
    """One answer to pick.

    `value` is what stands for it: the word or quantity that the key takes, or, where a question writes
    several keys, a word that its form knows. `say` is the answer in the builder's words; `note` may say more.
    """

    value: str
    say: str
    note: str


@record
class Help:
    """The parts of the page that F1 opens on a question; an empty one is left out of the page."""

    what: str
    why: str
    rule: str = ""
    usual: str = ""
    wrong: str = ""
    unsure: str = ""
    units: str = ""
    source: str = ""


@dataclass(frozen=True)
class Question:
    """One question in words, in one system of units.

    `key` is the key of the session file that it answers (list items without index), or its own where it
    writes several. Its texts are filled in when one is first read, so that a first screen, which shows labels
    alone, need not wait for the model.
    """

    key: str
    step: str
    system: UnitSystem
    entry: Mapping[str, Any] = field(repr=False, compare=False)

    @property
    def label(self) -> str:
        """What stands before its field, in 17 columns."""
        return str(self.entry["label"])

    @property
    def noun(self) -> str:
        """What the value is called inside a sentence: "strainer loss"."""
        label = self.label
        plain = label if label[1:2].isupper() else label[:1].lower() + label[1:]
        return str(self.entry.get("noun", plain))

    @property
    def more(self) -> bool:
        """Whether it waits until more is wanted."""
        return bool(self.entry.get("more", False))

    @property
    def writes(self) -> tuple[str, ...]:
        """The keys of the file that it answers."""
        return tuple(self.entry.get("writes", (self.key,)))

    @cached_property
    def why(self) -> str:
        """Why it is asked; the first sentence stands alone where room is short."""
        return self._filled(self.entry["why"])

    @cached_property
    def usual(self) -> str:
        """The usual range, in a few words."""
        return self._filled(self.entry["usual"])

    @property
    def sure(self) -> tuple[str, str] | None:
        """The range outside which a value is taken with a word of doubt."""
        found = self.entry.get("sure")
        return None if found is None else (found[0], found[1])

    @cached_property
    def fallback(self) -> str:
        """Why the fallback is what it is, or why there is none; reads on after "43.5 psi is taken: "."""
        return self._filled(self.entry["fallback"])

    @cached_property
    def choices(self) -> tuple[Choice, ...]:
        """Answers to pick; where the key takes a quantity, one may be typed as well."""
        found = self.entry.get("choices", ())
        return tuple(
            Choice(c["value"], self._filled(c["say"]), self._filled(c.get("note", ""))) for c in found
        )

    @property
    def answers(self) -> tuple[str, ...]:
        """The values of the answers to pick."""
        return tuple(choice["value"] for choice in self.entry.get("choices", ()))

    @cached_property
    def help(self) -> Help:
        """The page behind F1."""
        from fuelwiz.questions.taken import accepted, understood  # they need the model, labels do not

        said = {part: self._filled(text) for part, text in self.entry["help"].items()}
        own = self.writes[0] if len(self.writes) == 1 else None
        said["usual"] = _joined(said.get("usual", ""), accepted(own, self.system))
        said["units"] = _joined(understood(own, self.system), said.get("units", ""))
        return Help(**said)

    def _filled(self, text: str) -> str:
        return filled(text, self.writes[0], self.system)


STEPS = (
    Step("goal", "Goal", "Goal", ("goal", "goal_more"), "1"),
    Step("fuel", "Fuel", "Fuel", ("fuel",), "2"),
    Step("pressure", "Pressure", "Pressure", ("pressure",), "3"),
    Step("pump", "Pump", "Pump", ("pump",), "4"),
    Step("lines", "Lines", "Lines", ("lines", "lines_runs", "lines_more"), "5"),
    Step("inlet", "Inlet & return", "In/return", ("inlet_return", "inlet_return_more"), "6"),
    Step("wiring", "Wiring", "Wiring", ("wiring",), "7"),
    Step("injectors", "Injectors", "Injectors", ("injectors",), "8"),
    Step("stress", "Stress", "Stress", ("stress", "how_sure"), "9"),
    Step("measured", "Measured", "Measured", ("measured",), "0"),
    Step("summary", "Summary", "Summary", ("summary",), "e"),
)


def catalogue(system: UnitSystem = "us") -> Mapping[str, Question]:
    """Every question by its key, in the order of asking."""
    return MappingProxyType({asked.key: asked for step in STEPS for asked in step_questions(step.id, system)})


@cache
def step_questions(step: str, system: UnitSystem = "us") -> tuple[Question, ...]:
    """The questions of one step in the order of asking; FactError where there is no such step."""
    found = next((known for known in STEPS if known.id == step), None)
    if found is None:
        raise FactError(f"no step {step}: there are {', '.join(known.id for known in STEPS)}")
    return tuple(
        Question(key, step, system, _whole(entry, found))
        for file in found.files
        for key, entry in _entries(file).items()
    )


@cache
def _entries(file: str) -> dict[str, dict[str, Any]]:
    """The entries of one file as they are written, by key."""
    return tomllib.loads(Path(__file__).with_name(f"{file}.toml").read_text(encoding="utf-8"))


def _whole(entry: dict[str, Any], step: Step) -> dict[str, Any]:
    """An entry that says `like = "feed.run.length"` takes what it does not say itself from that entry."""
    if "like" in entry:
        model = _entry(entry["like"], step)
        entry = {**model, **entry, "help": {**model["help"], **entry.get("help", {})}}
    if "choices" not in entry:
        return entry
    return {**entry, "choices": list(_choices(entry["choices"], step))}


def _choices(written: list[dict[str, str]], step: Step) -> Iterator[dict[str, str]]:
    """The answers; `all_of = "feed.hose"` stands for those of that question that are not written beside it."""
    beside = {choice.get("value") for choice in written}
    for choice in written:
        if "all_of" in choice:
            there = _entry(choice["all_of"], step)["choices"]
            yield from (one for one in there if one["value"] not in beside)
        else:
            yield choice


def _entry(key: str, step: Step) -> dict[str, Any]:
    """The entry of a key, looked for in its own step first, so that no other file is read for what stands there."""
    files = (file for near in (step, *STEPS) for file in near.files)
    return next(_entries(file)[key] for file in files if key in _entries(file))


def _joined(*texts: str) -> str:
    return " ".join(text for text in texts if text)
