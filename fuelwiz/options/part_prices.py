"""What the parts of a build cost by a parts file, the build standing as it is; None where the file does not say."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from fuelwiz.facts import NEAR
from fuelwiz.options.grid import hoses_of, pump_choices, wires_of_area
from fuelwiz.options.parts_file import Parts
from fuelwiz.options.prices import HOSE_ENDS, Offered, OnTheCar, cheapest, on_the_car
from fuelwiz.session import Run, Session, Size, given
from fuelwiz.sizing.candidates import follows
from fuelwiz.sizing.figures import Figures


@dataclass(frozen=True)
class PartPrices:
    """The prices of one parts file for one build."""

    session: Session
    parts: Parts
    car: OnTheCar

    @classmethod
    def of(cls, session: Session, parts: Parts, figures: Figures) -> PartPrices:
        """Those of a build whose figures are known."""
        return cls(session, parts, on_the_car(session, figures))

    def has(self, part: str) -> bool:
        """Whether a part that is entered is there: all are, or those that the builder ticked as fitted."""
        return not given(self.session, "fitted.has") or part in self.session.fitted.has

    def has_line(self, size: str, *, is_return: bool) -> bool:
        """Whether a line of that size is on the car."""
        there = self.car.return_size if is_return else self.car.feed_size
        return there is not None and there.text == size

    @property
    def currency(self) -> str:
        """The file's own word."""
        return self.parts.currency

    def pump(self, count: int | None = None) -> float | None:
        """So many of the build's pumps, else all of them, where the file has one of that name."""
        own = self.session.pump
        choice = next((each for each in pump_choices(self.session, self.parts) if each.own), None)
        return None if own is None or choice is None else _times(choice.offer, count or own.count)

    def line(self, runs: Sequence[Run], size: str) -> float | None:
        """The hoses of a line and their ends, those that keep a size of their own too."""
        found = [self._run(run, size) for run in runs]
        return None if None in found else sum(price for price in found if price is not None)

    def _run(self, run: Run, size: str) -> float | None:
        wanted = self._size(size) if follows(run) else run.size
        numbers = hoses_of(self.parts, wanted, run)
        offer = cheapest([self.parts.hose[number] for number in numbers])
        if offer is None:
            return None
        if offer.owned:
            return 0.0
        ends = sum(run.fittings.get(kind, 0) for kind in HOSE_ENDS) * run.side_by_side
        if offer.price is None or (ends and offer.end is None):
            return None
        return offer.price / offer.per * run.length * run.side_by_side + ends * (offer.end or 0.0)

    def _size(self, size: str) -> Size | None:
        """A candidate of the build by its name."""
        line = self.session.return_line
        known = [*self.session.feed.sizes, *(line.sizes if line else ())]
        known += [each for each in (self.session.feed.chosen, line.chosen if line else None) if each]
        return next((each for each in known if each.text == size), None)

    def injectors(self, count: int, rating_m3_s: float, rated_pressure_pa: float) -> float | None:
        """The cheapest that pass so much at a pressure, by the square root law of an orifice."""
        offers = [
            offer
            for offer in self.parts.injectors
            if offer.rated_flow * sqrt(rated_pressure_pa / offer.rated_pressure) >= rating_m3_s * (1 - NEAR)
        ]
        return _times(cheapest(offers), count)

    def wire(self, area_m2: float) -> float | None:
        """The loop of every circuit in a wire of an area."""
        wiring = self.session.wiring
        offer = cheapest(wires_of_area(self.parts, area_m2))
        if wiring is None or wiring.length is None or offer is None:
            return None
        loop = wiring.length if wiring.return_path == "chassis" else 2 * wiring.length
        return _times(offer, loop * wiring.circuits / offer.per)

    def regulator(self) -> float | None:
        """The regulator of the file, which stands for the build's own."""
        return _times(cheapest(self.parts.regulator), 1)


def _times(offer: Offered | None, count: float) -> float | None:
    """What so many of a part cost; an owned one costs nothing."""
    if offer is None or (offer.price is None and not offer.owned):
        return None
    return 0.0 if offer.owned else count * (offer.price or 0.0)
