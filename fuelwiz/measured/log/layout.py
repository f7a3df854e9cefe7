"""How a file of columns is laid out: its delimiter, its heads, a row of units under them, its decimal sign."""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence

from fuelwiz import units
from fuelwiz.errors import LogError
from fuelwiz.record import record
from fuelwiz.session import NO_UNIT_AT_ALL

DELIMITERS = ("\t", ";", ",")
FIRST_LINES = 60
"""How far down the heads may stand: some loggers write a few lines about themselves first."""
MOST_COLUMNS = 1000
_NUMBER = re.compile(r"\s*[-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+)?\s*")
CLOCK_UNIT = "s"
"""What a time such as 00:01:02.5 comes to."""
_CLOCK = re.compile(r"\s*(?:(\d{1,4}):)?(\d{1,4}):(\d{1,2}(?:[.,]\d+)?)\s*")
_DECIMAL_COMMA = re.compile(r"\s*[-+]?\d*,\d+(?:[eE][-+]?\d+)?\s*")
_IN_BRACKETS = re.compile(r"(?P<name>.*?)\s*[(\[{](?P<unit>[^()\[\]{}]*)[)\]}]\s*")


@record
class Head:
    """The head of one column: all of it, its name without a unit in brackets, and its unit where there is one.

    Under one that `is_clock` stand hours, minutes and seconds.
    """

    text: str
    name: str
    unit: str | None
    is_clock: bool = False


@record
class Layout:
    """Where the rows begin, and how they are read."""

    delimiter: str
    heads: tuple[Head, ...]
    cells: tuple[str, ...]
    first_row: int
    decimal_comma: bool


def layout_of(lines: Sequence[str]) -> Layout:
    """The layout of a file, from its first lines.

    Raises:
        LogError: in words that follow the file's name.
    """
    for number, line in enumerate(lines):
        delimiter = _delimiter(line)
        cells = cells_of(line, delimiter) if delimiter else []
        if delimiter and _are_heads(cells, lines[number + 1 :], delimiter):
            return _layout(lines, number, delimiter, cells)
    if any(_delimiter(line) for line in lines):
        raise LogError("has no row of heads above its numbers")
    raise LogError("holds one column: columns are parted by commas, semicolons or tabs, under a row of heads")


def cells_of(line: str, delimiter: str) -> list[str]:
    """The cells of one line, without the blanks around them."""
    try:
        row = next(csv.reader([line], delimiter=delimiter), [])
    except csv.Error:
        return []
    return [cell.strip() for cell in row]


def _delimiter(line: str) -> str | None:
    """The sign that parts the cells of a line of heads: a tab or a semicolon goes before commas."""
    return next((sign for sign in DELIMITERS if sign in line), None)


def _are_heads(cells: list[str], below: Sequence[str], delimiter: str) -> bool:
    """Whether a row names columns: words in most cells, and a row of as many cells with numbers soon after it."""
    named = [cell for cell in cells if cell and not _NUMBER.fullmatch(cell)]
    if not 2 <= len(named) <= MOST_COLUMNS or 2 * len(named) < len(cells):
        return False
    following = [cells_of(line, delimiter) for line in below[:3] if line.strip()]
    return any(
        abs(len(row) - len(cells)) <= 1 and 2 * sum(map(_is_number, row)) >= len([c for c in row if c]) > 0
        for row in following
    )


def _is_number(cell: str) -> bool:
    return _NUMBER.fullmatch(cell) is not None or _CLOCK.fullmatch(cell) is not None


def clock_s(cell: str) -> float:
    """The seconds of a time such as 00:01:02.5, of which the hours may be left out.

    Raises:
        ValueError: it is no such time.

    >>> clock_s("1:02:03.5")
    3723.5
    """
    found = _CLOCK.fullmatch(cell)
    if found is None:
        raise ValueError(cell)
    hours, minutes, seconds = found.groups()
    return 3600.0 * int(hours or 0) + 60.0 * int(minutes) + float(seconds.replace(",", "."))


def _layout(lines: Sequence[str], number: int, delimiter: str, cells: list[str]) -> Layout:
    below = [(at, cells_of(lines[at], delimiter)) for at in range(number + 1, len(lines))]
    under = next((row for _, row in below if any(row)), [])
    is_units = not any(map(_is_number, under)) and any(map(_is_unit, under))
    first = next((at for at, row in below if any(row)), number + 1)
    rows = [row for at, row in below if at >= first + is_units]
    clocks = {at for row in rows[:1] for at, cell in enumerate(row) if _CLOCK.fullmatch(cell)}
    return Layout(
        delimiter=delimiter,
        heads=tuple(
            _head(cell, under[at] if is_units and at < len(under) else "", at in clocks)
            for at, cell in enumerate(cells)
        ),
        cells=tuple(cells),
        first_row=first + is_units,
        decimal_comma=delimiter != ","
        and any(_DECIMAL_COMMA.fullmatch(cell) for row in rows for cell in row),
    )


def _head(cell: str, unit_below: str, is_clock: bool) -> Head:
    bare = unit_below.strip("()[]{} ")
    bracketed = _IN_BRACKETS.fullmatch(cell)
    name, unit = cell, bare or None
    if bracketed and _is_unit(bracketed["unit"]):
        name, unit = bracketed["name"].strip(), bracketed["unit"].strip()
    elif bracketed and is_clock:
        name = bracketed["name"].strip()
    return Head(cell, name, CLOCK_UNIT if is_clock else unit, is_clock)


def _is_unit(text: str) -> bool:
    """Whether a text is a unit that is known here."""
    bare = text.strip("()[]{} ")
    return 0 < len(bare) <= 20 and (bare.lower() in NO_UNIT_AT_ALL or bool(units.kinds_of(bare)))
