"""Where the cells of a table stand on lines of one width: columns as wide as they must be, words wrapped."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import accumulate

from fuelwiz.advice.blocks import SYMBOLS, Cell, Column, Mark, Table
from fuelwiz.printable import NO_BREAK
from fuelwiz.record import record
from fuelwiz.terminal.cells import width_of, wrap, wrap_plain

NARROWEST = 4
COMFORTABLE = 14  # cells that a column of words needs before others give way
ON_SCREEN = 26  # the same on a screen, where a row may have to do with one line
TRIES = ((False, 2), (True, 2), (True, 1))  # whether units stand under their titles, and the gap of columns
TRIES_ON_SCREEN = ((False, 2), (False, 1), (True, 2), (True, 1))  # lines are dearer there than gaps

Fold = Callable[[str], str]


@record
class Piece:
    """A text at a place of a line; `mark` where it is the symbol of one, `cell` where it is not of the head."""

    at: int
    text: str
    mark: Mark | None = None
    cell: Cell | None = None


Line = list[Piece]


@dataclass(frozen=True)
class Frame:
    """How a table is laid out: its columns, what texts and marks of each take, and the gap between them."""

    columns: tuple[Column, ...]
    widths: tuple[int, ...]
    marks: tuple[int, ...]
    gap: int
    stacked: bool
    fold: Fold
    one_line: bool = False

    @property
    def width(self) -> int:
        """The cells of a whole line."""
        return sum(self.widths) + sum(self.marks) + self.gap * (len(self.widths) - 1)

    @cached_property
    def starts(self) -> tuple[int, ...]:
        """Where each column begins."""
        taken = (width + mark + self.gap for width, mark in zip(self.widths, self.marks, strict=True))
        return tuple(accumulate(taken, initial=0))[:-1]

    def in_one_line(self) -> Frame:
        """The same with one line for each row, cut where it has to be."""
        return replace(self, one_line=True)

    def head_lines(self) -> list[Line]:
        """The heads; they end on the same line, so that units stand right above their figures."""
        blocks = [
            [
                line
                for part in _head(column, self.stacked)
                for line in wrap_plain(self.fold(part), width + mark)
            ]
            for column, width, mark in zip(self.columns, self.widths, self.marks, strict=True)
        ]
        height = max(map(len, blocks))
        raised = [[""] * (height - len(lines)) + lines for lines in blocks]
        return [
            [
                Piece(_place(text, start, width + mark, column), text)
                for text, start, width, mark, column in zip(
                    line, self.starts, self.widths, self.marks, self.columns, strict=True
                )
                if text
            ]
            for line in zip(*raised, strict=True)
        ]

    def row_lines(self, row: Sequence[Cell]) -> list[Line]:
        """A row in as many lines as its longest cell takes; marks stand on the first."""
        columns = list(zip(row, self.starts, self.widths, self.marks, self.columns, strict=True))
        lines: list[Line] = []
        for cell, start, width, mark, column in columns:
            for at, text in enumerate(self._cell_lines(cell, width)):
                if at == len(lines):
                    lines.append([])
                place = _place(text, start + mark, width, column)
                if at == 0 and cell.mark is not None:
                    lines[0].append(Piece(place - mark, self.fold(SYMBOLS[cell.mark]), cell.mark, cell))
                if text:
                    lines[at].append(Piece(place, text, None, cell))
        return lines

    def _cell_lines(self, cell: Cell, width: int) -> list[str]:
        if not self.one_line:
            return wrap_plain(self.fold(cell.text), width)
        forms = [self.fold(form) for form in cell.in_one_line or (cell.text,)]
        text = next((form for form in forms if width_of(form) <= width), forms[-1])
        return [line.replace(NO_BREAK, " ") for line in wrap(text, width, 1, self.fold("…"))] or [""]


def framed(table: Table, width: int, fold: Fold) -> Frame | None:
    """The frame that fits: first the words give room, then the heads, then the gaps; None where none does."""
    frame, fits = _tried(table, width, fold, TRIES, COMFORTABLE)
    return frame if fits else None


def framed_narrow(table: Table, width: int, fold: Fold) -> tuple[Frame, Table]:
    """The frame on a screen, and the table in it: short titles and fewer columns where room is short."""
    frame, fits = _tried(table, width, fold, TRIES_ON_SCREEN, ON_SCREEN)
    shown = table
    while not fits:
        frame, fits = _tried(shown, width, fold, TRIES_ON_SCREEN, COMFORTABLE)
        if fits:
            break
        titled = _with_short_titles(shown)
        if titled != shown:
            shown = titled
            continue
        fewer = _with_fewer_columns(shown)
        if fewer is None:
            return _squeezed(frame, width), shown
        shown = fewer
    return frame, shown


def _with_short_titles(table: Table) -> Table:
    return table._replace(
        columns=tuple(
            column._replace(title=column.short, short="") if column.short else column
            for column in table.columns
        )
    )


def _with_fewer_columns(table: Table) -> Table | None:
    """The table without the column of the highest rank; None where all of them stay."""
    out = max(range(len(table.columns)), key=lambda at: table.columns[at].rank)
    if table.columns[out].rank == 0:
        return None
    return table._replace(
        columns=tuple(column for at, column in enumerate(table.columns) if at != out),
        rows=tuple(tuple(cell for at, cell in enumerate(row) if at != out) for row in table.rows),
    )


def _tried(
    table: Table, width: int, fold: Fold, tries: Sequence[tuple[bool, int]], comfortable: int
) -> tuple[Frame, bool]:
    """The roomiest frame that fits with its words wrapped, or the tightest, and whether it fits."""
    columns = table.columns
    marks = tuple(_mark_width([row[at] for row in table.rows], fold) for at in range(len(columns)))
    widest = [
        max((width_of(fold(row[at].text)) for row in table.rows), default=0) for at in range(len(columns))
    ]
    for stacked, gap in tries:
        widths = [
            max(widest[at], *(width_of(fold(part)) - marks[at] for part in _head(column, stacked)))
            for at, column in enumerate(columns)
        ]
        room = width - sum(marks) - gap * (len(columns) - 1)
        fits = _least(columns, widths, comfortable) <= room
        if fits:
            break
    while fits and sum(widths) > room:
        widths[_widest(columns, widths)] -= 1
    return Frame(columns, tuple(widths), marks, gap, stacked, fold), fits


def _squeezed(frame: Frame, width: int) -> Frame:
    """A frame that does not fit made to, column by column, down to the narrowest."""
    widths = list(frame.widths)
    while frame.width - sum(frame.widths) + sum(widths) > width and max(widths) > NARROWEST:
        widths[_widest(frame.columns, widths)] -= 1
    return replace(frame, widths=tuple(widths))


def _head(column: Column, stacked: bool) -> list[str]:
    return [column.title, column.unit] if stacked and column.unit else [column.head]


def _mark_width(cells: list[Cell], fold: Fold) -> int:
    """The cells that the marks of a column take, with the blank behind them."""
    symbols = [width_of(fold(SYMBOLS[cell.mark])) for cell in cells if cell.mark]
    return max(symbols) + 1 if symbols else 0


def _least(columns: tuple[Column, ...], widths: list[int], comfortable: int) -> int:
    """The room that a table needs at least, its words wrapped."""
    return sum(
        min(width, comfortable) if column.wraps else width
        for column, width in zip(columns, widths, strict=True)
    )


def _widest(columns: tuple[Column, ...], widths: list[int]) -> int:
    """The column that gives way: the widest one of words, while it is wide enough to wrap."""
    words = [at for at, column in enumerate(columns) if column.wraps and widths[at] > COMFORTABLE]
    return max(words or range(len(widths)), key=lambda at: widths[at])


def _place(text: str, start: int, width: int, column: Column) -> int:
    """Where a text begins: figures end where their column does."""
    return start + width - width_of(text) if column.figures else start
