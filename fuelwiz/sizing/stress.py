"""Bad days: the same build with a few values changed, solved again at the pick."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.fuel import PSI_PA, blend, blend_reid_pa
from fuelwiz.session import Session, Size
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.figures import StressFigures
from fuelwiz.sizing.judge import ReturnPick, judge

Case = tuple[str, Session]

WEAK_SUPPLY_V = 12.8
USUAL_SUPPLY_V = 13.8
HOT_FUEL_K = 323.15
SPIKE_PA = 3 * PSI_PA
WORN = 0.9
OTHER_ETHANOL = 0.15
HIGH_ALTITUDE_M = 2000.0


def stress(build: Build, pick: Size | None, return_pick: ReturnPick | None) -> tuple[StressFigures, ...]:
    """Every case that applies, and the session's own; the reserve counts as nought, vapour stays out of the verdict."""
    given_at = build.session.fuel.temperature
    cases = []
    for name, session in (*built_in_cases(build.session), *own_cases(build.session)):
        free = session.model_copy(update={"goal": session.goal.model_copy(update={"reserve": 0.0})})
        found = judge(Build(free, fuel_given_at_k=given_at), pick, return_pick)
        limits = tuple(limit for limit in found.limits if limit != "vapour")
        cases.append(
            StressFigures(
                case=name,
                margin=found.margin,
                vapour_margin_Pa=found.vapour_margin_pa,
                works=not limits,
                limits=limits,
            )
        )
    return tuple(cases)


def built_in_cases(session: Session) -> Iterator[Case]:
    """The cases that apply to a session with a pump, in the order of the list."""
    dirty = dirty_filters(session)
    yield "low volts", low_volts(session)
    yield "hot fuel", changed(session, "fuel", temperature=max(session.fuel.temperature, HOT_FUEL_K))
    if dirty is not session:
        yield "dirty filters", dirty
    if session.pressure.boost > 0:
        yield "boost spike", changed(session, "pressure", boost=session.pressure.boost + SPIKE_PA)
    yield "worn pump", worn_pump(session)
    for name, step in (("more ethanol", OTHER_ETHANOL), ("less ethanol", -OTHER_ETHANOL)):
        other = min(1.0, max(0.0, session.fuel.ethanol + step))
        if session.fuel.kind == "blend" and other != session.fuel.ethanol:
            yield name, with_ethanol(session, other)
    yield "altitude", changed(session, "pressure", altitude=max(session.pressure.altitude, HIGH_ALTITUDE_M))
    pump = session.pump
    if pump is not None and pump.arrangement == "parallel" and pump.count > 1:
        left = pump.count - 1
        yield (
            "one pump dead",
            changed(session, "pump", count=left, running_at_idle=min(pump.running_at_idle, left)),
        )
    yield "bad day", worn_pump(dirty_filters(low_volts(session)))


def own_cases(session: Session) -> Iterator[Case]:
    """The session's own cases, taken literally."""
    for case in session.stress.case:
        yield case.name, case.changed


def changed(session: Session, section: str, **values: object) -> Session:
    """A session with values of one section changed."""
    part = getattr(session, section).model_copy(update=values)
    return session.model_copy(update={section: part})


def low_volts(session: Session) -> Session:
    """A weak alternator: 12.8 V at most, and volts measured at the pump lower by as much as the supply falls."""
    wiring, pump = session.wiring, session.pump
    supply = USUAL_SUPPLY_V if wiring is None else wiring.supply
    fall = max(0.0, supply - WEAK_SUPPLY_V)
    if wiring is not None:
        session = changed(session, "wiring", supply=min(supply, WEAK_SUPPLY_V))
    if pump is not None and (pump.volts is not None or wiring is None):
        volts = ASSUMED_VOLTS if pump.volts is None else pump.volts
        session = changed(session, "pump", volts=max(0.0, volts - fall))
    return session


def dirty_filters(session: Session) -> Session:
    """Filters and strainer clogged twice as much; the same session where there is none."""
    feed, inlet = session.feed, session.inlet
    if feed.filter:
        clogged = tuple(part.model_copy(update={"clogging": 2 * part.clogging}) for part in feed.filter)
        session = changed(session, "feed", filter=clogged)
    if inlet is not None and inlet.strainer is not None:
        strainer = inlet.strainer.model_copy(update={"clogging": 2 * inlet.strainer.clogging})
        session = changed(session, "inlet", strainer=strainer)
    return session


def worn_pump(session: Session) -> Session:
    """A pump that gives 90 % at every point of its curves."""
    if session.pump is None:
        return session
    curves = tuple(
        curve.model_copy(update={"points": tuple((pressure, WORN * flow) for pressure, flow in curve.points)})
        for curve in session.pump.curve
    )
    return changed(session, "pump", curve=curves)


def with_ethanol(session: Session, ethanol: float) -> Session:
    """A blend with another ethanol content; a given bsfc keeps its efficiency, a given Reid pressure its place."""
    said = session.fuel
    values: dict[str, float] = {"ethanol": ethanol}
    if said.reid_pressure is not None:
        values["reid_pressure"] = said.reid_pressure * blend_reid_pa(ethanol) / blend_reid_pa(said.ethanol)
    bsfc = session.engine.bsfc
    if bsfc is not None:
        before = blend(ethanol=said.ethanol, temperature_k=said.temperature).lhv_J_kg
        after = blend(ethanol=ethanol, temperature_k=said.temperature).lhv_J_kg
        session = changed(session, "engine", bsfc=bsfc * before / after)
    return changed(session, "fuel", **values)
