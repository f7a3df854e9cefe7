"""Wire as one asks for it in a shop: by gauge, or by its area in mm²."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject
from fuelwiz.facts import NEAR
from fuelwiz.physics.wire import awg_area_m2, gauge_of
from fuelwiz.shown_units import base_system
from fuelwiz.sizing.part_figures import WireChoice, WiringFigures
from fuelwiz.units import from_si


def wire_choices(subject: Subject) -> tuple[WireChoice, ...]:
    """The wires to look at, thin ones first: of the kind that the builder's own is of."""
    figures = subject.figures
    return figures.metric_wire_choices if _in_metric_sizes(subject) else figures.wire_choices


def own_wire(subject: Subject) -> WireChoice | None:
    """The builder's own wire among them; None where none is given or nothing judges it."""
    return next((choice for choice in wire_choices(subject) if choice.given), None)


def wire_label(subject: Subject, area_m2: float) -> str:
    """A wire by gauge, with its area where metric units are shown; by its area alone where it has no gauge."""
    gauge = gauge_of(area_m2)
    if gauge is None:
        return f"{from_si(area_m2, 'mm^2'):.3g} mm²"
    if base_system(subject.numbers.system) == "us":
        return f"{gauge} AWG"
    return f"{gauge} AWG ({from_si(area_m2, 'mm^2'):.2g} mm²)"


def smallest_wire(subject: Subject, wiring: WiringFigures | None) -> str | None:
    """The thinnest wire that works, as one asks for it."""
    area = wire_area_m2(subject, wiring)
    return None if area is None else wire_label(subject, area)


def wire_area_m2(subject: Subject, wiring: WiringFigures | None) -> float | None:
    """The area of the thinnest wire that works, of those that are sold."""
    if wiring is None:
        return None
    if _in_metric_sizes(subject):
        return wiring.smallest_metric_wire_m2
    return None if wiring.smallest_wire is None else awg_area_m2(int(wiring.smallest_wire.split()[0]))


def is_thick_enough(area_m2: float, least_m2: float) -> bool:
    """Whether a wire does where the thinnest that works has that area; one of the very area does."""
    return area_m2 >= (1 - NEAR) * least_m2


def _in_metric_sizes(subject: Subject) -> bool:
    """Whether wire goes by its area: as the builder's own is given, else as figures are shown."""
    wiring = subject.session.wiring
    if wiring is None or wiring.wire is None:
        return base_system(subject.numbers.system) == "metric"
    return gauge_of(wiring.wire) is None
