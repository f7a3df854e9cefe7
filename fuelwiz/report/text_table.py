"""A table as lines of text: columns as wide as they must be, words wrapped where room is short."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fuelwiz.advice.blocks import SYMBOLS, Cell, Column, Table
from fuelwiz.report.columns import padded, width_of, wrapped
from fuelwiz.report.look import Look

NARROWEST = 4
COMFORTABLE = 14
TRIES = ((False, 2), (True, 2), (True, 1))  # whether units stand under their titles, and the gap of columns


@dataclass(frozen=True, slots=True)
class Frame:
    """How a table is laid out: the columns that texts and marks take, and the gap between them."""

    columns: tuple[Column, ...]
    widths: tuple[int, ...]
    marks: tuple[int, ...]
    gap: int
    stacked: bool

    @property
    def width(self) -> int:
        """The columns of the whole."""
        return sum(self.widths) + sum(self.marks) + self.gap * (len(self.widths) - 1)

    def joined(self, cells: list[str]) -> str:
        """One line of cells."""
        return (" " * self.gap).join(cells)


def table_lines(table: Table, look: Look) -> Iterator[str]:
    """The head, a line under it, and the rows."""
    texts = [[look.fold(cell.text) for cell in row] for row in table.rows]
    frame = _framed(table, texts, look)
    yield from _head_lines(frame, look)
    yield look.fold("─") * frame.width
    for row, told in zip(table.rows, texts, strict=True):
        yield from _row_lines(row, told, frame, look)


def _framed(table: Table, texts: list[list[str]], look: Look) -> Frame:
    """The frame that fits: first the words give room, then the heads, then the gaps, at last everything."""
    columns = table.columns
    marks = tuple(_mark_width([row[at] for row in table.rows], look) for at in range(len(columns)))
    for stacked, gap in TRIES:
        widths = [
            max(width_of(text) for text in (*_head(column, stacked), *(row[at] for row in texts)))
            for at, column in enumerate(columns)
        ]
        room = look.width - sum(marks) - gap * (len(columns) - 1)
        if _least(columns, widths) <= room:
            break
    while sum(widths) > room and max(widths) > NARROWEST:
        widths[_widest(columns, widths)] -= 1
    return Frame(columns, tuple(widths), marks, gap, stacked)


def _head(column: Column, stacked: bool) -> list[str]:
    return [column.title, column.unit] if stacked and column.unit else [column.head]


def _mark_width(cells: list[Cell], look: Look) -> int:
    """The columns that the marks of a column take, with the blank behind them."""
    symbols = [width_of(look.fold(SYMBOLS[cell.mark])) for cell in cells if cell.mark]
    return max(symbols) + 1 if symbols else 0


def _least(columns: tuple[Column, ...], widths: list[int]) -> int:
    """The room that a table needs at least, its words wrapped."""
    return sum(
        min(width, COMFORTABLE) if column.wraps else width
        for column, width in zip(columns, widths, strict=True)
    )


def _widest(columns: tuple[Column, ...], widths: list[int]) -> int:
    """The column that gives way: the widest one of words, while it is wide enough to wrap."""
    words = [at for at, column in enumerate(columns) if column.wraps and widths[at] > COMFORTABLE]
    return max(words or range(len(widths)), key=lambda at: widths[at])


def _head_lines(frame: Frame, look: Look) -> Iterator[str]:
    """Heads end on the same line, so that units stand right above their figures."""
    blocks = [
        [line for part in _head(column, frame.stacked) for line in wrapped(look.fold(part), width + mark)]
        for column, width, mark in zip(frame.columns, frame.widths, frame.marks, strict=True)
    ]
    height = max(map(len, blocks))
    raised = [[""] * (height - len(lines)) + lines for lines in blocks]
    for line in zip(*raised, strict=True):
        cells = zip(line, frame.columns, frame.widths, frame.marks, strict=True)
        yield frame.joined(
            [padded(text, width + mark, right=column.figures) for text, column, width, mark in cells]
        )


def _row_lines(row: tuple[Cell, ...], texts: list[str], frame: Frame, look: Look) -> Iterator[str]:
    blocks = [wrapped(text, width) for text, width in zip(texts, frame.widths, strict=True)]
    height = max(map(len, blocks))
    filled = [lines + [""] * (height - len(lines)) for lines in blocks]
    for at, line in enumerate(zip(*filled, strict=True)):
        told = zip(line, row, frame.columns, frame.widths, frame.marks, strict=True)
        yield frame.joined(
            [
                (_mark(cell, mark, look) if at == 0 else " " * mark)
                + padded(text, width, right=column.figures)
                for text, cell, column, width, mark in told
            ]
        )


def _mark(cell: Cell, width: int, look: Look) -> str:
    if cell.mark is None:
        return " " * width
    symbol = look.fold(SYMBOLS[cell.mark])
    return look.marked(symbol, cell.mark) + " " * (width - width_of(symbol))
