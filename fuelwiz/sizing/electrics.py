"""Wiring and heat at the capacity of the pick."""

from __future__ import annotations

from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.heat import rise_k_per_h
from fuelwiz.physics.wire import ampacity_A, fuse_A, smallest_wire
from fuelwiz.sizing.figures import HeatFigures, WiringFigures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.sized_system import SizedSystem


def wiring_figures(sized: SizedSystem) -> WiringFigures | None:
    """One circuit of the pump's wiring; None where no wiring is given or nothing can be solved."""
    system = sized.system
    wiring, pumps = system.session.wiring, system.pumps
    if wiring is None or pumps is None or not system.session.feed.run:
        return None
    at = sized.pressure_at_capacity_pa
    volts = pumps.volts(at)
    one = pumps.pump.current_A(at)
    current = None if one is None else pumps.on_fullest_circuit * one
    peak = peak_current_a(system, pumps, one)
    fuse = None if peak is None else fuse_A(peak)
    wire = None
    if current is not None and fuse is not None and wiring.length is not None:
        wire = smallest_wire(
            current_a=current,
            fuse_a=fuse,
            length_m=wiring.length,
            by_chassis=wiring.return_path == "chassis",
            temperature_k=wiring.temperature,
        )
    return WiringFigures(
        pump_volts_V=volts,
        loss_V=wiring.supply - volts,
        current_A=current,
        peak_current_A=peak,
        fuse_A=fuse,
        ampacity_A=None if wiring.wire is None else ampacity_A(wiring.wire),
        smallest_wire=wire,
    )


def peak_current_a(system: FuelSystem, pumps: PumpSet, working_a: float | None) -> float | None:
    """The highest current of the fullest circuit: at the relief, else where the flow ends, else at the last point."""
    said = system.session.pump
    if working_a is None or said is None:
        return None
    at = pumps.end_pa
    if said.relief is not None:
        at = said.relief / pumps.stages
    if at is None:
        at = pumps.pump.current[-1][0]
    return pumps.on_fullest_circuit * max(working_a, pumps.pump.current_A(at) or 0.0)


def heat_figures(sized: SizedSystem) -> HeatFigures | None:
    """Rise of the tank's temperature; None without a tank's volume or a current, or where nothing goes round."""
    system = sized.system
    tank, pumps = system.session.tank, system.pumps
    if tank.volume is None or pumps is None or not system.session.feed.run:
        return None
    if system.session.pressure.regulator == "none":
        return None
    at = sized.pressure_at_capacity_pa
    current = pumps.pump.current_A(at)
    if current is None:
        return None
    return HeatFigures(
        rise_k_per_h(
            volts=pumps.volts(at),
            current_a=pumps.running * current,
            density_kg_m3=system.fuel.density_kg_m3,
            volume_m3=tank.volume * tank.fill,
            cp_J_kgK=system.fuel.cp_J_kgK,
        )
    )
