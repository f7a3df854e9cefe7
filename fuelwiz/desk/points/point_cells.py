"""Points typed cell by cell: a point is one of the build once both its halves can be read."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.field_specs import MOST_POINTS, Cell, cell_of, place_exists, spec_at
from fuelwiz.desk.nouns import noun_here
from fuelwiz.desk.parse_field import parse_field
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.points import amps
from fuelwiz.desk.points.head_units import spec_in_row
from fuelwiz.desk.refusals import Refusal
from fuelwiz.session import Rejected, read
from fuelwiz.units import UnitSystem, describe

if TYPE_CHECKING:
    from fuelwiz.desk.points.paste import Points
    from fuelwiz.desk.state import State

FIRST_CURVE = "pump.curve.0.points"
PULL = "pull"
_OF_A_CURVE = re.compile(r"^(pump\.curve\.\d+)\.(?:voltage|points\.\d+\.[01])$")


def type_cell(state: State, cell: Cell, raw: str, system: UnitSystem) -> State:
    """The build with a text typed into a cell; a point with nothing in either cell is no more."""
    points, number, column = cell
    path, partner = f"{points}.{number}.{column}", f"{points}.{number}.{1 - column}"
    halves = {column: raw, 1 - column: _text_in(state, partner)}
    if not halves[0].strip() and not halves[1].strip():
        return without_point(state, points, number)
    state = state.with_raw(path, raw)
    try:
        point = [
            parse_field(
                spec_in_row(state, f"{points}.{number}.{at}", system), halves[at], system, noun_of(path)
            )
            for at in (0, 1)
        ]
    except Refusal:
        return state
    count = len(value_at(state.plain, value_path(points)) or ())
    if number > count:
        return state
    with_point = state.without_raw(path).without_raw(partner).with_value(f"{points}.{number}", point)
    return amps.following(state, with_point) if points == FIRST_CURVE else with_point


def _text_in(state: State, path: str) -> str:
    """What stands in a cell."""
    raw = state.raw.get(path)
    return raw if raw is not None else str(value_at(state.plain, value_path(path)) or "")


def without_point(state: State, points: str, number: int) -> State:
    """The build without a point; those after it move up."""
    before = state
    state = state.without_raw(f"{points}.{number}")
    if value_at(state.plain, (*value_path(points), number)) is not None:
        state = state.without(f"{points}.{number}")
    state = state.renumbered(points, lambda at: None if at == number else at - (at > number))
    return amps.without_point(before, state, number) if points == FIRST_CURVE else state


def with_points(state: State, points: str, rows: Sequence[tuple[str, str]]) -> State:
    """The build with a whole table in place of the points that were there.

    Raises:
        NoSuchField: there is no such table, it has no point or too many, or a text in it cannot be read.
    """
    spec = spec_at(points)
    if spec.type != "points" or not 0 < len(rows) <= MOST_POINTS or not place_exists(state.plain, points):
        raise NoSuchField(f"{points} takes no table of {len(rows)} points")
    for row in rows:
        try:
            for part, text in zip(spec.parts, row, strict=True):
                read(part, text)
        except Rejected as rejected:
            raise NoSuchField(f"{points} {rejected.problems[0][1]}") from None
    return state.without_raw(points).with_value(points, [list(row) for row in rows])


def with_table(state: State, points: str, table: Sequence[tuple[str, str]] | Points) -> State:
    """The build with a table in place of points, told at the list of them, at one of their cells or at their volts.

    Raises:
        NoSuchField: as `with_points` does.
    """
    if isinstance(table, Sequence):
        return with_points(state, points, table)
    if points == PULL:
        return _with_pull(state, table)
    return _with_sheet(state, _OF_A_CURVE.sub(r"\1.points", points), table)


def _with_pull(state: State, table: Points) -> State:
    """The points of a pull in place of those that were there."""
    rows = [
        {**({"rpm": int(speed)} if speed else {}), "power": power, "boost": boost}
        for (power, boost), speed in zip(table.points, table.speeds, strict=True)
    ]
    return state.without_raw(PULL).with_value(PULL, rows)


def _with_sheet(state: State, points: str, sheet: Points) -> State:
    """All that a pump's sheet tells: its first curve, that at other volts, and the current."""
    before, state = state, with_points(state, points, sheet.points)
    if points == FIRST_CURVE and len(sheet.points) == len(value_at(before.plain, value_path(points)) or ()):
        state = amps.following(before, state)
    if sheet.voltage:
        volts = re.sub(r"\.points$", ".voltage", points)
        state = state.without_raw(volts).with_value(volts, sheet.voltage)
    if sheet.further:
        first = value_at(state.plain, ("pump", "curve", 0))
        others = [{"voltage": volts, "points": [list(row) for row in rows]} for volts, rows in sheet.further]
        state = state.with_value("pump.curve", [first, *others])
    if sheet.current:
        state = with_points(state, "pump.current", sheet.current)
    return state


def half_points(state: State) -> Iterable[tuple[str, Refusal]]:
    """The empty cells beside one that is not."""
    for path in state.raw:
        cell = cell_of(path)
        if cell is None:
            continue
        partner = f"{cell[0]}.{cell[1]}.{1 - cell[2]}"
        filled = [bool(_text_in(state, at).strip()) for at in (path, partner)]
        if any(filled) and not all(filled):
            empty = partner if filled[0] else path
            kind = spec_at(empty).kind
            assert kind is not None
            why = f"Enter the {noun_here(state, empty)} too."
            yield empty, Refusal(f"{describe(kind)} is wanted", why, is_missing=True)
