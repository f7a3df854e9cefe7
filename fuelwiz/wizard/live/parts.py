"""What a step shows in place of the table of sizes: what would do for its part, and at the end what to buy."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.blocks import Block, Heading, Table
from fuelwiz.advice.sections.injectors import injectors_that_would_do
from fuelwiz.advice.sections.return_line import return_line
from fuelwiz.advice.sections.shopping import shopping
from fuelwiz.advice.sections.wiring import wires_that_would_do
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.block_view import around_own, lines_of

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.wizard.paint import Area

SUMMARY = "summary"
MORE_TO_BUY = "The rest of the list is in the report: F7."
ROWS_AROUND = 5  # lines for the head, the blank line and the sentence under a table


def _returns(subject: Subject, result: Result) -> Iterable[Block]:
    return return_line(subject, result.words) if subject.figures.return_line is not None else ()


PARTS: dict[str, Callable[[Subject, Result], Iterable[Block]]] = {
    "inlet": _returns,
    "wiring": lambda subject, _result: wires_that_would_do(subject),
    "injectors": lambda subject, _result: injectors_that_would_do(subject),
    SUMMARY: lambda subject, result: shopping(subject, result.words),
}


def part_lines(about: str, result: Result, area: Area) -> list[Strip] | None:
    """The table of a step's part and a sentence under it; None for a step that has none, or nothing known yet."""
    if about not in PARTS:
        return None
    subject = Subject(result.session, result.figures)
    blocks = [block for block in PARTS[about](subject, result) if not isinstance(block, Heading)]
    if about == SUMMARY:
        return _list_as_far_as_it_goes(blocks, area)
    shown = [
        around_own(block, area.rows - ROWS_AROUND) if isinstance(block, Table) else block for block in blocks
    ]
    return lines_of(shown, area) or None


def _list_as_far_as_it_goes(blocks: Sequence[Block], area: Area) -> list[Strip]:
    """What to buy, a part a line, and where the rest of it stands."""
    lines = lines_of(blocks, area, one_line=True)
    if len(lines) <= area.rows:
        return lines
    return [*lines[: area.rows - 1], *area.paragraph(MORE_TO_BUY, role="muted", rows=1)]
