"""A table of flow (or current) against pressure, pasted or read from a file, turned into points."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from fuelwiz.desk.field_numbers import split_or_whole
from fuelwiz.desk.field_specs import MOST_POINTS
from fuelwiz.desk.points.column_heads import Header, header_of, voltage_in
from fuelwiz.errors import UnitError
from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.printable import clean
from fuelwiz.session import FieldSpec, Rejected, field_at, range_text, read
from fuelwiz.units import parse_typed

FLOW = "pump.curve.points"

_MOST_LINES = 500
_TOO_LONG = "the table is very long: only its first 500 lines are read"
_MOST_SENTENCES = 8
_LONGEST_QUOTE = 24
_DECIMAL_COMMA = re.compile(r"([-+]?[0-9]+),([0-9]+)(?![0-9.,])")
_COMMENTS = ("#", "//", "%", "!")


@dataclass(frozen=True, slots=True)
class Points:
    """What was understood: points rising in pressure, as texts with units; the volts; what was left out, and why."""

    points: tuple[tuple[str, str], ...]
    voltage: str | None
    left_out: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Dialect:
    separator: str | None
    decimal_comma: bool


@dataclass(frozen=True, slots=True)
class _Point:
    line: int
    texts: tuple[str, str]
    values: tuple[float, float]


class _Left(Exception):  # noqa: N818  it says why one line is left out
    def __init__(self, cell: str = "", beyond: str = "") -> None:
        self.cell, self.beyond = cell, beyond
        super().__init__(cell)


_DIALECTS = (
    _Dialect("\t", True),
    _Dialect(";", True),
    _Dialect("|", True),
    _Dialect(",", True),
    _Dialect(None, False),
    _Dialect(None, True),
)


def read_points(text: str, default_units: tuple[str, str], path: str = FLOW) -> Points:
    """The points in a text with two columns or more.

    Args:
        text: as pasted, or as it stands in a file.
        default_units: of pressure, and of flow or current, where the table names none.
        path: the list of points that it is for, without list numbers.
    """
    spec = field_at(path)
    lines = _lines(text)
    said = [_TOO_LONG] if len(text) > MOST_BYTES or len(lines) > _MOST_LINES else []
    numbered = [(number, line.strip(" ")) for number, line in enumerate(lines[:_MOST_LINES], 1)]
    told = [(number, line) for number, line in numbered if line.strip() and not line.startswith(_COMMENTS)]
    remarks = [line for _, line in numbered if line.startswith(_COMMENTS)]
    best = max(
        (_read(told, dialect, default_units, spec) for dialect in _DIALECTS), key=lambda one: len(one[0])
    )
    found, header, left = best
    voltage = header.voltage or next(filter(None, map(voltage_in, remarks)), None)
    kept, dropped = _in_order(found, spec)
    if told and not found:
        left = ["no line with two figures was found", *left]
    return Points(tuple(point.texts for point in kept), voltage, _few([*said, *header.said, *left, *dropped]))


def _lines(text: str) -> list[str]:
    """The lines of a text, safe to show; tabs, which part columns, are still in them."""
    plain = text[:MOST_BYTES].lstrip(BYTE_ORDER_MARK).replace("\r\n", "\n").replace("\r", "\n")
    return ["\t".join(clean(cell) for cell in line.split("\t")) for line in plain.split("\n")]


def _read(
    told: list[tuple[int, str]], dialect: _Dialect, default_units: tuple[str, str], spec: FieldSpec
) -> tuple[list[_Point], Header, list[str]]:
    """The points that one way of parting columns gives, the header, and what is said of the lines left out."""
    rows = [(number, line, _cells(line, dialect)) for number, line in told]
    header = Header.none(default_units)
    found: list[_Point] = []
    left: list[str] = []
    for number, line, cells in rows:
        try:
            found.append(_point(number, cells, header, dialect, spec))
        except _Left as why:
            named = None if found else header_of(cells, default_units, spec)
            if named is not None:
                header = header.then(named)
                continue
            beyond = f"beyond {why.beyond}, " if why.beyond else ""
            left.append(f'line {number}, "{_quoted(why.cell or line)}": {beyond}left out')
    return found, header, left


def _cells(line: str, dialect: _Dialect) -> list[str]:
    if dialect.separator is None:
        return _blank_cells(line)
    try:
        row = next(csv.reader([line.strip("|")], delimiter=dialect.separator, skipinitialspace=True), [])
    except csv.Error:
        return []
    return [cell.strip() for cell in row]


def _blank_cells(line: str) -> list[str]:
    """Cells parted by blanks; a unit that stands after a number goes with it."""
    cells: list[str] = []
    for word in line.split():
        if (
            cells
            and not word[0].isdigit()
            and split_or_whole(cells[-1]) == (cells[-1], "")
            and _is_number(cells[-1])
        ):
            cells[-1] = f"{cells[-1]} {word}"
        else:
            cells.append(word)
    return cells


def _is_number(cell: str) -> bool:
    return cell.replace(".", "", 1).replace(",", "", 1).isdecimal()


def _point(number: int, cells: list[str], header: Header, dialect: _Dialect, spec: FieldSpec) -> _Point:
    """The point in a row; _Left with the cell that cannot be read."""
    texts: list[str] = []
    values: list[float] = []
    for column, unit, part in zip(header.columns, header.units, spec.parts, strict=True):
        if column >= len(cells) or not cells[column]:
            raise _Left
        cell = cells[column]
        assert part.kind is not None
        try:
            kept = parse_typed(_pointed(cell, dialect), part.kind, unit)[1]
        except UnitError:
            raise _Left(cell) from None
        try:
            values.append(read(part, kept))
        except Rejected:
            raise _Left(cell, range_text(part)) from None
        texts.append(kept)
    return _Point(number, (texts[0], texts[1]), (values[0], values[1]))


def _pointed(cell: str, dialect: _Dialect) -> str:
    """A cell with a point for its decimal comma; between commas, three digits after one are thousands."""
    comma = _DECIMAL_COMMA.match(cell)
    if comma is None or not dialect.decimal_comma or (dialect.separator == "," and len(comma[2]) == 3):
        return cell
    return f"{comma[1]}.{cell[comma.end(1) + 1 :]}"


def _in_order(found: list[_Point], spec: FieldSpec) -> tuple[list[_Point], list[str]]:
    """The points rising in pressure, one at each; and what is said of the others."""
    kept: list[_Point] = []
    said: list[str] = []
    for point in sorted(found, key=lambda point: point.values[0]):
        if kept and point.values[0] <= kept[-1].values[0]:
            said.append(f"line {point.line}, a second point at {kept[-1].texts[0]}: left out")
        else:
            kept.append(point)
    if len(kept) > MOST_POINTS:
        said.append(
            f"{MOST_POINTS} points are the most: those above {kept[MOST_POINTS - 1].texts[0]} are left out"
        )
        kept = kept[:MOST_POINTS]
    return kept, [*said, *(_rises(kept) if spec.falls else ())]


def _rises(kept: list[_Point]) -> Iterator[str]:
    for before, after in pairwise(kept):
        if after.values[1] > before.values[1]:
            yield f"line {after.line}: flow rises to {after.texts[1]} at {after.texts[0]}, which no pump does"


def _few(said: list[str]) -> tuple[str, ...]:
    """The first of many sentences, and how many more there are."""
    if len(said) <= _MOST_SENTENCES:
        return tuple(said)
    return (*said[: _MOST_SENTENCES - 1], f"and {len(said) - _MOST_SENTENCES + 1} more lines like these")


def _quoted(text: str) -> str:
    text = clean(text).replace('"', "'").strip()
    return text if len(text) <= _LONGEST_QUOTE else f"{text[: _LONGEST_QUOTE - 1]}…"
