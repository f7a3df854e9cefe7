"""Bad days: the same build with a few values changed, solved again at the pick."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.facts import NEAR
from fuelwiz.physics.boost import power_share_at
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.fuel import blend, blend_reid_pa
from fuelwiz.physics.inlet import atmosphere_pa
from fuelwiz.session import Fuel, Pump, Session, Size
from fuelwiz.sizing.blends import other_blends
from fuelwiz.sizing.figures import StressFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.sized_system import SizedSystem, VapourMargins
from fuelwiz.sizing.thresholds import (
    CLOGGED,
    HIGH_ALTITUDE_M,
    HOT_FUEL_K,
    SPIKE_PA,
    SUMMER_REID,
    SUMMER_REID_UP_TO,
    USUAL_SUPPLY_V,
    WEAK_SUPPLY_V,
    WORN,
)
from fuelwiz.sizing.verdict import Judgment, ReturnPick, judge, with_vapour
from fuelwiz.sizing.vocabulary import Case


def stress(
    system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None
) -> tuple[StressFigures, ...]:
    """Every case that applies, and the session's own; the reserve counts as 0, and vapour where the fuel boils."""
    given_at = system.session.fuel.temperature
    today = SizedSystem(system, pick).vapour_margins
    cases = []
    for name, session in (*built_in_cases(system.session), *own_cases(system.session)):
        free = changed(session, "goal", reserve=0.0)
        judgment = judge(FuelSystem(free, fuel_given_at_k=given_at), pick, return_pick)
        cases.append(in_case(name, judgment, today))
    return tuple(cases)


def in_case(name: str, judgment: Judgment, today: VapourMargins) -> StressFigures:
    """What a judgment without a reserve comes to on a bad day; hot fuel is never taken as further from boiling."""
    vapour = judgment.vapour.no_better_than(today) if name == "hot fuel" else judgment.vapour
    limits = with_vapour(judgment.limits, vapour.lowest_pa)
    return StressFigures(
        case=name,
        margin=judgment.margin,
        vapour_margin_Pa=vapour.at_goal_pa,
        works=not limits,
        limits=limits,
        duty=judgment.duty,
    )


def built_in_cases(session: Session) -> Iterator[tuple[Case, Session]]:
    """The cases that apply to a session with a pump, in the order of the list."""
    dirty = dirty_filters(session)
    yield "low volts", low_volts(session)
    hot = max(session.fuel.temperature, HOT_FUEL_K)
    yield "hot fuel", changed(summer_fuel(session), "fuel", temperature=hot)
    if dirty is not session:
        yield "dirty filters", dirty
    if session.pressure.boost > 0:
        yield "boost spike", boost_spike(session)
    yield "worn pump", worn_pump(session)
    if session.fuel.kind == "blend":
        names: tuple[Case, Case] = ("more ethanol", "less ethanol")
        for name, ethanol in zip(names, other_blends(session.fuel.ethanol), strict=True):
            if ethanol != session.fuel.ethanol:
                yield name, with_ethanol(session, ethanol)
    high = max(session.pressure.altitude, HIGH_ALTITUDE_M)
    yield "altitude", changed(summer_fuel(session), "pressure", altitude=high)
    pump = session.pump
    if pump is not None and pump.arrangement == "parallel" and pump.count > 1:
        yield "one pump dead", one_pump_dead(session, pump)
    yield "bad day", worn_pump(dirty_filters(low_volts(session)))


def one_pump_dead(session: Session, pump: Pump) -> Session:
    """One pump fewer, at idle too if all ran."""
    left = pump.count - 1
    return changed(session, "pump", count=left, running_at_idle=min(pump.running_at_idle, left))


def own_cases(session: Session) -> Iterator[tuple[str, Session]]:
    """The session's own cases, taken literally."""
    for case in session.stress.case:
        yield case.name, case.changed


def changed(session: Session, section: str, **values: object) -> Session:
    """A session with values of one section changed."""
    part = getattr(session, section).model_copy(update=values)
    return session.model_copy(update={section: part})


