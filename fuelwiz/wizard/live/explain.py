"""What the highlighted size means, in labeled lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.sections.sizes import Labeled, but_not_the_build, closer_look, labeled, still_open
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.block_view import LABELED, labeled_lines

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.paint import Area

EXTRA_ROWS = 4
NEW_HERE = ("new?", "F1 explains, ? puts in a sensible value")


def explanation_lines(result: Result, highlighted: str, area: Area, more: bool = False) -> list[Strip]:
    """The labeled lines of a size in the area's rows; `more` adds those of the table in focus."""
    lines, extra = _told(result, highlighted, more)
    drawn = _drawn(lines, area.high(area.rows - len(extra)))
    return drawn + _drawn(extra, area.high(area.rows - len(drawn)))


def rows_wanted(result: Result, highlighted: str, area: Area, more: bool = False) -> int:
    """The rows that they take where no text is cut."""
    lines, extra = _told(result, highlighted, more)
    return sum(len(area.wrapped(text, LABELED)) for _, text in (*lines, *extra))


def _told(result: Result, highlighted: str, more: bool) -> tuple[Labeled, Labeled]:
    """What is said of a size, and what the table in focus says beyond that."""
    at = next((index for index, row in enumerate(result.figures.sizes) if row.size == highlighted), 0)
    size = result.figures.sizes[at]
    subject = Subject(result.session, result.figures)
    told = (*but_not_the_build(subject, size), *labeled(result.words.explanations[at]))
    lines = (*told, *still_open(size))
    if size.feed_loss_Pa is None:
        lines = (*lines, NEW_HERE)
    return lines, closer_look(subject, size) if more else ()


def _drawn(lines: Labeled, area: Area) -> list[Strip]:
    """Each label gets its first line before any text gets a second one; what does not fit is left out."""
    lines = lines[: max(area.rows, 0)]
    wrapped = [area.wrapped(text, LABELED) for _, text in lines]
    heights = [1] * len(lines)
    for _ in range(area.rows - len(lines)):
        short = next((at for at, height in enumerate(heights) if height < len(wrapped[at])), None)
        if short is None:
            break
        heights[short] += 1
    drawn: list[Strip] = []
    for (label, text), rows in zip(lines, heights, strict=True):
        role: Role = "fault" if label in {"no", "but"} else "muted"
        drawn += labeled_lines(label, area.wrapped(text, LABELED, rows), area, role)
    return drawn
