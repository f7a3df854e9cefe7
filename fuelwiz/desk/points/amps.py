"""The current in a pump's table: one figure under each of its points, at the pressure of that point.

The file keeps current apart from flow, against pressures of its own. Those that are none of the first curve's
stay as they are, and are asked for in a table of their own.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from fuelwiz.desk.field_specs import AMPS
from fuelwiz.desk.plain import Plain, value_at
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State
from fuelwiz.errors import UnitError
from fuelwiz.units import parse

_POINTS = ("pump", "curve", 0, "points")
_CURRENT = ("pump", "current")
_NEAR_PA = 1.0
_NO_POINT = Refusal("pressure and flow first", "Enter the pressure and the flow of this point too.")


def amps_of(plain: Plain, number: int) -> str | None:
    """The current at the pressure of a point of the first curve; None where there is none."""
    pressures = _pressures(plain)
    if number >= len(pressures):
        return None
    return next((amps for at, amps in _current(plain) if _same(at, pressures[number])), None)


def beside_no_point(plain: Plain) -> bool:
    """Whether there is a current at a pressure that is none of the first curve's."""
    pressures = _pressures(plain)
    return any(not any(_same(at, one) for one in pressures) for at, _ in _current(plain))


def with_amps(state: State, number: int, amps: str | None) -> State:
    """The build with the current at a point, or without one.

    Raises:
        Refusal: the point is not there yet.
    """
    pressures = _pressures(state.plain)
    if number >= len(pressures):
        raise _NO_POINT
    at = pressures[number]
    kept = [pair for pair in _current(state.plain) if not _same(pair[0], at)]
    return _with_current(state, kept if amps is None else [*kept, (at, amps)])


def following(before: State, after: State) -> State:
    """The build after an edit of one point's pressure: its current goes with it."""
    old, new = _pressures(before.plain), _pressures(after.plain)
    if len(old) != len(new) or old == new or not _current(before.plain):
        return after
    moved = {one: other for one, other in zip(old, new, strict=True) if one != other}
    return _with_current(
        after,
        [
            (next((to for one, to in moved.items() if _same(at, one)), at), amps)
            for at, amps in _current(before.plain)
        ],
    )


def without_point(before: State, after: State, number: int) -> State:
    """The build after a point was taken out: its current goes with it, and texts behind it move up."""
    pressures = _pressures(before.plain)
    if number < len(pressures):
        kept = [pair for pair in _current(before.plain) if not _same(pair[0], pressures[number])]
        if len(kept) < len(_current(before.plain)):
            after = _with_current(after, kept)
    return after.without_raw(f"{AMPS}.{number}").renumbered(
        AMPS, lambda at: None if at == number else at - (at > number)
    )


def _with_current(state: State, pairs: list[tuple[str, str]]) -> State:
    rising = sorted(pairs, key=lambda pair: _pascals(pair[0]))
    if not rising:
        return state.without("pump.current")
    raw = {path: text for path, text in state.raw.items() if path.startswith("pump.current.")}
    state = state.with_value("pump.current", [list(pair) for pair in rising])
    return replace(state, raw={**state.raw, **raw}) if raw else state


def _pressures(plain: Plain) -> list[str]:
    return [str(at) for at, _ in _pairs(value_at(plain, _POINTS))]


def _current(plain: Plain) -> list[tuple[str, str]]:
    return _pairs(value_at(plain, _CURRENT))


def _pairs(points: Any) -> list[tuple[str, str]]:
    if not isinstance(points, list):
        return []
    return [(str(one[0]), str(one[1])) for one in points if isinstance(one, list) and len(one) == 2]


def _same(one: str, another: str) -> bool:
    return one == another or abs(_pascals(one) - _pascals(another)) < _NEAR_PA


def _pascals(text: str) -> float:
    try:
        return parse(text, "pressure_change")
    except UnitError:
        return float("-inf")
