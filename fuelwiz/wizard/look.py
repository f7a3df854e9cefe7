"""What this terminal can show: its characters, its colours, and the style of each role in them."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from rich.color import Color
from rich.style import Style

Role = Literal["text", "muted", "focus", "easy", "good", "brisk", "fast", "too fast", "fault"]
Ground = Literal["background", "row", "chosen", "field", "bar"]
Colours = Literal["none", "16", "256"]

# Every colour is a cell of the 256-colour cube or its grey ramp: SSH rarely says that a terminal has more.
_DARK: dict[Role, str] = {
    "text": "#dadada",
    "muted": "#a8a8a8",
    "focus": "#87d7ff",
    "easy": "#5fd7af",
    "good": "#afd75f",
    "brisk": "#ffd75f",
    "fast": "#ffaf5f",
    "too fast": "#ff8787",
    "fault": "#ff8787",
}
_LIGHT: dict[Role, str] = {
    "text": "#1c1c1c",
    "muted": "#585858",
    "focus": "#005faf",
    "easy": "#005f5f",
    "good": "#005f00",
    "brisk": "#5f5f00",
    "fast": "#875f00",
    "too fast": "#af0000",
    "fault": "#af0000",
}
_DARK_GROUNDS: dict[Ground, str] = {
    "background": "#121212",
    "row": "#303030",
    "chosen": "#303030",
    "field": "#3a3a3a",
    "bar": "#262626",
}
_LIGHT_GROUNDS: dict[Ground, str] = {
    "background": "#ffffff",
    "row": "#eeeeee",
    "chosen": "#eeeeee",
    "field": "#e4e4e4",
    "bar": "#eeeeee",
}
# Sixteen colours: ink and paper of the two mark cells. Coloured words would vanish on some background.
_CHIPS: dict[Role, tuple[int, int]] = {
    "easy": (0, 2),
    "good": (0, 6),
    "brisk": (0, 3),
    "fast": (0, 5),
    "too fast": (15, 1),
}

_MARKS: dict[str, tuple[str, str]] = {
    "easy": ("✓✓", "++"),
    "good": ("✓", "+"),
    "brisk": ("~", "~"),
    "fast": ("~~", "~~"),
    "too fast": ("✗", "x"),
    "works": ("✓", "+"),
    "stop": ("✗", "x"),
    "warning": ("!", "!"),
    "note": ("·", "."),
    "untouched": ("·", "."),
    "done": ("✓", "+"),
    "look here": ("!", "!"),
    "not sure": ("?", "?"),
    "pointer": ("▸", ">"),
    "unknown": ("–", "-"),
    "settled": ("*", "*"),
    "bar": ("█", "#"),
    "could": ("▒", "="),
    "goal": ("┊", ":"),
    "rule": ("─", "-"),
    "axis": ("│", "|"),
    "corner": ("└", "+"),
    "crossing": ("◆", "X"),
}
_FOLDS: dict[int, int | str] = {
    **str.maketrans("✓✗·•▸–—−─│┊└█▒◆×÷‘’“”µμøØ", "+x.*>----|:+#=Xx/''\"\"uuoO"),
    **{ord("…"): "...", ord("≤"): "<=", ord("≥"): ">=", ord("→"): "->", ord("ß"): "ss", ord("æ"): "ae"},
}


@dataclass(frozen=True, slots=True)
class Look:
    """How this terminal is drawn on: with which characters, how many colours, on which background."""

    unicode: bool = True
    colours: Colours = "256"
    light: bool = False
    grey: bool = False

    @property
    def greyed(self) -> Look:
        """The same without hues, for an answer that is held."""
        return replace(self, grey=True)

    def style(self, role: Role = "text", ground: Ground = "background", bold: bool = False) -> Style:
        """The style of words in a role on a ground."""
        return _style(self, role, ground, bold)

    def chip(self, role: Role, ground: Ground = "background", bold: bool = False) -> Style:
        """The style of a verdict's mark: as its word, but with 16 colours a coloured cell."""
        return _chip(self, role, ground, bold)

    @property
    def cursor(self) -> Style:
        """What is laid over the cell under the cursor, or over text that the next key replaces."""
        return Style(reverse=True)

    @property
    def screen_background(self) -> str:
        """What lies under everything: the theme's own ground, or that of the terminal."""
        return self.ground_hex("background") if self.colours == "256" else "ansi_default"

    def hex(self, role: Role) -> str:
        """The colour of a role as `#rrggbb`, for a style sheet."""
        return (_LIGHT if self.light else _DARK)[role]

    def ground_hex(self, ground: Ground) -> str:
        """The colour of a ground as `#rrggbb`, for a style sheet."""
        return (_LIGHT_GROUNDS if self.light else _DARK_GROUNDS)[ground]

    def mark(self, name: str) -> str:
        """The mark of that name, in UTF-8 or ASCII."""
        return _MARKS[name][0 if self.unicode else 1]

    def fold(self, text: str) -> str:
        """The text as this terminal can show it; a no-break space stays one, so that wrapping honours it."""
        return text if self.unicode or text.isascii() else _folded(text)


