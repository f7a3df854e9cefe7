"""What a set costs and weighs: what has to be bought of it, line by line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal, Protocol, TypeVar

from fuelwiz.options.grid import hoses_of, wires_of_area
from fuelwiz.options.parts_file import HoseOnOffer, InjectorsOnOffer, Parts, WireOnOffer
from fuelwiz.options.set_of_parts import PartSet, Verdict
from fuelwiz.physics.wire import gauge_of, is_same_area
from fuelwiz.record import record
from fuelwiz.session import Run, Session, Size, given
from fuelwiz.sizing.candidates import candidate_called, follows
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.terms import HOSES

HOSE_ENDS = ("straight", "swept_45", "swept_90", "swept_180", "forged_90")
"""Fittings that are ends of a hose."""

Unit = Literal["each", "m"]


class Offered(Protocol):
    """What any part of the file says of its price."""

    @property
    def price(self) -> float | None:
        """What it costs; None where nobody knows."""

    @property
    def owned(self) -> bool:
        """Whether the builder has it."""


T = TypeVar("T", bound=Offered)


@record
class Line:
    """One line of what is to be bought; the price is that of the whole line, None where it is not known.

    `priced` is False for what the file prices nowhere: it is listed, and is no part of the sum.
    """

    what: str
    quantity: float
    unit: Unit
    price: float | None
    priced: bool = True


@record
class OnTheCar:
    """What the build has today: sizes, wire, and whether pump and injectors are there."""

    feed_size: Size | None
    return_size: Size | None
    wire_m2: float | None
    pump: bool
    injectors: bool
    filter: bool
    circuits: int
    fuse_A: float | None


@record
class Bill:
    """What a set costs: the sum, None where a price is missing, and what has none; `known` is the sum without it."""

    lines: tuple[Line, ...]
    price: float | None
    known: float
    unpriced: tuple[str, ...]
    weight_kg: float | None


def cost(offer: Offered) -> tuple[bool, float]:
    """An order by price: what is owned first, what has no price last."""
    if offer.owned:
        return False, 0.0
    return offer.price is None, offer.price or 0.0


def cheapest(offers: Sequence[T]) -> T | None:
    """The cheapest of the same part; None where there is none."""
    return min(offers, key=cost, default=None)


def on_the_car(session: Session, figures: Figures) -> OnTheCar:
    """What the build has: all that it tells of, or, where `fitted.has` is given, what stands there."""
    listed = session.fitted.has if given(session, "fitted.has") else None

    def has(part: str) -> bool:
        return listed is None or part in listed

    is_chosen = session.feed.chosen is not None or (listed is not None and "line" in listed)
    feed = candidate_called(session.feed, figures.verdict.size) if is_chosen and has("line") else None
    wiring, circuit = session.wiring, figures.wiring
    return OnTheCar(
        feed_size=feed,
        return_size=_return_size(session, figures, listed is not None) if has("return_line") else None,
        wire_m2=None if wiring is None or not has("wire") else wiring.wire,
        pump=session.pump is not None and has("pump"),
        injectors=session.injectors is not None and has("injectors"),
        filter=has("filter"),
        circuits=wiring.circuits if wiring is not None and session.pump is not None and has("wire") else 0,
        fuse_A=None if circuit is None or not has("wire") else circuit.fuse_A,
    )


def _return_size(session: Session, figures: Figures, is_chosen: bool) -> Size | None:
    line = session.return_line
    if line is None or (line.chosen is None and not is_chosen):
        return None
    if line.chosen is not None or figures.return_line is None:
        return line.chosen
    sized = SizedSystem(FuelSystem(session), candidate_called(session.feed, figures.verdict.size))
    return Return(sized).candidate(figures.return_line.size)


class Prices:
    """The prices and weights of one parts file for one build."""

    def __init__(self, session: Session, parts: Parts, figures: Figures) -> None:
        self._session, self._parts = session, parts
        self.on_the_car = on_the_car(session, figures)

    def bill(self, verdict: Verdict) -> Bill:
        """What of a set has to be bought, and what all of it weighs."""
        lines = tuple(self._lines(verdict))
        counted = [line for line in lines if line.priced]
        unpriced = tuple(line.what for line in counted if line.price is None)
        known = sum(line.price for line in counted if line.price is not None)
        return Bill(lines, None if unpriced else known, known, unpriced, self._weight(verdict.parts))

    def _lines(self, verdict: Verdict) -> Iterator[Line]:
        parts = verdict.parts
        yield from self._pump_lines(parts)
        regulator = parts.searched.regulator
        if regulator is not None and not regulator.owned:
            yield Line(regulator.name or "regulator", 1, "each", regulator.price)
        yield from self._hose_lines(parts)
        yield from self._wire_lines(parts, verdict.fuse_A)
        yield from self._injector_lines(parts)
        if not self.on_the_car.filter:
            for part in self._session.feed.filter:
                yield Line(part.what or "filter", 1, "each", None, priced=False)

    def _pump_lines(self, parts: PartSet) -> Iterator[Line]:
        choice, session = parts.searched.pump, self._session
        owned = choice.offer is not None and choice.offer.owned
        there = session.pump.count if choice.own and session.pump is not None and self.on_the_car.pump else 0
        more = parts.searched.count - there
        if owned or more <= 0:
            return
        price = None if choice.offer is None else choice.offer.price
        yield Line(choice.name, more, "each", None if price is None else more * price, bool(self._parts.pump))

    def _hose_lines(self, parts: PartSet) -> Iterator[Line]:
        session, car = self._session, self.on_the_car
        wanted: dict[tuple[str, str], list[Run]] = {}
        line = session.return_line
        runs = [(run, parts.searched.size, car.feed_size) for run in session.feed.run]
        runs += [(run, parts.return_size, car.return_size) for run in (line.run if line else ())]
        offers: dict[tuple[str, str], HoseOnOffer | None] = {}
        for run, size, there in runs:
            if not follows(run) or size is None or size == there:
                continue
            key = run.hose, size.text
            wanted.setdefault(key, []).append(run)
            offers[key] = cheapest([self._parts.hose[number] for number in hoses_of(self._parts, size, run)])
        for (hose, size_text), same in wanted.items():
            yield from self._of_one_hose(f"{size_text} {HOSES[hose]}", same, offers[hose, size_text])

    def _of_one_hose(self, what: str, runs: list[Run], offer: HoseOnOffer | None) -> Iterator[Line]:
        """So much of a hose, and its ends."""
        if offer is not None and offer.owned:
            return
        priced = bool(self._parts.hose)
        length = sum(run.length * run.side_by_side for run in runs)
        ends = sum(run.fittings.get(kind, 0) * run.side_by_side for run in runs for kind in HOSE_ENDS)
        each = None if offer is None or offer.price is None else offer.price / offer.per
        name = (offer.name if offer else "") or f"{what} hose"
        yield Line(name, length, "m", None if each is None else each * length, priced)
        if ends:
            end = None if offer is None else offer.end
            yield Line(f"end for {name}", ends, "each", None if end is None else ends * end, priced)

    def _wire_lines(self, parts: PartSet, fuse_A: float | None) -> Iterator[Line]:
        wiring, car, area = self._session.wiring, self.on_the_car, parts.wire_m2
        if wiring is None:
            return
        circuits = self.circuits(parts)
        same = area is not None and car.wire_m2 is not None and is_same_area(area, car.wire_m2)
        more = circuits - car.circuits if same else circuits
        offer = None if area is None else cheapest(wires_of_area(self._parts, area))
        if area is not None and wiring.length is not None and more > 0 and not (offer and offer.owned):
            length = self._loop_m() * more
            price = None if offer is None or offer.price is None else offer.price / offer.per * length
            name = (offer.name if offer else "") or f"{wire_text(area)} wire"
            yield Line(name, length, "m", price, bool(self._parts.wire))
        new = circuits if fuse_A != car.fuse_A else circuits - car.circuits
        if new > 0 and fuse_A is not None:
            yield Line(f"{fuse_A:g} A fuse", new, "each", None, priced=False)
        if circuits > car.circuits:
            yield Line("relay", circuits - car.circuits, "each", None, priced=False)

    def _loop_m(self) -> float:
        wiring = self._session.wiring
        assert wiring is not None and wiring.length is not None
        return wiring.length if wiring.return_path == "chassis" else 2 * wiring.length

    def circuits(self, parts: PartSet) -> int:
        """On how many circuits the pumps of a set run."""
        wiring, count = self._session.wiring, parts.searched.count
        counted = wiring is not None and given(self._session, "wiring.circuits")
        return min(count, wiring.circuits) if wiring is not None and counted else count

    def _injector_lines(self, parts: PartSet) -> Iterator[Line]:
        offer, session = parts.injectors, self._session
        if offer is not None:
            if not offer.owned:
                yield self._injectors(injectors_text(offer), offer.price, self._injector_count())
        elif session.injectors is not None and not self.on_the_car.injectors:
            yield self._injectors("the build's injectors", None, session.injectors.count)

    def _injectors(self, what: str, price: float | None, count: int) -> Line:
        return Line(
            what, count, "each", None if price is None else count * price, bool(self._parts.injectors)
        )

    def _injector_count(self) -> int:
        session = self._session
        return session.engine.cylinders if session.injectors is None else session.injectors.count

    def _weight(self, parts: PartSet) -> float | None:
        """What all parts of a set weigh, of the kinds of which the file weighs any; None where one is not known."""
        found = list(self._weights(parts))
        return None if not found or None in found else sum(weight for weight in found if weight is not None)

    def _weights(self, parts: PartSet) -> Iterator[float | None]:
        file, searched = self._parts, parts.searched
        if any(offer.weight is not None for offer in file.pump):
            offer = searched.pump.offer
            yield None if offer is None or offer.weight is None else searched.count * offer.weight
        if any(hose.weight is not None for hose in file.hose):
            yield from self._hose_weights(parts)
        if any(wire.weight is not None for wire in file.wire) and parts.wire_m2 is not None:
            yield self._wire_weight(parts, parts.wire_m2)
        if parts.injectors is not None and any(each.weight is not None for each in file.injectors):
            weight = parts.injectors.weight
            yield None if weight is None else self._injector_count() * weight
        if searched.regulator is not None and any(each.weight is not None for each in file.regulator):
            yield searched.regulator.weight

    def _hose_weights(self, parts: PartSet) -> Iterator[float | None]:
        line = self._session.return_line
        runs = [(run, parts.searched.size) for run in self._session.feed.run]
        runs += [(run, parts.return_size) for run in (line.run if line else ())]
        for run, size in runs:
            if follows(run) and size is not None:
                numbers = hoses_of(self._parts, size, run)
                offer = cheapest([self._parts.hose[number] for number in numbers])
                yield _of_so_much(offer, run.length * run.side_by_side)

    def _wire_weight(self, parts: PartSet, area_m2: float) -> float | None:
        offer = cheapest(wires_of_area(self._parts, area_m2))
        return _of_so_much(offer, self.circuits(parts) * self._loop_m())


def _of_so_much(offer: HoseOnOffer | WireOnOffer | None, length_m: float) -> float | None:
    """What a length of hose or wire weighs; None where nobody knows."""
    return None if offer is None or offer.weight is None else length_m * offer.weight / offer.per


def wire_text(area_m2: float) -> str:
    """A wire as a session file writes it: its gauge, else its area."""
    gauge = gauge_of(area_m2)
    return f"{area_m2 * 1e6:g} mm^2" if gauge is None else f"{gauge} AWG"


def injectors_text(offer: InjectorsOnOffer) -> str:
    """Injectors by their name, else by their rating."""
    return offer.name or f"{offer.rated_flow * 60e6:.0f} cc/min injectors"
