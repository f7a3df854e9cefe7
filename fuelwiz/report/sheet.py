"""A sheet: what there is to read, as blocks, before it becomes text, Markdown or HTML."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

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


@dataclass(frozen=True, slots=True)
class Heading:
    """The head of a section."""

    text: str


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Plain text; `strong` is what is to be read first."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Item:
    """One entry of a list, with a mark where it says good or bad."""

    text: str
    mark: Mark | None = None


@dataclass(frozen=True, slots=True)
class Listing:
    """A list."""

    items: tuple[Item, ...]


@dataclass(frozen=True, slots=True)
class Pairs:
    """Labelled lines, a word or two and what is so, under a title where they have one."""

    rows: tuple[tuple[str, str], ...]
    title: str = ""


@dataclass(frozen=True, slots=True)
class Column:
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


@dataclass(frozen=True, slots=True)
class Cell:
    """One field of a table, with a mark before its text where it says good or bad."""

    text: str
    mark: Mark | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under columns, as many cells in each row."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]


Block = Heading | Paragraph | Listing | Pairs | Table


@dataclass(frozen=True, slots=True)
class Sheet:
    """A title and what stands under it."""

    title: str
    blocks: tuple[Block, ...]


def row(*fields: str | Cell | None) -> tuple[Cell, ...]:
    """A row of a table; a field that is not known is a dash."""
    return tuple(
        field if isinstance(field, Cell) else Cell(UNKNOWN if field is None else field) for field in fields
    )
