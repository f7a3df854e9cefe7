"""How many cells a text takes in a terminal, and how it is clipped, filled up and broken into lines by them.

Each function takes another way to measure: Textual counts the cells of rare signs by tables of its own, and what is
drawn with it has to agree with it.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from functools import cache

from fuelwiz.printable import NO_BREAK

Measure = Callable[[str], int]

_FIRST_ODD = "\u0300"  # every sign below takes one cell
_SPACES = re.compile(r"[ \t\r\n]+")


def width_of(text: str) -> int:
    """The cells that a text takes."""
    return len(text) if text.isascii() or max(text) < _FIRST_ODD else sum(map(_cells, text))


@cache
def _cells(sign: str) -> int:
    if sign < _FIRST_ODD:
        return 1
    if unicodedata.combining(sign) or unicodedata.category(sign) in ("Mn", "Me", "Cf"):
        # The sign that makes an emoji of what stands before it also makes it wide.
        return 1 if sign == "\N{VARIATION SELECTOR-16}" else 0
    return 2 if unicodedata.east_asian_width(sign) in ("W", "F") else 1


def clip(text: str, width: int, more: str = "", measure: Measure = width_of) -> str:
    """The text in at most that many cells; what is cut off ends in `more`, where there is room for it."""
    if measure(text) <= width:
        return text
    if width <= 0:
        return ""
    kept = width - measure(more)
    return _head(text, kept, measure).rstrip() + more if kept > 0 else _head(text, width, measure)


def clip_words(text: str, width: int, more: str = "", measure: Measure = width_of) -> str:
    """The text in at most that many cells; what is cut off is so between two words, where more than one fits."""
    cut = clip(text, width, more, measure)
    kept = cut.removesuffix(more)
    if cut == text or not kept:
        return cut
    is_whole = text[len(kept) : len(kept) + 1] == " "
    words = (kept if is_whole else kept.rpartition(" ")[0]).rstrip(" ,;")
    if not words:
        return cut
    apart = f"{words} {more}"
    return apart if measure(apart) <= width else words + more


def _head(text: str, width: int, measure: Measure) -> str:
    """The longest beginning that fits in that many cells."""
    end = min(len(text), width)
    while end < len(text) and measure(text[: end + 1]) <= width:
        end += 1
    while end > 0 and measure(text[:end]) > width:
        end -= 1
    return text[:end]


def pad(text: str, width: int, *, right: bool = False, measure: Measure = width_of) -> str:
    """The text in exactly that many cells, to the left or to the right of them; a longer one is clipped."""
    text = clip(text, width, measure=measure)
    blanks = " " * (width - measure(text))
    return blanks + text if right else text + blanks


def wrap(
    text: str, width: int, rows: int | None = None, more: str = "…", measure: Measure = width_of
) -> list[str]:
    """The text in lines of at most that many cells, never broken at a hyphen or a no-break space.

    A word is broken only where it is longer than a line, a path behind one of its slashes. With `rows` there are at
    most that many lines, and the last one ends in `more` where something was left out.
    """
    width = max(width, 2)  # a wide sign takes two
    lines: list[str] = []
    for word in _SPACES.split(text.strip()):
        if lines and measure(lines[-1]) + 1 + measure(word) <= width:
            lines[-1] += " " + word
        else:
            lines += _pieces(word, width, measure)
    if rows is not None and len(lines) > rows:
        return [*lines[: rows - 1], _cut_short(lines[rows - 1], width, more, measure)] if rows > 0 else []
    return lines


def wrap_plain(text: str, width: int) -> list[str]:
    """The text in lines for a file or a pipe, a no-break space as the plain blank that it looks like."""
    return [line.replace(NO_BREAK, " ") for line in wrap(text, width)]


def hanging(text: str, width: int) -> str:
    """The text in lines of a terminal, each with its line end, those after the first set in."""
    first, *others = wrap_plain(text, width - 2) or [""]
    return "".join(f"{line}\n" for line in (first, *(f"  {other}" for other in others)))


def _cut_short(line: str, width: int, more: str, measure: Measure) -> str:
    """A line that goes on, with as many of its words as leave room for `more`."""
    while measure(line) + measure(more) > width and " " in line:
        line = line.rsplit(" ", 1)[0]
    return clip(line, width - measure(more), measure=measure).rstrip(" ,;:.") + more


def _pieces(word: str, width: int, measure: Measure) -> list[str]:
    """A word in pieces that fit, parted at a no-break space where there is one; one piece where it fits anyway."""
    if measure(word) <= width:
        return [word]
    breaks = [at for at, sign in enumerate(word) if sign == NO_BREAK and 0 < measure(word[:at]) <= width]
    if breaks:
        return [word[: breaks[-1]], *_pieces(word[breaks[-1] + 1 :], width, measure)]
    first = _head(word, width, measure) or word[0]
    first = first[: first.rfind("/", 1) + 1] or first  # a path is parted behind a folder's name
    return [first, *_pieces(word[len(first) :], width, measure)] if len(first) < len(word) else [first]
