"""Pictures of bars, a row each: a name, a bar between two figures, and what it comes to."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from fuelwiz.report.page.pictures.shapes import Box, Kind, Shape, Stroke, Word

WIDTH = 360
ROW = 24
TOP = 22
NAME_AT, BARS_AT, BARS_END, FIGURE_AT = 2, 130, 292, 358


class Bar(NamedTuple):
    """One row."""

    name: str
    low: float
    high: float
    figure: str
    kind: Kind


class Line(NamedTuple):
    """An upright line at a figure, named above the bars."""

    name: str
    at: float
    kind: Kind


def bars(
    rows: Sequence[Bar], lines: Sequence[Line] = (), *, figures: str = ""
) -> tuple[float, tuple[Shape, ...]]:
    """The height, and the shapes; `figures` heads the figures at the right."""
    low = min([0.0, *(row.low for row in rows), *(line.at for line in lines)])
    high = max([*(row.high for row in rows), *(line.at for line in lines)])
    span = (high - low) or 1.0

    def across(value: float) -> float:
        return BARS_AT + (BARS_END - BARS_AT) * (value - low) / span

    top = TOP + 14 * max(len(lines) - 1, 0)
    shapes: list[Shape] = [Word(FIGURE_AT, TOP - 8, figures, "muted", "end")] if figures else []
    for at, row in enumerate(rows):
        y = top + at * ROW
        wide = max(across(row.high) - across(row.low), 2.0)
        shapes += [
            Word(NAME_AT, y + 15, row.name),
            Box(across(row.low), y + 4, wide, ROW - 9, row.kind),
            Word(FIGURE_AT, y + 15, row.figure, "text", "end"),
        ]
    height = top + len(rows) * ROW + 6
    shapes += _upright(lines, across, top, height)
    return height, tuple(shapes)


def _upright(
    lines: Sequence[Line], across: Callable[[float], float], top: float, bottom: float
) -> Iterator[Shape]:
    """The lines, each named in a row of its own."""
    for at, line in enumerate(lines):
        x, y = across(line.at), top - 8 - 14 * (len(lines) - 1 - at)
        yield Stroke(((x, y + 3), (x, bottom)), line.kind)
        yield Word(x, y, line.name, "muted", "end" if x > (BARS_AT + BARS_END) / 2 else "start")
