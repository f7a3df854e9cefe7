"""What one volt less at the pump takes off the flow, by the law of its kind; by both where the kind is not known."""

from __future__ import annotations

from fuelwiz.physics.circuit import ASSUMED_VOLTS, PumpSet
from fuelwiz.session import Session, Size
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.part_figures import OneVolt
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.stress import changed


def one_volt(system: FuelSystem, pick: Size | None) -> OneVolt | None:
    """The shares of the flow at the pick; None without a pump or a feed, and where the pump sends nothing."""
    today = SizedSystem(system, pick)
    less = SizedSystem(
        FuelSystem(_a_volt_less(system.session), system.session.fuel.temperature), today.candidate
    )
    pumps, slower = system.pumps, less.system.pumps
    if not system.solvable or pumps is None or slower is None or not today.capacity:
        return None
    if system.session.pump is None or system.session.pump.kind is not None:
        return OneVolt(_lost(today, pumps, less, slower), None, None)
    by_turbine = _lost(today, pumps.by("turbine"), less, slower.by("turbine"))
    by_displacement = _lost(today, pumps.by("displacement"), less, slower.by("displacement"))
    return OneVolt(_lost(today, pumps, less, slower), by_turbine, by_displacement)


def _lost(today: SizedSystem, pumps: PumpSet, less: SizedSystem, slower: PumpSet) -> float:
    flow = today.capacity_m3_s(pumps=pumps)
    return 1 - less.capacity_m3_s(pumps=slower) / flow if flow > 0 else 1.0


def _a_volt_less(session: Session) -> Session:
    pump, wiring = session.pump, session.wiring
    if pump is not None and pump.volts is None and wiring is not None:
        return changed(session, "wiring", supply=wiring.supply - 1)
    volts = ASSUMED_VOLTS if pump is None or pump.volts is None else pump.volts
    return session if pump is None else changed(session, "pump", volts=volts - 1)
