"""A build: one session as physics sees it, each part calculated once and when it is asked for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fuelwiz.once import once
from fuelwiz.physics import demand as demand_physics
from fuelwiz.physics import fuel as fuel_physics
from fuelwiz.physics.circuit import ASSUMED_VOLTS, PumpSet, Supply
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.inlet import atmosphere_pa
from fuelwiz.physics.pump import Pump
from fuelwiz.physics.wire import loop_resistance_ohm
from fuelwiz.session import Fuel, Pull, PumpCurve, Session
from fuelwiz.sizing.figures import DemandFigures, FuelFigures, PressureFigures
from fuelwiz.sizing.suction import Suction

SAME_AT_EVERY_POINT = ("fuel", "supply", "one_pump", "pumps", "suction", "atmosphere_pa")


@dataclass(frozen=True)
class FuelSystem:
    """One session with its fuel, demand, pressures, pumps and inlet.

    `fuel_given_at_k` is the temperature at which a fuel of one's own was measured, where that is not today's.
    """

    session: Session
    fuel_given_at_k: float | None = None

    @once
    def points(self) -> tuple[FuelSystem, ...]:
        """The same build at each further point of full power."""
        return tuple(self._at(pull) for pull in self.session.pull)

    def _at(self, pull: Pull) -> FuelSystem:
        session = self.session
        engine = session.engine
        if pull.rpm is not None:
            engine = engine.model_copy(update={"rpm": pull.rpm})
        point = FuelSystem(
            session.model_copy(
                update={
                    "goal": session.goal.model_copy(update={"power": pull.power}),
                    "engine": engine,
                    "pressure": session.pressure.model_copy(update={"boost": pull.boost}),
                    "pull": (),
                }
            ),
            self.fuel_given_at_k,
        )
        for name in SAME_AT_EVERY_POINT:
            point.__dict__[name] = getattr(self, name)
        return point

    @once
    def fuel(self) -> fuel_physics.Fuel:
        """The fuel at the session's temperature."""
        return fuel_of(self.session.fuel, self.fuel_given_at_k)

    @once
    def fuel_figures(self) -> FuelFigures:
        """The fuel as the result shows it."""
        fuel = self.fuel
        return FuelFigures(
            fuel.density_kg_m3, fuel.viscosity_m2_s, fuel.lhv_J_kg, fuel.stoich, fuel.vapour_pressure_pa
        )

    @once
    def demand(self) -> DemandFigures:
        """What the goal burns."""
        goal, engine, fuel = self.session.goal, self.session.engine, self.fuel
        power = demand_physics.crank_power_w(
            power_w=goal.power, at_wheels=goal.power_at == "wheels", driveline_loss=goal.driveline_loss
        )
        bsfc = engine.bsfc
        if bsfc is None:
            bsfc = demand_physics.usual_bsfc_kg_J(lhv_J_kg=fuel.lhv_J_kg, induction=engine.induction)
        mass_flow = power * bsfc
        flow = mass_flow / fuel.density_kg_m3
        air = None
        if engine.lambda_ is not None and fuel.stoich is not None:
            air = mass_flow * fuel.stoich * engine.lambda_
        return DemandFigures(
            crank_power_W=power,
            bsfc_kg_J=bsfc,
            thermal_efficiency=demand_physics.thermal_efficiency(bsfc_kg_J=bsfc, lhv_J_kg=fuel.lhv_J_kg),
            mass_flow_kg_s=mass_flow,
            volume_flow_m3_s=flow,
            target_flow_m3_s=flow * (1 + goal.reserve),
            air_flow_kg_s=air,
        )

    @once
    def has_runs(self) -> bool:
        """Whether the feed line is known."""
        return bool(self.session.feed.run)

    @once
    def solvable(self) -> bool:
        """Whether there is a pump and a feed, so that a working point can be solved for."""
        return self.session.pump is not None and self.has_runs

    @once
    def flow_m3_s(self) -> float:
        """The demand as a volume flow."""
        return self.demand.volume_flow_m3_s

    @property
    def idle_fuel_m3_s(self) -> float:
        """What the engine burns at idle."""
        given = self.session.engine.idle_fuel
        return demand_physics.IDLE_SHARE * self.flow_m3_s if given is None else given

    @once
    def atmosphere_pa(self) -> float:
        """Pressure of the air around the car, absolute."""
        return atmosphere_pa(self.session.pressure.altitude)

    @property
    def direct(self) -> bool:
        """Whether the line feeds a high-pressure pump on the engine, whatever the manifold does."""
        return self.session.engine.injection == "direct"

    @property
    def follows_manifold(self) -> bool:
        """Whether the regulator lifts the rail with the manifold's pressure."""
        return self.session.pressure.reference == "manifold" and not self.direct

    @once
    def pressure(self) -> PressureFigures:
        """Pressures at the rail and around it; before a high-pressure pump the base stands for what injectors see."""
        given = self.session.pressure
        rail = self.rail_pa(given.boost)
        return PressureFigures(
            rail_Pa=rail,
            injector_Pa=given.base if self.direct else rail - given.boost,
            idle_rail_Pa=given.base - (given.idle_vacuum if self.follows_manifold else 0.0),
            atmosphere_Pa=self.atmosphere_pa,
        )

    def rail_pa(self, boost_pa: float) -> float:
        """The set pressure at the rail, gauge, at a boost."""
        return self.session.pressure.base + (boost_pa if self.follows_manifold else 0.0)

    @once
    def at_tank(self) -> bool:
        """Whether the regulator sits at the tank, so that the feed carries the demand alone."""
        return self.session.pressure.regulator == "tank"

    @once
    def at_rail(self) -> bool:
        """Whether the regulator sits at the rail, so that the feed carries the whole delivery."""
        return self.session.pressure.regulator == "rail"

    @once
    def supply(self) -> Supply:
        """What feeds the pumps."""
        pump, wiring = self.session.pump, self.session.wiring
        if pump is not None and pump.volts is not None:
            circuits = wiring.circuits if wiring is not None else pump.count
            return Supply(volts=pump.volts, circuits=circuits, measured=True)
        if wiring is None:
            return Supply(volts=ASSUMED_VOLTS, measured=True)
        return Supply(
            volts=wiring.supply,
            connections=wiring.connections,
            resistance_ohm=self.loop_ohm or 0.0,
            circuits=wiring.circuits,
        )

    @once
    def loop_ohm(self) -> float | None:
        """Resistance of one circuit's loop; None where no wire or no length is given."""
        wiring = self.session.wiring
        if wiring is None or wiring.wire is None or wiring.length is None:
            return None
        return loop_resistance_ohm(
            area_m2=wiring.wire,
            length_m=wiring.length,
            by_chassis=wiring.return_path == "chassis",
            temperature_k=wiring.temperature,
        )

    @once
    def one_pump(self) -> Pump | None:
        """One pump in its health, its curves by rising voltage, by the law of its kind or the lower of both."""
        given = self.session.pump
        if given is None:
            return None
        curves = sorted((_in_health(curve, given.health) for curve in given.curve), key=lambda c: c.voltage)
        return Pump(tuple(curves), given.current, given.kind or "lower")

    def pump_set(self, running: int) -> PumpSet | None:
        """That many of the pumps, None without a pump."""
        given, pump = self.session.pump, self.one_pump
        if given is None or pump is None:
            return None
        return PumpSet(pump, running, given.arrangement == "series", self.supply, given.relief)

    def at_most(self, pumps: PumpSet) -> PumpSet:
        """The same pumps where too much flow is what does harm: by the higher law where their kind is not known."""
        return pumps if pumps.pump.law != "lower" else pumps.by("higher")

    @once
    def pumps(self) -> PumpSet | None:
        """All the pumps, as they run at full power."""
        return None if self.session.pump is None else self.pump_set(self.session.pump.count)

    @once
    def pumps_at_most(self) -> PumpSet | None:
        """All the pumps where too much flow does harm."""
        return None if self.pumps is None else self.at_most(self.pumps)

    @once
    def idle_pumps(self) -> PumpSet | None:
        """The pumps that run at idle."""
        return None if self.session.pump is None else self.pump_set(self.session.pump.running_at_idle)

    @once
    def idle_pumps_at_most(self) -> PumpSet | None:
        """The pumps that run at idle where too much flow does harm."""
        return None if self.idle_pumps is None else self.at_most(self.idle_pumps)

    @once
    def could_make_pa(self) -> float | None:
        """The highest rise at which all the pumps still deliver the demand; None without a pump or without end.

        Below 0 where they deliver it only when pushed.
        """
        return None if self.pumps is None else self.pumps.highest_rise_pa(self.flow_m3_s)

    @once
    def suction(self) -> Suction:
        """What lies ahead of the pumps."""
        return Suction.of(
            self.session,
            density_kg_m3=self.fuel.density_kg_m3,
            viscosity_m2_s=self.fuel.viscosity_m2_s,
        )

    def inlet_gauge_pa(self, flow_m3_s: float, pumps: PumpSet | None) -> float:
        """Pressure at the pumps' inlet, gauge, at a flow of all of them."""
        return self.suction.gauge_pa(flow_m3_s, 1 if pumps is None else pumps.flow_ways)

    @once
    def demand_inlet_gauge_pa(self) -> float:
        """The same at the demand, with all pumps."""
        return self.inlet_gauge_pa(self.flow_m3_s, self.pumps)

    def inlet_velocity_m_s(self, flow_m3_s: float, pumps: PumpSet) -> float | None:
        """Velocity in the fastest suction run; None without one."""
        return self.suction.velocity_m_s(flow_m3_s, pumps.flow_ways)

    def vapour_margin_pa(self, flow_m3_s: float, pumps: PumpSet) -> float | None:
        """How far the pump's inlet stays above the fuel's vapour pressure; None without an inlet or a pressure."""
        vapour = self.fuel.vapour_pressure_pa
        if self.session.inlet is None or vapour is None:
            return None
        return self.atmosphere_pa + self.inlet_gauge_pa(flow_m3_s, pumps) - vapour

    def and_points(self) -> Iterator[FuelSystem]:
        """The build at its goal, then at each further point."""
        yield self
        yield from self.points


def fuel_of(given: Fuel, given_at_k: float | None) -> fuel_physics.Fuel:
    """What a session says of its fuel; one of the builder's own was measured at `given_at_k`, None for today's."""
    if given.kind == "blend":
        return fuel_physics.blend(
            ethanol=given.ethanol, temperature_k=given.temperature, reid_pa=given.reid_pressure
        )
    if given.kind != "own":
        return fuel_physics.pure(given.kind, temperature_k=given.temperature, reid_pa=given.reid_pressure)
    assert given.density is not None and given.viscosity is not None and given.lhv is not None
    return fuel_physics.own(
        density_kg_m3=given.density,
        viscosity_m2_s=given.viscosity,
        lhv_J_kg=given.lhv,
        given_at_k=given.temperature if given_at_k is None else given_at_k,
        temperature_k=given.temperature,
        stoich=given.stoich,
        reid_pa=given.reid_pressure,
    )


def _in_health(curve: PumpCurve, health: float) -> Curve:
    """A sheet with every flow in the health that was measured."""
    points = curve.points
    if health != 1:
        points = tuple((pressure, health * flow) for pressure, flow in points)
    return Curve(curve.voltage, points)
