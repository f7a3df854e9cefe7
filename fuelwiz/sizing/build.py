"""A build: one session as physics sees it, each part reckoned once and when it is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from fuelwiz.physics import demand as demand_physics
from fuelwiz.physics import fuel as fuel_physics
from fuelwiz.physics.circuit import ASSUMED_VOLTS, PumpSet, Supply
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.fittings import filter_loss_pa
from fuelwiz.physics.inlet import atmosphere_pa
from fuelwiz.physics.line import GRAVITY, Run, run_loss, velocity_m_s
from fuelwiz.physics.pump import Pump
from fuelwiz.physics.wire import loop_resistance_ohm
from fuelwiz.session import Session
from fuelwiz.sizing.figures import DemandFigures, FuelFigures, PressureFigures
from fuelwiz.sizing.lines import plain_run

IDLE_SHARE = 0.02  # of the demand, burned at idle where nothing was measured; common practice, no source


@dataclass(frozen=True)
class Build:
    """One session with its fuel, demand, pressures, pumps and inlet.

    `fuel_given_at_k` is the temperature at which a fuel of one's own was measured, where that is not today's.
    """

    session: Session
    fuel_given_at_k: float | None = None

    @cached_property
    def fuel(self) -> fuel_physics.Fuel:
        """The fuel at the session's temperature."""
        said = self.session.fuel
        if said.kind == "methanol":
            return fuel_physics.methanol(temperature_k=said.temperature, reid_pa=said.reid_pressure)
        if said.kind == "blend":
            return fuel_physics.blend(
                ethanol=said.ethanol, temperature_k=said.temperature, reid_pa=said.reid_pressure
            )
        assert said.density is not None and said.viscosity is not None and said.lhv is not None
        return fuel_physics.own(
            density_kg_m3=said.density,
            viscosity_m2_s=said.viscosity,
            lhv_J_kg=said.lhv,
            given_at_k=said.temperature if self.fuel_given_at_k is None else self.fuel_given_at_k,
            temperature_k=said.temperature,
            stoich=said.stoich,
            reid_pa=said.reid_pressure,
        )

    @cached_property
    def fuel_figures(self) -> FuelFigures:
        """The fuel as the result shows it."""
        fuel = self.fuel
        return FuelFigures(
            fuel.density_kg_m3, fuel.viscosity_m2_s, fuel.lhv_J_kg, fuel.stoich, fuel.vapour_pressure_pa
        )

    @cached_property
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

    @property
    def flow_m3_s(self) -> float:
        """The demand as a volume flow."""
        return self.demand.volume_flow_m3_s

    @property
    def idle_fuel_m3_s(self) -> float:
        """What the engine burns at idle."""
        given = self.session.engine.idle_fuel
        return IDLE_SHARE * self.flow_m3_s if given is None else given

    @cached_property
    def follows_manifold(self) -> bool:
        """Whether the regulator lifts the rail with the manifold's pressure."""
        return self.session.pressure.reference == "manifold"

    @cached_property
    def pressure(self) -> PressureFigures:
        """Pressures at the rail and around it."""
        said = self.session.pressure
        rail = said.base + (said.boost if self.follows_manifold else 0.0)
        return PressureFigures(
            rail_Pa=rail,
            injector_Pa=rail - said.boost,
            idle_rail_Pa=said.base - (said.idle_vacuum if self.follows_manifold else 0.0),
            atmosphere_Pa=atmosphere_pa(said.altitude),
        )

    @property
    def at_tank(self) -> bool:
        """Whether the regulator sits at the tank, so that the feed carries the demand alone."""
        return self.session.pressure.regulator == "tank"

    @property
    def at_rail(self) -> bool:
        """Whether the regulator sits at the rail, so that the feed carries the whole delivery."""
        return self.session.pressure.regulator == "rail"

    @cached_property
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

    @cached_property
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

    @cached_property
    def one_pump(self) -> Pump | None:
        """One pump, its curves by rising voltage."""
        said = self.session.pump
        if said is None:
            return None
        curves = sorted((Curve(curve.voltage, curve.points) for curve in said.curve), key=lambda c: c.voltage)
        return Pump(tuple(curves), said.current)

    def pump_set(self, running: int) -> PumpSet | None:
        """That many of the pumps, None without a pump."""
        said, pump = self.session.pump, self.one_pump
        if said is None or pump is None:
            return None
        return PumpSet(pump, running, said.arrangement == "series", self.supply)

    @cached_property
    def pumps(self) -> PumpSet | None:
        """All the pumps, as they run at full power."""
        return None if self.session.pump is None else self.pump_set(self.session.pump.count)

    @cached_property
    def idle_pumps(self) -> PumpSet | None:
        """The pumps that run at idle."""
        return None if self.session.pump is None else self.pump_set(self.session.pump.running_at_idle)

    @cached_property
    def could_make_pa(self) -> float | None:
        """The highest rise at which all the pumps still deliver the demand; None without a pump or without end.

        Below nought where they deliver it only when pushed.
        """
        return None if self.pumps is None else self.pumps.highest_rise_pa(self.flow_m3_s)

    @cached_property
    def suction_runs(self) -> tuple[Run, ...]:
        """The runs ahead of the pump, each pick-up with its own."""
        inlet = self.session.inlet
        if inlet is None:
            return ()
        return tuple(plain_run(run, None, self.session.feed.end_ratio) for run in inlet.run)

    def inlet_gauge_pa(self, flow_m3_s: float, pumps: PumpSet | None) -> float:
        """Pressure at the pumps' inlet, gauge, at a flow of all of them; the tank's alone without an inlet."""
        inlet, tank = self.session.inlet, self.session.tank.pressure
        if inlet is None:
            return tank
        each = flow_m3_s / (1 if pumps is None else pumps.flow_ways)
        pressure = tank + self.fuel.density_kg_m3 * GRAVITY * inlet.fuel_head
        if inlet.strainer is not None:
            pressure -= filter_loss_pa(
                flow_m3_s=each,
                rated_flow_m3_s=inlet.strainer.rated_flow,
                rated_loss_pa=inlet.strainer.rated_loss,
                clogging=inlet.strainer.clogging,
            )
        for run in self.suction_runs:
            pressure -= run_loss(
                run,
                flow_m3_s=each,
                density_kg_m3=self.fuel.density_kg_m3,
                viscosity_m2_s=self.fuel.viscosity_m2_s,
            ).total_pa
        return pressure

    def inlet_velocity_m_s(self, flow_m3_s: float, pumps: PumpSet) -> float | None:
        """Velocity in the fastest suction run; None without one."""
        each = flow_m3_s / pumps.flow_ways
        return max(
            (
                velocity_m_s(flow_m3_s=each, bore_m=run.bore_m, side_by_side=run.side_by_side)
                for run in self.suction_runs
            ),
            default=None,
        )

    def vapour_margin_pa(self, flow_m3_s: float, pumps: PumpSet) -> float | None:
        """How far the pump's inlet stays above the fuel's vapour pressure; None without an inlet or a pressure."""
        vapour = self.fuel.vapour_pressure_pa
        if self.session.inlet is None or vapour is None:
            return None
        return self.pressure.atmosphere_Pa + self.inlet_gauge_pa(flow_m3_s, pumps) - vapour
