"""What a gauge should show on the finished car, at the rail and behind the pump."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fuelwiz.session import Session
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.candidates import feed_candidates, spelled
from fuelwiz.sizing.figures import Figures, SizeFigures
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.system import System

When = Literal["hose off", "idle", "full power"]


@dataclass(frozen=True, slots=True)
class Reading:
    """Gauge pressures in one state, Pa; None where they are not known or the pumps cannot hold them."""

    when: When
    rail_Pa: float | None
    pump_Pa: float | None


def gauge(session: Session, figures: Figures) -> tuple[Reading, ...]:
    """The readings at the pick; the one with the hose off where the regulator has a hose to take off."""
    return tuple(_readings(session, figures))


def _readings(session: Session, figures: Figures) -> Iterator[Reading]:
    said = session.pressure
    if said.reference == "manifold" and said.regulator != "none":
        no_vacuum = said.model_copy(update={"idle_vacuum": 0.0})
        yield _at_idle("hose off", session.model_copy(update={"pressure": no_vacuum}), figures)
    yield _at_idle("idle", session, figures)
    yield _at_full_power(session, figures)


def _at_idle(when: When, session: Session, figures: Figures) -> Reading:
    system = _system(session, figures)
    build = system.build
    if not session.feed.run:
        return Reading(when, build.pressure.idle_rail_Pa, None)
    if build.at_rail:
        return _returning(when, system, figures)
    burnt = build.idle_fuel_m3_s
    lost = system.feed.loss_pa(burnt)
    set_to = build.pressure.idle_rail_Pa
    if not build.at_tank:
        return Reading(when, set_to, set_to + lost)
    if build.idle_pumps is None:
        return Reading(when, set_to - lost, None)
    delivery = system.capacity_m3_s(pumps=build.idle_pumps, rail_pa=set_to)
    held = delivery >= burnt and delivery > 0
    return Reading(when, set_to - lost, set_to + system.pump_filters_pa(delivery)) if held else _none(when)


def _returning(when: When, system: System, figures: Figures) -> Reading:
    """At idle with the regulator at the rail: the set pressure, or what it creeps to."""
    build = system.build
    rail = build.pressure.idle_rail_Pa
    if build.idle_pumps is None:
        return Reading(when, rail, None)
    line = Return(system)
    if line.applies and figures.return_line is not None:
        rail += line.size_figures(line.candidate(figures.return_line.size)).creep_Pa
    delivery = system.capacity_m3_s(pumps=build.idle_pumps, rail_pa=rail)
    if delivery <= 0 or delivery < build.idle_fuel_m3_s:
        return _none(when)
    return Reading(when, rail, rail + system.feed.loss_pa(delivery))


def _at_full_power(session: Session, figures: Figures) -> Reading:
    """While the engine takes its full demand; where the pumps fall short, at what they then hold."""
    row = figures.pick
    rail = row.rail_at_goal_Pa
    if rail is None:
        sag = row.rail_sag_Pa or 0.0
        return Reading(
            "full power", max(0.0, figures.pressure.rail_Pa - sag), _without_pump(session, figures)
        )
    return (
        Reading("full power", rail, rail + _between(session, figures, row))
        if rail > 0
        else _none("full power")
    )


def _between(session: Session, figures: Figures, row: SizeFigures) -> float:
    """What is lost from pump to rail at full power, by all that the pumps give or by the demand."""
    system, demand = _system(session, figures), figures.demand.volume_flow_m3_s
    assert row.capacity_m3_s is not None and row.feed_loss_Pa is not None
    through = max(row.capacity_m3_s, demand)
    if system.build.at_rail:
        return system.feed.loss_pa(through)
    if system.build.at_tank:
        return row.feed_loss_Pa + system.pump_filters_pa(through)
    return row.feed_loss_Pa


def _without_pump(session: Session, figures: Figures) -> float | None:
    """Behind a pump that keeps the pressure alone: the feed then carries the demand, whatever the pump."""
    loss = figures.pick.feed_loss_Pa
    if session.pressure.regulator != "none" or loss is None:
        return None
    return figures.pressure.rail_Pa + loss


def _none(when: When) -> Reading:
    return Reading(when, None, None)


def _system(session: Session, figures: Figures) -> System:
    rows = feed_candidates(session.feed)
    return System(Build(session), next(row for row in rows if spelled(row) == figures.verdict.size))
