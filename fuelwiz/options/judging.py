"""Judging sets: what hangs on the situation alone is reckoned once, the rest by the functions that judge any build."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from fuelwiz.options.fitting import Situation, with_parts
from fuelwiz.options.parts_file import InjectorsOnOffer, RegulatorOnOffer
from fuelwiz.physics.wire import MOST_WIRE_LOSS_V, ampacity_A, loop_resistance_ohm
from fuelwiz.session import Size
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.verdict import BuildVerdict

ALIKE_FOR_EVERY_SET = ("fuel", "demand", "atmosphere_pa")
"""What of a build hangs on the day and the goal, and on no part of a set."""

Key = tuple[Any, ...]


class Workbench:
    """What sets share: fuel, demand and feed lines of each day; it knows of no set, and forgets nothing."""

    def __init__(self) -> None:
        self._alike: dict[Key, dict[str, Any]] = {}
        self._feeds: dict[Key, Any] = {}

    def lend(self, system: FuelSystem, day: Key) -> None:
        """Put what is known of a day into a build of that day."""
        known = self._alike.get(day)
        if known is None:
            known = self._alike[day] = {name: getattr(system, name) for name in ALIKE_FOR_EVERY_SET}
        system.__dict__.update(known)

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
        return BuildVerdict(self._bench.sized(system, size, (day.when, day.name, number)))

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
        for name in ("one_pump", "suction"):
            key = name, number
            if key not in self._pumps:
                self._pumps[key] = getattr(system, name)
            system.__dict__[name] = self._pumps[key]
        return system


def wire_does(verdict: BuildVerdict, area_m2: float) -> bool:
    """Whether a wire loses no more than 0.5 V in itself and carries the fuse; True where no current is known."""
    circuit, wiring = verdict.circuit, verdict.sized.system.session.wiring
    if circuit is None or wiring is None or wiring.length is None or circuit.current_A is None:
        return True
    if circuit.fuse_A is None or ampacity_A(area_m2) < circuit.fuse_A:
        return False
    ohms = loop_resistance_ohm(
        area_m2=area_m2,
        length_m=wiring.length,
        by_chassis=wiring.return_path == "chassis",
        temperature_k=wiring.temperature,
    )
    return circuit.current_A * ohms <= MOST_WIRE_LOSS_V


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
