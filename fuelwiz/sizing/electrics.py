"""Wiring and heat at the capacity of the pick."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.heat import rise_k_per_h
from fuelwiz.physics.wire import ampacity_A, fuse_A
from fuelwiz.session import Pump
from fuelwiz.sizing.part_figures import HeatFigures, WireChoice, WiringFigures
from fuelwiz.sizing.sized_system import SizedSystem


@dataclass(frozen=True, slots=True)
class Circuit:
    """The fullest circuit of the pump's wiring: what it carries, the fuse for that, and what its wire may carry."""

    pump_volts_V: float
    loss_V: float
    current_A: float | None
    peak_current_A: float | None
    fuse_A: float | None
    ampacity_A: float | None

    @property
    def fails(self) -> bool:
        """Whether no fuse is large enough, or the one that is would not guard the wire."""
        if self.peak_current_A is None:
            return False
        if self.fuse_A is None:
            return True
        return self.ampacity_A is not None and self.fuse_A > self.ampacity_A


def fullest_circuit(sized: SizedSystem) -> Circuit | None:
    """The circuit at capacity; None where no wiring is given or nothing can be solved."""
    session, pumps = sized.system.session, sized.system.pumps
    wiring, pump = session.wiring, session.pump
    if wiring is None or pump is None or pumps is None or not session.feed.run:
        return None
    pressure = sized.pressure_at_capacity_pa
    volts = pumps.volts(pressure)
    one_pump = pumps.pump.current_A(pressure)
    peak = None if one_pump is None else peak_current_a(pump, pumps, one_pump)
    return Circuit(
        pump_volts_V=volts,
        loss_V=wiring.supply - volts,
        current_A=None if one_pump is None else pumps.on_fullest_circuit * one_pump,
        peak_current_A=peak,
        fuse_A=None if peak is None else fuse_A(peak),
        ampacity_A=None if wiring.wire is None else ampacity_A(wiring.wire),
    )


def peak_current_a(pump: Pump, pumps: PumpSet, working_a: float) -> float:
    """The highest current of the fullest circuit: at the relief, else where the flow ends, else at the last point.

    Args:
        pump: what the session says of the pump.
        pumps: the pumps as they run.
        working_a: the current of one pump at capacity.
    """
    pressure = pumps.end_pa
    if pump.relief is not None:
        pressure = pump.relief / pumps.stages
    if pressure is None:
        pressure = pumps.pump.current[-1][0]
    return pumps.on_fullest_circuit * max(working_a, pumps.pump.current_A(pressure) or 0.0)


def wiring_figures(circuit: Circuit | None, choices: Sequence[WireChoice]) -> WiringFigures | None:
    """The circuit as the result shows it; the smallest wire is the first of the choices that does."""
    if circuit is None:
        return None
    return WiringFigures(
        pump_volts_V=circuit.pump_volts_V,
        loss_V=circuit.loss_V,
        current_A=circuit.current_A,
        peak_current_A=circuit.peak_current_A,
        fuse_A=circuit.fuse_A,
        ampacity_A=circuit.ampacity_A,
        smallest_wire=next((f"{choice.gauge} AWG" for choice in choices if choice.does), None),
    )


def heat_figures(sized: SizedSystem) -> HeatFigures | None:
    """Rise of the tank's temperature; None without a tank's volume or a current, or where nothing goes round."""
    session, pumps = sized.system.session, sized.system.pumps
    tank = session.tank
    if tank.volume is None or pumps is None or not session.feed.run or session.pressure.regulator == "none":
        return None
    pressure = sized.pressure_at_capacity_pa
    current = pumps.pump.current_A(pressure)
    if current is None:
        return None
    return HeatFigures(
        rise_k_per_h(
            volts=pumps.volts(pressure),
            current_a=pumps.running * current,
            density_kg_m3=sized.system.fuel.density_kg_m3,
            volume_m3=tank.volume * tank.fill,
            cp_J_kgK=sized.system.fuel.cp_J_kgK,
        )
    )
