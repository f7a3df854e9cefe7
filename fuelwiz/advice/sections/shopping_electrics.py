"""Wire, relay and fuse in what to buy."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.changes import one_more_is_on_its_own_wire
from fuelwiz.advice.sections.purchase import ENOUGH, YOURS, Purchase
from fuelwiz.advice.subject import Subject
from fuelwiz.advice.ways import way_out
from fuelwiz.advice.wire_words import is_thick_enough, own_wire, smallest_wire, wire_area_m2, wire_label

if TYPE_CHECKING:
    from fuelwiz.sizing.part_figures import WiringFigures

AT_KNOWN_CURRENT = "once the pump's current is known"


def electrics(subject: Subject) -> Iterator[Purchase]:
    """Wire, relay and fuse, for this goal and for the next."""
    figures, wiring, following = subject.figures.wiring, subject.session.wiring, subject.next
    wire, fuse, own = _wire(subject, figures), _fuse(subject, figures), own_wire(subject)
    if own is not None and own.does:
        again = "; as much again for the next pump" if _one_pump_more_is_wired(subject) else ""
        wire = f"{YOURS}{wire_label(subject, own.area_m2)}{again}"
    elif wiring is not None and wiring.length is not None:
        way = "each way" if wiring.return_path == "wire" else "one way, back through the body"
        wire = f"{wire}, {subject.numbers.limit('length', wiring.length)} {way}"
        if own is not None and own.carries_fuse:
            wire = f"{YOURS}{wire_label(subject, own.area_m2)}, but thin; better {wire}"
    wire_then = fuse_then = ""
    if following is not None and "pump" in (*following.limits, *way_out(following)):
        wire_then = fuse_then = "by the current of the pumps then"
    elif following is not None and following.wiring is not None and following.wiring.fuse_A is not None:
        wire_then, fuse_then = _wire_then(subject, following.wiring), _fuse(subject, following.wiring)
    yield Purchase("wire", wire, wire_then)
    yield Purchase("relay, fuse", f"{fuse}; crash cut-off", fuse_then)


def _one_pump_more_is_wired(subject: Subject) -> bool:
    """Whether the way out buys a pump that counts with a wire of its own."""
    return "pump" in way_out(subject.figures) and one_more_is_on_its_own_wire(subject)


def _wire(subject: Subject, figures: WiringFigures | None) -> str:
    wiring, smallest = subject.session.wiring, smallest_wire(subject, figures)
    if smallest is not None:
        return f"{smallest} or thicker"
    if not _current_known(subject, figures):
        return AT_KNOWN_CURRENT
    return (
        "once its length is known" if wiring is None or wiring.length is None else "no wire of the list does"
    )


def _wire_then(subject: Subject, following: WiringFigures) -> str:
    own, least = own_wire(subject), wire_area_m2(subject, following)
    if own is not None and own.does and least is not None and is_thick_enough(own.area_m2, least):
        return ENOUGH
    return _wire(subject, following)


def _fuse(subject: Subject, figures: WiringFigures | None) -> str:
    if figures is not None and figures.fuse_A is not None:
        fuse = subject.numbers.limit("amps", figures.fuse_A)
        return f"{fuse} fuse and a relay over {fuse} for each circuit"
    if not _current_known(subject, figures):
        return f"for each circuit, {AT_KNOWN_CURRENT}"
    if figures is None:
        return "for each circuit, once the wiring is given"
    return "no one fuse is large enough: more circuits"


def _current_known(subject: Subject, figures: WiringFigures | None) -> bool:
    """Whether the pump's current is given, be it that nothing is told of its wiring."""
    if figures is not None:
        return figures.current_A is not None
    pump = subject.session.pump
    return pump is not None and bool(pump.current)
