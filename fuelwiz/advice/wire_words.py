"""Wire as one asks for it in a shop: by gauge, or by the metric size that replaces it."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject
from fuelwiz.facts import NEAR
from fuelwiz.physics.wire import METRIC_M2, awg_area_m2, gauge_of
from fuelwiz.shown_units import base_system
from fuelwiz.sizing.part_figures import WiringFigures
from fuelwiz.units import from_si


def wire_label(subject: Subject, gauge: int) -> str:
    """A wire to ask for in a shop: by gauge, where metric units are shown by the metric size that replaces it too."""
    area = awg_area_m2(gauge)
    metric = next((size for size in METRIC_M2 if size >= area), None)
    if base_system(subject.numbers.system) == "us" or metric is None:
        return f"{gauge} AWG"
    return f"{from_si(metric, 'mm^2'):g} mm² ({gauge} AWG)"


def smallest_wire(subject: Subject, wiring: WiringFigures | None) -> str | None:
    """The thinnest wire that works, as one asks for it."""
    if wiring is None or wiring.smallest_wire is None:
        return None
    return wire_label(subject, int(wiring.smallest_wire.split()[0]))


def wire_area_m2(wiring: WiringFigures | None) -> float | None:
    """The area of the thinnest wire that works."""
    if wiring is None or wiring.smallest_wire is None:
        return None
    return awg_area_m2(int(wiring.smallest_wire.split()[0]))


def is_thick_enough(area_m2: float, least_m2: float) -> bool:
    """Whether a wire does where the thinnest that works has that area; one of the very area does."""
    return area_m2 >= (1 - NEAR) * least_m2


def wire_in_words(subject: Subject, area_m2: float) -> str:
    """A wire that is there: by gauge as one asks for it, or by its area where it has none."""
    gauge = gauge_of(area_m2)
    return f"{from_si(area_m2, 'mm^2'):.3g} mm²" if gauge is None else wire_label(subject, gauge)
