"""A build with the parts of a set on it, today, at its next goal and on bad days."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from fuelwiz.options.grid import PumpChoice
from fuelwiz.options.parts_file import InjectorsOnOffer, RegulatorOnOffer
from fuelwiz.session import Injectors, Pump, Session, StressCase, changed_key_paths, given
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.next_goal import next_session
from fuelwiz.sizing.stress import built_in_cases, changed
from fuelwiz.sizing.thresholds import DUTY_LIMIT

When = Literal["today", "next", "case"]
Touched = frozenset[tuple[str | int, ...]]
NOTHING: Touched = frozenset()


@dataclass(frozen=True, eq=False)
class Situation:
    """What a set is asked to pass: the build today, its next goal, or a bad day.

    `touched` are the paths of the keys that a case of the builder's own sets, which no part of a set changes.
    """

    when: When
    name: str
    session: Session
    touched: Touched = NOTHING
    given_at_k: float | None = None


def with_pumps(session: Session, choice: PumpChoice, count: int, touched: Touched = NOTHING) -> Session:
    """A build with so many of a pump; how many run at idle and on how many circuits stays as the builder said."""
    before = session.pump
    at_idle = count
    if before is not None and given(session, "pump.running_at_idle"):
        at_idle = min(count, before.running_at_idle)
    same = choice.own and before is not None and before.count == count
    values: dict[str, Any] = {"count": count, "running_at_idle": at_idle}
    if before is not None:
        values["arrangement"] = before.arrangement
    pump = choice.pump.model_copy(update=values)
    if before is not None:
        pump = pump.model_copy(update=_literal(before, touched, "pump"))
    if not same and ("pump", "volts") not in touched:
        pump = pump.model_copy(update={"volts": None})
    sections: dict[str, Any] = {"pump": pump}
    wiring = session.wiring
    if wiring is not None and ("wiring", "circuits") not in touched:
        circuits = min(count, wiring.circuits) if given(session, "wiring.circuits") else count
        sections["wiring"] = wiring.model_copy(update={"circuits": circuits})
    return _carrying(session.model_copy(update=sections), pump)


def _literal(section: Any, touched: Touched, name: str) -> dict[str, Any]:
    """The values of a section that a case of the builder's own sets."""
    keys = {str(path[1]) for path in touched if path[0] == name and len(path) > 1}
    return {key: getattr(section, key) for key in keys}


def _carrying(session: Session, pump: Pump) -> Session:
    """The inlet as the pump's place has it, where the builder does not say what strainer and runs carry."""
    inlet = session.inlet
    if inlet is None:
        return session
    carries = {"carries": "all" if pump.place == "outside" else "each"}
    runs = tuple(
        run if given(session, f"inlet.run.{number}.carries") else run.model_copy(update=carries)
        for number, run in enumerate(inlet.run)
    )
    strainer = inlet.strainer
    if strainer is not None and not given(session, "inlet.strainer.carries"):
        strainer = strainer.model_copy(update=carries)
    return session.model_copy(update={"inlet": inlet.model_copy(update={"run": runs, "strainer": strainer})})


def with_parts(
    situation: Situation,
    *,
    base_pa: float,
    regulator: RegulatorOnOffer | None,
    injectors: InjectorsOnOffer | None,
    wire_m2: float | None,
) -> Session:
    """The build of a situation with base pressure, regulator, injectors and wire of a set; None leaves each as it is."""
    session, touched = situation.session, situation.touched
    update: dict[str, Any] = {}
    if base_pa != session.pressure.base and ("pressure", "base") not in touched:
        update["pressure"] = session.pressure.model_copy(update={"base": base_pa})
    line = session.return_line
    if regulator is not None and line is not None:
        values = {"rated_flow": regulator.rated_flow, "rated_loss": regulator.rated_loss}
        for path in touched:
            if path[:2] == ("return_line", "regulator"):
                values = {key: value for key, value in values.items() if key != path[-1]}
        update["return_line"] = line.model_copy(
            update={"regulator": line.regulator.model_copy(update=values)}
        )
    if injectors is not None:
        update["injectors"] = _other_injectors(session, injectors, touched)
    wiring = session.wiring
    if wire_m2 is not None and wiring is not None and ("wiring", "wire") not in touched:
        update["wiring"] = wiring.model_copy(update={"wire": wire_m2})
    return session.model_copy(update=update) if update else session


def _other_injectors(session: Session, offer: InjectorsOnOffer, touched: Touched) -> Injectors:
    """Injectors of the file, as many as there are, with today's dead time and held to today's limit."""
    today = session.injectors
    values: dict[str, Any] = {"rated_flow": offer.rated_flow, "rated_pressure": offer.rated_pressure}
    if today is None:
        return Injectors.model_construct(
            _fields_set=set(values),
            count=session.engine.cylinders,
            duty_limit=DUTY_LIMIT,
            dead_time=None,
            **values,
        )
    return today.model_copy(update=values | _literal(today, touched, "injectors"))


def today_with(session: Session, choice: PumpChoice, count: int) -> Situation:
    """The build as it would be today."""
    return Situation("today", "", with_pumps(session, choice, count))


def next_goal_of(today: Situation) -> Situation | None:
    """The same at its next goal; None without one."""
    session = next_session(FuelSystem(today.session))
    return None if session is None else Situation("next", "", session)


def bad_days_of(today: Situation, session: Session, choice: PumpChoice, count: int) -> Iterator[Situation]:
    """The same on every bad day that applies, and in every case of the builder's own.

    Args:
        today: the build with the pumps of a set.
        session: the build without them, whose cases the builder wrote.
        choice: the pump of the set.
        count: how many of it.
    """
    at = session.fuel.temperature
    for name, on_the_day in built_in_cases(today.session):
        yield Situation("case", name, changed(on_the_day, "goal", reserve=0.0), given_at_k=at)
    for case in session.stress.case:
        touched = _touched(case)
        on_the_day = with_pumps(case.changed, choice, count, touched)
        yield Situation("case", case.name, changed(on_the_day, "goal", reserve=0.0), touched, at)


def _touched(case: StressCase) -> Touched:
    return frozenset(path for path, _ in changed_key_paths(case.change))
