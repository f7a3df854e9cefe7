"""What the place that a text goes to can show: its width, its signs, its colors."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from fuelwiz.advice.blocks import Mark
from fuelwiz.printable import visible
from fuelwiz.record import record
from fuelwiz.terminal.environment import Colors, colors_of, is_simple, is_utf8, locale_speaks_utf8
from fuelwiz.terminal.folding import in_ascii
from fuelwiz.terminal.palette import CHIPS, DARK, Role, cube_cell

WIDTH = 80
NARROWEST = 40
WIDEST_LABEL = 22
"""Cells that the labels of a list take at most, on paper and screen."""

BLACK = 16  # in the 256-color cube, which no theme changes
# Only marks are colored: nobody knows the background that words would stand on.
ROLES: dict[Mark, Role] = {
    "easy": "easy",
    "good": "good",
    "brisk": "brisk",
    "fast": "fast",
    "too fast": "too fast",
    "yes": "easy",
    "no": "too fast",
    "stop": "too fast",
    "warning": "brisk",
}


class Stream(Protocol):
    """What has to be known of an output."""

    @property
    def encoding(self) -> str | None:
        """The name of its encoding."""

    def isatty(self) -> bool:
        """Whether a terminal stands behind it."""


@record
class TextLook:
    """How a text is written: columns, whether signs beyond ASCII are, and how many colors."""

    width: int = WIDTH
    unicode: bool = True
    colors: Colors = "none"

    def fold(self, text: str) -> str:
        """The text in the signs that can be shown, and measured as they are."""
        return text if text.isascii() else visible(text if self.unicode else in_ascii(text))

    def marked(self, symbol: str, mark: Mark) -> str:
        """A symbol in the colors of its mark."""
        role = ROLES.get(mark)
        if role is None or self.colors == "none":
            return symbol
        inks = CHIPS[role] if self.colors == "16" else (BLACK, cube_cell(DARK[role]))
        return _painted(symbol, inks)

    def strong(self, text: str) -> str:
        """A text that is to be seen first."""
        return text if self.colors == "none" else _bold(text)


def text_look_of(stream: Stream | None, environ: Mapping[str, str], columns: int | None = None) -> TextLook:
    """How to write to a stream.

    Args:
        stream: where the text goes; None where there is none.
        environ: says what a terminal can do, and by COLUMNS how wide a printer is.
        columns: of the terminal or the printer, where the text is to fill it.
    """
    on_terminal = stream is not None and stream.isatty()
    return TextLook(
        width=max(NARROWEST, columns) if columns and (on_terminal or environ.get("COLUMNS")) else WIDTH,
        unicode=speaks_utf8(stream, environ) and not (on_terminal and is_simple(environ)),
        colors=colors_of(environ) if on_terminal else "none",
    )


def speaks_utf8(stream: Stream | None, environ: Mapping[str, str]) -> bool:
    """Whether an output can hold every sign, and whoever reads it can show them.

    In a C locale Python writes UTF-8 all the same (PEP 538, PEP 540); what it was told itself does count.
    """
    is_ordered = environ.get("PYTHONUTF8") == "1" or is_utf8(
        environ.get("PYTHONIOENCODING", "").partition(":")[0]
    )
    return stream is not None and is_utf8(stream.encoding) and (is_ordered or locale_speaks_utf8(environ))


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
