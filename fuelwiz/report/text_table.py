"""A table as lines of text: in columns, or where they do not fit a block for each row."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import SYMBOLS, UNKNOWN, Cell, Table
from fuelwiz.report.table_layout import Line, framed
from fuelwiz.report.text_look import TextLook
from fuelwiz.terminal.cells import pad, width_of, wrap_plain

INDENT, GAP = 2, 2
WIDEST_LABEL = 18


def table_lines(table: Table, look: TextLook, *, ruled: bool = True) -> Iterator[str]:
    """The head, where `ruled` a line under it, and the rows; a figure is never broken over two lines."""
    frame = framed(table, look.width, look.fold)
    if frame is None:
        yield from _row_by_row(table, look)
        return
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


def _row_by_row(table: Table, look: TextLook) -> Iterator[str]:
    """Each row under its first field, the others a line each behind their heads."""
    labels = [look.fold(column.head) for column in table.columns[1:]]
    column = min(max(map(width_of, labels), default=0), WIDEST_LABEL)
    room = look.width - INDENT - column - GAP
    first = table.columns[0].head
    for row in table.rows:
        yield from wrap_plain(look.fold(f"{first} {row[0].text}".strip()), look.width)
        for label, cell in zip(labels, row[1:], strict=True):
            if cell.text and cell.text != UNKNOWN:
                yield from _field(label, cell, column, room, look)


def _field(label: str, cell: Cell, column: int, room: int, look: TextLook) -> Iterator[str]:
    """A field beside its head; a mark in its colors before it."""
    symbol = look.fold(SYMBOLS[cell.mark]) if cell.mark else ""
    lead = f"{symbol} " if symbol else ""
    heads = wrap_plain(label, column)
    texts = wrap_plain(look.fold(cell.text), room - width_of(lead))
    for at in range(max(len(heads), len(texts))):
        head = pad(heads[at] if at < len(heads) else "", column)
        text = texts[at] if at < len(texts) else ""
        mark = f"{look.marked(symbol, cell.mark)} " if cell.mark and at == 0 else " " * width_of(lead)
        yield f"{' ' * INDENT}{head}{' ' * GAP}{mark}{text}".rstrip()
