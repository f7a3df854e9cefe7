"""The questions on the screen: the rows around the pointer, and why the one under it is asked."""

from __future__ import annotations

import re

from textual.strip import Strip

from fuelwiz.desk.composites import field_of
from fuelwiz.desk.doubt import doubt
from fuelwiz.terminal.palette import Ground, Role
from fuelwiz.wizard.editor.cells_painter import Focus
from fuelwiz.wizard.editor.row_painter import LABEL, columns_for, row_strip
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import (
    CellsRow,
    DoRow,
    FoundRow,
    ItemRow,
    NoteRow,
    cells_of,
    is_to_answer,
    to_look_at_in,
)
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

TEXT = 5
THAT_IS = "That is "
"""What stands before the same in another unit, where there is no room for it beside the field."""
_END_OF_SENTENCE = re.compile(r"(?<=[.?!]) ")
CLOSE_UNDER = 2  # more lines than these stand under the rows, fewer at the bottom, where they do not jump
PRESSURES = "pump.curve.points"
"""The table whose usual range is of the pressures in its first line."""
MORE_CLOSED = "Enter shows them, Down goes on. None must be answered."
MORE_OPEN = "Enter hides them again, Down goes on."


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
        why_rows = min(max(self.why_rows, self._rows_it_takes(area)), max(area.rows - 1, 0))
        room = area.rows - why_rows
        more = self._more_row()
        if more is not None and 2 < room <= more and pointer.at < more:
            lines = self._rows(area, room - 1, more)
            return [*lines, self._row(more, area), *why_lines(form, area.high(why_rows))]
        count = len(pointer.rows)
        if why_rows > CLOSE_UNDER and count < room - 1:  # nothing else is to stand at the bottom
            above = [*self._rows(area, count, count), area.row().strip()]
            return area.filled([*above, *why_lines(form, area.high(why_rows), filled=False)])
        return [*self._rows(area, room, count), *why_lines(form, area.high(why_rows))]

    def _rows_it_takes(self, area: Area) -> int:
        """What is said of a row is said whole, for its end is what to do; of why a question is asked one sentence."""
        if not self.why_rows:
            return 0
        mark, _, text = _text_of(self.form, area.width)
        if mark == "Why":
            text = _fitting(self.form, text, area.high(self.why_rows))
        return len(area.wrapped(text, TEXT))

    def _more_row(self) -> int | None:
        """The row that leads to further questions, as long as they are hidden: it stays in sight."""
        if self.form.place.more:
            return None
        rows = enumerate(self.form.pointer.rows)
        return next((i for i, row in rows if isinstance(row, DoRow) and row.act == "more"), None)

    def _row(self, number: int, area: Area) -> Strip:
        form, pointer = self.form, self.form.pointer
        row, current = pointer.rows[number], pointer.row
        focus = (
            Focus(pointer.cell, form.editor, form.unfit) if number == pointer.at and self.has_keys else None
        )
        of_table = isinstance(row, CellsRow) and isinstance(current, CellsRow) and row.table == current.table
        return row_strip(row, form.desk, area, focus, pointer.cell if focus or of_table else 0)

    def _top_for_table(self, room: int) -> int:
        """All lines of a table in sight, where they fit."""
        at, row = self.form.pointer.at, self.form.pointer.row
        if not isinstance(row, CellsRow) or row.lines > room:
            return self._top
        start = at - row.line
        return min(max(self._top, start + row.lines - room), start)

    def _rows(self, area: Area, room: int, end: int) -> list[Strip]:
        """The rows around the pointer, of those before an end."""
        pointer = self.form.pointer
        self._top = self._top_for_table(room)
        self._top = min(max(self._top, pointer.at - room + 1), pointer.at)
        if pointer.at > 0 and self._top == pointer.at and room > 1:
            self._top = pointer.at - 1  # what stands above, such as the heads of a list
        if pointer.next_row(-1) is None and pointer.at < room:
            self._top = 0  # at the first question what stands above it is in sight: cautions, heads
        self._top = max(0, min(self._top, end - room))
        shown = range(self._top, min(self._top + room, end))
        lines: list[Strip] = []
        for number in shown:
            row = pointer.rows[number]
            said = area.paragraph(row.text, LABEL, "muted") if isinstance(row, NoteRow) else []
            is_whole = 0 < len(said) <= room - len(lines) - (shown.stop - number) + 1
            lines += said if is_whole else [self._row(number, area)]
        return area.high(room).filled(lines)


