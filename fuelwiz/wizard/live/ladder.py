"""The ladder as bars: what the pump must make at the goal, step by step, and what it could make there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.sections.pressure import ladder_sentence, ladder_steps, ladder_totals, ladder_unknown
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.live.bars import LABEL, Bar, bar_line

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import SizeFigures
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.paint import Area

TOTALS = 2
FULL_ROWS = 8  # fewer than this, and the small steps become one


def ladder_lines(result: Result, highlighted: str, area: Area) -> list[Strip]:
    """The ladder of the highlighted size in the area's rows, and its sentence where there is room."""
    subject = Subject(result.session, result.figures)
    size = result.figures.row(highlighted)
    if size is None or size.ladder is None or size.pump_rise_Pa is None:
        return area.paragraph(ladder_unknown(subject), rows=area.rows)
    bars = _bars(subject, size, merged=area.rows < FULL_ROWS)
    most = max(bar.high for bar in bars)
    unit = subject.numbers.unit("pressure")
    head = area.row().put(LABEL, f"{highlighted} at goal", "muted").put_right(area.width - 1, unit, "muted")
    lines = [head.strip(), *(bar_line(bar, most, area) for bar in bars)]
    sentence = area.paragraph(ladder_sentence(subject, size))
    if len(lines) + len(sentence) <= area.rows:
        return lines + sentence
    if len(lines) > area.rows:
        lines = lines[1:]  # the totals are the answer: the head goes before they do
    left_out = max(len(lines) - area.rows, 0)
    return [*lines[: len(lines) - TOTALS - left_out], *lines[len(lines) - TOTALS :]][: area.rows]


def _bars(subject: Subject, size: SizeFigures, *, merged: bool) -> list[Bar]:
    """A bar for each step, which begins where the one above it ends, and one for each total."""
    assert size.ladder is not None
    bars = [
        Bar(step.short, step.figure, step.low_Pa, step.high_Pa)
        for step in ladder_steps(subject, size.ladder, merged=merged)
    ]
    for total in ladder_totals(subject, size):
        if total.enough is None:
            bars.append(Bar(total.name, total.figure, 0.0, total.pressure_Pa, strong=True))
        else:
            role: Role = "easy" if total.enough else "fault"
            bars.append(Bar(total.name, total.figure, 0.0, total.pressure_Pa, role, "could"))
    return bars
