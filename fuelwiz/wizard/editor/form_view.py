"""The questions on the screen: the rows around the pointer, and why the one under it is asked."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.desk.composites import field_of
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.editor.row_painter import Focus, columns_for, row_strip
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import ItemRow, cells_of
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

TEXT = 5


class FormView(Painted):
    """Draws a form; scrolls by rows, the pointer always in sight."""

    def __init__(self, look: Look, form: Form) -> None:
        super().__init__(look, id="form")
        self.form = form
        self.why_rows = 2
        self.has_keys = True
        self._top = 0

    def painted(self, area: Area) -> list[Strip]:
        """The rows, and the lines under them."""
        form, pointer = self.form, self.form.pointer
        why_rows = min(self.why_rows, max(area.rows - 1, 0))
        room = area.rows - why_rows
        self._top = min(max(self._top, pointer.at - room + 1), pointer.at)
        if pointer.at > 0 and self._top == pointer.at and room > 1:
            self._top = pointer.at - 1  # what stands above, such as the heads of a list
        self._top = max(0, min(self._top, len(pointer.rows) - room))
        lines = []
        for i, row in enumerate(pointer.rows[self._top : self._top + room], self._top):
            focus = Focus(pointer.cell, form.editor) if i == pointer.at and self.has_keys else None
            lines.append(row_strip(row, form.desk, area, focus))
        lines = area.high(room).filled(lines)
        return [*lines, *why_lines(form, area.high(why_rows))]


def why_lines(form: Form, area: Area) -> list[Strip]:
    """As much as fits the area's rows; one row gets the first sentence alone."""
    mark, role, text = _text_of(form, area.width)
    if mark == "Why":
        text = _fitting(form, text, area)
    lines = []
    for i, words in enumerate(area.wrapped(text, TEXT, area.rows)):
        line = area.row()
        if (i == 0 and area.rows > 1) or mark != "Why":
            line.put(1, mark if i == 0 else "", "fault" if role == "fault" else "text", True)
        lines.append(line.put(TEXT, words, role).strip())
    return area.filled(lines)


def _text_of(form: Form, width: int) -> tuple[str, Role, str]:
    refused = form.desk.refused.get(form.path) or form.desk.refused.get(field_of(form.path))
    if refused:
        return "!", "fault", refused[0].upper() + refused[1:]
    if form.note:
        return "Why", "muted", form.note
    question = form.question
    if isinstance(form.row, ItemRow):
        return "Why", "muted", f"{question.why} Ctrl+G d removes it."
    echo = ""
    if cells_of(form.row) and columns_for(width).echo == 0:
        other_unit = form.desk.text_in_field(form.path).echo
        echo = f"= {other_unit}. " if other_unit else ""
    usual = f" Usual: {question.usual}." if question.usual else ""
    return "Why", "muted", f"{echo}{question.why}{usual}"


def _fitting(form: Form, text: str, area: Area) -> str:
    """The whole text; where it does not fit, its first sentence and the usual range, else that sentence alone."""
    if len(area.wrapped(text, TEXT)) <= area.rows:
        return text
    end = text.find(". ")
    first = text[: end + 1] if end > 0 else text
    usual = f"{first} Usual: {form.question.usual}." if form.question.usual else first
    return usual if len(area.wrapped(usual, TEXT)) <= area.rows else first
