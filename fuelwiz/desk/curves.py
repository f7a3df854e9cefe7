"""Points typed cell by cell: a point is one of the build once both its halves can be read."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fuelwiz.desk.fields import Cell, System, cell_of, spec_at
from fuelwiz.desk.plain import value_at, way
from fuelwiz.desk.state import State
from fuelwiz.desk.taking import take
from fuelwiz.desk.words import Refusal, label


def type_cell(state: State, cell: Cell, raw: str, system: System) -> State:
    """The build with a text typed into a cell; a point with nothing in either cell is no more."""
    points, number, column = cell
    path, partner = f"{points}.{number}.{column}", f"{points}.{number}.{1 - column}"
    halves = {column: raw, 1 - column: _text_in(state, partner)}
    if not halves[0].strip() and not halves[1].strip():
        return without_point(state, points, number)
    state = state.with_raw(path, raw)
    try:
        point = [take(spec_at(f"{points}.{number}.{at}"), halves[at], system, label(path)) for at in (0, 1)]
    except Refusal:
        return state
    count = len(value_at(state.plain, way(points)) or ())
    if number > count:
        return state
    return state.without_raw(path).without_raw(partner).with_value(f"{points}.{number}", point)


def _text_in(state: State, path: str) -> str:
    """What stands in a cell."""
    raw = state.raw.get(path)
    return raw if raw is not None else str(value_at(state.plain, way(path)) or "")


def without_point(state: State, points: str, number: int) -> State:
    """The build without a point; those after it move up."""
    state = state.without_raw(f"{points}.{number}")
    if value_at(state.plain, (*way(points), number)) is not None:
        state = state.without(f"{points}.{number}")
    return state.renumbered(points, lambda at: None if at == number else at - (at > number))


def with_points(state: State, points: str, rows: Sequence[tuple[str, str]]) -> State:
    """The build with a whole table in place of the points that were there."""
    return state.without_raw(points).with_value(points, [list(row) for row in rows])


def half_points(state: State, system: System) -> Iterable[tuple[str, Refusal]]:
    """The cells that are empty or cannot be read beside one that can."""
    for path, raw in state.raw.items():
        cell = cell_of(path)
        if cell is None or not raw.strip():
            continue
        partner = f"{cell[0]}.{cell[1]}.{1 - cell[2]}"
        if not _text_in(state, partner).strip():
            wanted = "a pressure" if cell[2] else "the other half"
            yield (
                partner,
                Refusal(f"{wanted} is wanted", f"a point wants both its figures: {wanted} is missing here."),
            )
