"""What the rows of what to buy cost by a parts file."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from fuelwiz.advice.subject import Subject, listed
from fuelwiz.advice.ways import way_out
from fuelwiz.sizing.thresholds import RATED_AT_PA

if TYPE_CHECKING:
    from fuelwiz.options.part_prices import PartPrices

NO_PARTS = ("ratings",)
"""Rows of the list that name no part."""


def price_text(price: float) -> str:
    """A price, whole where it is."""
    return f"{price:.0f}" if abs(price - round(price)) < 0.005 else f"{price:.2f}"


class Priced(NamedTuple):
    """What a row of the list costs: 0 for what is there, None where the file does not say."""

    part: str
    price: float | None

    @property
    def text(self) -> str | None:
        """The price as the list shows it."""
        return None if self.price is None else price_text(self.price)


def row_price(subject: Subject, prices: PartPrices, part: str, size: str, *, passes: bool) -> Priced:
    """What a row costs.

    Args:
        subject: the build.
        prices: those of the parts file.
        part: what the row calls it.
        size: that of a row of hose.
        passes: whether the part is entered and does, so that what is there need not be bought.
    """
    if passes and prices.has(part):
        return Priced(part, 0.0)
    return Priced(part, _price(subject, prices, part, size, passes=passes))


def _price(subject: Subject, prices: PartPrices, part: str, size: str, *, passes: bool) -> float | None:
    line = subject.session.return_line
    match part:
        case "pump":
            return prices.pump() if passes else _one_more(subject, prices)
        case "feed line":
            there = prices.has_line(size, is_return=False)
            return 0.0 if there else prices.line(subject.session.feed.run, size)
        case "return line":
            there = prices.has_line(size, is_return=True)
            return None if line is None else 0.0 if there else prices.line(line.run, size)
        case "regulator":
            return prices.regulator()
        case "injectors":
            return _injectors(subject, prices)
        case "wire":
            return _wire(subject, prices)
    return None


def sum_sentences(rows: Sequence[Priced], currency: str) -> str:
    """What all that is to be bought costs, and what of it has no price."""
    priced = [one for one in rows if one.part not in NO_PARTS]
    unknown = [one.part for one in priced if one.price is None]
    total = price_text(sum(one.price for one in priced if one.price is not None))
    known = "What has a price" if unknown else "All of it"
    rest = f" No price in the parts file: {listed(unknown)}." if unknown else ""
    return f"{known} comes to {f'{total} {currency}'.strip()}.{rest} What you have or own costs nothing."


def _one_more(subject: Subject, prices: PartPrices) -> float | None:
    """One more pump of those on the car, where that is the way out; what another one costs is not known."""
    return prices.pump(1) if "pump" in way_out(subject.figures) and prices.has("pump") else None


def _injectors(subject: Subject, prices: PartPrices) -> float | None:
    figures, given = subject.figures.injectors, subject.session.injectors
    if figures is None or figures.smallest_rating_m3_s is None:
        return None
    at = RATED_AT_PA if given is None else given.rated_pressure
    return prices.injectors(figures.count, figures.smallest_rating_m3_s, at)


def _wire(subject: Subject, prices: PartPrices) -> float | None:
    """The thinnest that does and that the file prices, by gauge or metric."""
    both = (*subject.figures.wire_choices, *subject.figures.metric_wire_choices)
    for choice in sorted(both, key=lambda one: one.area_m2):
        price = prices.wire(choice.area_m2) if choice.does else None
        if price is not None:
            return price
    return None
