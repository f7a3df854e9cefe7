"""What a gauge should show on the finished car, at the rail and behind the pump."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.session import Session
from fuelwiz.sizing.candidates import candidate_called
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.part_figures import GaugeReading
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.vocabulary import GaugeState


def gauge_readings(session: Session, figures: Figures) -> tuple[GaugeReading, ...]:
    """The readings at the pick; the one with the hose off where the regulator has a hose to take off."""
    return tuple(_readings(session, figures))


def _readings(session: Session, figures: Figures) -> Iterator[GaugeReading]:
    pressure = session.pressure
    if pressure.reference == "manifold" and pressure.regulator != "none":
        no_vacuum = pressure.model_copy(update={"idle_vacuum": 0.0})
        hose_off = session.model_copy(update={"pressure": no_vacuum})
        yield _at_idle("hose off", _at_pick(hose_off, figures), figures)
    sized = _at_pick(session, figures)
    yield _at_idle("idle", sized, figures)
    yield _at_full_power(sized, figures)


def _at_idle(when: GaugeState, sized: SizedSystem, figures: Figures) -> GaugeReading:
    system = sized.system
    if not system.has_runs:
        return GaugeReading(when, system.pressure.idle_rail_Pa, None)
    if system.at_rail:
        return _returning(when, sized, figures)
    burned = system.idle_fuel_m3_s
    lost = sized.feed.loss_pa(burned)
    set_pressure = system.pressure.idle_rail_Pa
    if not system.at_tank:
        return GaugeReading(when, set_pressure, set_pressure + lost)
    if system.idle_pumps_at_most is None:
        return GaugeReading(when, set_pressure - lost, None)
    set_pressure += _creep_pa(sized, figures)
    delivery = sized.capacity_m3_s(pumps=system.idle_pumps_at_most, rail_pa=set_pressure)
    if delivery <= 0 or delivery < burned:
        return GaugeReading(when, None, None)
    return GaugeReading(when, set_pressure - lost, set_pressure + sized.pump_filters_pa(delivery))


def _creep_pa(sized: SizedSystem, figures: Figures) -> float:
    """How far the rail stands above the set idle pressure at the judged return; 0 where there is none to judge."""
    line = Return(sized)
    if not line.applies or figures.return_line is None:
        return 0.0
    return line.size_figures(line.candidate(figures.return_line.size)).creep_Pa


def _returning(when: GaugeState, sized: SizedSystem, figures: Figures) -> GaugeReading:
    """At idle with the regulator at the rail: the set pressure, or what it creeps to."""
    system = sized.system
    rail = system.pressure.idle_rail_Pa
    if system.idle_pumps_at_most is None:
        return GaugeReading(when, rail, None)
    rail += _creep_pa(sized, figures)
    delivery = sized.capacity_m3_s(pumps=system.idle_pumps_at_most, rail_pa=rail)
    if delivery <= 0 or delivery < system.idle_fuel_m3_s:
        return GaugeReading(when, None, None)
    return GaugeReading(when, rail, rail + sized.feed.loss_pa(delivery))


def _at_full_power(sized: SizedSystem, figures: Figures) -> GaugeReading:
    """While the engine takes its full demand; where the pumps fall short, at what they then hold."""
    row = figures.pick
    rail = row.rail_at_goal_Pa
    if rail is None:
        sagged = max(0.0, figures.pressure.rail_Pa - (row.rail_sag_Pa or 0.0))
        return GaugeReading("full power", sagged, _behind_a_pump_to_come(sized.system, figures))
    if rail <= 0:
        return GaugeReading("full power", None, None)
    return GaugeReading("full power", rail, rail + _pump_to_rail_pa(sized, figures))


def _pump_to_rail_pa(sized: SizedSystem, figures: Figures) -> float:
    """What is lost from pump to rail at full power, by all that the pumps give or by the demand."""
    row = figures.pick
    assert row.capacity_m3_s is not None and row.feed_loss_Pa is not None
    through = max(row.capacity_m3_s, figures.demand.volume_flow_m3_s)
    if sized.system.at_rail:
        return sized.feed.loss_pa(through)
    if sized.system.at_tank:
        return row.feed_loss_Pa + sized.pump_filters_pa(through)
    return row.feed_loss_Pa


def _behind_a_pump_to_come(system: FuelSystem, figures: Figures) -> float | None:
    """Behind a pump that keeps the pressure alone: the feed then carries the demand, whatever the pump."""
    loss = figures.pick.feed_loss_Pa
    if system.session.pressure.regulator != "none" or loss is None:
        return None
    return figures.pressure.rail_Pa + loss


def _at_pick(session: Session, figures: Figures) -> SizedSystem:
    return SizedSystem(FuelSystem(session), candidate_called(session.feed, figures.verdict.size))
