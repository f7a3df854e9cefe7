"""One change made to a build, by typing it where a builder would."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING

from fuelwiz.physics.wire import gauge_of, thicker_wire_m2
from fuelwiz.sizing.thresholds import COOLER_K, HIGHER_BASE_PA, LOWER_BASE_PA
from fuelwiz.units import from_si

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures
    from fuelwiz.sizing.slow_figures import ChangeFigures
    from fuelwiz.sizing.vocabulary import Change

Typed = tuple[str, str]
"""A path and the text that is typed there."""
EXACT = 9  # digits that a change of a figure is typed with


def make_change(desk: Desk, change: Change, offered_by: Figures) -> str:
    """Type a change that the figures of a build offer; the question that it is made at, the first of several."""
    assert desk.session is not None
    typed = list(_MAKERS[change](desk.session, offered_by))
    for path, text in typed:
        desk.visit(path)
        desk.type(path, text)
    return typed[0][0]


def _larger(names: Sequence[str], today: str) -> str:
    return names[names.index(today) + 1]


def _feed(_session: Session, figures: Figures) -> Iterator[Typed]:
    yield "feed.chosen", _larger([row.size for row in figures.sizes], figures.verdict.size)


def _return(_session: Session, figures: Figures) -> Iterator[Typed]:
    assert figures.return_line is not None
    line = figures.return_line
    yield "return_line.chosen", _larger([row.size for row in line.sizes], line.size)


def _regulator(session: Session, _figures: Figures) -> Iterator[Typed]:
    """Twice the flow at the loss of today, which is typed as well: of a regulator that is told, neither is assumed."""
    assert session.return_line is not None
    regulator = session.return_line.regulator
    yield "return_line.regulator.rated_flow", _flow(2 * regulator.rated_flow)
    yield "return_line.regulator.rated_loss", f"{from_si(regulator.rated_loss, 'psi'):.{EXACT}g} psi"


def _wire(session: Session, _figures: Figures) -> Iterator[Typed]:
    assert session.wiring is not None and session.wiring.wire is not None
    thicker = thicker_wire_m2(session.wiring.wire)
    assert thicker is not None
    gauge = gauge_of(thicker)
    yield "wiring.wire", f"{from_si(thicker, 'mm^2'):g} mm^2" if gauge is None else f"{gauge} AWG"


def _circuits(session: Session, _figures: Figures) -> Iterator[Typed]:
    assert session.pump is not None
    yield "wiring.circuits", str(session.pump.count)


def _base(base_pa: float) -> Callable[[Session, Figures], Iterator[Typed]]:
    def typed(_session: Session, _figures: Figures) -> Iterator[Typed]:
        yield "pressure.base", f"{from_si(base_pa, 'bar'):g} bar"

    return typed


def _pump(session: Session, _figures: Figures) -> Iterator[Typed]:
    """One more of the same; as many run at idle as today."""
    assert session.pump is not None
    yield "pump.count", str(session.pump.count + 1)
    yield "pump.running_at_idle", str(session.pump.running_at_idle)


def _filters(session: Session, _figures: Figures) -> Iterator[Typed]:
    for number, part in enumerate(session.feed.filter):
        yield f"feed.filter.{number}.rated_flow", _flow(2 * part.rated_flow)


def _clean(session: Session, _figures: Figures) -> Iterator[Typed]:
    for number, part in enumerate(session.feed.filter):
        if part.clogging > 1:
            yield f"feed.filter.{number}.clogging", "1"
    strainer = None if session.inlet is None else session.inlet.strainer
    if strainer is not None and strainer.clogging > 1:
        yield "inlet.strainer.clogging", "1"


def _injectors(_session: Session, figures: Figures) -> Iterator[Typed]:
    found = next(one for one in _all(figures) if one.rated_flow_m3_s is not None)
    assert found.rated_flow_m3_s is not None
    yield "injectors.rated_flow", f"{from_si(found.rated_flow_m3_s, 'cc/min'):g} cc/min"


def _all(figures: Figures) -> tuple[ChangeFigures, ...]:
    """The changes of today, then those of the next goal."""
    return figures.changes if figures.next is None else (*figures.changes, *figures.next.changes)


def _cooler(session: Session, _figures: Figures) -> Iterator[Typed]:
    yield "fuel.temperature", f"{from_si(session.fuel.temperature - COOLER_K, 'degC'):.{EXACT}g} degC"


def _flow(flow_m3_s: float) -> str:
    return f"{from_si(flow_m3_s, 'L/h'):.{EXACT}g} L/h"


_MAKERS: dict[Change, Callable[[Session, Figures], Iterator[Typed]]] = {
    "feed": _feed,
    "regulator": _regulator,
    "return": _return,
    "wire": _wire,
    "circuits": _circuits,
    "lower base": _base(LOWER_BASE_PA),
    "higher base": _base(HIGHER_BASE_PA),
    "pump": _pump,
    "filters": _filters,
    "clean": _clean,
    "injectors": _injectors,
    "cooler": _cooler,
}
