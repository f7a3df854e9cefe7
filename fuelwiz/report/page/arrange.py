"""What stands where on a page: what goes to the wall first, then the pictures, the rest folded."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from fuelwiz.advice.blocks import Block, FuelPath, Heading, Listing, Paragraph, Sheet, Table
from fuelwiz.advice.sections.closing import CAUTIONS
from fuelwiz.advice.sections.headings import GAUGE_PRESSURES
from fuelwiz.report.page.pictures import Picture

NOTES = "Notes"
MOST_LINES, MOST_COLUMNS = 13, 2
"""Of the way, and of what to buy, in print that is read from a step away."""


class Part(NamedTuple):
    """One section: its heading, what stands under it, and its picture where it has one."""

    heading: str
    blocks: tuple[Block, ...]
    picture: Picture | None = None


class Page(NamedTuple):
    """A page: the opening, the way, what to buy and what gauges show, cautions, pictures, and what is folded."""

    title: str
    opening: tuple[Block, ...]
    ways: tuple[Part, ...]
    to_buy: tuple[Part, ...]
    gauges: tuple[Part, ...]
    cautions: tuple[Part, ...]
    pictures: tuple[Part, ...]
    folded: tuple[Part, ...]
    dense: bool


def arranged(sheet: Sheet, pictures: Mapping[str, Picture], notes: str = "") -> Page:
    """The sheet in the order of a page; notes, which are of any length, are folded."""
    opening, parts = _split(block for block in sheet.blocks if not notes or block != Paragraph(notes))
    if notes:
        parts.insert(0, Part(NOTES, (Paragraph(notes),)))
    others = [_in_figures(part) if part.heading in pictures else part for part in parts]

    def taken(of: Callable[[Part], bool]) -> tuple[Part, ...]:
        """Those parts out of the others."""
        found = tuple(part for part in others if of(part))
        others[:] = [part for part in others if part not in found]
        return found

    return Page(
        title=sheet.title,
        opening=opening,
        ways=taken(lambda part: any(isinstance(block, FuelPath) for block in part.blocks)),
        to_buy=taken(_can_be_ticked),
        gauges=taken(lambda part: part.heading == GAUGE_PRESSURES),
        cautions=taken(lambda part: part.heading == CAUTIONS),
        pictures=tuple(Part(name, (), picture) for name, picture in pictures.items()),
        folded=tuple(others),
        dense=_is_dense(sheet),
    )


def _split(blocks: Iterable[Block]) -> tuple[tuple[Block, ...], list[Part]]:
    """What stands before the first heading, and the sections."""
    opening: list[Block] = []
    parts: list[tuple[str, list[Block]]] = []
    for block in blocks:
        if isinstance(block, Heading):
            parts.append((block.text, []))
        else:
            (parts[-1][1] if parts else opening).append(block)
    return tuple(opening), [Part(heading, tuple(under)) for heading, under in parts]


def _in_figures(part: Part) -> Part:
    """A section that a picture stands for already."""
    return part._replace(heading=f"{part.heading} in figures")


def _is_dense(sheet: Sheet) -> bool:
    """Whether one sheet of paper holds the way and the list in small print alone."""
    return any(
        len(block.lines) > MOST_LINES
        if isinstance(block, FuelPath)
        else isinstance(block, Table) and block.boxes and len(block.columns) > MOST_COLUMNS
        for block in sheet.blocks
    )


def _can_be_ticked(part: Part) -> bool:
    return any(isinstance(block, (Listing, Table)) and block.boxes for block in part.blocks)
