"""The colors of a page, as the wizard has them on a light and on a dark terminal."""

from __future__ import annotations

from fuelwiz.terminal.palette import DARK, DARK_GROUNDS, LIGHT, LIGHT_GROUNDS, Ground, Role


def _named(roles: dict[Role, str], grounds: dict[Ground, str]) -> dict[str, str]:
    """Each color by the name of its style."""
    return {name.replace(" ", "-"): color for name, color in (*roles.items(), *grounds.items())}


LIGHT_COLORS = _named(LIGHT, LIGHT_GROUNDS)
DARK_COLORS = _named(DARK, DARK_GROUNDS)
