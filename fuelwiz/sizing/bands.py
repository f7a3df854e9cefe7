"""Velocity bands: five words for what a velocity means (common practice for thin, water-like fuels)."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.sizing.vocabulary import BANDS, Band


def band_of(velocity_m_s: float, thresholds: Sequence[float]) -> Band:
    """The band of a velocity; a band includes its upper edge. `thresholds` are four rising velocities in m/s."""
    return next(
        (band for band, edge in zip(BANDS, thresholds, strict=False) if velocity_m_s <= edge), BANDS[-1]
    )


def no_faster_than(band: Band, limit: Band) -> bool:
    """Whether a band is that one or a slower one."""
    return BANDS.index(band) <= BANDS.index(limit)
