"""The table of sizes: one line a candidate, in the columns that fit the width."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.row import BORE, FEEDS, LOSS, SPARE, VELOCITY, size_name, speed_mark, works
from fuelwiz.advice.sections.sizes import size_columns
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.wizard.paint import WORKS_CELLS, Area, Row, clip, put_works

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import SizeFigures
    from fuelwiz.terminal.palette import Ground

POINTER = 1
SIZE = 3
VELOCITY_AT = 1  # among the figures: its word stands right of it
GAPS = 7  # between eight columns


@record
class Columns:
    """Where the columns stand: numbers by the cell that they end before, the word for the speed by its first."""

    header: int  # lines of header: 2 are name over unit, 1 is both, 0 is the unit alone
    size: int  # cells for the name of a size
    bore: int
    velocity: int
    speed: int
    loss: int
    spare: int
    feeds: int
    works: int


@record
class _Widths:
    """The cells that each column takes in a table that ends before `end`."""

    header: int
    end: int
    bore: int
    velocity: int
    loss: int
    spare: int
    feeds: int
    size: int = 4
    speed: int = 11  # a mark and "too fast"

    def columns(self, longest: int) -> Columns:
        """The columns with two blanks between them; with one, from the left on, where sizes are long."""
        size = max(longest, self.size)
        widths = (self.bore, self.velocity, self.speed, self.loss, self.spare, self.feeds, WORKS_CELLS)
        free = self.end - SIZE - size - sum(widths) - GAPS
        if free < 0:
            size, free = size + free, 0
        gaps = [1 + min(max(free - after, 0), 1) for after in reversed(range(GAPS))]
        over = max(free - GAPS, 0)
        ends, at = [], SIZE + size + over
        for gap, width in zip(gaps, widths, strict=True):
            at += gap + width
            ends.append(at)
        bore, velocity, speed, loss, spare, feeds, works_ = ends
        return Columns(self.header, size, bore, velocity, speed - self.speed, loss, spare, feeds, works_)


WIDE = _Widths(1, end=79, bore=8, velocity=6, loss=9, spare=8, feeds=9)
NARROW = _Widths(0, end=59, bore=5, velocity=4, loss=4, spare=4, feeds=4)
SIDE = _Widths(2, end=58, bore=5, velocity=4, loss=4, spare=5, feeds=5)


def columns_for(width: int, longest: int) -> Columns:
    """The columns of a table in that many cells whose longest size takes `longest` cells."""
    return (WIDE if width >= 80 else NARROW if width >= 60 else SIDE).columns(longest)


def header_rows(width: int) -> int:
    """How many lines the header takes at that width."""
    return max(columns_for(width, 0).header, 1)


def shown_sizes(count: int, at: int, rows: int) -> range:
    """Which of `count` sizes show in `rows` lines: those around the highlighted one."""
    first = min(max(at - rows // 2, 0), max(count - rows, 0))
    return range(first, min(first + rows, count))


def size_lines(result: Result, highlighted: str, area: Area, focused: bool = False) -> list[Strip]:
    """The header, and as many sizes as fit under it; `focused` where the table itself has the keys."""
    sizes = result.figures.sizes
    subject = Subject(result.session, result.figures)
    columns = columns_for(area.width, max(cell_len(size_name(subject, row)) for row in sizes))
    at = next((index for index, row in enumerate(sizes) if row.size == highlighted), 0)
    lines = _headers(columns, subject, area)
    for index in shown_sizes(len(sizes), at, area.rows - len(lines)):
        ground: Ground = "background" if index != at else "chosen" if focused else "row"
        line = area.row(ground)
        if index == at:
            line.put(POINTER, area.look.mark("pointer"), "focus" if focused else "text", True)
        lines.append(_size_line(line, subject, sizes[index], columns))
    return lines


def _headers(columns: Columns, subject: Subject, area: Area) -> list[Strip]:
    """The heads; that of the velocity is its unit alone, as the word beside it says what it is the unit of."""
    size, bore, velocity, speed, loss, spare, feeds, works_ = size_columns(subject)
    figures = (bore, velocity, loss, spare, feeds)
    ends = (columns.bore, columns.velocity, columns.loss, columns.spare, columns.feeds)
    heads = {0: [of.unit for of in figures], 1: [of.head for of in figures], 2: [of.title for of in figures]}
    titles = heads[columns.header]
    titles[VELOCITY_AT] = velocity.unit if columns.header != 2 else ""
    first = area.row().put(SIZE, size.title, "muted")
    for at, (end, head) in enumerate(zip(ends, titles, strict=True)):
        first.put_right(end, head, "muted")
        if at == VELOCITY_AT:
            first.put(columns.speed, speed.title, "muted")
    first.put_right(columns.works, works_.title, "muted")
    if columns.header != 2:
        return [first.strip()]
    second = area.row()
    for end, of in zip(ends, figures, strict=True):
        second.put_right(end, of.unit, "muted")
    return [first.strip(), second.strip()]


def _size_line(line: Row, subject: Subject, row: SizeFigures, columns: Columns) -> Strip:
    look, strong = line.look, line.ground != "background"
    focused = line.ground == "chosen" and look.colors == "256"
    name = _fitting(size_name(subject, row), columns.size)
    line.put(SIZE, name, "focus" if focused else "text", strong)
    for end, figure in ((columns.bore, BORE), (columns.velocity, VELOCITY)):
        line.put_right(end, figure.number(subject, row) or look.mark("unknown"), bold=strong)
    mark = speed_mark(row)
    if mark is None:
        line.put(columns.speed + 3, row.band, "muted", strong)
    else:
        line.lay(columns.speed, f"{look.mark(mark):<2}", look.chip(mark, line.ground, strong))
        line.put(columns.speed + 3, row.band, mark, strong)
    for end, figure in ((columns.loss, LOSS), (columns.spare, SPARE), (columns.feeds, FEEDS)):
        line.put_right(end, figure.number(subject, row) or look.mark("unknown"), bold=strong)
    return put_works(line, columns.works, works(row), strong).strip()


def _fitting(name: str, room: int) -> str:
    """A size in that many cells: without its blank, then cut, where it is longer."""
    return name if cell_len(name) <= room else clip(name.replace(" ", ""), room)
