"""What the environment says of a terminal: its colors, its background, and whether it shows more than ASCII."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal

Colors = Literal["none", "16", "256"]


def colors_of(environ: Mapping[str, str]) -> Colors:
    """How many colors it has, counted as Textual counts them, so that none is ever replaced by a nearby one."""
    term = environ.get("TERM", "")
    if environ.get("NO_COLOR") or term in ("", "dumb", "unknown") or term.startswith("vt"):
        return "none"
    many = environ.get("COLORTERM", "").strip().lower() in ("truecolor", "24bit")
    return "256" if many or term.rpartition("-")[2] in ("256color", "kitty") else "16"


def is_simple(environ: Mapping[str, str]) -> bool:
    """Whether it draws ASCII alone, whatever its encoding: the Linux console and the old ones."""
    term = environ.get("TERM", "")
    return term in ("", "dumb", "unknown", "linux") or term.startswith("vt")


def is_light(environ: Mapping[str, str]) -> bool:
    """Whether its background is light, as far as anything says so."""
    asked = environ.get("FUELWIZ_BACKGROUND", "").strip().lower()
    if asked in ("light", "dark"):
        return asked == "light"
    return environ.get("COLORFGBG", "").rpartition(";")[2] in ("7", "15")


BACKGROUND_QUERY = "\x1b]11;?\x1b\\"
"""Asks a terminal for the color of its background: XTerm Control Sequences, "OSC Ps ; Pt", Ps = 11."""
_BACKGROUND = re.compile(r"\x1b\]11;rgba?:([0-9a-f]{1,4})/([0-9a-f]{1,4})/([0-9a-f]{1,4})", re.IGNORECASE)


def background_is_worth_asking(environ: Mapping[str, str]) -> bool:
    """Whether the color of its background matters, and nothing says it yet."""
    is_named = environ.get("FUELWIZ_BACKGROUND", "").strip().lower() in ("light", "dark")
    return colors_of(environ) == "256" and not is_named and not environ.get("COLORFGBG")


def light_in_answer(text: str) -> bool | None:
    """Whether a terminal's answer tells of a light background; None where the text is no such answer.

    >>> light_in_answer("\x1b]11;rgb:ffff/ffff/dddd\x07")
    True
    """
    found = _BACKGROUND.match(text)
    if found is None:
        return None
    red, green, blue = (int(part, 16) / (16 ** len(part) - 1) for part in found.groups())
    return bool(0.2126 * red + 0.7152 * green + 0.0722 * blue > 0.5)  # ITU-R BT.709-6, 3.2: luma


def takes_mouse(environ: Mapping[str, str]) -> bool:
    """Whether the mouse is worth taking from it: not over SSH, where each report costs; never in GNU screen.

    While the mouse is reported, GNU screen holds a lone Esc back until the next key and makes one of both.
    """
    term = environ.get("TERM", "")
    in_screen = bool(environ.get("STY")) or (term.startswith("screen") and not environ.get("TMUX"))
    return not (environ.get("SSH_CONNECTION") or environ.get("SSH_TTY") or in_screen)


def locale_speaks_utf8(environ: Mapping[str, str]) -> bool:
    """Whether the locale asks for UTF-8."""
    chosen = environ.get("LC_ALL", "")
    if not chosen:
        language, kind = environ.get("LANG", ""), environ.get("LC_CTYPE", "")
        # Python itself puts LC_CTYPE=C.UTF-8 into a C locale (PEP 538): that says nothing about the terminal.
        chosen = language if kind == "C.UTF-8" or not kind else kind
    return "utf8" in chosen.lower().replace("-", "")


def is_utf8(encoding: str | None) -> bool:
    """Whether an encoding can hold every sign."""
    return (encoding or "").lower().replace("-", "").replace("_", "") in ("utf8", "utf8sig")
