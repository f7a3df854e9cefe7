"""The answer: one sentence that says it, and the next thing to do."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, cast

from textual.strip import Strip

from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result, Words

MARK = 1
TEXT = 3
_BETWEEN_SENTENCES = re.compile(r"(?<=[.?!]) +(?=[A-Z\d-])")


def answer_lines(result: Result, area: Area, held: str | None = None) -> list[Strip]:
    """The answer and under it what to do next, or, with the answer greyed, why it is held; fills the area."""
    shown = area if held is None else replace(area, look=area.look.greyed)
    if area.rows == 1:
        return [_short_answer(result, area, shown, held)]
    mark, role = _judgement(result, area)
    lines = []
    for index, text in enumerate(_fitting_answer(result.words, area, max(area.rows // 2, 1))):
        line = shown.row()
        if index == 0 and held is None:
            line.put(MARK, mark, role, True)
        lines.append(line.put(TEXT, text, bold=True).strip())
    below = area.high(area.rows - len(lines))
    to_do = below.paragraph(result.words.to_do, TEXT, rows=below.rows)
    return area.filled(lines + (to_do if held is None else held_lines(held, below)))


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
        line = area.row().put(MARK, area.look.mark("look here"), "fault", True).put(TEXT, "Held: ")
    style = shown.look.style("text", bold=True)
    start = TEXT if held is None else TEXT + len("Held: ")
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


def _fitting_answer(words: Words, area: Area, rows: int) -> list[str]:
    """The answer, or as many of its sentences as fit those rows, or its short form."""
    sentences = _BETWEEN_SENTENCES.split(words.answer)
    for count in range(len(sentences), 0, -1):
        lines = area.wrapped(" ".join(sentences[:count]), TEXT)
        if len(lines) <= rows:
            return lines
    return area.wrapped(words.headline, TEXT, rows)
