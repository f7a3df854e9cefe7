"""Judging sets: once for what depends on the situation alone, the rest by the functions that judge any build."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from fuelwiz.options.fitting import Situation, with_parts
from fuelwiz.options.parts_file import InjectorsOnOffer, RegulatorOnOffer
from fuelwiz.physics.wire import MOST_WIRE_LOSS_V, ampacity_A, loop_resistance_ohm
from fuelwiz.session import Size
from fuelwiz.sizing.electrics import working_circuit
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedLine
from fuelwiz.sizing.returns import LetsThrough
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import BuildVerdict

ALIKE_FOR_EVERY_SET = ("fuel", "demand", "atmosphere_pa")
"""What of a build hangs on the day and the goal, and on no part of a set."""

OF_THE_PUMP = ("one_pump", "suction")
"""What hangs on the day, the pump and how many there are, and on nothing else of a set."""
OF_PUMP_AND_WIRE = ("supply", "pumps", "pumps_at_most", "idle_pumps", "idle_pumps_at_most")
"""What hangs on the wire besides."""

Key = tuple[Any, ...]


class Workbench:
    """What sets share: fuel, demand and feed lines of each day; it knows of no set, and forgets nothing."""

    def __init__(self) -> None:
        self._alike: dict[Key, dict[str, Any]] = {}
        self._feeds: dict[Key, FeedLine] = {}
        self._returns: dict[Key, LetsThrough] = {}

    def lend(self, system: FuelSystem, day: Key) -> None:
        """Put what is known of a day into a build of that day."""
        known = self._alike.get(day)
        if known is None:
            known = self._alike[day] = {name: getattr(system, name) for name in ALIKE_FOR_EVERY_SET}
        system.__dict__.update(known)

    def lets_through(self, verdict: BuildVerdict, day: Key) -> LetsThrough:
        """What the return lets through on that day, behind one regulator."""
        known = self._returns.get(day)
        if known is None:
            known = self._returns[day] = verdict.behind.lets_through
        return known

    def sized(self, system: FuelSystem, size: Size | None, day: Key) -> SizedSystem:
        """A build at a size, with the feed line of that day and size."""
        sized = SizedSystem(system, size)
        key = day, size
        feed = self._feeds.get(key)
        if feed is None:
            feed = self._feeds[key] = sized.feed
        sized.__dict__["feed"] = feed
        return sized


class Fitted:
    """One pump of a set in so many, at one base pressure, with one regulator and one kind of injectors.

    Builds of each day and wire are made once, and sized at each size of feed.
    """

    def __init__(
        self,
        bench: Workbench,
        base_pa: float,
        regulator: RegulatorOnOffer | None,
        injectors: InjectorsOnOffer | None,
        pumps: dict[Key, Any],
    ) -> None:
        self._bench = bench
        self._base_pa, self._regulator, self._injectors = base_pa, regulator, injectors
        self._pumps = pumps
        self._systems: dict[Key, FuelSystem] = {}

    def verdict(self, day: Situation, number: int, size: Size | None, wire_m2: float | None) -> BuildVerdict:
        """The build of a day at a size of feed with a wire, ready to be judged."""
        key = number, wire_m2
        system = self._systems.get(key)
        if system is None:
            system = self._systems[key] = self._system(day, number, wire_m2)
        at = day.when, day.name, number
        verdict = BuildVerdict(self._bench.sized(system, size, at))
        if verdict.behind.applies:
            behind = *at, id(self._regulator), _place(system)
            verdict.behind.__dict__["lets_through"] = self._bench.lets_through(verdict, behind)
        return verdict

    def _system(self, day: Situation, number: int, wire_m2: float | None) -> FuelSystem:
        session = with_parts(
            day,
            base_pa=self._base_pa,
            regulator=self._regulator,
            injectors=self._injectors,
            wire_m2=wire_m2,
        )
        system = FuelSystem(session, day.given_at_k)
        self._bench.lend(system, (day.when, day.name, number))
        for names, hang_on in ((OF_THE_PUMP, ()), (OF_PUMP_AND_WIRE, (wire_m2,))):
            key = number, *hang_on
            known = self._pumps.get(key)
            if known is None:
                known = self._pumps[key] = {name: getattr(system, name) for name in names}
            system.__dict__.update(known)
        return system


def wire_does(verdict: BuildVerdict, area_m2: float) -> bool:
    """Whether a wire loses no more than 0.5 V in itself and carries the fuse; True where no current is known."""
    wiring, circuit = verdict.sized.system.session.wiring, working_circuit(verdict.sized)
    if wiring is None or wiring.length is None or circuit is None:
        return True
    current, fuse = circuit
    if fuse is None or ampacity_A(area_m2) < fuse:
        return False
    ohms = loop_resistance_ohm(
        area_m2=area_m2,
        length_m=wiring.length,
        by_chassis=wiring.return_path == "chassis",
        temperature_k=wiring.temperature,
    )
    return current * ohms <= MOST_WIRE_LOSS_V


def return_pick(sizes: Sequence[Size | None], verdicts: Sequence[BuildVerdict]) -> Size | None:
    """The first size that is at ease on every day, else the first that holds on every day, else the largest."""
    backs = [verdict.behind for verdict in verdicts]
    for size in sizes:
        if all(back.at_ease(size) for back in backs):
            return size
    for size in sizes:
        if all(back.holds(size) for back in backs):
            return size
    return sizes[-1]


def _place(system: FuelSystem) -> str | None:
    pump = system.session.pump
    return None if pump is None else pump.place


class Wired:
    """A set whose wire is being looked for; no build is made twice."""

    def __init__(self, fitted: Fitted, size: Size | None, areas: Sequence[float | None]) -> None:
        self._fitted, self._size, self._areas = fitted, size, areas
        self._at = 0
        self._known: dict[Key, BuildVerdict] = {}

    @property
    def area_m2(self) -> float | None:
        """The wire that it has come to."""
        return self._areas[self._at]

    def at_the_first_wire_that_does(self, days: Sequence[Situation]) -> list[BuildVerdict]:
        """The builds of some days with the first wire that does on all of them, the thickest where none does.

        What did not do on fewer days is not tried again.
        """
        while True:
            verdicts: list[BuildVerdict] = []
            for number, day in enumerate(days):
                verdict = self._verdict(day, number)
                verdicts.append(verdict)
                if len(self._areas) > 1 and not wire_does(verdict, self.area_m2 or 0.0):
                    break
            else:
                return verdicts
            if self._at == len(self._areas) - 1:
                self._at = thickest(self._areas)
                return [self._verdict(day, number) for number, day in enumerate(days)]
            self._at = next_wire(self._areas, self._at, verdict)

    def _verdict(self, day: Situation, number: int) -> BuildVerdict:
        key = number, self._at
        if key not in self._known:
            self._known[key] = self._fitted.verdict(day, number, self._size, self.area_m2)
        return self._known[key]


def next_wire(areas: Sequence[float | None], at: int, verdict: BuildVerdict) -> int:
    """The wire to try after one that does not do, the last where there is none.

    Of a pump that draws more the harder it works, a thicker wire never draws less: one of the file that would not do
    even for the current found with a thinner one is passed over. Today's wire comes first and may be any.
    """
    following = range(at + 1, len(areas))
    if at == 0 or not _draws_more_the_harder_it_works(verdict):
        return at + 1
    return next((i for i in following if wire_does(verdict, areas[i] or 0.0)), len(areas) - 1)


def _draws_more_the_harder_it_works(verdict: BuildVerdict) -> bool:
    pumps = verdict.sized.system.pumps
    current = () if pumps is None else pumps.pump.current
    return all(later >= earlier for (_, earlier), (_, later) in pairwise(current))


def thickest(areas: Sequence[float | None]) -> int:
    """Which of the wires is the thickest."""
    return max(range(len(areas)), key=lambda at: areas[at] or 0.0)
