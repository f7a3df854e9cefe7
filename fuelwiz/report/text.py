"""A sheet as plain text, for a terminal or a file."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import (
    SYMBOLS,
    Block,
    FuelPath,
    Heading,
    Item,
    Listing,
    Pairs,
    Paragraph,
    Sheet,
    Table,
)
from fuelwiz.printable import visible
from fuelwiz.report.path_text import path_lines
from fuelwiz.report.text_look import WIDEST_LABEL, TextLook
from fuelwiz.report.text_table import table_lines
from fuelwiz.terminal.cells import pad, width_of, wrap_plain

INDENT = 2
BOX = "[ ]"


def text_of(sheet: Sheet, look: TextLook) -> str:
    """The sheet in lines of `look.width` columns at most; ends with a line end."""
    if sheet.compact:
        return _page(sheet, look)
    lines = [*_underlined(sheet.title, "=", look)]
    for before, block in zip((None, *sheet.blocks), sheet.blocks, strict=False):
        if not isinstance(before, Heading):
            lines.append("")
        lines += block_lines(block, look)
    return "\n".join(visible(line).rstrip() for line in lines) + "\n"


def _page(sheet: Sheet, look: TextLook) -> str:
    """The same in few lines: a heading and its rule take one, and only the opening is set off."""
    lines = [*_underlined(sheet.title, "=", look)]
    for block in sheet.blocks:
        if isinstance(block, Heading):
            lines.append(_ruled(block.text, look))
        elif isinstance(block, Table):
            lines += table_lines(block, look, ruled=False)
        else:
            lines += block_lines(block, look)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _ruled(text: str, look: TextLook) -> str:
    """A heading with its rule behind it."""
    title = f"{look.fold(text)} "
    return look.strong(title) + look.fold("─") * max(0, look.width - width_of(title))


def block_lines(block: Block, look: TextLook) -> Iterator[str]:
    """One block in lines."""
    match block:
        case Heading():
            yield from _underlined(block.text, "-", look)
        case Paragraph():
            yield from _paragraph(block, look)
        case Listing():
            for item in block.items:
                yield from _item(item, look, box=block.boxes)
        case Pairs():
            yield from _labeled(block, look)
        case Table():
            yield from table_lines(block, look)
        case FuelPath():
            yield from path_lines(block, look.width, look.fold)


def _underlined(text: str, stroke: str, look: TextLook) -> Iterator[str]:
    lines = wrap_plain(look.fold(text), look.width)
    yield from (look.strong(line) for line in lines)
    yield stroke * max(width_of(line) for line in lines)


def _paragraph(block: Paragraph, look: TextLook) -> Iterator[str]:
    for part in block.text.split("\n"):
        for line in wrap_plain(look.fold(part), look.width):
            yield look.strong(line) if block.strong and line else line


def _item(item: Item, look: TextLook, *, box: bool) -> Iterator[str]:
    """A list's entry: its box or its mark, and text that hangs beside it."""
    symbol = BOX if box else look.fold(SYMBOLS[item.mark] if item.mark else "-")
    indent = len(BOX) + 1 if box else INDENT
    first, *rest = wrap_plain(look.fold(item.labeled), look.width - indent)
    mark = look.marked(symbol, item.mark) if item.mark and not box else symbol
    yield f"{mark}{' ' * (indent - width_of(symbol))}{first}"
    yield from (" " * indent + line for line in rest)


def _labeled(block: Pairs, look: TextLook) -> Iterator[str]:
    yield from (look.strong(line) for line in wrap_plain(look.fold(block.title), look.width) if line)
    labels = [look.fold(label) for label, _ in block.rows]
    column = min(max(map(width_of, labels), default=0), WIDEST_LABEL)
    for label, (_, text) in zip(labels, block.rows, strict=True):
        heads = wrap_plain(label, column)
        texts = wrap_plain(look.fold(text), look.width - column - 2 - INDENT)
        for at in range(max(len(heads), len(texts))):
            head = heads[at] if at < len(heads) else ""
            line = texts[at] if at < len(texts) else ""
            yield f"{' ' * INDENT}{pad(head, column)}  {line}"
