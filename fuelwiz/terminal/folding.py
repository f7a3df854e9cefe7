"""Texts in ASCII, for terminals and files that show no more."""

from __future__ import annotations

import unicodedata
from functools import lru_cache

from fuelwiz.printable import NO_BREAK

_FOLDS: dict[int, int | str] = {
    **str.maketrans("✓✗·•▸–—−─│┊└├█▒░◆×÷‘’“”µμøØ", "+x.*>----|:++#=.Xx/''\"\"uuoO"),
    **{ord("…"): "...", ord("≤"): "<=", ord("≥"): ">=", ord("→"): "->"},
    **{ord("ß"): "ss", ord("æ"): "ae", ord("Æ"): "AE"},
}


@lru_cache(maxsize=1024)
def in_ascii(text: str) -> str:
    """A text in ASCII alone; a letter loses its accents, a sign without a likeness is "?".

    A no-break space stays one, so that wrapping honors it.
    """
    text = text.replace("°F", "F").replace("°C", "C").replace("°", " deg").translate(_FOLDS)
    return "".join(_plain_letter(letter) for letter in text)


def _plain_letter(letter: str) -> str:
    if letter.isascii() or letter == NO_BREAK:
        return letter
    parts = unicodedata.normalize("NFKD", letter)
    if "\N{FRACTION SLASH}" in parts:
        return " " + parts.replace("\N{FRACTION SLASH}", "/")
    base = "".join(part for part in parts if part.isascii())
    return base if base or unicodedata.combining(letter) else "?"
