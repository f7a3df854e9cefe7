"""The answer: its lines as they fit, and where to go on in a build that is not finished."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.answer.follows import follows
from fuelwiz.advice.answer.lines import fitting
from fuelwiz.wizard.paint import VERDICT_MARK, VERDICT_TEXT, verdict_lines

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.paint import Area

EDGE = 1  # cell that stays free at the right of a text
# Before the answer, where there is one row for it and a sentence could not follow what was typed.
HELD = "Not updated: "
LEAST_TO_FOLLOW = 2  # rows of the answer, which say whether it does and where it is tightest


def answer_lines(result: Result, area: Area, held: str | None = None) -> list[Strip]:
    """The answer, or, with the answer grayed, why it is held; fills the area."""
    if area.rows == 1:
        return [_one_row(result, area, held)]
    shown = area if held is None else replace(area, look=area.look.grayed)
    under = [] if held is None else held_lines(held, area.high(area.rows - 1))
    first, *others = _that_fit(result, area, area.rows - len(under))
    if held is None:
        verdict = verdict_lines(first, *_judgment(result), area)
    else:
        verdict = [shown.row().put(VERDICT_TEXT, text, bold=True).strip() for text in first]
    below = [shown.row().put(VERDICT_TEXT, text).strip() for block in others for text in block]
    return area.filled([*verdict, *under, *below])


def held_lines(held: str, area: Area) -> list[Strip]:
    """Why the answer stands still, in its own colors whatever else is grayed."""
    lines = []
    for index, text in enumerate(area.wrapped(held, VERDICT_TEXT, area.rows)):
        line = area.row()
        if index == 0:
            line.put(VERDICT_MARK, area.look.mark("look here"), "fault", True)
        lines.append(line.put(VERDICT_TEXT, text).strip())
    return lines


def _one_row(result: Result, area: Area, held: str | None) -> Strip:
    """The first line alone, for a screen with one row for the answer."""
    start = VERDICT_TEXT if held is None else VERDICT_TEXT + len(HELD)
    first = area.wrapped(fitting(result.words.answer_forms[0], area.width - start - EDGE), start, 1)
    if held is None:
        return verdict_lines(first, *_judgment(result), area)[0]
    line = area.row().put(VERDICT_MARK, area.look.mark("look here"), "fault", True).put(VERDICT_TEXT, HELD)
    return line.lay(start, first[0], area.look.grayed.style("text", bold=True)).strip()


def _judgment(result: Result) -> tuple[str, Role]:
    """The mark before the answer and its role: works, does not, not known yet."""
    works = result.figures.verdict.works
    if works is None:
        return "not sure", "text"
    return ("works", "easy") if works else ("look here", "too fast")


def _that_fit(result: Result, area: Area, rows: int) -> list[list[str]]:
    """The lines of the answer, whole where they fit; rows that are over go to those that are longer."""
    lines = result.words.answer_forms[:rows]
    to_come = follows(result.session, result.figures)
    if to_come is not None and rows > LEAST_TO_FOLLOW:
        lines = (*lines[: rows - 1], to_come)
    shown = [[fitting(forms, area.width - VERDICT_TEXT - EDGE)] for forms in lines]
    for at, forms in enumerate(lines):
        wrapped = area.wrapped(forms[0], VERDICT_TEXT)
        if sum(map(len, shown)) - len(shown[at]) + len(wrapped) <= rows:
            shown[at] = wrapped
    shown += [[hint] for hint in (_hint(result),) if hint and sum(map(len, shown)) < rows]
    return [[area.wrapped(text, VERDICT_TEXT, 1)[0] for text in block] for block in shown]


def _hint(result: Result) -> str:
    """Where to go on; with the key that does it, where that is to choose a size that works."""
    figures = result.figures
    chosen, works = figures.row(figures.chosen), figures.recommended
    if chosen is not None and chosen.limits and works is not None and works != figures.chosen:
        return f"Choose {works}: F6, Enter."
    return result.words.next_step
