"""Texts that are safe to show: a session file may come from anybody."""

from __future__ import annotations

from datetime import date, datetime, time
from typing import Any

_LONGEST_SHOWN = 40
_BIDI = (0x061C, 0x200E, 0x200F, 0x2028, 0x2029, *range(0x202A, 0x202F), *range(0x2066, 0x206A))
_CONTROLS = (*range(0x20), *range(0x7F, 0xA0), *_BIDI)
_DROP: dict[int, str | None] = dict.fromkeys(_CONTROLS) | {ord("\t"): " ", ord("\n"): " "}
_DROP_BUT_LINES = _DROP | {ord("\n"): "\n"}


def clean(text: str, *, lines: bool = False) -> str:
    """A text without control characters, without signs that turn the reading direction, and without half characters.

    Args:
        text: what a file holds.
        lines: whether line ends stay; else each becomes a blank.
    """
    kept = text.translate(_DROP_BUT_LINES if lines else _DROP)
    if kept.isascii():
        return kept
    return "".join(sign for sign in kept if not "\ud800" <= sign <= "\udfff")


def shown(value: Any) -> str:
    """A plain value as an error says it back: short, and safe to print."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f'"{_cut(clean(value))}"'
    if isinstance(value, int):
        return str(value) if abs(value) < 10**20 else "a number far too large"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return "a list" if value else "an empty list"
    if isinstance(value, datetime | date | time):
        return f"the date or time {value.isoformat()}"
    return "something else"


def _cut(text: str) -> str:
    return text if len(text) <= _LONGEST_SHOWN else f"{text[: _LONGEST_SHOWN - 1]}…"
