"""How this terminal is drawn on: the style of each role in its colors, and its marks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from rich.color import Color
from rich.style import Style

from fuelwiz.record import record
from fuelwiz.terminal.environment import Colors, colors_of, is_light, is_simple, locale_speaks_utf8
from fuelwiz.terminal.folding import in_ascii
from fuelwiz.terminal.marks import MARKS
from fuelwiz.terminal.palette import (
    CHIPS,
    DARK,
    DARK_GROUNDS,
    LIGHT,
    LIGHT_GROUNDS,
    Ground,
    Role,
    cube_cell,
)

CURSOR = "cursor"
"""Marks, in the meta of a style, the cell that one types into."""


@record
class Look:
    """How this terminal is drawn on: with which characters, how many colors, on which background."""

    unicode: bool = True
    colors: Colors = "256"
    light: bool = False
    gray: bool = False

    @property
    def grayed(self) -> Look:
        """The same without hues, for an answer that is held."""
        return replace(self, gray=True)

    def style(self, role: Role = "text", ground: Ground = "background", bold: bool = False) -> Style:
        """The style of words in a role on a ground."""
        return _style(self, role, ground, bold)

    def chip(self, role: Role, ground: Ground = "background", bold: bool = False) -> Style:
        """The style of a verdict's mark: as its word, but with 16 colors a colored cell."""
        return _chip(self, role, ground, bold)

    @property
    def selected(self) -> Style:
        """What is laid over text that the next key replaces."""
        return Style(reverse=True)

    @property
    def cursor(self) -> Style:
        """What is laid over the cell under the cursor; on a real terminal its own cursor stands there instead."""
        return Style(reverse=True, meta={CURSOR: True})

    @property
    def cursor_place(self) -> Style:
        """What is laid over the cell of the cursor where it is not painted."""
        return Style(meta={CURSOR: True})

    @property
    def screen_background(self) -> str:
        """What lies under everything: the theme's own ground, or that of the terminal."""
        return self.ground_hex("background") if self.colors == "256" else "ansi_default"

    def hex(self, role: Role) -> str:
        """The color of a role as `#rrggbb`, for a style sheet."""
        return (LIGHT if self.light else DARK)[role]

    def ground_hex(self, ground: Ground) -> str:
        """The color of a ground as `#rrggbb`, for a style sheet."""
        return (LIGHT_GROUNDS if self.light else DARK_GROUNDS)[ground]

    def mark(self, name: str) -> str:
        """The mark of that name, in UTF-8 or ASCII."""
        return MARKS[name][0 if self.unicode else 1]

    def fold(self, text: str) -> str:
        """The text as this terminal can show it; a no-break space stays one, so that wrapping honors it."""
        return text if self.unicode or text.isascii() else in_ascii(text)


@lru_cache(maxsize=512)
def _style(look: Look, role: Role, ground: Ground, bold: bool) -> Style:
    if look.gray:
        role, bold = "muted", False
    if look.colors == "256":
        return Style(color=_color(look.hex(role)), bgcolor=_color(look.ground_hex(ground)), bold=bold or None)
    strong = bold or (ground in ("row", "chosen") and not look.gray) or role in ("focus", "fault")
    underline = ground == "field"
    return Style(bold=strong or None, reverse=ground == "chosen" or None, underline=underline or None)


@lru_cache(maxsize=512)
def _chip(look: Look, role: Role, ground: Ground, bold: bool) -> Style:
    if look.colors != "16" or look.gray or role not in CHIPS:
        return _style(look, role, ground, bold)
    ink, paper = CHIPS[role]
    return Style(color=Color.from_ansi(ink), bgcolor=Color.from_ansi(paper))


def _color(hex_color: str) -> Color:
    return Color.from_ansi(cube_cell(hex_color))


def look_of(environ: Mapping[str, str]) -> Look:
    """How to draw on the terminal that these environment variables describe."""
    return Look(
        unicode=locale_speaks_utf8(environ) and not is_simple(environ),
        colors=colors_of(environ),
        light=is_light(environ),
    )
