"""Runs, filters, parts, curves and stress cases: entries added, taken away and moved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.desk.plain import Plain, put, taken_out, value_at, value_path
from fuelwiz.desk.state import State
from fuelwiz.printable import clean
from fuelwiz.session import Rejected, list_key_paths, read


def most_entries(path: str) -> int:
    """How many entries the list at a path may have.

    Raises:
        NoSuchField: there is no list of tables at the path.
    """
    tables = list_key_paths().get(value_path(path))
    if tables is None:
        raise NoSuchField(f"there is no list {path} in a build")
    return tables.most


def with_entry(state: State, path: str, values: Mapping[str, Any]) -> tuple[State, int]:
    """The build with one entry more at the end of a list, and the entry's number.

    Raises:
        NoSuchField: there is no such list, it is full, or an entry holds no such values.
    """
    number = len(value_at(state.plain, value_path(path)) or ())
    if number >= most_entries(path):
        raise NoSuchField(f"{path} is full: {number} are the most")
    for key, value in values.items():
        try:
            read(spec_at(f"{path}.{number}.{key}"), value)
            if isinstance(value, str) and value != clean(value):
                raise NoSuchField(f"{path}.{key} holds a character that cannot be seen")
        except Rejected as rejected:
            raise NoSuchField(f"{path}.{key} {rejected.problems[0][1]}") from None
    state = state.with_value(f"{path}.{number}", dict(values))
    if path == "pump.curve" and number > 0 and "voltage" not in values:
        state = state.with_raw(f"{path}.{number}.voltage", "")  # the usual one is that of the first curve
    return state, number


def without_entry(state: State, path: str, number: int) -> State:
    """The build without one entry of a list; those after it move up.

    Raises:
        NoSuchField: there is no such entry.
    """
    _entries(state, path, number)
    state = state.renumbered(path, lambda at: None if at == number else at - (at > number))
    good = taken_out(state.good, (*value_path(path), number)) if state.good and _alike(state, path) else None
    return replace(state, plain=taken_out(state.plain, (*value_path(path), number)), good=good)


def with_entry_moved(state: State, path: str, number: int, to: int) -> State:
    """The build with one entry of a list in another place.

    Raises:
        NoSuchField: there is no such entry, or no such place.
    """
    entries = _entries(state, path, max(number, to))
    order = list(range(len(entries)))
    order.insert(to, order.pop(number))
    state = state.renumbered(path, lambda at: order.index(at) if at < len(order) else at)
    good = _reordered(state.good, path, order) if _alike(state, path) else None
    return replace(state, plain=_reordered(state.plain, path, order), good=good)


def _entries(state: State, path: str, number: int) -> list[Any]:
    most_entries(path)
    entries: list[Any] = value_at(state.plain, value_path(path)) or []
    if not 0 <= number < len(entries):
        raise NoSuchField(f"there is no number {number} in {path}")
    return entries


def _alike(state: State, path: str) -> bool:
    """Whether the last good data have the same entries, so that they can follow."""
    good, given = (value_at(plain, value_path(path)) or () for plain in (state.good, state.plain))
    return state.good is not None and len(good) == len(given)


def _reordered(plain: Plain | None, path: str, order: list[int]) -> Any:
    if plain is None:
        return None
    entries = value_at(plain, value_path(path))
    return put(plain, value_path(path), [entries[number] for number in order])
