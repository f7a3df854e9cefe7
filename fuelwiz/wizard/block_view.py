"""Blocks on the screen: the headings, lists and tables of a result as lines of an area."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.blocks import (
    SYMBOLS,
    Block,
    FuelPath,
    Heading,
    Item,
    Listing,
    Mark,
    Pairs,
    Paragraph,
    Table,
)
from fuelwiz.report.path_text import path_lines
from fuelwiz.report.table_layout import Line, framed_narrow
from fuelwiz.report.text_look import ROLES, WIDEST_LABEL
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.paint import Area, clip

TEXT = 3  # where texts begin; marks stand before them
LABELED = 11  # where the text behind a label begins


def lines_of(blocks: Iterable[Block], area: Area, *, one_line: bool = False) -> list[Strip]:
    """The blocks in as many lines as they take, with a blank one between two.

    Args:
        blocks: what there is to read.
        area: where it is drawn; only its width counts.
        one_line: whether each row of a table has to do with one line; the pointer then stands at its own, and no blank
            line parts a table from what is said over it.
    """
    lines: list[Strip] = []
    before: Block | None = None
    for block in blocks:
        joined = one_line and isinstance(before, Paragraph) and isinstance(block, Table)
        if before is not None and not isinstance(before, Heading) and not joined:
            lines.append(area.row().strip())
        lines += block_lines(block, area, one_line=one_line)
        before = block
    return lines


def block_lines(block: Block, area: Area, *, one_line: bool = False) -> list[Strip]:
    """One block in lines."""
    match block:
        case Heading():
            return area.paragraph(block.text, 1, "focus", bold=True)
        case Paragraph():
            return area.paragraph(block.text, TEXT, "muted" if block.quiet else "text", bold=block.strong)
        case Listing():
            return [line for item in block.items for line in _item_lines(item, area)]
        case Pairs():
            return _pairs_lines(block, area)
        case Table():
            return list(_table_lines(block, area, one_line))
        case FuelPath():
            drawn = path_lines(block, area.width - 1, area.look.fold)
            return [area.row().put(1, line).strip() for line in drawn]


def labeled_lines(label: str, texts: list[str], area: Area, role: Role = "muted") -> Iterator[Strip]:
    """A label and beside it a text that is wrapped already."""
    for at, text in enumerate(texts):
        line = area.row()
        if at == 0:
            line.put(TEXT, clip(area.look.fold(label), LABELED - TEXT - 1), role, True)
        yield line.put(LABELED, text).strip()


def _item_lines(item: Item, area: Area) -> Iterator[Strip]:
    """An entry: its mark, its label, and text that hangs beside them."""
    role = _role(item.mark)
    column = LABELED if item.label else TEXT
    for at, text in enumerate(area.wrapped(item.text, column)):
        line = area.row()
        if at == 0:
            if item.mark is not None:
                line.lay(1, SYMBOLS[item.mark], area.look.chip(role, bold=True))
            line.put(TEXT, item.label, role)
        yield line.put(column, text).strip()


def _role(mark: Mark | None) -> Role:
    """The role of what has a mark: a note and what has none are muted."""
    return "muted" if mark is None else ROLES.get(mark, "muted")


def _pairs_lines(block: Pairs, area: Area) -> list[Strip]:
    lines = area.paragraph(block.title, TEXT, bold=True) if block.title else []
    labels = [area.look.fold(label) for label, _ in block.rows]
    column = TEXT + min(max(map(cell_len, labels), default=0), WIDEST_LABEL) + 2
    for label, (_, text) in zip(labels, block.rows, strict=True):
        beside = cell_len(label) < column - TEXT
        if not beside:
            lines.append(area.row().put(TEXT, label, "muted").strip())
        for at, part in enumerate(area.wrapped(text, column)):
            line = area.row()
            if at == 0 and beside:
                line.put(TEXT, label, "muted")
            lines.append(line.put(column, part).strip())
    return lines


def _table_lines(table: Table, area: Area, one_line: bool) -> Iterator[Strip]:
    frame, shown = framed_narrow(table, area.width - TEXT - 1, area.look.fold)
    frame = frame.in_one_line() if one_line else frame
    for pieces in frame.head_lines():
        line = area.row()
        for piece in pieces:
            line.put(TEXT + piece.at, piece.text, "muted")
        yield line.strip()
    for at, row in enumerate(shown.rows):
        for pieces in frame.row_lines(row):
            yield _row_line(pieces, area, own=at == table.own, pointed=one_line and at == table.own)


def _row_line(pieces: Line, area: Area, *, own: bool, pointed: bool) -> Strip:
    line = area.row("row" if own else "background")
    look = area.look
    if pointed:
        line.put(1, look.mark("pointer"), "focus", True)
    for piece in pieces:
        cell = piece.cell
        mark = None if cell is None else cell.mark
        role: Role = "text" if mark is None else _role(mark)
        strong = own or (cell is not None and cell.strong)
        if piece.mark is not None:
            line.lay(TEXT + piece.at, piece.text, look.chip(role, line.ground, strong))
        else:
            line.put(TEXT + piece.at, piece.text, "easy" if cell and cell.strong else role, strong)
    return line.strip()


def around_own(table: Table, most: int) -> Table:
    """A table with the rows that fit: those around the builder's own, else around the first that works."""
    most = max(most, 1)
    if len(table.rows) <= most:
        return table
    at = table.own
    if at is None:
        at = next((i for i, row in enumerate(table.rows) if any(cell.mark == "yes" for cell in row)), 0)
    first = max(0, min(at - most // 2, len(table.rows) - most))
    own = None if table.own is None else table.own - first
    return table._replace(rows=table.rows[first : first + most], own=own)


def left_out(table: Table, shown: Table) -> str:
    """How many rows of a table are not among those that are shown, above and below them; empty where all are."""
    if len(shown.rows) == len(table.rows):
        return ""
    above = table.rows.index(shown.rows[0])
    below = len(table.rows) - above - len(shown.rows)
    where = [f"{rows} {side}" for rows, side in ((above, "above"), (below, "below")) if rows]
    return f"not shown: {', '.join(where)}; the report has every row"
