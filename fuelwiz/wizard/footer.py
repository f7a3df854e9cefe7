"""The bottom of a screen: the keys that matter now, a message, or a question with where to answer it.

A message or a question that is longer than a line is wrapped, never cut: its end is often what to do.
"""

from __future__ import annotations

from collections.abc import Sequence

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import footer_line
from fuelwiz.wizard.paint import Area, Row
from fuelwiz.wizard.prompt import Prompt

MOST_ROWS = 8


def rows_of_footer(prompt: Prompt | None, message: str, last: Action, area: Area) -> int:
    """How many rows what is said takes."""
    if prompt is not None:
        return len(prompt.lines(area))
    return min(len(_message_lines(message, last, area)), MOST_ROWS) if message else 1


def footer_lines(
    prompt: Prompt | None, message: str, offered: Sequence[Action], last: Action, area: Area
) -> list[Strip]:
    """The rows of the footer."""
    if prompt is not None:
        return prompt.lines(area)
    if message:
        return _message_lines(message, last, area)
    return [footer_line(offered, last, area)]


def _message_lines(message: str, last: Action, area: Area) -> list[Strip]:
    """With the last key behind it where a line takes both."""
    beside = f"{last.shown_key} {last.say}"
    if cell_len(area.look.fold(message)) + cell_len(beside) + 5 <= area.width:
        return [footer_line([], last, area, message)]
    lines = area.wrapped(message, 1, MOST_ROWS)
    return [Row(area.look, area.width, "bar").put(1, line, bold=True).strip() for line in lines]
