"""The search as it goes: how far it is, and the sets found so far as figures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from fuelwiz.options.figures import Failed, Label, OptionRow, OptionsFigures, Tightest, ToBuy, WhyFailed
from fuelwiz.options.front import Found, Hit
from fuelwiz.options.missing import missing
from fuelwiz.options.prices import wire_text
from fuelwiz.options.search import Search
from fuelwiz.options.set_of_parts import PartSet
from fuelwiz.record import record
from fuelwiz.sizing.candidates import spelled
from fuelwiz.sizing.vocabulary import LIMITS


@record
class Shown:
    """A set that is shown: its figures, and the parts that they are of."""

    row: OptionRow
    parts: PartSet


@dataclass(slots=True)
class Progress:
    """How far a search is: `done` of `sets` are judged; what it has found can be asked for at any moment."""

    search: Search
    done: int = 0
    found: Found = field(default_factory=Found)
    failed: Counter[WhyFailed] = field(default_factory=Counter)
    _tightest: dict[int, Tightest | None] = field(default_factory=dict)

    @property
    def sets(self) -> int:
        """How many sets there are."""
        return self.search.sets

    def shown(self) -> list[Shown]:
        """The sets to look at so far."""
        return [Shown(self._row(hit, labels), hit.verdict.parts) for hit, labels in self.found.shown()]

    def figures(self) -> OptionsFigures:
        """What is found so far, as figures."""
        order: list[WhyFailed] = ["alcohol", *LIMITS]
        failed = sorted(self.failed.items(), key=lambda item: (-item[1], order.index(item[0])))
        return OptionsFigures(
            tried=self.sets,
            works=self.found.works,
            rows=tuple(shown.row for shown in self.shown()),
            failed=tuple(Failed(limit, sets) for limit, sets in failed),
        )

    def _row(self, hit: Hit, labels: tuple[Label, ...]) -> OptionRow:
        parts, bill = hit.verdict.parts, hit.bill
        if hit.number not in self._tightest:
            self._tightest[hit.number] = self.search.tightest(parts)
        searched, session = parts.searched, self.search.session
        has_return = session.return_line is not None and session.pressure.regulator != "none"
        rated = session.injectors.rated_flow if session.injectors else None
        return OptionRow(
            labels=labels,
            pump=searched.pump.name,
            count=searched.count,
            base_Pa=searched.base_pa,
            size=spelled(searched.size),
            return_size=spelled(parts.return_size) if has_return else None,
            wire=None if parts.wire_m2 is None else wire_text(parts.wire_m2),
            injectors_rated_m3_s=rated if parts.injectors is None else parts.injectors.rated_flow,
            price=bill.price,
            unpriced=bill.unpriced,
            weight_kg=bill.weight_kg,
            current_A=hit.verdict.current_A,
            margin=hit.verdict.margin,
            tightest=self._tightest[hit.number],
            next_works=hit.verdict.next_works,
            buy=tuple(ToBuy(line.what, line.quantity, line.price, line.unit) for line in bill.lines),
            alcohol_unknown=searched.pump.not_known_to_carry(session),
        )


def in_steps(search: Search) -> Iterator[Progress]:
    """The search, with a pause after each pump, number and base pressure; the same object each time, with more in it."""
    progress = Progress(search, search.refused)
    if search.refused:
        progress.failed["alcohol"] = search.refused
    yield progress
    for verdicts in search.verdicts():
        for verdict in verdicts:
            progress.done += 1
            if verdict.limits:
                progress.failed.update(verdict.limits)
            else:
                progress.found.add(verdict, search.prices.bill(verdict))
        yield progress


def options(search: Search) -> OptionsFigures:
    """What a search comes to."""
    *_, progress = in_steps(search)
    return with_what_is_missing(progress)


def with_what_is_missing(progress: Progress) -> OptionsFigures:
    """The figures of a search that is done; where no set would do, with the one part that would let one in."""
    figures = progress.figures()
    if figures.works:
        return figures
    return replace(figures, missing=missing(progress.search, progress.failed.keys()))
