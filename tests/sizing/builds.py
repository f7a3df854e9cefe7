"""Builds to begin a test with: an example's data with values changed by path, and what they come to."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import Figures

EXAMPLES = Path(__file__).parents[1] / "examples"
PSI = 6894.757293168361  # NIST SP 811, table B.8
GALLON_PER_HOUR = 3.785411784e-3 / 3600  # the same
CC_PER_MIN = 1e-6 / 60


def build(name: str, changes: dict[str, Any] | None = None) -> dict[str, Any]:
    """What the file of an example holds, with values by path; a value of None takes a key out."""
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))
    for path, value in (changes or {}).items():
        at: Any = plain
        *above, last = path.split(".")
        for part in above:
            at = at[int(part)] if part.isdigit() else at.setdefault(part, {})
        if value is None:
            at.pop(last, None)
        else:
            at[last] = value
    return plain


def figures(plain: dict[str, Any]) -> Figures:
    """What such data come to."""
    return quick_figures(validate(plain, "a build"))
