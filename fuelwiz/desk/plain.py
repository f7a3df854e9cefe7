"""Plain session data that never change: each edit gives new data, and shares with the old what it left alone."""

from __future__ import annotations

from typing import Any

from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.session import KeyPath, key_path_of, value_at

__all__ = ["KeyPath", "Plain", "put", "taken_out", "value_at", "value_path"]

Plain = dict[str, Any]

_STANDS_EMPTY = ("surge", "strainer")


def value_path(path: str) -> KeyPath:
    """A dotted path as keys and numbers; what a stress case changes is one key, dots and all."""
    parts = key_path_of(path)
    if len(parts) > 5 and parts[:2] == ("stress", "case") and parts[3] == "change":
        return (*parts[:4], ".".join(str(part) for part in parts[4:]))
    return parts


def put(plain: Any, key_path: KeyPath, value: Any) -> Any:
    """The data with another value at a path; tables on it are made, and a list grows by one at its end.

    Raises:
        NoSuchField: the path leads past the end of a list, or through a value.
    """
    if not key_path:
        return value
    first, rest = key_path[0], key_path[1:]
    if isinstance(first, int):
        items = list(plain) if isinstance(plain, list) else [] if plain is None else None
        if items is None or first > len(items):
            raise NoSuchField(f"there is no number {first} in the list")
        below = items[first] if first < len(items) else None
        items[first : first + 1] = [put(below, rest, value)]
        return items
    if plain is False:
        plain = None  # a part that was said not to be there
    if plain is not None and not isinstance(plain, dict):
        raise NoSuchField(f"there is no {first} here")
    return {**(plain or {}), first: put((plain or {}).get(first), rest, value)}


def taken_out(plain: Plain, key_path: KeyPath, *, keep_sections: bool = False) -> Plain:
    """The data without what stands at a path; a list that this leaves empty goes too.

    Args:
        plain: the data.
        key_path: where it stands.
        keep_sections: whether a section that is left empty stays; else it goes, where it may.
    """
    if value_at(plain, key_path) is None:
        return plain
    above, last = key_path[:-1], key_path[-1]
    holder = value_at(plain, above)
    rest: Any
    if isinstance(holder, list):
        rest = [item for number, item in enumerate(holder) if number != last]
    else:
        rest = {key: value for key, value in holder.items() if key != last}
    if not rest and above and _goes_when_empty(above, holder, keep_sections):
        return taken_out(plain, above, keep_sections=keep_sections)
    changed: Plain = put(plain, above, rest)
    return changed


def _goes_when_empty(key_path: KeyPath, holder: Any, keep_sections: bool) -> bool:
    if isinstance(holder, list):
        return True
    return not keep_sections and isinstance(key_path[-1], str) and key_path[-1] not in _STANDS_EMPTY
