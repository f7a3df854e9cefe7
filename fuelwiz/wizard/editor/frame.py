"""What stands around the questions: the build on top, how its steps stand, and what the footer offers."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.advice.assumed import values_assumed
from fuelwiz.desk.desk import Desk
from fuelwiz.printable import NO_BREAK
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.terms import INDUCTIONS, fuel_name_as_typed
from fuelwiz.units import UnitSystem
from fuelwiz.wizard.actions import Action, by_id
from fuelwiz.wizard.chrome import Headline
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import TAKES, DoRow, FoundRow, ItemRow, is_to_answer, owned_by_enter
from fuelwiz.wizard.live.rule import CHANGES, LETTERS, READ, letters_of

_UNITS: dict[UnitSystem, str] = {
    "us": "US units",
    "us_kw": "US, kW",
    "metric": "metric",
    "metric_hp": "metric, hp",
}
READ_ON = "read"
_IN_MODE: dict[str, tuple[Action | str, ...]] = {
    "table": (
        Action("choose", ("enter",), "", "choose it", ""),
        "table",
        "view",
        "save",
    ),
    "help": (
        Action("close", ("f1",), "", "close", ""),
        Action(READ_ON, ("pagedown", "pageup"), "", "read on", ""),
        Action("next", ("tab",), "", "next question", ""),
    ),
    "points": (
        Action("use", ("f8",), "", "use these points", ""),
        Action("leave", ("escape",), "", "leave", ""),
    ),
    "keys": (Action("close", ("escape",), "", "close", ""),),
}


def headline(desk: Desk, kept: str) -> Headline:
    """The top line's words."""
    fuel = fuel_name_as_typed(_typed(desk, "fuel.kind"), _typed(desk, "fuel.ethanol"))
    induction = INDUCTIONS.get(desk.text_in_field("engine.induction").text, "")
    facts = [_typed(desk, "goal.power") or "", fuel or "", induction]
    assumed = len(values_assumed(desk.result.figures.assumed)) if desk.result else 0
    return Headline(
        name=desk.name,
        facts=", ".join(part for part in facts if part),
        assumed=assumed,
        kept="only looking" if desk.only_looks else kept,
        units=_UNITS[desk.system],
    )


def _typed(desk: Desk, path: str) -> str | None:
    """A field with its unit, or its fallback; None where it is empty."""
    field = desk.text_in_field(path)
    return f"{field.text}{NO_BREAK}{field.unit}".strip() if field.text else None


FIRST_OF_FURTHER = next(number for number, step in enumerate(STEPS) if step.id == "inlet")
"""The first step behind those that give a whole verdict: from there on something may be tried."""
ABOUT_THE_LOG = "log."
_OF_A_LOG = {
    "its heads": "pick a head of the log for this",
    "read it": "read the log that is named",
    "choose a file": "choose a log, or paste its path",
}
"""What F8 does there, in the words of the footer and in those of the page of keys."""

_READ_ON = Action("read", ("down", "up"), "", "and Up read on", "")
_IN_VIEW = {CHANGES: Action("try", ("enter",), "", "try it", ""), **dict.fromkeys(READ, _READ_ON)}
"""What the table's keys do in a view that shows in its place."""


def listed_actions(form: Form, actions: tuple[Action, ...]) -> tuple[Action, ...]:
    """The actions as the page of keys lists them: F8 by the question under the pointer, the views that the build has."""
    letters = "".join(f" {letter}" for letter in letters_of(form.desk.result) if letter not in LETTERS)
    listed = {"view": by_id(actions, "view").text + letters}
    words = {}
    if form.question.key.startswith(ABOUT_THE_LOG):
        from fuelwiz.wizard.form.log_columns import f8_does

        words["points"] = f8_does(form.desk, form.question)
        listed["points"] = _OF_A_LOG[words["points"]]
    return tuple(
        replace(one, say=words.get(one.id, one.say), text=listed.get(one.id, one.text)) for one in actions
    )


def is_assumed(form: Form) -> bool:
    """Whether what stands under the pointer is a fallback."""
    if not is_to_answer(form.row):
        return False
    field = form.desk.text_in_field(form.path)
    return field.assumed and bool(field.text)


def _enter_does(form: Form) -> str:
    """What Enter does with the row: a number that is assumed it leaves so, an answer to pick it makes one's own."""
    if isinstance(form.row, ItemRow):
        return "open"
    if isinstance(form.row, DoRow):
        return "go"
    if not is_assumed(form):
        return "next"
    return "yes, next" if owned_by_enter(form.row) else "next, stays assumed"


def offered_actions(mode: str, form: Form, view: str, actions: tuple[Action, ...]) -> list[Action]:
    """The actions for what has the keys; in the table's place a view has its own first."""
    if mode in _IN_MODE:
        offered = [one if isinstance(one, Action) else by_id(actions, one) for one in _IN_MODE[mode]]
        return [_IN_VIEW.get(view, offered[0]), *offered[1:]] if mode == "table" else offered
    row = form.row
    start = [Action("enter", ("enter",), "", _enter_does(form), "")]
    if isinstance(row, FoundRow) and row.proposal is not None:
        start.insert(0, Action("take", (TAKES,), "", "take it", ""))
    if isinstance(row, ItemRow):
        start.append(Action("remove", (), "d", "remove", ""))
    if form.place.in_entry:
        start.append(Action("back", ("escape",), "", "back", ""))
    names = ["unsure", "help", "size", "view", "next_step", "table", "save"]
    if form.step_number >= FIRST_OF_FURTHER:
        names.remove("size")
        names.insert(names.index("next_step") + 1, "what_if")
    if form.question.key.startswith(ABOUT_THE_LOG):
        from fuelwiz.wizard.form.log_columns import f8_does

        start.append(Action("log", ("f8",), "", f8_does(form.desk, form.question), ""))
    if is_assumed(form) and not owned_by_enter(row):
        names.insert(0, "own")
    if form.step_number == len(STEPS) - 1:
        names.remove("next_step")
    elif form.is_past_more:
        names.remove("next_step")
        names.insert(0, "next_step")
    if STEPS[form.step_number].id == "pump":
        names.insert(names.index("unsure") + 1, "options")
    if form.takes_points():
        names.insert(0, "points")
    return start + [by_id(actions, name) for name in names]