def why_lines(form: Form, area: Area, *, filled: bool = True) -> list[Strip]:
    """As much as fits the area's rows, on a ground of its own; one row gets the first sentence alone."""
    mark, role, text = _text_of(form, area.width)
    if mark == "Why":
        text = _fitting(form, text, area)
    ground: Ground = "bar" if area.look.colors == "256" else "background"
    lines = []
    for i, words in enumerate(area.wrapped(text, TEXT, area.rows)):
        line = area.row(ground)
        if (i == 0 and area.rows > 1) or mark != "Why":
            line.put(1, mark if i == 0 else "", "fault" if role == "fault" else "text", True)
        lines.append(line.put(TEXT, words, role).strip())
    missing = area.rows - len(lines) if filled else 0
    return [*lines, *(area.row(ground).strip() for _ in range(missing))]


def _text_of(form: Form, width: int) -> tuple[str, Role, str]:
    refused = form.desk.refused.get(form.path) or form.desk.refused.get(field_of(form.path))
    is_asked_for = form.note and cells_of(form.row) and not form.editor.text  # what is wanting
    is_explained = is_asked_for or _is_begun(form)
    if refused and not is_explained:
        return "!", "fault", refused[0].upper() + refused[1:]
    doubted = doubt(form.desk, form.question, form.path) if is_to_answer(form.row) else ""
    if doubted:
        return "?", "text", doubted
    if form.unfit:
        return "!", "fault", form.note
    if form.note:
        return "Why", "muted", form.note
    question = form.question
    if isinstance(form.row, DoRow) and form.row.act == "more":
        return "Why", "muted", MORE_OPEN if form.place.more else MORE_CLOSED
    if isinstance(form.row, FoundRow):
        from fuelwiz.wizard.form.found_rows import words_of

        return "", "muted", words_of(form.desk, form.row)
    if isinstance(form.row, ItemRow):
        look = to_look_at_in(form.desk, form.row)
        if look is not None:
            return "!", "fault", f"{look.why[:1].upper()}{look.why[1:]}. Enter goes there."
        return "Why", "muted", f"{question.why} Ctrl+G d removes it."
    echo = ""
    if cells_of(form.row) and columns_for(width).echo == 0:
        other_unit = form.desk.text_in_field(form.path).echo
        echo = f"{THAT_IS}{other_unit}. " if other_unit else ""
    of_another_line = isinstance(form.row, CellsRow) and form.row.line > 0 and question.key == PRESSURES
    usual = f" Usual: {question.usual}." if question.usual and not of_another_line else ""
    return "Why", "muted", f"{echo}{question.why}{usual}"


def _is_begun(form: Form) -> bool:
    """Whether the answer under the pointer is only wanting beside another, and Enter was not pressed on it."""
    if form.insisted or not cells_of(form.row):
        return False
    field = form.desk.text_in_field(form.path)
    return field.is_missing and field.refused is None


def _fitting(form: Form, text: str, area: Area) -> str:
    """The whole text; where it does not fit, its first sentence and the usual range, else as much as does."""
    end_of_it = f" Usual: {form.question.usual}."
    usual = end_of_it if text.endswith(end_of_it) else ""
    sentences = _END_OF_SENTENCE.split(text.removesuffix(usual))
    tried = [text, f"{sentences[0]}{usual}", sentences[0]]
    if sentences[0].startswith(THAT_IS):  # the same in another unit, the reason behind it
        both = " ".join(sentences[:2])
        tried = [text, f"{both}{usual}", f"{sentences[0]}{usual}" if usual else both, both]
    elif sentences[0].endswith("?"):  # what the answer means stands behind it
        tried = [text, " ".join(sentences[:2])]
    return next((one for one in tried if len(area.wrapped(one, TEXT)) <= area.rows), tried[-1])
