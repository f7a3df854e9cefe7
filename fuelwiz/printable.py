"""Texts that are safe to show: a session file may come from anybody."""

from __future__ import annotations

from typing import Any

NO_BREAK = "\N{NO-BREAK SPACE}"
"""Stands between a number and its unit, so that no line ends there."""
MINUS = "\N{MINUS SIGN}"
"""Stands before a number below zero, as wide as a plus; read, it is a hyphen's equal."""

_LONGEST_SHOWN = 40
_TURNS = (0x061C, 0x200E, 0x200F, *range(0x202A, 0x202F), *range(0x2066, 0x206A))
_LINE_ENDS = (0x2028, 0x2029)
_HALVES = range(0xD800, 0xE000)
_DROPPED: dict[int, str | None] = dict.fromkeys(
    (*range(0x20), *range(0x7F, 0xA0), *_TURNS, *_LINE_ENDS, *_HALVES)
)
_INVISIBLE = dict.fromkeys(
    (
        *(0x00AD, 0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x3164, 0xFEFF, 0xFFA0),
        *range(0x180B, 0x1810),
        *range(0x200B, 0x200E),
        *range(0x2060, 0x2066),
        *range(0x206A, 0x2070),
        *range(0xFE00, 0xFE10),
        *range(0xFFF9, 0xFFFC),
        *range(0x1D173, 0x1D17B),
        *range(0xE0000, 0xE1000),
    ),
    "\N{REPLACEMENT CHARACTER}",
)
"""Signs of no width, by which two names can look alike: joiners, fillers, selectors, tags."""
_ONE_LINE = _DROPPED | {ord("\t"): " ", ord("\n"): " "}
_LINES = _DROPPED | {ord("\t"): " ", ord("\n"): "\n"}


def clean(text: str, *, lines: bool = False) -> str:
    """A text without control characters, signs that turn the reading direction, and halves of characters.

    Args:
        text: what a file holds.
        lines: whether line ends stay; else each becomes a blank.
    """
    return text.translate(_LINES if lines else _ONE_LINE)


def visible(text: str) -> str:
    """A text in which signs that cannot be seen are marked."""
    return text if text.isascii() else text.translate(_INVISIBLE)


def shown_name(text: str) -> str:
    """A text from anywhere, a name of a file for one, as one line may show it: safe, and with nothing hidden."""
    return text if text.isascii() and text.isprintable() else visible(clean(text))


def quoted(value: Any) -> str:
    """A plain value as an error says it back: short, and safe to print."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        kept = clean(value[: _LONGEST_SHOWN + 1])
        return f'"{kept}"' if len(kept) <= _LONGEST_SHOWN else f'"{kept[: _LONGEST_SHOWN - 1]}…"'
    if isinstance(value, int):
        return str(value) if abs(value) < 10**20 else "a number far too large"
    if isinstance(value, float):
        return repr(value)
    return _quoted_whole(value)


def _quoted_whole(value: Any) -> str:
    """A value that is too large to be said back."""
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        return "a list" if value else "an empty list"
    return f"the date or time {value}"
