"""The pump's inlet: the atmosphere, and what reaches the pump."""

from __future__ import annotations

import math

LEAST_VAPOUR_MARGIN_PA = {"tank": 0.0, "surge": 0.0, "outside": 20e3}  # common practice, no source


def atmosphere_pa(altitude_m: float) -> float:
    """Pressure of the standard atmosphere (ISO 2533, troposphere), absolute."""
    return float(101325.0 * math.pow(1 - 2.25577e-5 * altitude_m, 5.25588))
