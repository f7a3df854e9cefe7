"""Plain session data that never change: each edit gives new data, and shares with the old what it left alone."""

from __future__ import annotations

from typing import Any

from fuelwiz.desk.errors import NoSuchField
from fuelwiz.session import Way, value_at, way_of

__all__ = ["Plain", "Way", "changes", "put", "taken_out", "value_at", "way"]

Plain = dict[str, Any]

_STANDS_EMPTY = ("surge",)


def way(path: str) -> Way:
    """The way to a value; what a stress case changes is one key, dots and all."""
    parts = way_of(path)
    if len(parts) > 5 and parts[:2] == ("stress", "case") and parts[3] == "change":
        return (*parts[:4], ".".join(str(part) for part in parts[4:]))
    return parts


def put(plain: Any, at: Way, value: Any) -> Any:
    """The data with another value at a way; tables on the way are made, and a list grows by one at its end.

    Raises:
        NoSuchField: the way leads past the end of a list, or through a value.
    """
    if not at:
        return value
    first, rest = at[0], at[1:]
    if isinstance(first, int):
        items = list(plain) if isinstance(plain, list) else [] if plain is None else None
        if items is None or first > len(items):
            raise NoSuchField(f"there is no number {first} in the list")
        below = items[first] if first < len(items) else None
        items[first : first + 1] = [put(below, rest, value)]
        return items
    if plain is not None and not isinstance(plain, dict):
        raise NoSuchField(f"there is no {first} here")
    return {**(plain or {}), first: put((plain or {}).get(first), rest, value)}


def taken_out(plain: Plain, at: Way) -> Plain:
    """The data without what stands at a way; a section that this leaves empty goes too, where it may."""
    if value_at(plain, at) is None:
        return plain
    above, last = at[:-1], at[-1]
    holder = value_at(plain, above)
    rest: Any
    if isinstance(holder, list):
        rest = [item for number, item in enumerate(holder) if number != last]
    else:
        rest = {key: value for key, value in holder.items() if key != last}
    if not rest and above and _goes_when_empty(above, holder):
        return taken_out(plain, above)
    changed: Plain = put(plain, above, rest)
    return changed


def _goes_when_empty(at: Way, holder: Any) -> bool:
    return isinstance(holder, list) or (isinstance(at[-1], str) and at[-1] not in _STANDS_EMPTY)


def changes(before: Any, after: Any) -> list[tuple[str, Any, Any]]:
    """Every value that differs: its path, what stood there, what stands there now; None where there is nothing."""
    return list(_changes(before, after, ()))


def _changes(before: Any, after: Any, at: Way) -> list[tuple[str, Any, Any]]:
    if before == after and type(before) is type(after):
        return []
    tables = [value for value in (before, after) if isinstance(value, dict)]
    if tables and len(tables) == sum(value is not None for value in (before, after)):
        keys = dict.fromkeys(key for table in tables for key in table)
        found = [(key, (before or {}).get(key), (after or {}).get(key)) for key in keys]
    elif _lists_of_tables(before, after):
        most = max(len(before or ()), len(after or ()))
        found = [(number, _item(before, number), _item(after, number)) for number in range(most)]
    else:
        return [(".".join(map(str, at)), before, after)]
    return [change for key, old, new in found for change in _changes(old, new, (*at, key))]


def _lists_of_tables(*values: Any) -> bool:
    lists = [value for value in values if value is not None]
    return all(isinstance(value, list) and value and isinstance(value[0], dict) for value in lists)


def _item(values: Any, number: int) -> Any:
    return values[number] if values is not None and number < len(values) else None
