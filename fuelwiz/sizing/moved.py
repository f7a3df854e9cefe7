"""A build with its inputs moved within their tolerances, ready to be judged as on a bad day."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from fuelwiz.once import once
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.demand import usual_bsfc_kg_J
from fuelwiz.physics.fuel import Fuel
from fuelwiz.physics.pump import Law, Pump
from fuelwiz.record import record
from fuelwiz.session import Feed, Inlet, PumpCurve, ReturnLine, field_at
from fuelwiz.sizing.candidates import run_bore_m
from fuelwiz.sizing.fuel_system import FuelSystem, fuel_of
from fuelwiz.sizing.lines import FeedLine, feed_line
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.stress import reid_with_ethanol_pa
from fuelwiz.sizing.tolerances import Tolerance, factor
from fuelwiz.sizing.verdict import ReturnPick
from fuelwiz.sizing.vocabulary import Input
from fuelwiz.units import parse


@record
class Moves:
    """How far inputs are moved, in standard deviations, each within its tolerance; those that are not named stay.

    The kind of a pump is by turbine below 0, by displacement above.
    """

    z: Mapping[Input, float]
    widths: Mapping[Input, tuple[float, ...]]

    def times(self, name: Input) -> float:
        """What an input of one tolerance is multiplied by."""
        return factor(self.widths[name][0], self.z[name]) if name in self.z else 1.0

    def times_each(self, name: Input, count: int) -> tuple[float, ...]:
        """What the `count` things of an input are multiplied by, each by its own tolerance."""
        if name not in self.z:
            return (1.0,) * count
        z = self.z[name]
        return tuple([factor(width, z) for width in self.widths[name]])

    def plus(self, name: Input) -> float:
        """What is added to an input, in SI."""
        return self.widths[name][0] * self.z[name] / 2 if name in self.z else 0.0

    def law(self, otherwise: Law) -> Law:
        """The law of the pump."""
        if "pump_kind" not in self.z:
            return otherwise
        return "turbine" if self.z["pump_kind"] < 0 else "displacement"


@dataclass(frozen=True)
class Movable:
    """A build at its picks of feed and return, whose inputs can be moved."""

    sized: SizedSystem
    return_pick: ReturnPick | None
    known: tuple[Tolerance, ...]

    @once
    def _widths(self) -> dict[Input, tuple[float, ...]]:
        return {tolerance.input: tolerance.widths for tolerance in self.known}

    def at(self, z: Mapping[Input, float]) -> SizedSystem:
        """The build with some inputs moved, without a reserve."""
        today = self.sized.system
        moves = Moves(z, self._widths)
        fuel_section, fuel = _fuel(today, moves)
        session = today.session.model_copy(
            update={**_engine(today, fuel, moves), "fuel": fuel_section, **self._hardware(moves)}
        )
        system = FuelSystem(session, fuel_given_at_k=today.session.fuel.temperature)
        system.__dict__["fuel"] = fuel
        system.__dict__["one_pump"] = _pump(today, moves)
        sized = SizedSystem(system, self.sized.candidate)
        sized.__dict__["feed"] = _feed_line(self.sized, system, moves)
        return sized

    def _hardware(self, moves: Moves) -> dict[str, Any]:
        """The sections that hold parts, those of them that move."""
        session = self.sized.system.session
        pump, wiring, injectors = session.pump, session.wiring, session.injectors
        assert pump is not None
        found: dict[str, Any] = {}
        if "voltage" in moves.z:
            if wiring is not None and pump.volts is None:
                volts = _held("wiring.supply", wiring.supply + moves.plus("voltage"))
                found["wiring"] = wiring.model_copy(update={"supply": volts})
            else:
                volts = (pump.volts or ASSUMED_VOLTS) + moves.plus("voltage")
                found["pump"] = pump.model_copy(update={"volts": _held("pump.volts", volts)})
        if "filters" in moves.z:
            found |= _filters(session.feed, session.inlet, moves)
        if "injector_flow" in moves.z and injectors is not None:
            rated = _held("injectors.rated_flow", injectors.rated_flow * moves.times("injector_flow"))
            found["injectors"] = injectors.model_copy(update={"rated_flow": rated})
        back = session.return_line
        if back is not None and not moves.z.keys().isdisjoint(("return_regulator", "return_bore")):
            found["return_line"] = self._return_line(back, moves)
        return found

    def _return_line(self, line: ReturnLine, moves: Moves) -> ReturnLine:
        """The return with its regulator's loss and the bores that its runs have at the pick."""
        loss = line.regulator.rated_loss * moves.times("return_regulator")
        regulator = line.regulator.model_copy(
            update={"rated_loss": _held("return_line.regulator.rated_loss", loss)}
        )
        pick = None if self.return_pick is None else self.return_pick.size
        times = moves.times_each("return_bore", len(line.run))
        runs = tuple(
            run.model_copy(update={"bore": _held("return_line.run.bore", run_bore_m(run, pick) * wider)})
            for run, wider in zip(line.run, times, strict=True)
        )
        return line.model_copy(update={"regulator": regulator, "run": runs})


