"""What the place that a text goes to can show: its width, its signs, its colours."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, Protocol

from fuelwiz.advice.blocks import Mark

Colours = Literal["none", "16", "256"]

WIDTH = 80
NARROWEST = 40

# Ink and paper of a mark. Only marks are coloured: nobody knows the background that words would stand on.
_SIXTEEN: dict[Mark, tuple[int, int]] = {
    "easy": (0, 2),
    "good": (0, 6),
    "brisk": (0, 3),
    "fast": (0, 5),
    "too fast": (15, 1),
    "yes": (0, 2),
    "no": (15, 1),
    "stop": (15, 1),
    "warning": (0, 3),
}
# The same with the cells of the 256-colour cube, which no theme changes; black on each.
_CUBE: dict[Mark, tuple[int, int]] = {
    mark: (16, {2: 79, 6: 149, 3: 221, 5: 215, 1: 210}[paper]) for mark, (_, paper) in _SIXTEEN.items()
}
_FOLDS: dict[int, str] = {
    **str.maketrans("✓✗·•–—−─│×÷‘’“”µ", "+x.*----|x/''\"\"u"),  # type: ignore[dict-item]
    **{ord("…"): "...", ord("≤"): "<=", ord("≥"): ">=", ord("²"): "2", ord("³"): "3"},
    **{ord("ß"): "ss", ord("æ"): "ae", ord("ø"): "o", ord("Æ"): "AE", ord("Ø"): "O"},
}


class Stream(Protocol):
    """What has to be known of an output."""

    @property
    def encoding(self) -> str | None:
        """The name of its encoding."""

    def isatty(self) -> bool:
        """Whether a terminal stands behind it."""


@dataclass(frozen=True, slots=True)
class Look:
    """How a text is written: columns, whether signs beyond ASCII are, and how many colours."""

    width: int = WIDTH
    unicode: bool = True
    colours: Colours = "none"

    def fold(self, text: str) -> str:
        """The text in the signs that can be shown."""
        return text if self.unicode or text.isascii() else in_ascii(text)

    def marked(self, symbol: str, mark: Mark) -> str:
        """A symbol in the colours of its mark."""
        inks = {"none": {}, "16": _SIXTEEN, "256": _CUBE}[self.colours]
        return _painted(symbol, inks[mark]) if mark in inks else symbol

    def strong(self, text: str) -> str:
        """A text that is to be seen first."""
        return text if self.colours == "none" else _bold(text)


def look_of(stream: Stream | None, environ: Mapping[str, str], columns: int | None = None) -> Look:
    """How to write to a stream.

    Args:
        stream: where the text goes; None where there is none.
        environ: NO_COLOR, TERM and COLORTERM say what a terminal can do.
        columns: of the terminal, where the text is to fill it.
    """
    on_terminal = stream is not None and stream.isatty()
    return Look(
        width=max(NARROWEST, columns) if on_terminal and columns else WIDTH,
        unicode=speaks_utf8(stream) and not (on_terminal and _is_simple(environ)),
        colours=_colours(environ) if on_terminal else "none",
    )


def speaks_utf8(stream: Stream | None) -> bool:
    """Whether an output can hold every sign."""
    encoding = (stream.encoding if stream is not None else None) or ""
    return encoding.lower().replace("-", "").replace("_", "") in {"utf8", "utf8sig"}


def _is_simple(environ: Mapping[str, str]) -> bool:
    term = environ.get("TERM", "")
    return term in {"", "dumb", "unknown", "linux"} or term.startswith("vt")


def _colours(environ: Mapping[str, str]) -> Colours:
    term = environ.get("TERM", "")
    if environ.get("NO_COLOR") or term in {"", "dumb", "unknown"} or term.startswith("vt"):
        return "none"
    many = environ.get("COLORTERM", "").strip().lower() in {"truecolor", "24bit"}
    return "256" if many or term.rpartition("-")[2] in {"256color", "kitty"} else "16"


def _painted(text: str, inks: tuple[int, int]) -> str:
    from rich.color import Color, ColorSystem
    from rich.style import Style

    ink, paper = inks
    style = Style(color=Color.from_ansi(ink), bgcolor=Color.from_ansi(paper))
    return style.render(text, color_system=ColorSystem.EIGHT_BIT)


def _bold(text: str) -> str:
    from rich.color import ColorSystem
    from rich.style import Style

    return Style(bold=True).render(text, color_system=ColorSystem.STANDARD)


def in_ascii(text: str) -> str:
    """A text in ASCII alone; a letter loses its accents, a sign without a likeness is "?"."""
    text = text.replace("°F", "F").replace("°C", "C").replace("°", " deg").translate(_FOLDS)
    return "".join(_plain_letter(letter) for letter in text)


def _plain_letter(letter: str) -> str:
    if letter.isascii() or letter == "\N{NO-BREAK SPACE}":
        return letter
    base = "".join(part for part in unicodedata.normalize("NFKD", letter) if part.isascii())
    return base if base or unicodedata.combining(letter) else "?"
