"""Views that are read from top to bottom: bad days, and findings with the cautions under them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.blocks import Block, Heading, Paragraph, Table
from fuelwiz.advice.sections.bad_days import bad_days, findings
from fuelwiz.advice.sections.closing import cautions
from fuelwiz.advice.subject import Subject
from fuelwiz.wizard.block_view import lines_of
from fuelwiz.wizard.live.rule import BAD_DAYS, FINDINGS

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result, Words
    from fuelwiz.wizard.paint import Area

VIEWS: dict[str, tuple[Callable[[Subject, Words], Iterable[Block]], ...]] = {
    BAD_DAYS: (bad_days,),
    FINDINGS: (findings, cautions),
}


def read_lines(view: str, result: Result, area: Area, *, whole: bool = False) -> list[Strip]:
    """The sections of a view, in more lines than the area has where there is much to say.

    Where the whole would not fit, a row of a table is cut to one line and what is quiet goes, unless `whole` is
    asked for. The first heading is left out: it is the name of the view, which the rule above shows.
    """
    subject = Subject(result.session, result.figures)
    blocks = [block for section in VIEWS[view] for block in section(subject, result.words)]
    blocks = blocks[1:] if isinstance(blocks[0], Heading) else blocks
    lines = lines_of(blocks, area)
    if whole or len(lines) <= area.rows or not any(isinstance(block, Table) for block in blocks):
        return lines
    pressing = [block for block in blocks if not (isinstance(block, Paragraph) and block.quiet)]
    return lines_of(pressing, area, one_line=True)
