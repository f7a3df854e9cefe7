"""What pumps sell beside a blend: the same fuel with more and with less ethanol."""

from __future__ import annotations

from fuelwiz.facts import NEAR
from fuelwiz.sizing import thresholds


def other_blends(ethanol: float) -> tuple[float, float]:
    """What pumps sell as the same fuel with more and with less ethanol (ASTM D4814 and D5798)."""
    if ethanol <= thresholds.LOW_BLENDS_TO + NEAR:
        return max(ethanol, thresholds.LOW_BLENDS_TO), 0.0
    if thresholds.FLEX_FUEL_FROM - NEAR <= ethanol <= thresholds.FLEX_FUEL_TO + NEAR:
        return max(ethanol, thresholds.FLEX_FUEL_AT_MOST), min(ethanol, thresholds.FLEX_FUEL_FROM)
    return min(1.0, ethanol + thresholds.OTHER_ETHANOL), max(0.0, ethanol - thresholds.OTHER_ETHANOL)
