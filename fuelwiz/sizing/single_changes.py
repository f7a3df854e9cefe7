"""The one thing that may be changed about a build: where each applies, and the build that it makes."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace

from fuelwiz.facts import NEAR
from fuelwiz.physics.wire import thicker_wire_m2
from fuelwiz.record import record
from fuelwiz.session import Session, Size, given
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.injection import injector_figures
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.stress import changed
from fuelwiz.sizing.thresholds import (
    CC_MIN,
    COOLER_K,
    HIGHER_BASE_PA,
    HIGHER_BELOW_PA,
    LOWER_ABOVE_PA,
    LOWER_BASE_PA,
    STEP_CC_MIN,
)
from fuelwiz.sizing.verdict import ReturnPick
from fuelwiz.sizing.vocabulary import Change, Limit

MOST_PUMPS = 6
COLDEST_K = 233.15


@record
class Variant:
    """A build at its picks of feed and return; without a pick of return, at the build's own.

    `fuel_given_at_k` is the temperature at which a fuel of the builder's own was measured.
    """

    session: Session
    pick: Size | None
    return_pick: ReturnPick | None
    fuel_given_at_k: float

    def sized(self) -> SizedSystem:
        """The build, ready to be solved."""
        return SizedSystem(FuelSystem(self.session, self.fuel_given_at_k), self.pick)

    def with_values(self, section: str, **values: object) -> Variant:
        """The same with values of one section changed."""
        return replace(self, session=changed(self.session, section, **values))


@record
class SingleChange:
    """A change that applies, how it is made, and what it fits: injectors of a rating, a size of line, a wire."""

    change: Change
    made: Callable[[Variant], Variant]
    rated_flow_m3_s: float | None = None
    size: str | None = None
    wire_m2: float | None = None


def single_changes(today: Variant, sized: SizedSystem, limits: tuple[Limit, ...]) -> tuple[SingleChange, ...]:
    """Every change that applies to a build with a pump and a feed, in the order of the list."""
    session = today.session
    return (
        *_feed(today),
        *_return(today, Return(sized)),
        *_electrics(session),
        *_base(session),
        *_pump(session),
        *_filters(session),
        *(_injectors(sized) if "injectors" in limits else ()),
        *_cooler(session),
    )


def _feed(today: Variant) -> Iterator[SingleChange]:
    yield from larger_feeds(today)[:1]


def larger_feeds(today: Variant) -> list[SingleChange]:
    """Each candidate of the feed above the pick, smallest first."""
    return [feed_of(size) for size in _larger(feed_candidates(today.session.feed), today.pick)]


def feed_of(size: Size) -> SingleChange:
    """A feed line of a size."""
    return SingleChange("feed", lambda variant: replace(variant, pick=size), size=spelled(size))


def larger_returns(today: Variant, behind: Return) -> list[SingleChange]:
    """Each candidate of the return above today's, smallest first."""
    if not behind.applies or today.return_pick is None:
        return []
    return [return_of(size) for size in _larger(behind.rows, today.return_pick.size)]


def return_of(size: Size) -> SingleChange:
    """A return line of a size."""
    pick = ReturnPick(size)
    return SingleChange("return", lambda variant: replace(variant, return_pick=pick), size=spelled(size))


def wire_of(area_m2: float) -> SingleChange:
    """A wire of an area."""
    return SingleChange("wire", lambda variant: variant.with_values("wiring", wire=area_m2), wire_m2=area_m2)


def _larger(rows: tuple[Size | None, ...], pick: Size | None) -> list[Size]:
    """The candidates after the pick; none where no run follows a candidate."""
    names = [spelled(row) for row in rows]
    return [row for row in rows[names.index(spelled(pick)) + 1 :] if row is not None]


def _return(today: Variant, behind: Return) -> Iterator[SingleChange]:
    if not behind.applies:
        return
    line = behind.line
    doubled = line.regulator.model_copy(update={"rated_flow": 2 * line.regulator.rated_flow})
    yield SingleChange("regulator", lambda variant: variant.with_values("return_line", regulator=doubled))
    yield from larger_returns(today, behind)[:1]


