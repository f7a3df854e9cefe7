"""Where no set would do: the one part that, were it in the file, would let a set in.

Each part that might is put into the file by itself and the sets with it are judged as all others are, so what is named
does let one in.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace
from typing import Any

from fuelwiz.options.figures import Missing, WhyFailed
from fuelwiz.options.fitting import today_with, with_parts
from fuelwiz.options.grid import PumpChoice, injector_offers
from fuelwiz.options.parts_check import validate_parts
from fuelwiz.options.parts_file import Parts
from fuelwiz.options.prices import wire_text
from fuelwiz.options.search import Search
from fuelwiz.options.set_of_parts import Verdict
from fuelwiz.physics.wire import awg_area_m2
from fuelwiz.session import Feed, ReturnLine
from fuelwiz.sizing.candidates import candidates, follows
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.thresholds import CC_MIN, STEP_CC_MIN

LITERS_AN_HOUR = 3.6e6  # in one m3/s
THICKER_GAUGES = (12, 10, 8, 6, 4, 2, 0)
MOST_RATED_CC_MIN = 5000
MORE_FLOW = (1.0, 1.1, 1.25, 1.5, 2.0, 3.0, 4.0, 6.0)
"""What the flow of a pump at hand is multiplied by, in the search for one that would do."""

Added = Iterator[tuple[Missing, Search]]


def missing(search: Search, failed: Collection[WhyFailed]) -> Missing | None:
    """The first addition to the parts file that lets a set in; None where no single one does.

    Args:
        search: one that found no set.
        failed: the limits that its sets met.
    """
    for what, more in _additions(search, failed):
        found = first_that_would_do(more)
        if found is not None:
            return _with_its_point(search, what, found)
    return None


def first_that_would_do(search: Search) -> Verdict | None:
    """The first set without a limit; None where every set has one."""
    return next((verdict for some in search.verdicts() for verdict in some if not verdict.limits), None)


def _additions(search: Search, failed: Collection[WhyFailed]) -> Added:
    """What may be added, the cheaper part first, where a limit that it could cure was met."""
    session = search.session
    if "injectors" in failed and session.engine.injection == "port":
        yield from _injectors(search)
    if "return" in failed and session.return_line is not None:
        yield from _hoses(search, session.return_line)
        yield from _regulator(search)
    if "fuse" in failed or "pump" in failed:
        yield from _wires(search)
    yield from _hoses(search, session.feed)
    yield from _pumps(search)


def _injectors(search: Search) -> Added:
    """The smallest rating in steps as they are sold, of those that let a set in, halving the way to it."""
    low = max((offer.rated_flow for offer in injector_offers(search.session, search.parts)), default=0.0)
    first = int(low / (STEP_CC_MIN * CC_MIN)) + 1
    last = MOST_RATED_CC_MIN // STEP_CC_MIN
    if first > last or first_that_would_do(_with_injectors(search, last)) is None:
        return
    while first < last:
        middle = (first + last) // 2
        if first_that_would_do(_with_injectors(search, middle)) is None:
            first = middle + 1
        else:
            last = middle
    rated = last * STEP_CC_MIN * CC_MIN
    yield Missing("injectors", rated_m3_s=rated), _with_injectors(search, last)


def _with_injectors(search: Search, steps: int) -> Search:
    table = {"rated_flow": f"{steps * STEP_CC_MIN} cc/min"}
    return _again(search, injectors=_added(search.parts, "injectors", table))


def _hoses(search: Search, line: Feed | ReturnLine) -> Added:
    """Each candidate of a line that the file does not have, smallest first."""
    part: Any = "feed" if isinstance(line, Feed) else "return"
    kinds = {run.hose for run in line.run if follows(run)}
    for size in candidates(line.sizes, line.chosen, line.run):
        if size is None or not search.parts.hose:
            continue
        tables = [{"hose": kind, "size": size.text} for kind in kinds]
        more = _again(search, hose=_added(search.parts, "hose", *tables))
        if isinstance(line, Feed):
            more.feed_sizes = (size,)
        yield Missing(part, size=size.text), more


def _regulator(search: Search) -> Added:
    """A regulator that passes twice as much, set as it is."""
    line = search.session.return_line
    assert line is not None
    flow, loss = _best_regulator(search.parts, line)
    table: dict[str, Any] = {
        "rated_flow": f"{2 * flow * LITERS_AN_HOUR:.9g} L/h",
        "rated_loss": f"{loss:.9g} Pa",
    }
    more = _again(search, regulator=_added(search.parts, "regulator", table)[-1:])
    yield Missing("regulator", flow_m3_s=2 * flow, pressure_Pa=loss), more


def _best_regulator(parts: Parts, line: ReturnLine) -> tuple[float, float]:
    """Rated flow and loss of the regulator at hand that loses least."""
    at_hand = [(each.rated_flow, each.rated_loss) for each in parts.regulator]
    at_hand.append((line.regulator.rated_flow, line.regulator.rated_loss))
    return min(at_hand, key=lambda rated: rated[1] / rated[0] ** 2)


def _wires(search: Search) -> Added:
    """Each thicker gauge than those at hand."""
    wiring = search.session.wiring
    if wiring is None or wiring.length is None:
        return
    had = max(
        [offer.wire for offer in search.parts.wire] + ([wiring.wire] if wiring.wire else []), default=0.0
    )
    for gauge in THICKER_GAUGES:
        area = awg_area_m2(gauge)
        if area > had:
            more = _again(search, wire=_added(search.parts, "wire", {"wire": wire_text(area)}))
            yield Missing("wire", wire=wire_text(area)), more


def _pumps(search: Search) -> Added:
    """A pump like one at hand with more flow, each as it is first where it only may not carry the fuel."""
    for more in MORE_FLOW:
        for choice in search.pumps:
            refused = not choice.may_carry(search.session)
            if more > 1 or refused:
                again = _again(search)
                again.pumps = (_scaled(choice, more),)
                yield Missing("pump"), again


def _scaled(choice: PumpChoice, more: float) -> PumpChoice:
    """A pump with so much more flow that may carry any fuel."""
    pump = choice.pump
    curves = tuple(
        curve.model_copy(update={"points": tuple((pressure, more * flow) for pressure, flow in curve.points)})
        for curve in pump.curve
    )
    larger = pump.model_copy(update={"curve": curves, "volts": None})
    return replace(choice, pump=larger, offer=None, own=False)


def _with_its_point(search: Search, what: Missing, found: Verdict) -> Missing:
    """What is missing; of a pump, how many and what each has to give at which pressure."""
    if what.part != "pump":
        return what
    grid = found.parts.searched
    session = with_parts(
        today_with(search.session, grid.pump, grid.count),
        base_pa=grid.base_pa,
        regulator=grid.regulator,
        injectors=found.parts.injectors,
        wire_m2=found.parts.wire_m2,
    )
    sized = SizedSystem(FuelSystem(session), grid.size)
    pumps = sized.system.pumps
    assert pumps is not None and sized.capacity is not None
    flow = sized.capacity / pumps.flow_ways
    return replace(
        what,
        like=grid.pump.name,
        count=grid.count,
        flow_m3_s=flow,
        pressure_Pa=sized.pressure_across_pa(pumps, sized.capacity),
    )


def _again(search: Search, **kinds: tuple[Any, ...]) -> Search:
    """The same search of a file with more in it."""
    parts: Parts = search.parts.model_copy(update=kinds)
    again = Search(search.session, parts, search.figures, search.asked)
    again.feed_sizes = search.feed_sizes
    return again


def _added(parts: Parts, kind: str, *tables: dict[str, str]) -> tuple[Any, ...]:
    """The parts of a kind with more of them, as a file would tell them."""
    more = validate_parts({"format": 1, "kind": "parts", kind: list(tables)})
    return *getattr(parts, kind), *getattr(more, kind)
