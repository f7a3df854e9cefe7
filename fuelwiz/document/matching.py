"""Lists of tables, and which entry of an old list became which of a new one."""

from __future__ import annotations

from typing import Any

from fuelwiz.document.toml_text import same

Pairs = tuple[tuple[int, int], ...]


def are_tables(value: Any) -> bool:
    """Whether a value is a list of tables, one at least."""
    return isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)


def matched(old: list[Any], new: list[Any]) -> Pairs:
    """Places of old and new entries that belong together: in order, as alike and as many as can be."""
    best: list[list[tuple[float, Pairs]]] = [[(0.0, ())] * (len(new) + 1)]
    for at, before in enumerate(old):
        row: list[tuple[float, Pairs]] = [(0.0, ())]
        for place, after in enumerate(new):
            score, pairs = best[at][place]
            paired = (score + _likeness(before, after), (*pairs, (at, place)))
            row.append(max(paired, best[at][place + 1], row[place], key=lambda one: one[0]))
        best.append(row)
    return best[-1][-1][1]


def _likeness(one: Any, other: Any) -> float:
    """1 for equals, nearly nothing for entries that share nothing."""
    if same(one, other):
        return 1.0
    if not isinstance(one, dict) or not isinstance(other, dict):
        return 0.01
    shared = sum(1 for key in one if key in other and same(one[key], other[key]))
    return 0.01 + 0.9 * shared / max(len(one), len(other), 1)
