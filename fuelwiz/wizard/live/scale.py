"""Round steps for the axes of a picture, and lines through points."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from fuelwiz.advice.numbers import round_step

ROWS_A_TICK = 2


def step_of(span: float, rows: int) -> float:
    """The smallest round step whose ticks span that much over these rows."""
    return round_step(span * ROWS_A_TICK / rows)


def places_of(step: float) -> int:
    """Decimals that tell ticks of this step apart."""
    return next((places for places in range(3) if abs(step * 10**places % 1) < 1e-6), 3)


def between(across: Sequence[float], up: Sequence[float], at: float) -> float | None:
    """The height of a line through points at a place across, straight between them; None beyond them."""
    if not across[0] <= at <= across[-1]:
        return None
    right = min(max(bisect_right(across, at), 1), len(across) - 1)
    share = (at - across[right - 1]) / (across[right] - across[right - 1])
    return up[right - 1] + share * (up[right] - up[right - 1])
