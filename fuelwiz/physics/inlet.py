"""The pump's inlet: the atmosphere, and what reaches the pump."""

from __future__ import annotations

import math

LEAST_VAPOUR_MARGIN_PA = {"tank": 0.0, "surge": 0.0, "outside": 20e3}  # common practice, no source
LOW_VAPOUR_MARGIN_PA = {
    "tank": 10e3,
    "surge": 10e3,
    "outside": 20e3,
}  # called out below; common practice, no source


def atmosphere_pa(altitude_m: float) -> float:
    """Pressure of the standard atmosphere in Pa, absolute, at an altitude in m.

    Source: ISO 2533. Valid in the troposphere, to 11 000 m.

    >>> round(atmosphere_pa(0.0)), round(atmosphere_pa(2000.0), -2)
    (101325, 79500.0)
    """
    return float(101325.0 * math.pow(1 - 2.25577e-5 * altitude_m, 5.25588))
