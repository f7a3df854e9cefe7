"""Velocity bands: five words for what a velocity means (common practice for thin, water-like fuels)."""

from __future__ import annotations

from collections.abc import Sequence

BANDS = ("easy", "fair", "strained", "poor", "unfit")


def band_of(velocity_m_s: float, thresholds: Sequence[float]) -> str:
    """The band of a velocity; a band includes its upper edge. `thresholds` are four rising velocities in m/s."""
    return next(
        (word for word, edge in zip(BANDS, thresholds, strict=False) if velocity_m_s <= edge), BANDS[-1]
    )


def no_worse_than(band: str, worst: str) -> bool:
    """Whether a band is that one or an easier one."""
    return BANDS.index(band) <= BANDS.index(worst)
