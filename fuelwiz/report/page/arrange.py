"""What stands where on a page: what goes to the wall first, then the pictures, the rest folded."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from fuelwiz.advice.blocks import Block, FuelPath, Heading, Listing, Paragraph, Sheet, Table
from fuelwiz.advice.sections.closing import CAUTIONS
from fuelwiz.advice.sections.gauge import NAME as GAUGE
from fuelwiz.report.page.pictures import Picture

NOTES = "Notes"


class Part(NamedTuple):
    """One section: its heading, what stands under it, and its picture where it has one."""

    heading: str
    blocks: tuple[Block, ...]
    picture: Picture | None = None


class Page(NamedTuple):
    """A page: the opening, the way and what goes beside it, the cautions, the pictures, and what is folded."""

    title: str
    opening: tuple[Block, ...]
    ways: tuple[Part, ...]
    beside: tuple[Part, ...]
    cautions: tuple[Part, ...]
    pictures: tuple[Part, ...]
    folded: tuple[Part, ...]


def arranged(sheet: Sheet, pictures: Mapping[str, Picture], notes: str = "") -> Page:
    """The sheet in the order of a page; notes, which are of any length, are folded."""
    opening, parts = _split(block for block in sheet.blocks if not notes or block != Paragraph(notes))
    if notes:
        parts.insert(0, Part(NOTES, (Paragraph(notes),)))
    pictured = [Part(name, _without(parts, name), picture) for name, picture in pictures.items()]
    others = [part for part in parts if part.heading not in pictures]
    ways = [part for part in others if any(isinstance(block, FuelPath) for block in part.blocks)]
    cautions = [part for part in others if part.heading == CAUTIONS]
    beside = [part for part in others if _can_be_ticked(part)]
    beside += [part for part in others if part.heading == GAUGE]
    placed = {part.heading for part in (*ways, *cautions, *beside)}
    folded = [part for part in others if part.heading not in placed]
    groups = (ways, beside, cautions, pictured, folded)
    return Page(sheet.title, opening, *(tuple(group) for group in groups))


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


def _without(parts: Iterable[Part], name: str) -> tuple[Block, ...]:
    """What stands under the heading of a picture; nothing where the sheet has no such section."""
    return tuple(block for part in parts if part.heading == name for block in part.blocks)


def _can_be_ticked(part: Part) -> bool:
    return any(isinstance(block, (Listing, Table)) and block.boxes for block in part.blocks)
