"""Roles and their colors, by the number of colors that a terminal has.

Every color is a cell of the 256-color cube or its gray ramp: SSH rarely says that a terminal has more.
"""

from __future__ import annotations

from typing import Literal

Role = Literal["text", "muted", "focus", "easy", "good", "brisk", "fast", "too fast", "fault"]
Ground = Literal["background", "row", "chosen", "field", "bar"]

DARK: dict[Role, str] = {
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
LIGHT: dict[Role, str] = {
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
DARK_GROUNDS: dict[Ground, str] = {
    "background": "#121212",
    "row": "#303030",
    "chosen": "#303030",
    "field": "#3a3a3a",
    "bar": "#262626",
}
LIGHT_GROUNDS: dict[Ground, str] = {
    "background": "#ffffff",
    "row": "#eeeeee",
    "chosen": "#eeeeee",
    "field": "#e4e4e4",
    "bar": "#eeeeee",
}
# Ink and paper of a mark's cells where there are sixteen colors; colored words would vanish on some background.
CHIPS: dict[Role, tuple[int, int]] = {
    "easy": (0, 2),
    "good": (0, 6),
    "brisk": (0, 3),
    "fast": (0, 5),
    "too fast": (15, 1),
}


def cube_cell(color: str) -> int:
    """The number of the cell of the 256-color palette that has exactly a color, given as `#rrggbb`."""
    red, green, blue = (int(color[at : at + 2], 16) for at in (1, 3, 5))
    if red == green == blue and (red - 8) % 10 == 0:
        return 232 + (red - 8) // 10
    steps = [(0, 95, 135, 175, 215, 255).index(part) for part in (red, green, blue)]
    return 16 + 36 * steps[0] + 6 * steps[1] + steps[2]
