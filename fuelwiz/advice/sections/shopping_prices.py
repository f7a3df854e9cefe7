"""What the rows of what to buy cost by a parts file."""

from __future__ import annotations

from collections.abc import Mapping

from fuelwiz.advice.subject import Subject
from fuelwiz.options.part_prices import PartPrices
from fuelwiz.sizing.thresholds import RATED_AT_PA


def price_text(price: float) -> str:
    """A price, whole where it is."""
    return f"{price:.0f}" if abs(price - round(price)) < 0.005 else f"{price:.2f}"


def row_price(subject: Subject, part: str, sizes: Mapping[str, str]) -> str | None:
    """What a row costs; None for what the file does not price. `sizes` are those of feed and return, by their rows."""
    prices = subject.prices
    price = None if prices is None else _price(subject, prices, part, sizes)
    return None if price is None else price_text(price)


def _price(subject: Subject, prices: PartPrices, part: str, sizes: Mapping[str, str]) -> float | None:
    line = subject.session.return_line
    match part:
        case "pump":
            return prices.pump()
        case "feed line":
            return prices.line(subject.session.feed.run, sizes[part])
        case "return line":
            return None if line is None else prices.line(line.run, sizes[part])
        case "regulator":
            return prices.regulator()
        case "injectors":
            return _injectors(subject, prices)
        case "wire":
            return _wire(subject, prices)
    return None


def _injectors(subject: Subject, prices: PartPrices) -> float | None:
    figures, given = subject.figures.injectors, subject.session.injectors
    if figures is None or figures.smallest_rating_m3_s is None:
        return None
    at = RATED_AT_PA if given is None else given.rated_pressure
    return prices.injectors(figures.count, figures.smallest_rating_m3_s, at)


def _wire(subject: Subject, prices: PartPrices) -> float | None:
    """The thinnest gauge of the list that does and that the file prices."""
    for choice in subject.figures.wire_choices:
        price = prices.wire(choice.gauge) if choice.does else None
        if price is not None:
            return price
    return None
