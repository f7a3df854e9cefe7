"""The table of sizes: one line a candidate, in the columns that fit the width."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, cast

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.advice.row import BORE, FEEDS, LOSS, SPARE, VELOCITY, size_name, works
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.look import Ground, Role
from fuelwiz.wizard.paint import Area, Row, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import SizeFigures

POINTER = 1
SIZE = 3
LEAST_BORE = 6  # cells of a bore in inches and the gap before it
LEAST_VELOCITY = 5  # cells of a usual velocity and the gap before it


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the columns stand: numbers by the column that they end before, the verdict by where it begins."""

    header: int  # lines of header: 2 are name over unit, 1 is both, 0 is the unit alone
    bore: int
    velocity: int
    verdict: int
    loss: int
    spare: int
    feeds: int
    works: int
    give: int = 0  # cells that velocity and verdict can move to the right for long sizes


WIDE = Columns(1, bore=17, velocity=32, verdict=34, loss=54, spare=63, feeds=73, works=80)
TIGHT = Columns(1, bore=17, velocity=32, verdict=33, loss=51, spare=60, feeds=70, works=76)
NARROW = Columns(0, bore=14, velocity=21, verdict=23, loss=41, spare=47, feeds=53, works=59, give=1)
SIDE = Columns(2, bore=13, velocity=22, verdict=24, loss=40, spare=46, feeds=52, works=58)


def columns_for(width: int, longest: int) -> Columns:
    """The columns of a table in that many cells whose longest size takes `longest` cells."""
    columns = WIDE if width >= 80 else TIGHT if width >= 76 else NARROW if width >= 60 else SIDE
    wanted = max(longest - _room_for_size(columns), 0)
    free = columns.velocity - LEAST_VELOCITY - columns.bore
    moved = min(max(wanted - free, 0), columns.give)
    return replace(
        columns,
        bore=columns.bore + min(wanted, free + moved),
        velocity=columns.velocity + moved,
        verdict=columns.verdict + moved,
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
    lines = _headers(columns, subject.numbers, area)
    for index in shown_sizes(len(sizes), at, area.rows - len(lines)):
        ground: Ground = "background" if index != at else "chosen" if focused else "row"
        line = area.row(ground)
        if index == at:
            line.put(POINTER, area.look.mark("pointer"), "focus" if focused else "text", True)
        lines.append(_size_line(line, subject, sizes[index], columns))
    return lines


def _headers(columns: Columns, numbers: Numbers, area: Area) -> list[Strip]:
    names = ("Bore", "Velocity", "Loss", "Spare", "Feeds")
    in_units = tuple(numbers.unit(role) for role in ("bore", "velocity", "pressure", "percent", "power"))
    ends = (columns.bore, columns.velocity, columns.loss, columns.spare, columns.feeds)
    heads = names if columns.header == 2 else in_units
    if columns.header == 1:
        heads = tuple(f"{name}, {unit}" for name, unit in zip(names, in_units, strict=True))
    first = area.row().put(SIZE, "Size", "muted")
    for end, head in zip(ends[:2], heads[:2], strict=True):
        first.put_right(end, head, "muted")
    first.put(columns.verdict, "Verdict", "muted")
    for end, head in zip(ends[2:], heads[2:], strict=True):
        first.put_right(end, head, "muted")
    first.put_right(columns.works, "Works", "muted")
    if columns.header != 2:
        return [first.strip()]
    second = area.row()
    for end, unit in zip(ends, in_units, strict=True):
        second.put_right(end, unit, "muted")
    return [first.strip(), second.strip()]


def _size_line(line: Row, subject: Subject, row: SizeFigures, columns: Columns) -> Strip:
    look, strong = line.look, line.ground != "background"
    verdict = cast(Role, row.band)
    focused = line.ground == "chosen" and look.colours == "256"
    line.put(
        SIZE,
        _fitting(size_name(subject, row), _room_for_size(columns)),
        "focus" if focused else "text",
        strong,
    )
    for end, figure in ((columns.bore, BORE), (columns.velocity, VELOCITY)):
        line.put_right(end, figure.number(subject, row) or look.mark("unknown"), bold=strong)
    mark = look.mark(verdict)
    line.lay(columns.verdict, f"{mark:<2}", look.chip(verdict, line.ground, strong))
    line.put(columns.verdict + 3, row.band, verdict, strong)
    ends = (columns.loss, columns.spare, columns.feeds, columns.works)
    texts = (*(figure.number(subject, row) for figure in (LOSS, SPARE, FEEDS)), works(row))
    for end, text in zip(ends, texts, strict=True):
        line.put_right(end, look.mark("unknown") if text is None else text, bold=strong)
    return line.strip()


def _fitting(name: str, room: int) -> str:
    """A size in that many cells: without its blank, then cut, where it is longer."""
    return name if cell_len(name) <= room else clip(name.replace(" ", ""), room)
