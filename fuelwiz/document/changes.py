"""What differs between two pieces of plain data, key by key."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from fuelwiz.document.matching import are_tables
from fuelwiz.record import record

_MOST_LEVELS = 12


@record
class Change:
    """One key, what stood there and what stands there now; None is nothing, and lists count from 0."""

    key: str
    before: Any
    now: Any


def changes(before: Any, now: Any, *, into_absent: bool) -> tuple[Change, ...]:
    """Every key of which the values differ, in the order of the data.

    Args:
        before: plain data.
        now: the same later on.
        into_absent: whether a table or an entry that one of the two lacks is told key by key; else it is
            one change, and so is a list that has become longer or shorter.
    """
    return tuple(_between("", before, now, into_absent, _MOST_LEVELS))


def _between(key: str, before: Any, now: Any, into_absent: bool, levels: int) -> Iterator[Change]:
    if before == now and type(before) is type(now):
        return
    below = _below(before, now, into_absent) if levels else None
    if below is None:
        yield Change(key, before, now)
        return
    for part, old, new in below:
        yield from _between(f"{key}.{part}" if key else str(part), old, new, into_absent, levels - 1)


def _below(before: Any, now: Any, into_absent: bool) -> list[tuple[str | int, Any, Any]] | None:
    """What stands below two values, key by key; None where they are told as a whole."""
    values = [value for value in (before, now) if value is not None]
    if len(values) < 2 and not into_absent:
        return None
    if values and all(isinstance(value, dict) for value in values):
        keys = dict.fromkeys(key for value in reversed(values) for key in value)
        return [(key, (before or {}).get(key), (now or {}).get(key)) for key in keys]
    if values and all(are_tables(value) for value in values):
        lengths = {len(value) for value in values}
        if len(lengths) > 1 and not into_absent:
            return None
        return [(number, _item(before, number), _item(now, number)) for number in range(max(lengths))]
    return None


def _item(values: list[Any] | None, number: int) -> Any:
    return values[number] if values is not None and number < len(values) else None