@lru_cache(maxsize=512)
def _style(look: Look, role: Role, ground: Ground, bold: bool) -> Style:
    if look.grey:
        role, bold = "muted", False
    if look.colours == "256":
        return Style(color=_cell(look.hex(role)), bgcolor=_cell(look.ground_hex(ground)), bold=bold or None)
    strong = bold or (ground in ("row", "chosen") and not look.grey) or role in ("focus", "fault")
    underline = ground == "field"
    return Style(bold=strong or None, reverse=ground == "chosen" or None, underline=underline or None)


@lru_cache(maxsize=512)
def _chip(look: Look, role: Role, ground: Ground, bold: bool) -> Style:
    if look.colours != "16" or look.grey or role not in _CHIPS:
        return _style(look, role, ground, bold)
    ink, paper = _CHIPS[role]
    return Style(color=Color.from_ansi(ink), bgcolor=Color.from_ansi(paper))


def _cell(colour: str) -> Color:
    """The cell of the 256-colour palette that has exactly this colour."""
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    if red == green == blue and (red - 8) % 10 == 0:
        return Color.from_ansi(232 + (red - 8) // 10)
    steps = [(0, 95, 135, 175, 215, 255).index(part) for part in (red, green, blue)]
    return Color.from_ansi(16 + 36 * steps[0] + 6 * steps[1] + steps[2])


@lru_cache(maxsize=1024)
def _folded(text: str) -> str:
    text = text.replace("°F", "F").replace("°C", "C").replace("°", " deg").translate(_FOLDS)
    return "".join(_plain_letter(letter) for letter in text)


def _plain_letter(letter: str) -> str:
    if letter.isascii() or letter == "\N{NO-BREAK SPACE}":
        return letter
    parts = unicodedata.normalize("NFKD", letter)
    if "\N{FRACTION SLASH}" in parts:
        return " " + parts.replace("\N{FRACTION SLASH}", "/")
    base = "".join(part for part in parts if part.isascii())
    if base or unicodedata.combining(letter):
        return base
    return "?"


def look_of(environ: Mapping[str, str]) -> Look:
    """How to draw on the terminal that these environment variables describe."""
    return Look(unicode=_speaks_utf8(environ), colours=_colours(environ), light=_is_light(environ))


def _speaks_utf8(environ: Mapping[str, str]) -> bool:
    if _is_simple(environ):
        return False
    chosen = environ.get("LC_ALL", "")
    if not chosen:
        language, kind = environ.get("LANG", ""), environ.get("LC_CTYPE", "")
        # Python itself puts LC_CTYPE=C.UTF-8 into a C locale (PEP 538): that says nothing about the terminal.
        chosen = language if kind == "C.UTF-8" or not kind else kind
    return "utf8" in chosen.lower().replace("-", "")


def _colours(environ: Mapping[str, str]) -> Colours:
    """As the library that sends the colours counts them, so that none is ever replaced by a nearby one."""
    term = environ.get("TERM", "")
    if environ.get("NO_COLOR") or term in ("", "dumb", "unknown") or term.startswith("vt"):
        return "none"
    many = environ.get("COLORTERM", "").strip().lower() in ("truecolor", "24bit")
    return "256" if many or term.rpartition("-")[2] in ("256color", "kitty") else "16"


def _is_simple(environ: Mapping[str, str]) -> bool:
    term = environ.get("TERM", "")
    return term in ("", "dumb", "unknown", "linux") or term.startswith("vt")


def _is_light(environ: Mapping[str, str]) -> bool:
    asked = environ.get("FUELWIZ_BACKGROUND", "").strip().lower()
    if asked in ("light", "dark"):
        return asked == "light"
    return environ.get("COLORFGBG", "").rpartition(";")[2] in ("7", "15")
