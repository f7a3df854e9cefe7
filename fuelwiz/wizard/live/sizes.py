"""The table of sizes: one line a candidate, in the columns that fit the width."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.row import BORE, FEEDS, LOSS, SPARE, VELOCITY, size_name, speed_mark, works
from fuelwiz.advice.sections.sizes import size_columns
from fuelwiz.advice.subject import Subject
from fuelwiz.terminal.palette import Ground
from fuelwiz.wizard.paint import Area, Row, clip, put_works

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import SizeFigures

POINTER = 1
SIZE = 3
LEAST_BORE = 6  # cells of a bore in inches and the gap before it
LEAST_VELOCITY = 5  # cells of a usual velocity and the gap before it
FIGURES_BEFORE_SPEED = 2  # bore and velocity stand left of the word for the velocity


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the columns stand: numbers by the cell that they end before, the word for the speed by its first."""

    header: int  # lines of header: 2 are name over unit, 1 is both, 0 is the unit alone
    bore: int
    velocity: int
    speed: int
    loss: int
    spare: int
    feeds: int
    works: int
    give: int = 0  # cells that velocity and its word can move to the right for long sizes


WIDE = Columns(1, bore=17, velocity=32, speed=34, loss=55, spare=64, feeds=74, works=80)
NARROW = Columns(0, bore=14, velocity=21, speed=23, loss=41, spare=47, feeds=53, works=59, give=1)
SIDE = Columns(2, bore=13, velocity=22, speed=24, loss=40, spare=46, feeds=52, works=58)


def columns_for(width: int, longest: int) -> Columns:
    """The columns of a table in that many cells whose longest size takes `longest` cells."""
    columns = WIDE if width >= 80 else NARROW if width >= 60 else SIDE
    wanted = max(longest - _room_for_size(columns), 0)
    free = columns.velocity - LEAST_VELOCITY - columns.bore
    moved = min(max(wanted - free, 0), columns.give)
    return replace(
        columns,
        bore=columns.bore + min(wanted, free + moved),
        velocity=columns.velocity + moved,
        speed=columns.speed + moved,
    )


def _room_for_size(columns: Columns) -> int:
    """Cells from where the sizes begin to the gap before their bores."""
    return columns.bore - LEAST_BORE - SIZE


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
    size, bore, velocity, speed, loss, spare, feeds, works_ = size_columns(subject)
    figures = (bore, velocity, loss, spare, feeds)
    ends = (columns.bore, columns.velocity, columns.loss, columns.spare, columns.feeds)
    heads = {0: [of.unit for of in figures], 1: [of.head for of in figures], 2: [of.title for of in figures]}
    first = area.row().put(SIZE, size.title, "muted")
    for at, (end, head) in enumerate(zip(ends, heads[columns.header], strict=True)):
        if at == FIGURES_BEFORE_SPEED:
            first.put(columns.speed, speed.title, "muted")
        first.put_right(end, head, "muted")
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
    name = _fitting(size_name(subject, row), _room_for_size(columns))
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
