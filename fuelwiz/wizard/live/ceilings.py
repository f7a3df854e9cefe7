"""Ceilings: the power at which each part alone gives out, against the goal and the next one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.wizard.live.bars import LABEL, START, Bar, bar_line, bar_room
from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Ceiling, Figures

GROUPS = (("solved", "Solved", "bar"), ("rule", "Rules of thumb", "could"))


def ceiling_lines(result: Result, area: Area) -> list[Strip]:
    """Bars of power, what was solved apart from the rules of thumb, and which part gives out first."""
    figures = result.figures
    if not figures.ceilings:
        return area.paragraph("The ceilings show once the Lines step is answered.", rows=area.rows)
    numbers = Numbers.of(result.session)
    goals = _goals(figures)
    most = 1.05 * max([ceiling.max_power_W for ceiling in figures.ceilings] + [power for _, power in goals])
    crossings = tuple(min(round(bar_room(area) * power / most), bar_room(area) - 1) for _, power in goals)
    names = [f"{name} {numbers.number('power', power)}" for name, power in goals]
    lines = [_scale_line(names, crossings, numbers.unit("power"), area)]
    for basis, title, glyph in GROUPS:
        group = [ceiling for ceiling in figures.ceilings if ceiling.basis == basis]
        if group:
            lines.append(_marked(title, crossings, area))
        for ceiling in group:
            bar = _bar(ceiling, glyph, figures.demand.crank_power_W, numbers)
            lines.append(bar_line(bar, most, area, crossings))
    first = result.words.gives_out_first
    return (lines + (area.paragraph(first) if first else []))[: area.rows]


def _goals(figures: Figures) -> list[tuple[str, float]]:
    goals = [("goal", figures.demand.crank_power_W)]
    return goals if figures.next is None else [*goals, ("next", figures.next.crank_power_W)]


def _bar(ceiling: Ceiling, glyph: str, goal: float, numbers: Numbers) -> Bar:
    power = numbers.number("power", ceiling.max_power_W, goal)
    short = ceiling.max_power_W < goal
    role: Role = "fault" if short else "muted"
    return Bar(ceiling.part, f"! {power}" if short else power, 0.0, ceiling.max_power_W, role, glyph)


def _scale_line(names: list[str], crossings: tuple[int, ...], unit: str, area: Area) -> Strip:
    """The goals' figures at their upright lines: of two, the lower one to the left of its line."""
    line, last = area.row(), area.width - 2 - len(unit)
    marked = sorted(zip(crossings, names, strict=True))
    for at, (crossing, name) in enumerate(marked):
        column = START + crossing
        on_the_left = at == 0 and (len(marked) > 1 or column + 2 + cell_len(name) > last)
        if on_the_left:
            line.put_right(column - 1, name, "muted")
        line.put(column, area.look.mark("goal"), "muted")
        if not on_the_left:
            line.put(column + 2, clip(name, last - column - 2), "muted")
    return line.put_right(area.width - 1, unit, "muted").strip()


def _marked(title: str, crossings: tuple[int, ...], area: Area) -> Strip:
    line = area.row().put(LABEL, title, "muted", True)
    for crossing in sorted(crossings):
        if START + crossing > LABEL + cell_len(title):
            line.put(START + crossing, area.look.mark("goal"), "muted")
    return line.strip()
