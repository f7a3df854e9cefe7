"""How a build was before its last change: kept at each save, so that the list can say what changed."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fuelwiz.errors import OutputError
from fuelwiz.store.build_file import read_whole
from fuelwiz.store.moving import HISTORY

_NO_CHANGE = ("format", "record", "show_units")
_MOST_LEVELS = 8


@dataclass(frozen=True, slots=True)
class Change:
    """One key, what stood there and what stands there now; None is nothing, and lists count from 0."""

    key: str
    before: Any
    now: Any


def keep(path: Path, new_text: str) -> None:
    """Keeps the file as it stands, where what is about to be saved changes the build.

    To be called right before a save. A folder that cannot be written keeps nothing: the save will say so.

    Args:
        path: the build's file.
        new_text: what is going to stand in it.
    """
    from fuelwiz.files import write_atomically

    before, now = _plain_of(path), _parsed(new_text)
    if before is None or now is None or not _changes(before, now):
        return
    kept = _kept(path)
    with suppress(OSError, ValueError, OutputError):
        if kept.parent.is_symlink():
            return
        kept.parent.mkdir(exist_ok=True)
        write_atomically(kept, read_whole(path).decode("utf-8"))


def last_change(path: Path) -> tuple[Change, ...]:
    """What was changed last in a build, in the order of the file; empty where that is not known."""
    before, now = _plain_of(_kept(path)), _plain_of(path)
    return () if before is None or now is None else _changes(before, now)


def _kept(path: Path) -> Path:
    return path.parent / HISTORY / path.name


def _plain_of(path: Path) -> dict[str, Any] | None:
    try:
        return _parsed(read_whole(path).decode("utf-8"))
    except (OSError, ValueError):
        return None


def _parsed(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text.removeprefix("\ufeff"))
    except (ValueError, RecursionError):
        return None


def _changes(before: dict[str, Any], now: dict[str, Any]) -> tuple[Change, ...]:
    told = {key: value for key, value in before.items() if key not in _NO_CHANGE}
    tells = {key: value for key, value in now.items() if key not in _NO_CHANGE}
    return tuple(_between("", told, tells, 0))


def _between(way: str, before: Any, now: Any, level: int) -> Iterator[Change]:
    """The changes below a way; a list of another length is one change."""
    if before == now and type(before) is type(now):
        return
    ways = _common_ways(before, now) if level < _MOST_LEVELS else ()
    if not ways:
        yield Change(way, before, now)
    for key in ways:
        below = f"{way}.{key}" if way else str(key)
        yield from _between(below, _at(before, key), _at(now, key), level + 1)


def _common_ways(before: Any, now: Any) -> tuple[Any, ...]:
    """Where to look on below two values: the keys of two tables, the numbers of two lists of tables."""
    if isinstance(before, dict) and isinstance(now, dict):
        return (*now, *(key for key in before if key not in now))
    both = (before, now)
    if all(isinstance(one, list) and one and all(isinstance(row, dict) for row in one) for one in both):
        return tuple(range(len(now))) if len(before) == len(now) else ()
    return ()


def _at(value: Any, key: Any) -> Any:
    return value.get(key) if isinstance(value, dict) else value[key]
