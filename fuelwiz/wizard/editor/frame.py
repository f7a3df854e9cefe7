"""What stands around the questions: the build on top, how its steps stand, and what the footer offers."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.printable import NO_BREAK
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.terms import INDUCTIONS, fuel_name_as_typed
from fuelwiz.wizard.actions import BUILD, Action, by_id
from fuelwiz.wizard.chrome import Headline, StepMark
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import DoRow, ItemRow

_IN_MODE = {
    "table": (
        Action("choose", ("enter",), "", "choose it", ""),
        by_id(BUILD, "table"),
        by_id(BUILD, "view"),
        by_id(BUILD, "save"),
    ),
    "help": (
        Action("close", ("f1",), "", "close", ""),
        Action("read", ("pagedown", "pageup"), "", "read on", ""),
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
    power = desk.text_in_field("goal.power")
    assumed = len(desk.result.figures.assumed) if desk.result else 0
    facts = [
        f"{power.text}{NO_BREAK}{power.unit}".strip() if power.text else "",
        fuel_name_as_typed(*(desk.text_in_field(f"fuel.{key}").text or None for key in ("kind", "ethanol")))
        or "",
        INDUCTIONS.get(desk.text_in_field("engine.induction").text, ""),
    ]
    return Headline(
        name=desk.name,
        facts=", ".join(part for part in facts if part),
        assumed=assumed,
        kept=kept,
        units="US units" if desk.system == "us" else "metric units",
    )


def step_marks(desk: Desk) -> list[StepMark]:
    """Every step with its state."""
    return [StepMark(step.name, step.short, desk.step_state(step.id)) for step in STEPS]


def offered_actions(mode: str, form: Form) -> list[Action]:
    """The actions for what has the keys."""
    if mode in _IN_MODE:
        return list(_IN_MODE[mode])
    row = form.row
    first_word = "open" if isinstance(row, ItemRow) else "go" if isinstance(row, DoRow) else "next"
    start = [Action("enter", ("enter",), "", first_word, "")]
    if isinstance(row, ItemRow):
        start.append(Action("remove", (), "d", "remove", ""))
    names = ["unsure", "help", "size", "view", "next_step", "table", "save"]
    if form.takes_points():
        names.insert(0, "points")
    return start + [by_id(BUILD, name) for name in names]
