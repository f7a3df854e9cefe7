"""Wire and fuse: resistance, volts lost, ampacity, fuse rating and the smallest wire that does."""

from __future__ import annotations

import math
from dataclasses import dataclass

from fuelwiz.facts import table

NEAR = 1e-9
FUSE_OVER_PEAK = 1.25
MOST_WIRE_LOSS_V = 0.5  # between battery and pump and back; common practice, no source
SAME_AREA = 1e-6


@dataclass(frozen=True, slots=True)
class GaugeAtCurrent:
    """A gauge at a current: volts lost in the wire, what it carries, and whether both are good enough."""

    gauge: int
    loss_v: float
    ampacity_a: float
    does: bool


def awg_area_m2(gauge: int) -> float:
    """Area of solid round wire of an American gauge, from the diameter of ASTM B258."""
    diameter_m = 0.127e-3 * 92 ** ((36 - gauge) / 39)
    return float(math.pi / 4 * diameter_m * diameter_m)


def is_gauge(area_m2: float, gauge: int) -> bool:
    """Whether an area is that of an American gauge."""
    return abs(awg_area_m2(gauge) / area_m2 - 1) < SAME_AREA


def copper_resistivity_ohm_m(temperature_k: float) -> float:
    """Resistivity of annealed copper (IACS 100 %), its slope taken about 20 degC."""
    facts = table("wire")
    return float(facts["resistivity_20C"] * (1 + facts["temperature_coefficient"] * (temperature_k - 293.15)))


def loop_resistance_ohm(*, area_m2: float, length_m: float, by_chassis: bool, temperature_k: float) -> float:
    """Resistance of a wire out and back, or out alone where the chassis brings the current back."""
    loop_m = length_m if by_chassis else 2 * length_m
    return copper_resistivity_ohm_m(temperature_k) * loop_m / area_m2


def _gauges_thin_first() -> list[tuple[int, float]]:
    rows = table("wire")["ampacity_105C"]
    return sorted(((int(gauge), float(amps)) for gauge, amps in rows.items()), reverse=True)


def ampacity_A(area_m2: float) -> float:
    """Ampacity in an engine space of wire with 105 degC insulation (33 CFR 183.425 table 5 and its note).

    A wire between the gauges counts as the thickest that is not above its area; below the table it carries nothing.
    """
    fitting = [amps for gauge, amps in _gauges_thin_first() if awg_area_m2(gauge) <= area_m2 * (1 + NEAR)]
    return max(fitting, default=0.0) * float(table("wire")["engine_space"])


def fuse_A(peak_current_a: float) -> float | None:
    """The next fuse rating at or above 1.25 times the peak current; None above the last."""
    wanted = FUSE_OVER_PEAK * peak_current_a * (1 - NEAR)
    return next((rating for rating in table("wire")["fuses"] if rating >= wanted), None)


def gauges_at(
    *, current_a: float, fuse_a: float, length_m: float, by_chassis: bool, temperature_k: float
) -> tuple[GaugeAtCurrent, ...]:
    """Every gauge of the table, thinnest first; the first that does is the smallest wire to take."""
    gauges = []
    for gauge, _ in _gauges_thin_first():
        area = awg_area_m2(gauge)
        ohms = loop_resistance_ohm(
            area_m2=area, length_m=length_m, by_chassis=by_chassis, temperature_k=temperature_k
        )
        loss, carries = current_a * ohms, ampacity_A(area)
        gauges.append(GaugeAtCurrent(gauge, loss, carries, loss <= MOST_WIRE_LOSS_V and carries >= fuse_a))
    return tuple(gauges)