def summer_fuel(session: Session) -> Session:
    """A blend as it is sold where it is hot, with less that boils; a measured Reid pressure stays."""
    fuel = session.fuel
    if fuel.kind != "blend" or fuel.reid_pressure is not None or fuel.ethanol > SUMMER_REID_UP_TO + NEAR:
        return session
    return changed(session, "fuel", reid_pressure=SUMMER_REID * blend_reid_pa(fuel.ethanol))


def boost_spike(session: Session) -> Session:
    """A few psi more boost, and the power with it, at the goal and at every point that has boost."""
    atmosphere = atmosphere_pa(session.pressure.altitude)

    def share(boost: float) -> float:
        return power_share_at(boost_pa=boost, more_pa=SPIKE_PA, atmosphere_pa=atmosphere)

    boost = session.pressure.boost
    points = tuple(
        pull.model_copy(update={"boost": pull.boost + SPIKE_PA, "power": pull.power * share(pull.boost)})
        if pull.boost > 0
        else pull
        for pull in session.pull
    )
    session = changed(session, "goal", power=session.goal.power * share(boost))
    session = changed(session, "pressure", boost=boost + SPIKE_PA)
    return session.model_copy(update={"pull": points})


def low_volts(session: Session) -> Session:
    """A weak alternator: 12.8 V at most, measured volts lower by as much, the lift pump's flow by its share."""
    wiring, pump = session.wiring, session.pump
    supply = USUAL_SUPPLY_V if wiring is None else wiring.supply
    left = min(supply, WEAK_SUPPLY_V)
    if wiring is not None:
        session = changed(session, "wiring", supply=left)
    if pump is not None and (pump.volts is not None or wiring is None):
        volts = ASSUMED_VOLTS if pump.volts is None else pump.volts
        session = changed(session, "pump", volts=max(0.0, volts - (supply - left)))
    return lift_times(session, left / supply)


def lift_times(session: Session, share: float) -> Session:
    """A lift pump that gives a share of its flow."""
    pot = session.surge
    if pot is None or pot.lift_flow is None:
        return session
    return changed(session, "surge", lift_flow=share * pot.lift_flow)


def dirty_filters(session: Session) -> Session:
    """Filters and strainer clogged twice as much; the same session where there is none."""
    feed, inlet = session.feed, session.inlet
    if feed.filter:
        clogged = tuple(part.model_copy(update={"clogging": CLOGGED * part.clogging}) for part in feed.filter)
        session = changed(session, "feed", filter=clogged)
    if inlet is not None and inlet.strainer is not None:
        strainer = inlet.strainer.model_copy(update={"clogging": CLOGGED * inlet.strainer.clogging})
        session = changed(session, "inlet", strainer=strainer)
    return session


def worn_pump(session: Session) -> Session:
    """Pumps that give 90 % at every point of their curves, the lift pump too."""
    if session.pump is None:
        return session
    return lift_times(changed(session, "pump", health=WORN * session.pump.health), WORN)


def with_ethanol(session: Session, ethanol: float) -> Session:
    """A blend with another ethanol content; a given bsfc keeps its efficiency, a given Reid pressure its place."""
    fuel = session.fuel
    bsfc = session.engine.bsfc
    if bsfc is not None:
        before = blend(ethanol=fuel.ethanol, temperature_k=fuel.temperature).lhv_J_kg
        after = blend(ethanol=ethanol, temperature_k=fuel.temperature).lhv_J_kg
        session = changed(session, "engine", bsfc=bsfc * before / after)
    return changed(session, "fuel", ethanol=ethanol, reid_pressure=reid_with_ethanol_pa(fuel, ethanol))


def reid_with_ethanol_pa(fuel: Fuel, ethanol: float) -> float | None:
    """A given Reid pressure in its place of the table's at another ethanol content; None where none is given."""
    given = fuel.reid_pressure
    return None if given is None else given * blend_reid_pa(ethanol) / blend_reid_pa(fuel.ethanol)
