"""What the footer offers: the actions that matter now, the one thing to do first."""

from __future__ import annotations

from fuelwiz.wizard.actions import BUILD, Action, by_id
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import DoRow, ItemRow

_IN_MODE = {
    "table": (
        Action("settle", ("enter",), "", "settle on it", ""),
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


def offered_actions(mode: str, form: Form) -> list[Action]:
    """The actions for what has the keys."""
    if mode in _IN_MODE:
        return list(_IN_MODE[mode])
    row = form.row
    first_word = "open" if isinstance(row, ItemRow) else "do it" if isinstance(row, DoRow) else "next"
    start = [Action("enter", ("enter",), "", first_word, "")]
    if isinstance(row, ItemRow):
        start.append(Action("remove", (), "d", "take out", ""))
    names = ["unsure", "help", "size", "view", "next_step", "table", "save"]
    if form.takes_points():
        names.insert(0, "points")
    return start + [by_id(BUILD, name) for name in names]
