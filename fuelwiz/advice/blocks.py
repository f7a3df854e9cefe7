"""Blocks: what there is to read, as blocks, before it becomes text, Markdown or HTML."""

from __future__ import annotations

from typing import Literal, NamedTuple, get_args

from fuelwiz.terminal.marks import MARKS

Mark = Literal["easy", "good", "brisk", "fast", "too fast", "yes", "no", "stop", "warning", "note"]

SYMBOLS: dict[Mark, str] = {mark: MARKS[mark][0] for mark in get_args(Mark)}
UNKNOWN = MARKS["unknown"][0]


class Heading(NamedTuple):
    """The head of a section."""

    text: str


class Paragraph(NamedTuple):
    """Plain text; `strong` is what is to be read first, `quiet` what can be passed over."""

    text: str
    strong: bool = False
    quiet: bool = False


class Item(NamedTuple):
    """One entry of a list, with a mark where it says good or bad, and a word for what kind of entry it is."""

    text: str
    mark: Mark | None = None
    label: str = ""

    @property
    def labelled(self) -> str:
        """The text behind its label, where it has one."""
        return f"{self.label}: {self.text}" if self.label else self.text


class Listing(NamedTuple):
    """A list."""

    items: tuple[Item, ...]


class Pairs(NamedTuple):
    """Labelled lines, a word or two and what is so, under a title where they have one."""

    rows: tuple[tuple[str, str], ...]
    title: str = ""


class Column(NamedTuple):
    """The head of a column; figures stand to the right, words to the left, wrapped unless kept whole.

    Where room is short a screen takes the `short` title, and then leaves columns out, the highest `rank` first;
    a column of rank 0 always stays.
    """

    title: str
    unit: str = ""
    figures: bool = False
    whole: bool = False
    short: str = ""
    rank: int = 0

    @property
    def wraps(self) -> bool:
        """Whether its words may take several lines."""
        return not (self.figures or self.whole)

    @property
    def head(self) -> str:
        """Title and unit."""
        return ", ".join(part for part in (self.title, self.unit) if part)


class Cell(NamedTuple):
    """One field of a table, with a mark before its text where it says good or bad.

    `short` is what it says where it may take one line alone, `strong` what stands out among its neighbors.
    """

    text: str
    mark: Mark | None = None
    short: str = ""
    strong: bool = False


class Table(NamedTuple):
    """Rows under columns, as many cells in each row; `own` is the row of what the builder has or chose."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    own: int | None = None


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
