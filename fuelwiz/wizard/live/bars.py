"""Bars: a label, a bar on a common scale, a figure at the right."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.record import record
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.terminal.palette import Role

LABEL = 3
START = 14
FIGURE = 9  # cells kept for the figure at the right


@record
class Bar:
    """One bar, from `low` to `high` on the scale of its picture."""

    label: str
    figure: str
    low: float
    high: float
    role: Role = "muted"
    glyph: str = "bar"
    strong: bool = False


def bar_room(area: Area) -> int:
    """How many cells the longest bar takes."""
    return max(area.width - START - FIGURE, 1)


def bar_cells(low: float, high: float, most: float, room: int) -> tuple[int, int]:
    """The first cell of a bar and the one behind its last; a bar is never thinner than a cell."""
    first = min(round(room * low / most), room - 1) if most > 0 else 0
    return first, max(min(round(room * high / most), room) if most > 0 else 0, first + 1)


def bar_line(bar: Bar, most: float, area: Area, marker: tuple[int, ...] = ()) -> Strip:
    """A bar as a line; `marker` are cells of the bar's room where an upright line crosses it."""
    line, look = area.row(), area.look
    first, end = bar_cells(bar.low, bar.high, most, bar_room(area))
    role: Role = "text" if bar.strong and bar.role == "muted" else bar.role
    line.put(LABEL, clip(bar.label, START - LABEL - 1), "text", bar.strong)
    crossed = [at for at in marker if not first <= at < end]
    for at in sorted(crossed):
        if at < first:
            line.put(START + at, look.mark("goal"), "muted")
    line.put(START + first, look.mark(bar.glyph) * (end - first), role)
    for at in sorted(crossed):
        if at >= end:
            line.put(START + at, look.mark("goal"), "muted")
    return line.put_right(area.width - 1, bar.figure, "text", bar.strong).strip()
