"""A sheet as Markdown, with tables as GitHub's flavour has them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fuelwiz.advice.blocks import (
    SYMBOLS,
    Block,
    Cell,
    FuelPath,
    Heading,
    Item,
    Listing,
    Pairs,
    Paragraph,
    Sheet,
    Table,
)
from fuelwiz.printable import NO_BREAK
from fuelwiz.report.path_text import path_lines
from fuelwiz.terminal.folding import in_ascii

CODE_WIDTH = 78

_SIGNS = re.compile(r"[\\`*_\[\]<>|~&$#]")
_LINE_START = re.compile(r"^(\d*)([-+=.)])(?=\s|$|[-=])")
_LINKS = re.compile(r"(?<=\w):(?=//)|(?<=www)\.|@", re.IGNORECASE)


def markdown_of(sheet: Sheet) -> str:
    """The sheet; ends with a line end."""
    parts = [f"# {escaped(sheet.title)}", *("\n".join(_lines(block)) for block in sheet.blocks)]
    return "\n\n".join(parts) + "\n"


def escaped(text: str) -> str:
    """A text that Markdown shows as it is: no link, no emphasis, no list, no HTML."""
    plain = text.replace(NO_BREAK, " ").strip()
    plain = _SIGNS.sub(lambda sign: f"\\{sign[0]}", plain)
    plain = _LINKS.sub(lambda sign: f"\\{sign[0]}", plain)
    return _LINE_START.sub(r"\1\\\2", plain)


def _lines(block: Block) -> Iterator[str]:
    match block:
        case Heading():
            yield f"## {escaped(block.text)}"
        case Paragraph():
            yield _paragraph(block)
        case Listing():
            start = "- [ ]" if block.boxes else "-"
            yield from (f"{start} {_item(item)}" for item in block.items)
        case Pairs():
            if block.title:
                yield f"**{escaped(block.title)}**\n"
            yield from (f"- {escaped(label)}: {escaped(text)}" for label, text in block.rows)
        case Table():
            yield from _table(block)
        case FuelPath():
            yield from _path(block)


def _paragraph(block: Paragraph) -> str:
    lines = [escaped(line) for line in block.text.split("\n")]
    if block.strong:
        return f"**{' '.join(lines)}**"
    return "\\\n".join(line for line in lines if line)


def _item(item: Item) -> str:
    if item.mark is None or item.mark == "note":
        return escaped(item.labeled)
    return f"{escaped(SYMBOLS[item.mark])} {escaped(item.labeled)}"


def _path(path: FuelPath) -> Iterator[str]:
    """The way in a block of code, in signs that every forum has; a fence longer than any run of its sign inside."""
    lines = path_lines(path, CODE_WIDTH, in_ascii)
    longest = max((len(run) for line in lines for run in re.findall("`+", line)), default=0)
    fence = "`" * max(3, longest + 1)
    yield from (f"{fence}text", *lines, fence)


def _table(table: Table) -> Iterator[str]:
    yield _row(escaped(column.head) for column in table.columns)
    yield _row("---:" if column.figures else "---" for column in table.columns)
    for row in table.rows:
        yield _row(_cell(cell) for cell in row)


def _row(fields: Iterator[str]) -> str:
    return f"| {' | '.join(fields)} |"


def _cell(cell: Cell) -> str:
    return f"{escaped(SYMBOLS[cell.mark])} {escaped(cell.text)}" if cell.mark else escaped(cell.text)
