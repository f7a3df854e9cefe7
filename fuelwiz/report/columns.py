"""How wide a text is in a terminal, and how it breaks into lines."""

from __future__ import annotations

import unicodedata
from functools import cache

from fuelwiz.advice.numbers import NO_BREAK

_FIRST_ODD = "\u0300"  # every sign below takes one column


def width_of(text: str) -> int:
    """The columns that a text takes."""
    return len(text) if text.isascii() or max(text) < _FIRST_ODD else sum(map(_columns, text))


@cache
def _columns(sign: str) -> int:
    if unicodedata.combining(sign) or unicodedata.category(sign) in {"Mn", "Me", "Cf"}:
        # The sign that makes an emoji of what stands before it also makes it wide.
        return 1 if sign == "\N{VARIATION SELECTOR-16}" else 0
    return 2 if unicodedata.east_asian_width(sign) in {"W", "F"} else 1


def wrapped(text: str, width: int) -> list[str]:
    """A text in lines of `width` columns at most, broken at blanks; inside a word only where it is longer.

    A no-break space joins a number and its unit; it comes out as a plain blank.
    """
    lines, line = [], ""
    for word in text.split(" "):
        together = f"{line} {word}" if line else word
        if width_of(together) <= width:
            line = together
            continue
        if line:
            lines.append(line)
        *full, line = _pieces(word, width)
        lines += full
    lines.append(line)
    return [line.replace(NO_BREAK, " ").rstrip() for line in lines]


def _pieces(word: str, width: int) -> list[str]:
    """A word in pieces that fit; one piece where it is short enough."""
    if width_of(word) <= width:
        return [word]
    pieces, piece = [], ""
    for sign in word:
        if piece and width_of(piece + sign) > width:
            pieces.append(piece)
            piece = ""
        piece += sign
    return [*pieces, piece]


def padded(text: str, width: int, *, right: bool = False) -> str:
    """A text filled up with blanks to `width` columns."""
    blanks = " " * max(0, width - width_of(text))
    return blanks + text if right else text + blanks
