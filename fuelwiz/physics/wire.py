"""Wire and fuse: resistance, volts lost, ampacity, fuse rating and the smallest wire that does."""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise

from fuelwiz.facts import NEAR, table
from fuelwiz.record import record

FUSE_OVER_WORKING = 1.25
FUSE_HOLDS = 1.10  # of its rating for 100 h and more, a blade fuse of ISO 8820-3 (from memory)
FUSE_OPENS = 1.35  # of its rating: 0.75 s to 10 min, the same (from memory); in between it may do either
MOST_WIRE_LOSS_V = 0.5  # between battery and pump and back; common practice, no source
SAME_AREA = 1e-6
METRIC_M2: tuple[float, ...] = (
    1e-6,
    1.5e-6,
    2.5e-6,
    4e-6,
    6e-6,
    10e-6,
    16e-6,
    25e-6,
)  # of IEC 60228, the smaller ones: from memory


@record
class WireAtCurrent:
    """A wire at a current: its area in m2, the volts lost in it, what it carries in A, and whether that is its fuse.

    >>> WireAtCurrent(3.31e-6, loss_v=0.34, ampacity_a=38.25, carries_fuse=True).does
    True
    """

    area_m2: float
    loss_v: float
    ampacity_a: float
    carries_fuse: bool

    @property
    def does(self) -> bool:
        """Whether it carries the fuse and loses no more than a wire may (common practice, no source)."""
        return self.carries_fuse and self.loss_v <= MOST_WIRE_LOSS_V


def awg_area_m2(gauge: int) -> float:
    """Area in m2 of solid round wire of an American gauge, from the diameter of ASTM B258.

    >>> round(awg_area_m2(12) * 1e6, 2)
    3.31
    """
    diameter_m = 0.127e-3 * 92 ** ((36 - gauge) / 39)
    return float(math.pi / 4 * diameter_m * diameter_m)


def is_gauge(area_m2: float, gauge: int) -> bool:
    """Whether an area in m2 is that of an American gauge.

    >>> is_gauge(awg_area_m2(12), 12), is_gauge(4e-6, 12)
    (True, False)
    """
    return is_same_area(awg_area_m2(gauge), area_m2)


def is_same_area(first_m2: float, second_m2: float) -> bool:
    """Whether two areas in m2 are of one wire.

    >>> is_same_area(4e-6, 4.000001e-6), is_same_area(4e-6, 4.1e-6)
    (True, False)
    """
    return abs(first_m2 / second_m2 - 1) < SAME_AREA


def copper_resistivity_ohm_m(temperature_k: float) -> float:
    """Resistivity in ohm m of annealed copper (IACS 100 %) at a temperature in K, its slope taken about 20 degC.

    Valid from -40 to 150 degC.

    >>> round(copper_resistivity_ohm_m(293.15), 10)
    1.72e-08
    """
    facts = table("wire")
    return float(facts["resistivity_20C"] * (1 + facts["temperature_coefficient"] * (temperature_k - 293.15)))


def loop_resistance_ohm(*, area_m2: float, length_m: float, by_chassis: bool, temperature_k: float) -> float:
    """Resistance in ohm of a wire out and back, or out alone where the chassis brings the current back.

    Ohm's law: area in m2, one way's length in m, temperature in K.

    >>> round(loop_resistance_ohm(area_m2=2e-6, length_m=5.0, by_chassis=False, temperature_k=293.15), 4)
    0.0862
    """
    loop_m = length_m if by_chassis else 2 * length_m
    return copper_resistivity_ohm_m(temperature_k) * loop_m / area_m2


def _gauges_thin_first() -> list[tuple[int, float]]:
    rows = table("wire")["ampacity_105C"]
    return sorted(((int(gauge), float(amps)) for gauge, amps in rows.items()), reverse=True)


def gauge_of(area_m2: float) -> int | None:
    """The American gauge, 24 to 0, that has an area in m2; None where none has.

    >>> gauge_of(awg_area_m2(12)), gauge_of(4e-6)
    (12, None)
    """
    return next((gauge for gauge in range(25) if is_gauge(area_m2, gauge)), None)


def thicker_wire_m2(area_m2: float) -> float | None:
    """The area in m2 of the next thicker wire as it is sold: a gauge of the table for a gauge, else a metric one.

    None above the last.

    >>> gauge_of(thicker_wire_m2(awg_area_m2(12))), thicker_wire_m2(3e-6)
    (10, 4e-06)
    """
    areas = METRIC_M2
    if gauge_of(area_m2) is not None:
        areas = gauges_m2()
    return next((area for area in areas if area > area_m2 * (1 + SAME_AREA)), None)


@lru_cache(maxsize=256)
def ampacity_A(area_m2: float) -> float:
    """Ampacity in A in an engine space of wire with 105 degC insulation and an area in m2.

    Source: 33 CFR 183.425 table 5 and its note. Between two gauges a straight line in area; above the table the
    last, below it nothing.

    >>> round(ampacity_A(awg_area_m2(12)), 2), ampacity_A(awg_area_m2(22))
    (38.25, 0.0)
    """
    gauges = [(awg_area_m2(gauge), amps) for gauge, amps in _gauges_thin_first()]
    if area_m2 < gauges[0][0] * (1 - NEAR):
        return 0.0
    carried = gauges[-1][1]
    for (thin, less), (thick, more) in pairwise(gauges):
        if area_m2 <= thick:
            carried = less + (more - less) * max(0.0, area_m2 - thin) / (thick - thin)
            break
    return carried * float(table("wire")["engine_space"])


def fuse_A(working_current_a: float) -> float | None:
    """The next fuse rating in A at or above 1.25 times the highest working current in A; None above the last.

    Common practice, no source; the ratings of ISO 8820 (from memory).

    >>> fuse_A(11.0), fuse_A(90.0)
    (15, None)
    """
    wanted = FUSE_OVER_WORKING * working_current_a * (1 - NEAR)
    return next((rating for rating in table("wire")["fuses"] if rating >= wanted), None)


def gauges_m2() -> tuple[float, ...]:
    """The areas in m2 of every gauge of the table, thinnest first.

    >>> gauge_of(gauges_m2()[0]), gauge_of(gauges_m2()[-1])
    (18, 4)
    """
    return tuple(awg_area_m2(gauge) for gauge, _ in _gauges_thin_first())


def wire_at(
    area_m2: float,
    *,
    current_a: float,
    fuse_a: float,
    length_m: float,
    by_chassis: bool,
    temperature_k: float,
) -> WireAtCurrent:
    """What a wire of an area in m2 does at a current in A, one way's length in m, its temperature in K.

    >>> at = wire_at(4e-6, current_a=10.0, fuse_a=15.0, length_m=3.0, by_chassis=False, temperature_k=313.15)
    >>> round(at.loss_v, 2), at.does
    (0.28, True)
    """
    ohms = loop_resistance_ohm(
        area_m2=area_m2, length_m=length_m, by_chassis=by_chassis, temperature_k=temperature_k
    )
    carries = ampacity_A(area_m2)
    return WireAtCurrent(area_m2, current_a * ohms, carries, carries >= fuse_a)
