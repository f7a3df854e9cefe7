"""A sheet as one HTML page that stands alone: to print and to tape to the wall."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from fuelwiz.advice.blocks import (
    SYMBOLS,
    Block,
    Cell,
    FuelPath,
    Heading,
    Item,
    Listing,
    Mark,
    Pairs,
    Paragraph,
    Sheet,
    Table,
)
from fuelwiz.report.path_text import path_lines

NEW_LINE, CODE_WIDTH = "\n", 78
STYLE = """
:root { color-scheme: light; }
body { font: 11pt/1.4 system-ui, sans-serif; color: #1c1c1c; background: #fff; }
body { max-width: 50rem; margin: 2rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 0 0 .5rem; }
h2 { font-size: 1.1rem; margin: 1.4rem 0 .4rem; border-bottom: 1px solid #585858; break-after: avoid; }
h3 { font-size: 1rem; margin: .6rem 0 .2rem; break-after: avoid; }
p { margin: .4rem 0; }
p.strong { font-size: 1.15rem; font-weight: bold; }
table { border-collapse: collapse; margin: .5rem 0; }
th, td { text-align: left; vertical-align: top; padding: .15rem .7rem .15rem 0; }
th, td { border-bottom: 1px solid #dadada; }
th { border-bottom-color: #585858; }
th.figures, td.figures { text-align: right; font-variant-numeric: tabular-nums; }
tr, li, dl > div { break-inside: avoid; }
ul { margin: .4rem 0; padding-left: 1.4rem; }
ul.marked { list-style: none; padding-left: 0; }
ul.marked > li { display: flex; gap: .5rem; }
ul.marked > li > b { flex: 0 0 1.4rem; }
dl { margin: .4rem 0; }
dl > div { display: flex; gap: 1rem; }
dt { flex: 0 0 11rem; color: #585858; }
dd { margin: 0; }
b { font-weight: bold; white-space: nowrap; }
b.easy { color: #005f5f; }
b.good, b.yes { color: #005f00; }
b.brisk { color: #5f5f00; }
b.fast, b.warning { color: #875f00; }
b.too-fast, b.no, b.stop { color: #af0000; }
@media print { body { font-size: 9pt; margin: 0; padding: 0; max-width: none; } }
"""


def html_of(sheet: Sheet) -> str:
    """The sheet as a page without scripts and without anything from elsewhere; ends with a line end."""
    title = escape(sheet.title)
    body = "\n".join(line for block in sheet.blocks for line in _lines(block))
    return (
        f'<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{title}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n"
        f"<h1>{title}</h1>\n{body}\n</body>\n</html>\n"
    )


def _lines(block: Block) -> Iterator[str]:
    match block:
        case Heading():
            yield f"<h2>{escape(block.text)}</h2>"
        case Paragraph():
            text = "<br>".join(escape(line) for line in block.text.split("\n"))
            yield f'<p class="strong">{text}</p>' if block.strong else f"<p>{text}</p>"
        case Listing():
            yield from _listing(block)
        case Pairs():
            if block.title:
                yield f"<h3>{escape(block.title)}</h3>"
            yield "<dl>"
            for label, text in block.rows:
                yield f"<div><dt>{escape(label)}</dt><dd>{escape(text)}</dd></div>"
            yield "</dl>"
        case Table():
            yield from _table(block)
        case FuelPath():
            yield f"<pre>{escape(NEW_LINE.join(path_lines(block, CODE_WIDTH, str)))}</pre>"


def _listing(block: Listing) -> Iterator[str]:
    marked = any(item.mark for item in block.items)
    yield '<ul class="marked">' if marked else "<ul>"
    for item in block.items:
        yield f"<li>{_item(item, marked=marked)}</li>"
    yield "</ul>"


def _item(item: Item, *, marked: bool) -> str:
    if not marked:
        return escape(item.labelled)
    return f"{_mark(item.mark)}<span>{escape(item.labelled)}</span>"


def _mark(mark: Mark | None) -> str:
    return "<b></b>" if mark is None else f'<b class="{_class(mark)}">{escape(SYMBOLS[mark])}</b>'


def _class(mark: Mark) -> str:
    """A mark as the name of a style, which holds no blank."""
    return mark.replace(" ", "-")


def _table(table: Table) -> Iterator[str]:
    yield "<table>"
    heads = (f"<th{_side(column.figures)}>{escape(column.head)}</th>" for column in table.columns)
    yield f"<thead><tr>{''.join(heads)}</tr></thead>"
    yield "<tbody>"
    for row in table.rows:
        cells = zip(row, table.columns, strict=True)
        yield f"<tr>{''.join(_cell(cell, figures=column.figures) for cell, column in cells)}</tr>"
    yield "</tbody>"
    yield "</table>"


def _cell(cell: Cell, *, figures: bool) -> str:
    text = escape(cell.text)
    if cell.mark is not None:
        text = f'<b class="{_class(cell.mark)}">{escape(SYMBOLS[cell.mark])} {text}</b>'
    return f"<td{_side(figures)}>{text}</td>"


def _side(figures: bool) -> str:
    return ' class="figures"' if figures else ""
