"""How much is tried: a tenth by default, all of it where FUELWIZ_PROOF=all asks for it."""

from __future__ import annotations

import os

TENTH = 10


def amount(whole: int) -> int:
    """How many of so many are tried this time."""
    return whole if os.environ.get("FUELWIZ_PROOF") == "all" else max(whole // TENTH, 1)
