"""Which of the sets that would do are shown: the best by each label, then what no other set beats."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import count

from fuelwiz.options.figures import Label
from fuelwiz.options.prices import Bill
from fuelwiz.options.set_of_parts import Verdict

MOST_SHOWN = 7
Order = tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Hit:
    """A set that would do, with its bill; `number` is its place in the grid."""

    verdict: Verdict
    bill: Bill
    number: int

    @property
    def keeps_the_pump(self) -> bool:
        """Whether its pump is the build's own."""
        return self.verdict.parts.searched.pump.own


def by_price(hit: Hit) -> Order:
    """Cheapest first, those whose price is not known behind; of equals the one with more to spare, then the first."""
    bill, margin = hit.bill, hit.verdict.margin
    return float(bill.price is None), bill.known, -(margin or 0.0), hit.number


def _priced(hit: Hit) -> bool:
    return hit.bill.price is not None


def _by_current(hit: Hit) -> Order:
    return (hit.verdict.current_A or 0.0, *by_price(hit))


def _by_weight(hit: Hit) -> Order:
    return (hit.bill.weight_kg or 0.0, *by_price(hit))


def _by_margin(hit: Hit) -> Order:
    return (-(hit.verdict.margin or 0.0), *by_price(hit))


LABELS: dict[Label, tuple[Callable[[Hit], bool], Callable[[Hit], Order]]] = {
    "cheapest": (_priced, by_price),
    "keeps the pump": (lambda hit: hit.keeps_the_pump, by_price),
    "least current": (lambda hit: hit.verdict.current_A is not None, _by_current),
    "lightest": (lambda hit: hit.bill.weight_kg is not None, _by_weight),
    "most to spare": (lambda hit: hit.verdict.margin is not None, _by_margin),
    "carries the next goal": (lambda hit: hit.verdict.next_works is True, by_price),
}
"""Which sets may bear a label, and which of them does: the first in its order."""


def _goals(hit: Hit) -> tuple[float, ...]:
    """What a set is wanted to have little of; what is not known is the worst."""
    verdict, bill = hit.verdict, hit.bill
    worst = float("inf")
    return (
        0.0 if bill.price is None else bill.price,
        worst if verdict.current_A is None else verdict.current_A,
        worst if bill.weight_kg is None else bill.weight_kg,
        worst if verdict.margin is None else -verdict.margin,
        0.0 if verdict.next_works else 1.0,
    )


def beats(first: tuple[float, ...], second: tuple[float, ...]) -> bool:
    """Whether one is no worse in anything and better in something."""
    return first != second and all(a <= b for a, b in zip(first, second, strict=True))


@dataclass(slots=True)
class Front:
    """The sets that no other beats; those with a price and those without are not held against one another.

    Of sets that are equal in all the first stays.
    """

    _kept: dict[bool, list[tuple[tuple[float, ...], Hit]]] = field(
        default_factory=lambda: {True: [], False: []}
    )

    def add(self, hit: Hit) -> None:
        """Takes a set in, and lets those go that it beats."""
        goals = _goals(hit)
        kept = self._kept[_priced(hit)]
        if any(other == goals or beats(other, goals) for other, _ in kept):
            return
        self._kept[_priced(hit)] = [*(each for each in kept if not beats(goals, each[0])), (goals, hit)]

    def in_order(self) -> list[Hit]:
        """By price, those without one behind."""
        return sorted((hit for kept in self._kept.values() for _, hit in kept), key=by_price)


@dataclass(slots=True)
class Found:
    """The sets that would do, as they come in."""

    front: Front = field(default_factory=Front)
    works: int = 0
    _best: dict[Label, Hit] = field(default_factory=dict)
    _numbers: Iterator[int] = field(default_factory=count)

    def add(self, verdict: Verdict, bill: Bill) -> None:
        """One more of them."""
        hit = Hit(verdict, bill, next(self._numbers))
        self.works += 1
        self.front.add(hit)
        for label, (may, order) in LABELS.items():
            best = self._best.get(label)
            if may(hit) and (best is None or order(hit) < order(best)):
                self._best[label] = hit

    def shown(self) -> list[tuple[Hit, tuple[Label, ...]]]:
        """Seven at most, with their labels: those that bear one, then the rest of the front by price."""
        labels: dict[int, list[Label]] = {}
        rows: list[Hit] = []
        for label in LABELS:
            if label in self._best:
                hit = self._best[label]
                if hit.number not in labels:
                    rows.append(hit)
                labels.setdefault(hit.number, []).append(label)
        rows += [hit for hit in self.front.in_order() if hit.number not in labels]
        return [(hit, tuple(labels.get(hit.number, ()))) for hit in rows[:MOST_SHOWN]]
