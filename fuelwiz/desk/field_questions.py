"""Which question asks for a field, what it offers, and what the field is called inside a sentence."""

from __future__ import annotations

from fuelwiz.desk.field_specs import amps_number, cell_of, spec_at
from fuelwiz.desk.steps import step_of
from fuelwiz.questions import Question, step_questions
from fuelwiz.units import UnitSystem, describe

OF_A_POINT = " of this point"


def question_of(path: str, system: UnitSystem = "us") -> Question | None:
    """The question that asks for a field, in the units of the build; None where none does."""
    bare = ".".join(part for part in path.split(".") if not part.isdecimal())
    wanted = (bare, bare.replace("return_line.", "feed."), bare.replace("inlet.run.", "feed.run."))
    for key in wanted:
        for asked in step_questions(step_of(key), system):
            if asked.key == key:
                return asked
    return None


def noun_of(path: str) -> str:
    """What a field is called inside a sentence: "boost"."""
    if cell_of(path) is not None or amps_number(path) is not None:
        return f"{_measured(path)}{OF_A_POINT}"
    changed = changed_on_a_day(path)
    if changed:
        return noun_of(changed)
    asked = question_of(path)
    return asked.noun if asked else path.rpartition(".")[2].replace("_", " ")


def changed_on_a_day(path: str) -> str:
    """The field that a bad day of one's own has another answer for, by the path of that answer; else nothing."""
    day, _, changed = path.partition(".change.")
    return changed if day.startswith("stress.case.") else ""


def is_list_of_changes(path: str) -> bool:
    """Whether a path leads to all that differs on a bad day of one's own."""
    return path.startswith("stress.case.") and path.endswith(".change")


def _measured(path: str) -> str:
    """What a cell of points holds: "flow"."""
    kind = spec_at(path).kind
    assert kind is not None
    return describe(kind).partition(" ")[2]


def answers_to(path: str) -> tuple[str, ...]:
    """The answers that the question about a field offers; none where it is one to type."""
    asked = question_of(path)
    return asked.answers if asked else ()
