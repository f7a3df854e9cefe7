"""The answer: its lines as they fit, and where to go on in a build that is not finished."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, cast

from textual.strip import Strip

from fuelwiz.advice.answer.lines import fitting
from fuelwiz.terminal.palette import Role

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.wizard.paint import Area

MARK = 1
TEXT = 3
EDGE = 1  # cell that stays free at the right of a text
# Before the answer, where there is one row for it and a sentence could not follow what was typed.
HELD = "Not updated: "


def answer_lines(result: Result, area: Area, held: str | None = None) -> list[Strip]:
    """The answer, or, with the answer greyed, why it is held; fills the area."""
    if area.rows == 1:
        return [_one_row(result, area, held)]
    shown = area if held is None else replace(area, look=area.look.grayed)
    under = [] if held is None else held_lines(held, area.high(area.rows - 1))
    mark, role = _judgement(result, area)
    lines: list[Strip] = []
    for index, text in enumerate(_told(result, area, area.rows - len(under))):
        line = shown.row()
        if index == 0 and held is None:
            line.put(MARK, mark, role, True)
        lines.append(line.put(TEXT, text, bold=index == 0).strip())
    return area.filled([*lines[:1], *under, *lines[1:]])


def held_lines(held: str, area: Area) -> list[Strip]:
    """Why the answer stands still, in its own colours whatever else is greyed."""
    lines = []
    for index, text in enumerate(area.wrapped(held, TEXT, area.rows)):
        line = area.row()
        if index == 0:
            line.put(MARK, area.look.mark("look here"), "fault", True)
        lines.append(line.put(TEXT, text).strip())
    return lines


def _one_row(result: Result, area: Area, held: str | None) -> Strip:
    """The first line alone, for a screen with one row for the answer."""
    shown = area
    if held is None:
        mark, role = _judgement(result, area)
        line = area.row().put(MARK, mark, role, True)
    else:
        shown = replace(area, look=area.look.grayed)
        line = area.row().put(MARK, area.look.mark("look here"), "fault", True).put(TEXT, HELD)
    start = TEXT if held is None else TEXT + len(HELD)
    (first,) = area.wrapped(fitting(result.words.answer_forms[0], area.width - start - EDGE), start, 1)
    return line.lay(start, first, shown.look.style("text", bold=True)).strip()


def _judgement(result: Result, area: Area) -> tuple[str, Role]:
    """The mark before the answer and its role: works, does not, not known yet."""
    works = result.figures.verdict.works
    if works is None:
        return area.look.mark("not sure"), "muted"
    if not works:
        return area.look.mark("look here"), "fault"
    return area.look.mark("works"), cast(Role, result.figures.pick.band)


def _told(result: Result, area: Area, rows: int) -> list[str]:
    """The lines of the answer, a row each, whole where they fit; rows that are over go to those that are longer."""
    lines = result.words.answer_forms[:rows]
    told = [[fitting(forms, area.width - TEXT - EDGE)] for forms in lines]
    for at, forms in enumerate(lines):
        wrapped = area.wrapped(forms[0], TEXT)
        if sum(map(len, told)) - len(told[at]) + len(wrapped) <= rows:
            told[at] = wrapped
    told += [[hint] for hint in (_hint(result),) if hint and sum(map(len, told)) < rows]
    return [area.wrapped(text, TEXT, 1)[0] for block in told for text in block]


def _hint(result: Result) -> str:
    """Where to go on; with the key that does it, where that is to choose a size that works."""
    figures = result.figures
    chosen, works = figures.row(figures.chosen), figures.recommended
    if chosen is not None and chosen.limits and works is not None and works != figures.chosen:
        return f"Choose {works}: F6, Enter."
    return result.words.next_step
