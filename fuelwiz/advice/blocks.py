"""Blocks: what there is to read, as blocks, before it becomes text, Markdown or HTML."""

from __future__ import annotations

from typing import Literal, NamedTuple, get_args

from fuelwiz.terminal.marks import MARKS

Mark = Literal["easy", "good", "brisk", "fast", "too fast", "yes", "no", "stop", "warning", "note"]

PathSign = Literal[
    "tank", "strainer", "pump", "filter", "run", "part", "rail", "injectors", "regulator", "other"
]
PathPlace = Literal["stop", "between", "branch"]
"""Where a part stands: a stop on the way, between two stops, or where the way forks."""

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
    def labeled(self) -> str:
        """The text behind its label, where it has one."""
        return f"{self.label}: {self.text}" if self.label else self.text


class Listing(NamedTuple):
    """A list; with `boxes` each entry can be ticked off."""

    items: tuple[Item, ...]
    boxes: bool = False


class Pairs(NamedTuple):
    """Labeled lines, a word or two and what is so, under a title where they have one."""

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

    `in_one_line` is what it says where it may take one line alone, the first that fits, `strong` what stands out among
    its neighbors.
    """

    text: str
    mark: Mark | None = None
    in_one_line: tuple[str, ...] = ()
    strong: bool = False


class Table(NamedTuple):
    """Rows under columns, as many cells in each row; `own` is the row of what the builder has or chose.

    With `boxes` each row is something to tick off, where it is drawn on a page.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    own: int | None = None
    boxes: bool = False


class PathLine(NamedTuple):
    """One part of the fuel's way: its name, what was given of it, and what comes out there at the goal.

    `mark` stands where a part limits, `assumed` where nothing was given, `gap` where a question waits for its answer.
    """

    part: PathSign
    name: str
    given: str = ""
    speed: str = ""
    comes_out: str = ""
    place: PathPlace = "between"
    mark: Mark | None = None
    assumed: bool = False
    gap: bool = False

    @property
    def given_text(self) -> str:
        """What was given, with a word before it where it is assumed, a sign where it is a gap."""
        if self.gap:
            return f"{SYMBOLS['note']} {self.given}".strip()
        return f"assumed: {self.given}" if self.assumed and self.given else self.given


class FuelPath(NamedTuple):
    """The fuel's way down the page, one part a line; in one sentence what there is to see."""

    lines: tuple[PathLine, ...]
    sentence: str = ""


Block = Heading | Paragraph | Listing | Pairs | Table | FuelPath


class Sheet(NamedTuple):
    """A title and what stands under it; `compact` where it is to take one page."""

    title: str
    blocks: tuple[Block, ...]
    compact: bool = False


def row(*fields: str | Cell | None) -> tuple[Cell, ...]:
    """A row of a table; a field that is not known is a dash."""
    return tuple(
        field if isinstance(field, Cell) else Cell(UNKNOWN if field is None else field) for field in fields
    )
