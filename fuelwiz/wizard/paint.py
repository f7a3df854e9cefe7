"""Lines of the screen from words and figures: clipped, padded and wrapped by the cells they take."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from rich.cells import cell_len, chop_cells, set_cell_size
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from fuelwiz.wizard.look import Ground, Look, Role

NO_BREAK = "\N{NO-BREAK SPACE}"
_SPACES = re.compile(r"[ \t\r\n]+")


def clip(text: str, width: int, more: str = "") -> str:
    """The text in at most that many cells; what is cut off ends in `more`, where there is room for it."""
    if cell_len(text) <= width:
        return text
    if width <= 0:
        return ""
    kept = width - cell_len(more)
    return set_cell_size(text, kept).rstrip() + more if kept > 0 else set_cell_size(text, width)


def pad(text: str, width: int, right: bool = False) -> str:
    """The text in exactly that many cells, to the left or to the right of them."""
    room = width - cell_len(text)
    if room <= 0:
        return clip(text, width)
    return " " * room + text if right else text + " " * room


def wrap(text: str, width: int, rows: int | None = None, more: str = "…") -> list[str]:
    """The text in lines of at most that many cells, never broken at a hyphen or a no-break space.

    With `rows` there are at most that many, and the last one ends in `more` where something was left out.
    """
    width = max(width, 2)  # a wide character takes two
    lines: list[str] = []
    for word in _SPACES.split(text.strip()):
        if lines and cell_len(lines[-1]) + 1 + cell_len(word) <= width:
            lines[-1] += " " + word
        else:
            lines += _fitting(word, width)
    if rows is not None and len(lines) > rows:
        lines = [*lines[: rows - 1], _cut_short(lines[rows - 1], width, more)] if rows > 0 else []
    return lines


def _cut_short(line: str, width: int, more: str) -> str:
    """A line that goes on, with as many of its words as leave room for `more`."""
    while cell_len(line) + cell_len(more) > width and " " in line:
        line = line.rsplit(" ", 1)[0]
    return clip(line, width - cell_len(more)).rstrip(" ,;:.") + more


def _fitting(word: str, width: int) -> list[str]:
    """A word in pieces that fit; one piece where it does anyway."""
    if cell_len(word) <= width:
        return [word]
    breaks = [at for at, mark in enumerate(word) if mark == NO_BREAK and 0 < cell_len(word[:at]) <= width]
    if breaks:
        return [word[: breaks[-1]], *_fitting(word[breaks[-1] + 1 :], width)]
    first, *others = chop_cells(word, width)
    return [first, *_fitting("".join(others), width)] if others else [first]


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
        shown = self.look.fold(text)
        return self.lay(end - cell_len(shown), shown, self.look.style(role, self.ground, bold))

    def lay(self, column: int, text: str, style: Style) -> Row:
        """Put text at a column in a style of its own."""
        shown = self.look.fold(text).replace(NO_BREAK, " ")
        if column > self._cells:
            self._add(" " * (column - self._cells), self._blank())
        self._add(shown, style)
        return self

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


@dataclass(frozen=True, slots=True)
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
