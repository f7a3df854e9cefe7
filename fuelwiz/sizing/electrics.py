"""Wiring and heat at the capacity of the pick."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.heat import lasts_s, rise_k_per_h
from fuelwiz.physics.wire import METRIC_M2, ampacity_A, fuse_A, gauge_of, gauges_m2, is_same_area
from fuelwiz.sizing.part_figures import Circuit, HeatFigures, WireChoice, WiringFigures, values_of
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.thresholds import SPIKE_PA


def fuse_fails(sized: SizedSystem) -> bool:
    """Whether no fuse is large enough, or the one that is would not guard the wire."""
    wiring, pumps = sized.system.session.wiring, sized.system.pumps
    if wiring is None or pumps is None or not sized.system.solvable:
        return False
    one_pump = pumps.pump.current_A(sized.pressure_at_capacity_pa)
    if one_pump is None:
        return False
    fuse = fuse_A(highest_working_a(sized, pumps, one_pump))
    return fuse is None or (wiring.wire is not None and fuse > ampacity_A(wiring.wire))


def working_circuit(sized: SizedSystem) -> tuple[float, float | None] | None:
    """Working current and fuse of the fullest circuit at capacity; None where no current is known."""
    wiring, pumps = sized.system.session.wiring, sized.system.pumps
    if wiring is None or pumps is None or not sized.system.solvable:
        return None
    one_pump = pumps.pump.current_A(sized.pressure_at_capacity_pa)
    if one_pump is None:
        return None
    return pumps.on_fullest_circuit * one_pump, fuse_A(highest_working_a(sized, pumps, one_pump))


def fullest_circuit(sized: SizedSystem) -> Circuit | None:
    """The circuit at capacity; None where no wiring is given or nothing can be solved."""
    system = sized.system
    wiring, pumps = system.session.wiring, system.pumps
    if wiring is None or pumps is None or not sized.system.solvable:
        return None
    pressure = sized.pressure_at_capacity_pa
    volts = pumps.volts(pressure)
    one_pump = pumps.pump.current_A(pressure)
    peak = None if one_pump is None else peak_current_a(system.at_most(pumps), one_pump)
    highest = None if one_pump is None else highest_working_a(sized, pumps, one_pump)
    return Circuit(
        pump_volts_V=volts,
        loss_V=wiring.supply - volts,
        current_A=None if one_pump is None else pumps.on_fullest_circuit * one_pump,
        total_A=None if one_pump is None else pumps.running * one_pump,
        peak_current_A=peak,
        fuse_A=None if highest is None else fuse_A(highest),
        ampacity_A=None if wiring.wire is None else ampacity_A(wiring.wire),
    )


def highest_working_a(sized: SizedSystem, pumps: PumpSet, working_a: float) -> float:
    """The highest current of the fullest circuit at work: with boost at that of a spike too."""
    highest = working_a
    if sized.system.session.pressure.boost > 0:
        spike = sized.pressure_at_capacity_pa + SPIKE_PA / pumps.stages
        highest = max(highest, pumps.pump.current_A(spike) or 0.0)
    return pumps.on_fullest_circuit * highest


def peak_current_a(pumps: PumpSet, working_a: float) -> float:
    """The highest current of the fullest circuit: at the relief, else where the flow ends, else at the last point.

    Args:
        pumps: the pumps as they run, where too much flow does harm.
        working_a: the current of one pump at capacity.
    """
    pressure = pumps.end_pa
    if pumps.relief_pa is not None:
        pressure = pumps.relief_pa / pumps.stages
    if pressure is None:
        pressure = pumps.pump.current[-1][0]
    return pumps.on_fullest_circuit * max(working_a, pumps.pump.current_A(pressure) or 0.0)


def wiring_figures(
    circuit: Circuit | None, gauges: Sequence[WireChoice], metric: Sequence[WireChoice]
) -> WiringFigures | None:
    """The circuit as the result shows it; the smallest wire is the first as it is sold that does."""
    if circuit is None:
        return None
    return WiringFigures(
        **values_of(circuit),
        smallest_wire=next((f"{gauge_of(area)} AWG" for area in _that_do(gauges, gauges_m2())), None),
        smallest_metric_wire_m2=next(_that_do(metric, METRIC_M2), None),
    )


def _that_do(choices: Sequence[WireChoice], sold_m2: Sequence[float]) -> Iterator[float]:
    """The areas as they are sold of the choices that do; a builder's own wire may be none of them."""
    does = [choice.area_m2 for choice in choices if choice.does]
    return (area for area in sold_m2 if any(is_same_area(area, one) for one in does))


def heat_figures(sized: SizedSystem) -> HeatFigures | None:
    """What the tank warms up by at cruise, and how long it lasts; None without a tank's volume or a feed."""
    system = sized.system
    tank = system.session.tank
    if tank.volume is None or not system.has_runs:
        return None
    volume = tank.volume * tank.fill
    return HeatFigures(
        rise_K_per_h=_rise_k_per_h(sized, volume),
        lasts_s=lasts_s(volume_m3=volume, flow_m3_s=system.flow_m3_s),
    )


def _rise_k_per_h(sized: SizedSystem, volume_m3: float) -> float | None:
    """By the pumps that run at idle against the base pressure; None without a current, or where nothing goes round."""
    system, pumps = sized.system, sized.system.idle_pumps
    if pumps is None or system.session.pressure.regulator == "none":
        return None
    base = system.session.pressure.base
    cruise = sized.capacity_m3_s(pumps=pumps, rail_pa=base)
    pressure = sized.pressure_across_pa(pumps, cruise, base)
    current = pumps.pump.current_A(pressure)
    if current is None:
        return None
    return rise_k_per_h(
        volts=pumps.volts(pressure),
        current_a=pumps.running * current,
        density_kg_m3=system.fuel.density_kg_m3,
        volume_m3=volume_m3,
        cp_J_kgK=system.fuel.cp_J_kgK,
    )
