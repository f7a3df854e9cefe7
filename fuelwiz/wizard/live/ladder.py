"""The pressure ladder: what the pump must make at the goal, step by step, and what it could make there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.wizard.live.bars import LABEL, Bar, bar_line
from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Ladder

FULL_ROWS = 8  # fewer than this, and the small steps become one

Step = tuple[str, float]


def ladder_lines(result: Result, highlighted: str, area: Area) -> list[Strip]:
    """The ladder of the highlighted size in the area's rows, and its sentence where there is room."""
    row = result.figures.row(highlighted)
    if row is None or row.ladder is None or row.pump_rise_Pa is None:
        return area.paragraph("The pressure ladder shows once the Lines step is answered.", rows=area.rows)
    numbers = Numbers.of(result.session)
    must, could = row.pump_rise_Pa, row.ladder.could_make_Pa
    bars = _step_bars(_steps(row.ladder, merged=area.rows < FULL_ROWS), numbers) + _sum_bars(
        must, could, numbers
    )
    most = max(bar.high for bar in bars)
    unit = numbers.unit("pressure")
    head = area.row().put(LABEL, f"{highlighted} at goal", "muted").put_right(area.width - 1, unit, "muted")
    lines = [head.strip(), *(bar_line(bar, most, area) for bar in bars)]
    sentence = area.paragraph(_sentence(must, could, numbers))
    return lines + sentence if len(lines) + len(sentence) <= area.rows else lines[: area.rows]


def _steps(ladder: Ladder, merged: bool) -> list[Step]:
    """What the pump works against, from the largest and surest down to what the line adds."""
    losses = [
        ("filter", ladder.filters_Pa),
        ("line", ladder.friction_Pa),
        ("fittings", ladder.fittings_Pa),
        ("parts", ladder.parts_Pa),
        ("climb", ladder.rise_Pa),
        ("inlet", ladder.inlet_Pa),
    ]
    if merged:
        losses = [("losses", sum(loss for _, loss in losses))]
    return [("base", ladder.base_Pa), ("boost", ladder.boost_Pa), *losses]


def _step_bars(steps: list[Step], numbers: Numbers) -> list[Bar]:
    """One bar a step that shows as more than nothing, each beginning where the one above it ends."""
    bars, reached = [], 0.0
    for what, step in steps:
        figure, ends = (
            numbers.number("pressure", step),
            (min(reached, reached + step), max(reached, reached + step)),
        )
        reached += step
        if figure.strip("0."):
            bars.append(Bar(what, figure, ends[0], ends[1]))
    return bars


def _sum_bars(must: float, could: float | None, numbers: Numbers) -> list[Bar]:
    """What the pump must make in all, and what it could."""
    if could is None:
        return [Bar("must make", numbers.number("pressure", must), 0.0, must, strong=True)]
    enough: Role = "easy" if could >= must else "fault"
    return [
        Bar("must make", numbers.number("pressure", must, could), 0.0, must, strong=True),
        Bar("could make", numbers.number("pressure", could, must), 0.0, could, role=enough, glyph="could"),
    ]


def _sentence(must: float, could: float | None, numbers: Numbers) -> str:
    if could is None:
        return f"A pump must make {numbers.figure('pressure', must)} at the goal."
    told = f"The pump must make {numbers.figure('pressure', must, could)} at the goal and could make"
    gap = numbers.number("pressure", abs(could - must), 0.0)
    return (
        f"{told} {numbers.number('pressure', could, must)}: {gap} {'in hand' if could >= must else 'short'}."
    )
