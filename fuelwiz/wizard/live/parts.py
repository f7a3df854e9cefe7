"""What a step shows in place of the table of sizes: what would do for its part, and at the end what to buy."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.blocks import Block, Heading, Table
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.block_view import TEXT, around_own, left_out, lines_of

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.wizard.paint import Area

SUMMARY = "summary"
ROWS_AROUND = 5  # lines for the head, the blank line and the sentence under a table


def _returns(subject: Subject, result: Result) -> Iterable[Block]:
    from fuelwiz.advice.sections.return_line import return_line

    return return_line(subject, result.words) if subject.figures.return_line is not None else ()


def _wires(subject: Subject, _result: Result) -> Iterable[Block]:
    from fuelwiz.advice.sections.wiring import wires_that_would_do

    return wires_that_would_do(subject)


def _injectors(subject: Subject, _result: Result) -> Iterable[Block]:
    from fuelwiz.advice.sections.injectors import injectors_that_would_do

    return injectors_that_would_do(subject)


def _to_buy(subject: Subject, result: Result) -> Iterable[Block]:
    from fuelwiz.advice.sections.shopping import shopping

    return shopping(subject, result.words)


PARTS: dict[str, Callable[[Subject, Result], Iterable[Block]]] = {
    "inlet": _returns,
    "wiring": _wires,
    "injectors": _injectors,
    SUMMARY: _to_buy,
}
"""What a step shows; each is loaded by the first step that shows it."""


def part_lines(about: str, result: Result, area: Area) -> list[Strip] | None:
    """The table of a step's part and a sentence under it; None for a step that has none, or nothing known yet.

    What there is to buy is told whole, in more lines than the area has where it takes them.
    """
    if about not in PARTS:
        return None
    subject = Subject(result.session, result.figures)
    blocks = [block for block in PARTS[about](subject, result) if not isinstance(block, Heading)]
    if about == SUMMARY:
        return lines_of(blocks, area)
    return _around_own(blocks, area) or None


def _around_own(blocks: Sequence[Block], area: Area) -> list[Strip]:
    """The blocks with the rows of a table that fit; how many do not stands in place of the blank line under it."""
    lines: list[Strip] = []
    cut = ""
    for block in blocks:
        shown = around_own(block, area.rows - ROWS_AROUND) if isinstance(block, Table) else block
        between = [area.row().put(TEXT, area.look.fold(cut), "muted").strip()] if lines else []
        lines += [*between, *lines_of([shown], area)]
        cut = left_out(block, shown) if isinstance(block, Table) and isinstance(shown, Table) else ""
    return lines
