"""A table as lines of text."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Table
from fuelwiz.report.table_layout import Line, framed
from fuelwiz.report.text_look import TextLook
from fuelwiz.terminal.cells import width_of


def table_lines(table: Table, look: TextLook, *, ruled: bool = True) -> Iterator[str]:
    """The head, a line under it where it is to be ruled off, and the rows."""
    frame = framed(table, look.width, look.fold)
    yield from (_line(pieces, look) for pieces in frame.head_lines())
    if ruled:
        yield look.fold("─") * frame.width
    for row in table.rows:
        yield from (_line(pieces, look) for pieces in frame.row_lines(row))


def _line(pieces: Line, look: TextLook) -> str:
    """The pieces at their places; a mark in its colors."""
    line, at = "", 0
    for piece in pieces:
        line += " " * (piece.at - at)
        line += piece.text if piece.mark is None else look.marked(piece.text, piece.mark)
        at = piece.at + width_of(piece.text)
    return line
