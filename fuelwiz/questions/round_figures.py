"""Quantities in the texts of the questions: turned into the build's units, and rounded so that they read well."""

from __future__ import annotations

from fuelwiz.printable import MINUS
from fuelwiz.shown_units import PAIRS, of_pair, unit_sign
from fuelwiz.units import UnitSystem, from_si

NEAR_ENOUGH = 0.035
"""How far a quantity may move where it is turned into another unit: the texts speak of usual figures."""
EXACT = 0.006
"""The same for what is declared: three digits."""
DEGREES_NEAR_ENOUGH = 1.2
METRIC = {unit_sign(us): unit_sign(metric) for us, metric in PAIRS}


def in_system(si: float, unit: str, system: UnitSystem) -> str:
    """An SI value in a US unit, or in the metric one that goes with it."""
    shown = of_pair(unit, METRIC.get(unit, unit), system)
    return f"{readable(from_si(si, shown), shown, EXACT)} {shown}"


def readable(value: float, unit: str = "", near_enough: float = NEAR_ENOUGH) -> str:
    """The roundest number that is near enough: 3 for 2.999, 0.35 for 0.3447, 100 for 98.7."""
    if unit in ("°F", "°C"):
        return _signed(_roundest(value, DEGREES_NEAR_ENOUGH, 1))
    return _signed(_roundest(value, near_enough * abs(value), 5))


def _roundest(value: float, allowed: float, places: int) -> str:
    for decimals in range(-4, places + 1):
        for step in (10.0**-decimals, 5 * 10.0 ** -(decimals + 1)):
            shown = round(value / step) * step
            if abs(shown - value) <= allowed + 1e-12:
                return f"{shown:.{max(decimals + (step < 10.0**-decimals), 0)}f}"
    return f"{value:.{places}f}"


def _signed(text: str) -> str:
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return text.replace("-", MINUS) if text.strip("-0") else "0"
