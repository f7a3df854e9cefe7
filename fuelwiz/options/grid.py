"""What a set may be made of: pumps and how many, base pressure, and the sizes, wires and injectors that there are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fuelwiz.facts import NEAR
from fuelwiz.options.parts_file import InjectorsOnOffer, Parts, PumpOnOffer, RegulatorOnOffer, WireOnOffer
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.physics.wire import is_same_area
from fuelwiz.session import Feed, Pump, ReturnLine, Run, Session, Size, bore_of_m
from fuelwiz.sizing.candidates import FIXED_LINE, candidates, follows

BASES = {3e5: "3 bar", 50 * PSI_PA: "50 psi", 58 * PSI_PA: "58 psi"}
"""What regulators are commonly set to, as a file says it: common practice, no source."""
SAME_BASE_PA = 0.1 * PSI_PA
USUAL_MOST = 2
LITTLE_ALCOHOL = 0.15
"""Share of ethanol up to which every pump for gasoline may carry the fuel (E15: ASTM D4814)."""


@dataclass(frozen=True, eq=False)
class PumpChoice:
    """A pump that a set may have: the build's own, or one of the file.

    `offer` is what the file says of it, None of an own pump that the file does not have; `own` tells the build's.
    """

    name: str
    pump: Pump
    offer: PumpOnOffer | None
    own: bool
    most: int

    def may_carry(self, session: Session) -> bool:
        """Whether it may carry the build's fuel; what nobody knows is not held against it."""
        refused = self.offer is not None and self.offer.alcohol is False
        return not (refused and needs_alcohol_pump(session))

    def not_known_to_carry(self, session: Session) -> bool:
        """Whether nobody says that it may carry such a fuel."""
        said = self.offer is not None and self.offer.alcohol is not None
        return needs_alcohol_pump(session) and not said and not self.own


def needs_alcohol_pump(session: Session) -> bool:
    """Whether the fuel asks for a pump that may carry alcohol."""
    fuel = session.fuel
    return fuel.kind != "blend" or fuel.ethanol > LITTLE_ALCOHOL + NEAR


def pump_choices(session: Session, parts: Parts) -> tuple[PumpChoice, ...]:
    """The build's own pump, then each of the file; one of its name in the file is the build's own."""
    own, choices = session.pump, []
    twin = None
    if own is not None:
        named = _plain_name(own.name)
        twin = next((offer for offer in parts.pump if named and _plain_name(offer.name) == named), None)
        most = max(own.count, USUAL_MOST if twin is None else twin.most)
        choices.append(PumpChoice(own.name or "the pump you have", own, twin, True, most))
    for number, offer in enumerate(parts.pump, 1):
        if offer is not twin:
            name = offer.name or f"pump {number} of the file"
            choices.append(PumpChoice(name, pump_of(offer), offer, False, offer.most))
    return tuple(choices)


def _plain_name(name: str) -> str:
    return " ".join(name.split()).casefold()


def pump_of(offer: PumpOnOffer) -> Pump:
    """One pump of the file as a session has it, in full health."""
    given = {
        "name": offer.name,
        "place": offer.place,
        "kind": offer.kind,
        "relief": offer.relief,
        "current": offer.current,
        "curve": offer.curve,
    }
    rest = {
        "health": 1.0,
        "count": 1,
        "arrangement": "parallel",
        "running_at_idle": 1,
        "volts": None,
    }
    return Pump.model_construct(_fields_set=set(given), **given, **rest)


def base_pressures(session: Session, regulator: RegulatorOnOffer | None) -> tuple[float, ...]:
    """The base pressure as it is, and the usual ones where the regulator may be set to them.

    A high-pressure pump on the engine asks for its own pressure, which no regulator may change. A pressure that the
    regulator of the file cannot be set to is none.
    """
    own = session.pressure.base
    if regulator is None or regulator.set_range is None or session.engine.injection == "direct":
        return (own,)
    low, high = regulator.set_range
    found = [own]
    for base in BASES:
        if all(abs(base - other) > SAME_BASE_PA for other in found):
            found.append(base)
    return tuple(base for base in found if low - SAME_BASE_PA <= base <= high + SAME_BASE_PA)


def base_text(base_pa: float) -> str:
    """One of the usual pressures as a file says it."""
    return BASES[base_pa]


def regulators(session: Session, parts: Parts) -> tuple[RegulatorOnOffer | None, ...]:
    """The regulators of the file, each in place of the build's own; None where the build keeps what it has."""
    return parts.regulator if parts.regulator and session.pressure.regulator != "none" else (None,)


def feed_sizes(feed: Feed, parts: Parts, pick: Size | None) -> tuple[Size | None, ...]:
    """The build's candidates that the file has in the hose of each run that follows them, smallest first.

    A file without any hose leaves the line as it is, at the build's pick.
    """
    rows = candidates(feed.sizes, feed.chosen, feed.run)
    if rows == FIXED_LINE:
        return rows
    return tuple(row for row in rows if _has(parts, row, feed.run)) if parts.hose else (pick,)


def return_sizes(line: ReturnLine, parts: Parts, on_the_car: Size | None) -> tuple[Size | None, ...]:
    """The size on the car, then the build's candidates that the file has, smallest first; all where it has none."""
    rows = candidates(line.sizes, line.chosen, line.run)
    if rows == FIXED_LINE:
        return rows
    had = tuple(row for row in rows if _has(parts, row, line.run)) or rows
    return had if on_the_car is None else (on_the_car, *(row for row in had if row != on_the_car))


def _has(parts: Parts, size: Size | None, runs: Sequence[Run]) -> bool:
    """Whether the file has a size in the hose of every run that follows it."""
    return all(hoses_of(parts, size, run) for run in runs if follows(run))


def hoses_of(parts: Parts, size: Size | None, run: Run) -> list[int]:
    """Which of the file's hoses are of a run's kind and of that size, by number."""
    if size is None:
        return []
    wanted = bore_of_m(size, run.hose, run.wall)
    return [
        number
        for number, offer in enumerate(parts.hose)
        if offer.hose == run.hose
        and abs(bore_of_m(offer.size, offer.hose, run.wall) - wanted) <= NEAR * wanted
    ]


def wires(session: Session, parts: Parts) -> tuple[float | None, ...]:
    """Areas of wire in the order in which they are tried: today's, then those of the file, thin ones first.

    None, or today's alone, where there is nothing to choose by: no wiring, no length, or volts that were measured.
    """
    wiring = session.wiring
    if wiring is None:
        return (None,)
    measured = session.pump is not None and session.pump.volts is not None
    offers = sorted({offer.wire for offer in parts.wire})
    if wiring.length is None or measured or not offers:
        return (wiring.wire,)
    if wiring.wire is None:
        return tuple(offers)
    return (wiring.wire, *(area for area in offers if not is_same_area(area, wiring.wire)))


def wires_of_area(parts: Parts, area_m2: float) -> list[WireOnOffer]:
    """The wires of the file of an area."""
    return [offer for offer in parts.wire if is_same_area(offer.wire, area_m2)]


def injector_offers(session: Session, parts: Parts) -> tuple[InjectorsOnOffer, ...]:
    """The injectors of the file; none before a high-pressure pump."""
    return () if session.engine.injection == "direct" else parts.injectors
