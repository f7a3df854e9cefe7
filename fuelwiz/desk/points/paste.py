"""A table of flow (or current) against pressure, pasted or read from a file, turned into points."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import replace
from itertools import pairwise

from fuelwiz.desk.field_numbers import split_or_whole
from fuelwiz.desk.field_specs import MOST_POINTS
from fuelwiz.desk.points.column_heads import Header, header_of, voltage_in
from fuelwiz.desk.points.spoken import spoken
from fuelwiz.errors import UnitError
from fuelwiz.file_limits import LONGEST_TEXT, MOST_BYTES
from fuelwiz.files import BYTE_ORDER_MARK
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.session import FieldSpec, Rejected, field_at, range_text, read
from fuelwiz.units import parse_typed

FLOW = "pump.curve.points"
CURRENT = "pump.current"

_MOST_LINES = 500
_LONGEST_LINE = 400
_TOO_LONG_A_LINE = "lines of over 400 characters are left out"
_TOO_LONG = "the table is very long: only its first 500 lines are read"
_TOO_MUCH = "the table is very long: only its first 64 KiB are read"
_MOST_SENTENCES = 8
_LONGEST_QUOTE = 24
_DECIMAL_COMMA = re.compile(r"([-+]?[0-9]+),([0-9]+)(?![0-9.,])")
_COMMENTS = ("#", "//", "%", "!")

_Rows = list[tuple[int, str]]
"""Lines, each behind its number."""


@record
class Points:
    """What was understood: points rising in pressure, as texts with units; the volts; what was left out, and why."""

    points: tuple[tuple[str, str], ...]
    voltage: str | None
    left_out: tuple[str, ...]
    current: tuple[tuple[str, str], ...] = ()
    """Current against pressure, where a table of flow tells it too."""
    further: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = ()
    """The same pump at other voltages."""
    speeds: tuple[str, ...] = ()
    """Engine speeds, where the points are those of a pull; empty where one is not given."""


@record
class _Dialect:
    separator: str | None
    decimal_comma: bool


@record
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
    rows, comments, remarks = _rows_of(text)
    read_by = max(
        ((_read(rows, dialect, default_units, spec), dialect) for dialect in _DIALECTS),
        key=lambda one: len(one[0][0]),
    )
    (points_found, header, lines_left), dialect = read_by
    spoken = _spoken(text, spec) if path == FLOW else None
    more_spoken = spoken is not None and (spoken.current or spoken.further) and not header.complete
    if spoken is not None and _count(spoken) >= len(points_found) + (not more_spoken):
        return spoken
    voltage = header.voltage or next(filter(None, map(voltage_in, comments)), None)
    points, left_out = _in_order(points_found, spec)
    if rows and not points_found:
        lines_left = ["no line with two numbers was found", *lines_left]
    return Points(
        tuple(point.texts for point in points),
        voltage,
        _few([*remarks, *header.remarks, *lines_left, *left_out]),
        _current_beside(rows, default_units) if path == FLOW and header.complete else (),
        tuple(
            (volts, further)
            for at, volts in header.others
            if (further := _column(rows, dialect, replace(header, columns=(header.columns[0], at)), spec))
        ),
    )


def _column(rows: _Rows, dialect: _Dialect, header: Header, spec: FieldSpec) -> tuple[tuple[str, str], ...]:
    """The points that another column of the same table tells."""
    points = []
    for number, line in rows:
        with suppress(_Left):
            points.append(_point(number, _cells(line, dialect), header, dialect, spec))
    return tuple(point.texts for point in _in_order(points, spec)[0])


def _current_beside(rows: _Rows, default_units: tuple[str, str]) -> tuple[tuple[str, str], ...]:
    """The current in a column of its own, where the head names one."""
    spec = field_at(CURRENT)
    units_of_both = (default_units[0], "A")
    found = (_read(rows, dialect, units_of_both, spec) for dialect in _DIALECTS)
    points = max((points for points, header, _ in found if header.complete), key=len, default=[])
    return tuple(point.texts for point in _in_order(points, spec)[0])


def _spoken(text: str, spec: FieldSpec) -> Points:
    """What a text says that is no table."""
    said = spoken(text[:LONGEST_TEXT])
    left_out: list[str] = []
    flows = [(volts, _taken(pairs, spec, left_out)) for volts, pairs in said.flows.items()]
    flows = [(volts, pairs) for volts, pairs in flows if pairs]
    current = _taken(said.current, field_at(CURRENT), left_out)
    volts, points = flows[0] if flows else (None, ())
    further = tuple((at, pairs) for at, pairs in flows[1:] if at is not None)
    return Points(points, volts, _few(left_out), current, further)


def _taken(pairs: list[tuple[str, str]], spec: FieldSpec, left_out: list[str]) -> tuple[tuple[str, str], ...]:
    """The pairs that can be points, rising in pressure; what cannot is said."""
    points = []
    for number, texts in enumerate(pairs, 1):
        try:
            pressure, other = (read(part, text) for part, text in zip(spec.parts, texts, strict=True))
        except Rejected:
            left_out.append(f'"{_quoted(" ".join(texts))}": left out')
        else:
            points.append(_Point(number, texts, (pressure, other)))
    rising, remarks = _in_order(points, spec)
    left_out += remarks
    return tuple(point.texts for point in rising)


def _count(points: Points) -> int:
    return len(points.points) + sum(len(more) for _, more in points.further)


def _whole_lines(text: str) -> str:
    """The start of a text that is as long as a table may be, without the line that is cut there."""
    if len(text) <= MOST_BYTES:
        return text
    start = text[:MOST_BYTES]
    return start[: max(start.rfind("\n"), start.rfind("\r")) + 1]


def _rows_of(text: str) -> tuple[_Rows, list[str], list[str]]:
    """The lines that may be points or their heads, the comments, and what is said of those that are not looked at."""
    lines = _lines(text)
    remarks = [_TOO_LONG] if len(lines) > _MOST_LINES else [_TOO_MUCH] if len(text) > MOST_BYTES else []
    remarks += [_TOO_LONG_A_LINE] if any(len(line) > _LONGEST_LINE for line in lines[:_MOST_LINES]) else []
    short = [line if len(line) <= _LONGEST_LINE else "" for line in lines[:_MOST_LINES]]
    numbered = [(number, line.strip(" ")) for number, line in enumerate(short, 1)]
    rows = [(number, line) for number, line in numbered if line.strip() and not line.startswith(_COMMENTS)]
    return rows, [line for _, line in numbered if line.startswith(_COMMENTS)], remarks


def _lines(text: str) -> list[str]:
    """The lines of a text, safe to show; tabs, which part columns, are still in them."""
    plain = _whole_lines(text).lstrip(BYTE_ORDER_MARK).replace("\r\n", "\n").replace("\r", "\n")
    return ["\t".join(clean(cell) for cell in line.split("\t")) for line in plain.split("\n")]


def _read(
    lines: _Rows, dialect: _Dialect, default_units: tuple[str, str], spec: FieldSpec
) -> tuple[list[_Point], Header, list[str]]:
    """The points that one way of parting columns gives, the header, and what is said of the lines left out."""
    rows = [(number, line, _cells(line, dialect)) for number, line in lines]
    header = Header.none(default_units)
    points: list[_Point] = []
    left_out: list[str] = []
    for number, line, cells in rows:
        try:
            points.append(_point(number, cells, header, dialect, spec))
        except _Left as why:
            named = None if points else header_of(cells, default_units, spec)
            if named is not None:
                header = header.then(named)
                continue
            beyond = f"beyond {why.beyond}, " if why.beyond else ""
            left_out.append(f'line {number}, "{_quoted(why.cell or line)}": {beyond}left out')
    return points, header, left_out


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
            text = parse_typed(_pointed(cell, dialect), part.kind, unit)[1]
        except UnitError:
            raise _Left(cell) from None
        try:
            values.append(read(part, text))
        except Rejected:
            raise _Left(cell, range_text(part)) from None
        texts.append(text)
    return _Point(number, (texts[0], texts[1]), (values[0], values[1]))


def _pointed(cell: str, dialect: _Dialect) -> str:
    """A cell with a point for its decimal comma; between commas, three digits after one are thousands."""
    comma = _DECIMAL_COMMA.match(cell)
    if comma is None or not dialect.decimal_comma or (dialect.separator == "," and len(comma[2]) == 3):
        return cell
    return f"{comma[1]}.{cell[comma.end(1) + 1 :]}"


def _in_order(points: list[_Point], spec: FieldSpec) -> tuple[list[_Point], list[str]]:
    """The points rising in pressure, one at each; and what is said of the others."""
    rising: list[_Point] = []
    remarks: list[str] = []
    for point in sorted(points, key=lambda point: point.values[0]):
        if rising and point.values[0] <= rising[-1].values[0]:
            remarks.append(f"line {point.line}, a second point at {rising[-1].texts[0]}: left out")
        else:
            rising.append(point)
    if len(rising) > MOST_POINTS:
        remarks.append(
            f"{MOST_POINTS} points are the most: those above {rising[MOST_POINTS - 1].texts[0]} are left out"
        )
        rising = rising[:MOST_POINTS]
    return rising, [*remarks, *(_rises(rising) if spec.falls else ())]


def _rises(points: list[_Point]) -> Iterator[str]:
    for before, after in pairwise(points):
        if after.values[1] > before.values[1]:
            yield f"line {after.line}: flow rises to {after.texts[1]} at {after.texts[0]}, which no pump does"


def _few(remarks: list[str]) -> tuple[str, ...]:
    """The first of many sentences, and how many more there are."""
    if len(remarks) <= _MOST_SENTENCES:
        return tuple(remarks)
    return (
        *remarks[: _MOST_SENTENCES - 1],
        f"and {len(remarks) - _MOST_SENTENCES + 1} more lines like these",
    )


def _quoted(text: str) -> str:
    text = clean(text).replace('"', "'").strip()
    return text if len(text) <= _LONGEST_QUOTE else f"{text[: _LONGEST_QUOTE - 1]}…"
