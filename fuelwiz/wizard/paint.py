"""Lines of the screen from words and figures, by the cells that Textual counts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from fuelwiz.printable import NO_BREAK, shown_name
from fuelwiz.record import record
from fuelwiz.terminal import cells
from fuelwiz.terminal.palette import Ground, Role
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.look import Look

clip = partial(cells.clip, measure=cell_len)
clip_words = partial(cells.clip_words, measure=cell_len)
pad = partial(cells.pad, measure=cell_len)
wrap = partial(cells.wrap, measure=cell_len)

WORKS_ROLES: dict[str, Role] = {"yes": "easy", "no": "too fast"}


class Row:
    """One line being painted from left to right."""

    def __init__(self, look: Look, width: int, ground: Ground = "background") -> None:
        self.look = look
        self.width = width
        self.ground = ground
        self._cells = 0
        self._pieces: list[tuple[str, Style]] = []

    def put(self, column: int, text: str, role: Role = "text", bold: bool = False) -> Row:
        """Put text at a column, or behind what stands there already."""
        return self.lay(column, text, self.look.style(role, self.ground, bold))

    def put_right(self, end: int, text: str, role: Role = "text", bold: bool = False) -> Row:
        """Put text so that it ends before a column."""
        shown = self.look.fold(shown_name(text))
        return self.lay(end - cell_len(shown), shown, self.look.style(role, self.ground, bold))

    def lay(self, column: int, text: str, style: Style) -> Row:
        """Put text at a column in a style of its own."""
        shown = self.look.fold(shown_name(text)).replace(NO_BREAK, " ")
        if column > self._cells:
            self._add(" " * (column - self._cells), self._blank())
        self._add(shown, style)
        return self

    def put_field(self, column: int, width: int, edit: LineEdit, role: Role = "text") -> Row:
        """Put a field that takes keys: its text, with a cursor that stands still, as wide as it was asked to be."""
        shown, at = edit.window(width)
        style = self.look.style(role, "field")
        end = self._cells + max(column - self._cells, 0) + width
        if edit.selected:
            self.lay(column, shown, style + self.look.selected)
            if self._cells < end:
                self.lay(0, " ", style + self.look.cursor_place)
        else:
            self.lay(column, shown[:at], style).lay(0, shown[at : at + 1] or " ", style + self.look.cursor)
            self.lay(0, shown[at + 1 :], style)
        return self.lay(0, " " * (end - self._cells), style)

    def strip(self) -> Strip:
        """The finished line, exactly as wide as the row."""
        if self._cells < self.width:
            self._add(" " * (self.width - self._cells), self._blank())
        strip = Strip([Segment(text, style) for text, style in self._pieces], self._cells)
        return strip if self._cells == self.width else strip.adjust_cell_length(self.width, self._blank())

    def _blank(self) -> Style:
        """The style of a gap: that of the piece before it where nobody can tell, to send fewer bytes."""
        own = self.look.style("text", self.ground)
        before = self._pieces[-1][1] if self._pieces else own
        return before if before is own or _behind_text(before) == _behind_text(own) else own

    def _add(self, text: str, style: Style) -> None:
        if not text:
            return
        self._cells += cell_len(text)
        if self._pieces and self._pieces[-1][1] == style:
            text = self._pieces.pop()[0] + text
        self._pieces.append((text, style))


def _behind_text(style: Style) -> tuple[object, ...]:
    """What of a style shows on a space."""
    return style.bgcolor, style.reverse, style.underline


@record
class Area:
    """Where a pane draws: how many cells wide, how many lines high, on what kind of terminal."""

    look: Look
    width: int
    rows: int

    def row(self, ground: Ground = "background") -> Row:
        """A line to paint."""
        return Row(self.look, self.width, ground)

    def high(self, rows: int) -> Area:
        """The same with another number of lines."""
        return replace(self, rows=max(rows, 0))

    def wrapped(self, text: str, column: int, rows: int | None = None) -> list[str]:
        """A text in lines that fit between a column and the right edge, less one cell."""
        return wrap(self.look.fold(text), self.width - column - 1, rows, self.look.fold("…"))

    def paragraph(
        self,
        text: str,
        column: int = 3,
        role: Role = "text",
        rows: int | None = None,
        *,
        bold: bool = False,
    ) -> list[Strip]:
        """A text in as many lines as it takes, from a column on."""
        lines = self.wrapped(text, column, rows)
        return [self.row().put(column, line, role, bold).strip() for line in lines]

    def filled(self, lines: list[Strip]) -> list[Strip]:
        """The lines cut or filled up with empty ones to the height of the area."""
        missing = self.rows - len(lines)
        return lines[: self.rows] + [self.row().strip()] * missing


WORKS_CELLS = 5
"""Cells of a yes and its mark."""


def put_works(line: Row, end: int, answer: str | None, strong: bool) -> Row:
    """Whether something works, mark and word, so that it ends before a cell: of all in a row it leads the eye."""
    look = line.look
    if answer is None:
        return line.put_right(end, look.mark("not sure"), "muted", strong)
    mark, role = look.mark(answer), WORKS_ROLES[answer]
    line.lay(end - cell_len(answer) - 2, mark, look.chip(role, line.ground, bold=True))
    return line.put_right(end, answer, role, bold=True)


VERDICT_MARK, VERDICT_TEXT = 1, 3
"""Cells of the mark before a verdict, and of its sentence."""


def verdict_lines(sentence: Sequence[str], mark: str, role: Role, area: Area) -> list[Strip]:
    """What leads the eye: the first sentence on a ground of its own, in the color of what it says."""
    lines = []
    for at, text in enumerate(sentence):
        line = area.row("row" if area.look.colors == "256" else "background")
        if at == 0:
            line.lay(VERDICT_MARK, area.look.mark(mark), area.look.chip(role, line.ground, bold=True))
        lines.append(line.put(VERDICT_TEXT, text, role, bold=True).strip())
    return lines
