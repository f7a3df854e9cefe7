"""The search for sets of parts that would do.

Every set of the grid is looked at: each pump in each number, with each regulator, base pressure and size of feed. Three
things keep it short and lose no set. What depends on day or pump alone is calculated once for all sets. Return,
wire and injectors are solved for, not searched: the first that does of an ordered list. And a set that has a limit today
is out whatever the next goal and the bad days would say, so it is not asked about them: it counts as failed under the
limits of today. One that passes today counts under every limit that it meets at the next goal and on the bad days, where
they are asked for. A pump that may not carry the fuel is not solved at all.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from fuelwiz.errors import Fault, SessionError
from fuelwiz.options.figures import Tightest
from fuelwiz.options.fitting import Situation, bad_days_of, next_goal_of, today_with, with_parts
from fuelwiz.options.grid import (
    PumpChoice,
    base_pressures,
    feed_sizes,
    injector_offers,
    pump_choices,
    regulators,
    return_sizes,
    wires,
)
from fuelwiz.options.judging import Fitted, Key, Wired, Workbench, return_pick
from fuelwiz.options.parts_file import InjectorsOnOffer, Parts
from fuelwiz.options.prices import Prices, cost
from fuelwiz.options.set_of_parts import GridSet, PartSet, Verdict
from fuelwiz.record import record
from fuelwiz.session import Session, Size
from fuelwiz.sizing.candidates import candidate_called
from fuelwiz.sizing.electrics import working_circuit
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.injection import injectors_fail
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.stress import in_case
from fuelwiz.sizing.verdict import BuildVerdict, Judgment, ReturnPick, judgment_of
from fuelwiz.sizing.vocabulary import LIMITS, Limit

TOLD = 1000
"""Where the numbers of days begin that are only told of."""


@record
class Asked:
    """What a set has to pass besides today."""

    next_goal: bool = False
    bad_days: bool = False


@dataclass(slots=True)
class Solved:
    """What return and wire of a set are on some days, with the builds of those days."""

    return_pick: ReturnPick | None
    wire_m2: float | None
    verdicts: list[BuildVerdict]


@dataclass(slots=True)
class Days:
    """What one pump in one number is asked: today first, then what is asked besides, then the rest."""

    all: list[Situation]
    asked: int

    @property
    def next_goal(self) -> int | None:
        """The number of the next goal; None where there is none."""
        return next((number for number, day in enumerate(self.all) if day.when == "next"), None)


@dataclass
class Search:
    """All that a search needs to know of one build and one parts file."""

    session: Session
    parts: Parts
    figures: Figures
    asked: Asked = field(default_factory=Asked)

    def __post_init__(self) -> None:
        session, parts = self.session, self.parts
        if not session.feed.run:
            raise SessionError(
                session.name, (Fault("feed.run", "is missing: parts are judged with a feed line"),)
            )
        self.prices = Prices(session, parts, self.figures)
        self._bench = Workbench()
        self._injectors: dict[Key, InjectorsOnOffer | None] = {}
        self.pumps = pump_choices(session, parts)
        self.feed_sizes = feed_sizes(
            session.feed, parts, candidate_called(session.feed, self.figures.verdict.size)
        )
        line = session.return_line
        self._returns = () if line is None else return_sizes(line, parts, self.prices.on_the_car.return_size)
        self._settings = tuple(
            (regulator, base)
            for regulator in regulators(session, parts)
            for base in base_pressures(session, regulator)
        )

    @property
    def sets(self) -> int:
        """How many sets the grid has."""
        return sum(choice.most for choice in self.pumps) * len(self._settings) * len(self.feed_sizes)

    def verdicts(self) -> Iterator[list[Verdict]]:
        """What the sets come to, those of one pump, number and base pressure together, so that they come soon.

        What may not carry the fuel is left out.
        """
        for choice in self.pumps:
            if choice.may_carry(self.session):
                for count in range(1, choice.most + 1):
                    yield from self._of(choice, count)

    @property
    def refused(self) -> int:
        """How many sets have a pump that may not carry the fuel."""
        refused = sum(choice.most for choice in self.pumps if not choice.may_carry(self.session))
        return refused * len(self._settings) * len(self.feed_sizes)

    def _of(self, choice: PumpChoice, count: int) -> Iterator[list[Verdict]]:
        days = self._days(choice, count)
        areas = wires(days.all[0].session, self.parts)
        pumps: dict[Key, object] = {}
        fitted: dict[Key, Fitted] = {}
        for regulator, base in self._settings:
            verdicts = []
            for size in self.feed_sizes:
                injectors = self._cheapest_injectors(base, size, days)
                key = id(regulator), base, id(injectors)
                if key not in fitted:
                    fitted[key] = Fitted(self._bench, base, regulator, injectors, pumps)
                grid = GridSet(choice, count, regulator, base, size)
                verdicts.append(self._judged(grid, injectors, fitted[key], days, areas))
            yield verdicts

    def _days(self, choice: PumpChoice, count: int) -> Days:
        """Today, then what is asked besides, then what is only told."""
        today = today_with(self.session, choice, count)
        following = next_goal_of(today)
        asked: list[Situation] = []
        unasked: list[Situation] = []
        if following is not None:
            (asked if self.asked.next_goal else unasked).append(following)
        if self.asked.bad_days:
            asked += bad_days_of(today, self.session, choice, count)
        return Days([today, *asked, *unasked], 1 + len(asked))

    def _cheapest_injectors(self, base_pa: float, size: Size | None, days: Days) -> InjectorsOnOffer | None:
        """Injectors within their limit on every day that is asked: today's, else the cheapest of the file.

        Where none is, today's, or the largest of the file. They hang on no pump, and on the feed only where the rail
        sags.
        """
        key = base_pa, size if self.session.pressure.regulator == "tank" else None
        if key not in self._injectors:
            self._injectors[key] = self._solve_injectors(base_pa, size, days)
        return self._injectors[key]

    def _solve_injectors(self, base_pa: float, size: Size | None, days: Days) -> InjectorsOnOffer | None:
        offers = injector_offers(self.session, self.parts)
        if not offers or (self.session.injectors is not None and self._within(None, base_pa, size, days)):
            return None
        by_price = sorted(offers, key=lambda offer: (*cost(offer), offer.rated_flow))
        found = next((offer for offer in by_price if self._within(offer, base_pa, size, days)), None)
        if found is None and self.session.injectors is None:
            return max(offers, key=lambda offer: offer.rated_flow / offer.rated_pressure**0.5)
        return found

    def _within(
        self, injectors: InjectorsOnOffer | None, base_pa: float, size: Size | None, days: Days
    ) -> bool:
        for day in days.all[: days.asked]:
            session = with_parts(day, base_pa=base_pa, regulator=None, injectors=injectors, wire_m2=None)
            sized = SizedSystem(FuelSystem(session, day.given_at_k), size)
            if any(injectors_fail(point) for point in sized.and_points()):
                return False
        return True

    def _judged(
        self,
        grid: GridSet,
        injectors: InjectorsOnOffer | None,
        fitted: Fitted,
        days: Days,
        areas: Sequence[float | None],
    ) -> Verdict:
        """One set: with the parts that do today; where it passes so, with those that do on every day that is asked."""
        wired = Wired(fitted, grid.size, areas)
        solved = self._solved(wired, days.all[:1])
        judged = [judgment_of(solved.verdicts[0], solved.return_pick)]
        if not judged[0].limits and days.asked > 1:
            solved = self._solved(wired, days.all[: days.asked])
            judged = [judgment_of(verdict, solved.return_pick) for verdict in solved.verdicts]
        limits = limits_of(days.all, judged)
        today = solved.verdicts[0].sized
        circuit = working_circuit(today)
        return Verdict(
            parts=PartSet(
                grid,
                None if solved.return_pick is None else solved.return_pick.size,
                solved.wire_m2,
                injectors,
            ),
            limits=limits,
            margin=judged[0].margin,
            current_A=all_pumps_A(today),
            fuse_A=None if circuit is None else circuit[1],
            next_works=None if limits else self._next_works(grid, fitted, days, solved),
        )

    def _solved(self, wired: Wired, days: Sequence[Situation]) -> Solved:
        """The first wire and the first return that do on every day; the thickest wire where none does."""
        verdicts = wired.at_the_first_wire_that_does(days)
        pick = None
        if self._returns and verdicts[0].behind.applies:
            pick = ReturnPick(return_pick(self._returns, verdicts))
        return Solved(pick, wired.area_m2, verdicts)

    def tightest(self, parts: PartSet) -> Tightest | None:
        """The bad day with the least margin of a set; None where no bad day tells one."""
        grid = parts.searched
        today = today_with(self.session, grid.pump, grid.count)
        fitted = Fitted(self._bench, grid.base_pa, grid.regulator, parts.injectors, {})
        pick = ReturnPick(parts.return_size) if self._returns else None
        found: Tightest | None = None
        for number, day in enumerate(bad_days_of(today, self.session, grid.pump, grid.count), TOLD):
            margin = judgment_of(fitted.verdict(day, number, grid.size, parts.wire_m2), pick).margin
            if margin is not None and (found is None or margin < found.margin):
                found = Tightest(day.name, margin)
        return found

    def _next_works(self, grid: GridSet, fitted: Fitted, days: Days, solved: Solved) -> bool | None:
        """Whether a set that works carries the next goal too; None without one."""
        number = days.next_goal
        if number is None:
            return None
        if number < days.asked:
            return True
        verdict = fitted.verdict(days.all[number], number, grid.size, solved.wire_m2)
        return not judgment_of(verdict, solved.return_pick).limits


def limits_of(days: Sequence[Situation], judged: Sequence[Judgment]) -> tuple[Limit, ...]:
    """Every limit that a set meets on some days, today first, in the order of the answer."""
    found = {limit for _, limits in _by_day(days, judged) for limit in limits}
    return tuple(limit for limit in LIMITS if limit in found)


def _by_day(
    days: Sequence[Situation], judged: Sequence[Judgment]
) -> Iterator[tuple[Situation, tuple[Limit, ...]]]:
    for day, judgment in zip(days, judged, strict=False):
        if day.when == "case":
            yield day, in_case(day.name, judgment, judged[0].vapour).limits
        else:
            yield day, judgment.limits


def all_pumps_A(sized: SizedSystem) -> float | None:
    """What all the pumps draw at capacity; None where no sheet says it."""
    pumps = sized.system.pumps
    one = None if pumps is None else pumps.pump.current_A(sized.pressure_at_capacity_pa)
    return None if pumps is None or one is None else pumps.running * one