def _electrics(session: Session) -> Iterator[SingleChange]:
    wiring, pump = session.wiring, session.pump
    if wiring is None or pump is None:
        return
    if wiring.wire is not None and wiring.length is not None:
        thicker = thicker_wire_m2(wiring.wire)
        if thicker is not None:
            yield wire_of(thicker)
    if wiring.circuits < pump.count:
        yield SingleChange("circuits", _a_circuit_a_pump)


def _a_circuit_a_pump(variant: Variant) -> Variant:
    pump = variant.session.pump
    assert pump is not None
    return variant.with_values("wiring", circuits=pump.count)


def _base(session: Session) -> Iterator[SingleChange]:
    if session.engine.injection != "port" or session.pressure.regulator == "tank":
        return
    if session.pressure.base > LOWER_ABOVE_PA:
        yield SingleChange("lower base", lambda variant: variant.with_values("pressure", base=LOWER_BASE_PA))
    if session.pressure.base < HIGHER_BELOW_PA:
        yield SingleChange(
            "higher base", lambda variant: variant.with_values("pressure", base=HIGHER_BASE_PA)
        )


def _pump(session: Session) -> Iterator[SingleChange]:
    pump = session.pump
    if pump is None or pump.count >= MOST_PUMPS or pump.arrangement != "parallel":
        return
    yield SingleChange("pump", _one_pump_more)


def _one_pump_more(variant: Variant) -> Variant:
    """One more of the same; circuits that nobody counted are still one a pump, and the return is picked anew."""
    session = variant.session
    assert session.pump is not None
    count = session.pump.count + 1
    variant = replace(variant.with_values("pump", count=count), return_pick=None)
    uncounted = session.wiring is not None and not given(session, "wiring.circuits")
    return variant.with_values("wiring", circuits=count) if uncounted else variant


def _filters(session: Session) -> Iterator[SingleChange]:
    filters, inlet = session.feed.filter, session.inlet
    if filters and given(session, "feed.filter"):
        yield SingleChange("filters", _filters_of_twice_the_flow)
    strainer = None if inlet is None else inlet.strainer
    clogged = [part.clogging for part in filters] + ([strainer.clogging] if strainer else [])
    if any(clogging > 1 for clogging in clogged):
        yield SingleChange("clean", _clean)


def _filters_of_twice_the_flow(variant: Variant) -> Variant:
    twice = tuple(
        part.model_copy(update={"rated_flow": 2 * part.rated_flow}) for part in variant.session.feed.filter
    )
    return variant.with_values("feed", filter=twice)


def _clean(variant: Variant) -> Variant:
    session = variant.session
    filters = tuple(
        part.model_copy(update={"clogging": min(1.0, part.clogging)}) for part in session.feed.filter
    )
    variant = variant.with_values("feed", filter=filters)
    if session.inlet is None or session.inlet.strainer is None:
        return variant
    strainer = session.inlet.strainer
    strainer = strainer.model_copy(update={"clogging": min(1.0, strainer.clogging)})
    return variant.with_values("inlet", strainer=strainer)


def _injectors(sized: SizedSystem) -> Iterator[SingleChange]:
    """Injectors of the highest of the smallest ratings of the goal and all points, in steps as they are sold."""
    found = [injector_figures(point) for point in sized.and_points()]
    ratings = [figures.smallest_rating_m3_s for figures in found if figures is not None]
    highest = max((rating for rating in ratings if rating is not None), default=None)
    if highest is None or None in ratings:
        return
    step = STEP_CC_MIN * CC_MIN
    rated = step * math.ceil(highest / step - NEAR)
    yield SingleChange(
        "injectors", lambda variant: variant.with_values("injectors", rated_flow=rated), rated_flow_m3_s=rated
    )


def _cooler(session: Session) -> Iterator[SingleChange]:
    cooler = max(COLDEST_K, session.fuel.temperature - COOLER_K)
    if cooler < session.fuel.temperature:
        yield SingleChange("cooler", lambda variant: variant.with_values("fuel", temperature=cooler))