def _fuel(today: FuelSystem, moves: Moves) -> tuple[Any, Fuel]:
    """The section of the fuel, and what it comes to."""
    given = today.session.fuel
    values: dict[str, float | None] = {}
    if "ethanol" in moves.z:
        ethanol = _held("fuel.ethanol", given.ethanol + moves.plus("ethanol"))
        values = {"ethanol": ethanol, "reid_pressure": reid_with_ethanol_pa(given, ethanol)}
    if "temperature" in moves.z:
        values["temperature"] = _held("fuel.temperature", given.temperature + moves.plus("temperature"))
    if not values and "vapour" not in moves.z:
        return given, today.fuel
    section = given.model_copy(update=values)
    fuel = fuel_of(section, given.temperature)
    if fuel.vapour_pressure_pa is None:
        return section, fuel
    return section, replace(fuel, vapour_pressure_pa=fuel.vapour_pressure_pa * moves.times("vapour"))


def _engine(today: FuelSystem, fuel: Fuel, moves: Moves) -> dict[str, Any]:
    """Goal, engine, pressures and points of full power; a given fuel consumption keeps its efficiency."""
    session = today.session
    goal, engine, pressure = session.goal, session.engine, session.pressure
    bsfc = engine.bsfc
    if bsfc is None:
        bsfc = usual_bsfc_kg_J(lhv_J_kg=fuel.lhv_J_kg, induction=engine.induction)
    else:
        bsfc *= today.fuel.lhv_J_kg / fuel.lhv_J_kg
    bsfc = _held("engine.bsfc", bsfc * moves.times("fuel_use"))
    loss = _held("goal.driveline_loss", goal.driveline_loss + moves.plus("driveline"))
    more = moves.plus("boost")
    changed: dict[str, Any] = {
        "goal": goal.model_copy(update={"reserve": 0.0, "driveline_loss": loss}),
        "engine": engine.model_copy(update={"bsfc": bsfc}),
        "pressure": pressure.model_copy(
            update={
                "base": _held("pressure.base", pressure.base + moves.plus("base")),
                "boost": _held("pressure.boost", pressure.boost + more),
            }
        ),
    }
    if more and session.pull:
        changed["pull"] = tuple(
            pull.model_copy(update={"boost": _held("pull.boost", pull.boost + more)})
            if pull.boost > 0
            else pull
            for pull in session.pull
        )
    return changed


def _pump(today: FuelSystem, moves: Moves) -> Pump:
    """One pump with the flow of every curve moved, by its law."""
    pump, given = today.one_pump, today.session.pump
    assert pump is not None and given is not None
    law = moves.law(pump.law)
    if "pump_flow" not in moves.z:
        return pump.by(law)
    times = moves.times_each("pump_flow", len(given.curve))
    curves = [_curve(curve, given.health, more) for curve, more in zip(given.curve, times, strict=True)]
    return Pump(tuple(sorted(curves, key=lambda curve: curve.voltage)), given.current, law)


def _curve(curve: PumpCurve, health: float, times: float) -> Curve:
    most = _range_of("pump.curve.points")[1]
    return Curve(
        curve.voltage,
        tuple([(pressure, health * min(most, times * flow)) for pressure, flow in curve.points]),
    )


def _filters(feed: Feed, inlet: Inlet | None, moves: Moves) -> dict[str, Any]:
    """Feed and inlet with the losses of filters, strainer and parts moved."""
    strainer = None if inlet is None else inlet.strainer
    count = len(feed.filter) + len(feed.part) + (strainer is not None)
    times = iter(moves.times_each("filters", count))
    filters = tuple([_losing(part, "feed.filter.rated_loss", next(times)) for part in feed.filter])
    changed: dict[str, Any] = {}
    if inlet is not None and strainer is not None:
        lossy = _losing(strainer, "inlet.strainer.rated_loss", next(times))
        changed["inlet"] = inlet.model_copy(update={"strainer": lossy})
    parts = tuple([_losing(part, "feed.part.rated_loss", next(times)) for part in feed.part])
    return changed | {"feed": feed.model_copy(update={"filter": filters, "part": parts})}


def _losing(part: Any, path: str, times: float) -> Any:
    return part.model_copy(update={"rated_loss": _held(path, part.rated_loss * times)})


def _feed_line(sized: SizedSystem, system: FuelSystem, moves: Moves) -> FeedLine:
    """The feed with bores, lengths and what fittings lose moved; the fittings are those of the moved bore."""
    feed = system.session.feed
    bores = moves.times_each("feed_bore", len(feed.run))
    lengths = moves.times_each("length", len(feed.run))
    moved = tuple(
        (
            _held("feed.run.bore", run_bore_m(run, sized.candidate) * bore),
            _held("feed.run.length", run.length * length),
        )
        for run, bore, length in zip(feed.run, bores, lengths, strict=True)
    )
    return feed_line(
        feed,
        sized.candidate,
        at_tank=system.at_tank,
        density_kg_m3=system.fuel.density_kg_m3,
        viscosity_m2_s=system.fuel.viscosity_m2_s,
        measured_m=moved,
        fittings=moves.times("fittings"),
    )


def _held(path: str, value: float) -> float:
    """A value in the range of its key, in SI."""
    low, high = _range_of(path)
    return min(high, max(low, value))


@cache
def _range_of(path: str) -> tuple[float, float]:
    spec = field_at(path)
    while spec.parts:
        spec = spec.parts[-1] if spec.type == "points" else spec.parts[0]
    assert spec.kind is not None and spec.low is not None and spec.high is not None
    return parse(spec.low, spec.kind), parse(spec.high, spec.kind)
