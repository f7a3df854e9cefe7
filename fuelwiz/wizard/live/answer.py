"""The answer: one sentence that says it, and the next thing to do."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, cast

from textual.strip import Strip

from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.paint import Area

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result

MARK = 1
TEXT = 3
HELD = "Not updated: "
"""Before the headline, where there is one row for the answer and it could not follow what was typed."""
_BETWEEN_SENTENCES = re.compile(r"(?<=[.?!]) +(?=[A-Z\d-])")


def answer_lines(result: Result, area: Area, held: str | None = None) -> list[Strip]:
    """The answer and under it what to do next, or, with the answer greyed, why it is held; fills the area."""
    shown = area if held is None else replace(area, look=area.look.grayed)
    if area.rows == 1:
        return [_short_answer(result, area, shown, held)]
    answer, rest = _told(result, area)
    mark, role = _judgement(result, area)
    lines = []
    for index, text in enumerate(answer):
        line = shown.row()
        if index == 0 and held is None:
            line.put(MARK, mark, role, True)
        lines.append(line.put(TEXT, text, bold=True).strip())
    below = area.high(area.rows - len(lines))
    under = below.paragraph(rest, TEXT, rows=below.rows) if held is None else held_lines(held, below)
    return area.filled(lines + under)


def held_lines(held: str, area: Area) -> list[Strip]:
    """Why the answer stands still, in its own colours whatever else is greyed."""
    lines = []
    for index, text in enumerate(area.wrapped(held, TEXT, area.rows)):
        line = area.row()
        if index == 0:
            line.put(MARK, area.look.mark("look here"), "fault", True)
        lines.append(line.put(TEXT, text).strip())
    return lines


def _short_answer(result: Result, area: Area, shown: Area, held: str | None) -> Strip:
    """The headline alone, for a screen with one row for the answer."""
    if held is None:
        mark, role = _judgement(result, area)
        line = area.row().put(MARK, mark, role, True)
    else:
        line = area.row().put(MARK, area.look.mark("look here"), "fault", True).put(TEXT, HELD)
    style = shown.look.style("text", bold=True)
    start = TEXT if held is None else TEXT + len(HELD)
    (headline,) = area.wrapped(result.words.headline, start, 1)
    return line.lay(start, headline, style).strip()


def _judgement(result: Result, area: Area) -> tuple[str, Role]:
    """The mark before the answer and its role: works, does not, not known yet."""
    works = result.figures.verdict.works
    if works is None:
        return area.look.mark("not sure"), "muted"
    if not works:
        return area.look.mark("look here"), "fault"
    return area.look.mark("works"), cast(Role, result.figures.pick.band)


def _told(result: Result, area: Area) -> tuple[list[str], str]:
    """The sentence that answers, wrapped, and what stands under it: the rest of the answer, and what to do.

    Where not all of it fits, the rest goes first, sentence by sentence; then the short form takes its place.
    """
    words, to_do = result.words, _to_do(result)
    whole = area.wrapped(words.answer, TEXT)
    if len(whole) <= area.rows // 2:
        return whole, "" if to_do in words.answer else to_do
    first, *others = _BETWEEN_SENTENCES.split(words.answer)
    answer = area.wrapped(first, TEXT)
    room = area.rows - len(answer)
    choices = [" ".join([*others, *([] if to_do in others else [to_do])]), " ".join(others)]
    for count in range(len(others) - 1, 0, -1):
        kept = others[:count]
        choices.append(" ".join([*kept, *([] if to_do in kept else [to_do])]))
    for text in choices if others else [to_do]:
        if len(area.wrapped(text, TEXT)) <= room:
            return answer, text
    if others or room < 1:
        answer = area.wrapped(words.headline, TEXT, max(area.rows - 1, 1))
    return answer, to_do


def _to_do(result: Result) -> str:
    """What to do next; with the key that does it, where that is to choose a size that works."""
    figures = result.figures
    chosen, works = figures.row(figures.chosen), figures.recommended
    if chosen is not None and chosen.limits and works is not None and works != figures.chosen:
        return f"Choose {works}: F6, Enter."
    return result.words.next_step
