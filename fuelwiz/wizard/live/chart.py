"""A small picture of a few lines over one axis: two of them stand side by side, or one above the other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import ceil, floor

from rich.cells import cell_len

from fuelwiz.record import record
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.live.canvas import Canvas, Curve
from fuelwiz.wizard.live.scale import ROWS_A_TICK, between, places_of, step_of
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Row

AXIS = 6  # cells of the figures at the left and their axis
OTHER_ROWS = 2  # the names above the lines, the axis under them
LEAST_ROWS = 4 + OTHER_ROWS
MOST_FIGURES = 5  # rows that each have a figure; of more every second has one
LEAST_SPAN = 0.05  # of the highest figure: noise is not blown up


@record
class Series:
    """One line: its name, its height at each place across, the letter that draws it in ASCII, its look."""

    name: str
    up: Sequence[float]
    letter: str
    role: Role
    dashed: bool = False
    marked: Sequence[bool] = ()
    """Places that stand out."""


@record
class Chart:
    """Lines over the same places across; `low` is a figure that the axis reaches down to."""

    series: Sequence[Series]
    across: Sequence[float]
    unit: str
    across_unit: str
    low: float

    def draw(self, lines: Sequence[Row], column: int, width: int) -> None:
        """Draw it onto lines from a column on, as wide as that."""
        look, rows = lines[0].look, len(lines) - OTHER_ROWS
        canvas = Canvas(look, width - AXIS - 1, rows)
        step, highest = _rows_of(self.low, max(max(one.up) for one in self.series), rows)
        scale = _Scale(highest + step / 2 - step * rows, highest + step / 2)
        self._name(lines[0], column, width)
        for one in self.series:
            canvas.draw(self._curve(one, scale), one.letter, one.role, one.dashed)
        for one in self.series:
            self._mark(canvas, one, scale)
        every = 1 if rows <= MOST_FIGURES else ROWS_A_TICK
        for row, line in enumerate(lines[1:-1]):
            if row % every == 0:
                line.put_right(column + AXIS - 1, f"{highest - step * row:.{places_of(step)}f}", "muted")
            line.put(column + AXIS - 1, look.mark("axis"), "muted")
            canvas.lay_row(row, line, column + AXIS)
        self._axis(lines[-1], column, canvas.width)

    def _name(self, line: Row, column: int, width: int) -> None:
        """The unit, and which line is which."""
        line.put_right(column + AXIS - 1, self.unit, "muted")
        at, end = column + AXIS, column + width
        for one in self.series:
            sample = _sample(line.look, one)
            if at + cell_len(f"{sample} {one.name}") > end:
                break
            line.put(at, sample, one.role).put(0, f" {one.name}  ", "muted")
            at += cell_len(f"{sample} {one.name}  ")
        sags = f"{line.look.mark('crossing')} sags"
        if any(any(one.marked) for one in self.series) and at + cell_len(sags) <= end:
            line.put(at, sags[0], "fault").put(0, sags[1:], "muted")

    def _curve(self, one: Series, scale: _Scale) -> Curve:
        first, last = self.across[0], self.across[-1]

        def height(share: float) -> float | None:
            up = between(self.across, one.up, first + share * (last - first))
            return None if up is None else scale.share(up)

        return height

    def _mark(self, canvas: Canvas, one: Series, scale: _Scale) -> None:
        first, last = self.across[0], self.across[-1]
        for at, up, is_marked in zip(self.across, one.up, one.marked, strict=False):
            if is_marked:
                column = min(int((at - first) / (last - first) * canvas.width), canvas.width - 1)
                row = int((1 - scale.share(up)) * canvas.height)
                canvas.write(column, row, canvas.look.mark("crossing"), "fault", over=True)

    def _axis(self, line: Row, column: int, width: int) -> None:
        """The axis with its figures in it, and their unit at the end."""
        rule, first, last = line.look.mark("rule"), self.across[0], self.across[-1]
        step = max(step_of(last - first, max(width // 4, 2)), min(b - a for a, b in pairwise(self.across)))
        cells = [rule] * width
        taken, end = 0, width - cell_len(self.across_unit) - 2
        for number in range(ceil(first / step), floor(last / step) + 1):
            text = f"{number * step:.{places_of(step)}f}"
            start = int((number * step - first) / (last - first) * width) - len(text) // 2
            if taken <= start and start + len(text) < end:
                cells[start : start + len(text)] = text
                taken = start + len(text) + 1
        text = f" {self.across_unit}"
        cells[width - len(text) :] = text
        line.put(column + AXIS - 1, line.look.mark("corner") + "".join(cells), "muted")


@record
class _Scale:
    """The figures at the lower and the upper edge."""

    low: float
    high: float

    def share(self, up: float) -> float:
        """Where a figure stands, from 0 at the bottom to 1 at the top."""
        return (up - self.low) / (self.high - self.low)


def _sample(look: Look, one: Series) -> str:
    """What a line looks like."""
    if not look.unicode:
        return one.letter * 2
    return "- -" if one.dashed else look.mark("rule") * 2


def _rows_of(low: float, high: float, rows: int) -> tuple[float, float]:
    """What a row is worth, a round figure, and the figure of the highest: so that both ends fall on rows."""
    step = step_of(max(high - low, LEAST_SPAN * abs(high), 1e-9), ROWS_A_TICK * rows)
    while ceil(high / step - 0.5) * step - step * (rows - 0.5) > low:
        step = step_of(step * 1.01, ROWS_A_TICK)
    return step, ceil(high / step - 0.5) * step
