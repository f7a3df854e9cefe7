"""Painting small fields side by side: points of a table, counts of fittings. The one with the pointer is in sight."""

from __future__ import annotations

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.field_text import FieldText
from fuelwiz.record import record
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.form.form_rows import CellsRow
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.paint import Row, clip

START = 21
NAMED_START = 20
ROOMY_FROM = 76
SIGN = 1
"""Cells of the sign that there are more."""
_COUNT = 2
"""Cells of a count of fittings."""


@record
class Focus:
    """The pointer on a row: which of its cells it is in, what is edited there, and what fits no answer."""

    cell: int
    editor: LineEdit
    unfit: str = ""


def editing(line: Row, bracket: int, width: int, editor: LineEdit, field: FieldText) -> None:
    """The field that takes keys, muted where it is a fallback."""
    line.put(bracket, "[", "focus", True)
    line.put_field(bracket + 1, width, editor, "muted" if field.assumed else "text")
    line.put(bracket + 1 + width, "]", "focus", True)


def cells_strip(line: Row, row: CellsRow, desk: Desk, focus: Focus | None, cell: int) -> Strip:
    """The cells of a row, from the first one that leaves room for the one that has to be in sight."""
    named = bool(row.cells and row.cells[0].name)
    roomy = line.width >= ROOMY_FROM
    width = _COUNT if named else 6 if roomy else 5
    gap = 1 if roomy and not named else 0
    if not named:
        line.put_right(START - 2, row.unit, "muted")
    steps = [(cell_len(one.name) + 1 if named else 0) + width + 2 + gap for one in row.cells]
    start = NAMED_START if named else START
    shown = _in_sight(steps, line.width + gap - start, cell)
    if shown.start or row.follows:
        line.put(start - 1, line.look.mark("more before"), "focus")
    column = start
    for number in shown:
        if named:
            line.put(column, row.cells[number].name, "muted")
        at = column + steps[number] - width - 2 - gap
        _cell(line, at, width, row, number, desk, focus)
        column += steps[number]
    if shown.stop < len(steps) or row.goes_on:
        line.put_right(line.width, line.look.mark("more after"), "focus")
    return line.strip()


def _in_sight(steps: list[int], room: int, cell: int) -> range:
    """The cells that show: from the first one that lets that one be seen, with room for the sign that there are more."""
    if sum(steps) <= room:
        return range(len(steps))
    room -= SIGN
    first = 0
    while first < cell and sum(steps[first : cell + 1]) > room:
        first += 1
    end = first
    while end < len(steps) and sum(steps[first : end + 1]) <= room:
        end += 1
    return range(first, end)


def _cell(
    line: Row, at: int, width: int, row: CellsRow, number: int, desk: Desk, focus: Focus | None
) -> None:
    field = desk.text_in_field(row.cells[number].path)
    if focus and focus.cell == number:
        editing(line, at, width, focus.editor, field)
        return
    empty = not field.text or (bool(row.cells[number].name) and field.text == "0")
    text = "·" if empty else field.text
    role: Role = "fault" if field.refused else "muted" if empty else "text"
    shown = clip(line.look.fold(text), width)
    line.put_right(at + 1 + width, shown, role)
