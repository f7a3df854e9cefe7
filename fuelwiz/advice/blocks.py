"""Blocks: what there is to read, as blocks, before it becomes text, Markdown or HTML."""

from __future__ import annotations

from typing import Literal, NamedTuple

Mark = Literal["easy", "fair", "strained", "poor", "unfit", "yes", "no", "stop", "warn", "note"]

SYMBOLS: dict[Mark, str] = {
    "easy": "✓✓",
    "fair": "✓",
    "strained": "~",
    "poor": "^",
    "unfit": "✗",
    "yes": "✓",
    "no": "✗",
    "stop": "✗",
    "warn": "!",
    "note": "·",
}
UNKNOWN = "–"


class Heading(NamedTuple):
    """The head of a section."""

    text: str


class Paragraph(NamedTuple):
    """Plain text; `strong` is what is to be read first."""

    text: str
    strong: bool = False


class Item(NamedTuple):
    """One entry of a list, with a mark where it says good or bad."""

    text: str
    mark: Mark | None = None


class Listing(NamedTuple):
    """A list."""

    items: tuple[Item, ...]


class Pairs(NamedTuple):
    """Labelled lines, a word or two and what is so, under a title where they have one."""

    rows: tuple[tuple[str, str], ...]
    title: str = ""


class Column(NamedTuple):
    """The head of a column; figures stand to the right, words to the left, wrapped unless kept whole."""

    title: str
    unit: str = ""
    figures: bool = False
    whole: bool = False

    @property
    def wraps(self) -> bool:
        """Whether its words may take several lines."""
        return not (self.figures or self.whole)

    @property
    def head(self) -> str:
        """Title and unit."""
        return ", ".join(part for part in (self.title, self.unit) if part)


class Cell(NamedTuple):
    """One field of a table, with a mark before its text where it says good or bad."""

    text: str
    mark: Mark | None = None


class Table(NamedTuple):
    """Rows under columns, as many cells in each row."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


Block = Heading | Paragraph | Listing | Pairs | Table


class Sheet(NamedTuple):
    """A title and what stands under it."""

    title: str
    blocks: tuple[Block, ...]


def row(*fields: str | Cell | None) -> tuple[Cell, ...]:
    """A row of a table; a field that is not known is a dash."""
    return tuple(
        field if isinstance(field, Cell) else Cell(UNKNOWN if field is None else field) for field in fields
    )
