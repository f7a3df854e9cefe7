"""Ceilings as bars: the power that each part alone is good for, against the goal and the next one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.sections.ceilings import (
    ceiling_figure,
    ceiling_groups,
    ceiling_name,
    ceilings_then,
    ceilings_unknown,
    goals_of,
)
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.live.bars import LABEL, START, Bar, bar_line, bar_room
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Ceiling
    from fuelwiz.sizing.vocabulary import CeilingBasis
    from fuelwiz.terminal.palette import Role

GLYPHS: dict[CeilingBasis, str] = {"solved": "bar", "rule": "could"}


def ceiling_lines(result: Result, area: Area) -> list[Strip]:
    """Bars of power, what was solved apart from the rules of thumb, and which part reaches its limit first."""
    subject = Subject(result.session, result.figures)
    groups, goals = ceiling_groups(subject), goals_of(subject)
    if not groups:
        return area.paragraph(ceilings_unknown(subject), rows=area.rows)
    most = 1.05 * max(
        [item.max_power_W for group in groups for item in group.ceilings] + [power for _, power in goals]
    )
    crossings = tuple(min(round(bar_room(area) * power / most), bar_room(area) - 1) for _, power in goals)
    names = [f"{name} {subject.numbers.number('power', power)}" for name, power in goals]
    lines = [_scale_line(names, crossings, subject.numbers.unit("power"), area)]
    for group in groups:
        lines.append(_marked(group.title, crossings, area))
        for ceiling in group.ceilings:
            lines.append(bar_line(_bar(subject, ceiling), most, area, crossings))
    for said in (ceilings_then(subject), result.words.first_limit):
        lines += area.paragraph(said) if said else []
    return lines[: area.rows]


def _bar(subject: Subject, ceiling: Ceiling) -> Bar:
    power = ceiling_figure(subject, ceiling)
    short = ceiling.max_power_W < subject.figures.demand.crank_power_W
    role: Role = "fault" if short else "muted"
    figure = f"! {power}" if short else power
    return Bar(ceiling_name(subject, ceiling), figure, 0.0, ceiling.max_power_W, role, GLYPHS[ceiling.basis])


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
