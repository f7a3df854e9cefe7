"""What a log proposes: values of ordinary keys, one by one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isnan

from fuelwiz.measured.figures import Bin, Proposal, PumpKnown
from fuelwiz.measured.log.held import Held
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.proposals import percent, pressure_text
from fuelwiz.measured.statistics import median
from fuelwiz.physics.demand import crank_power_w
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.session import Rejected, field_at, read
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.units import from_si

LEAST_BASE_OFF_PA = 1.5 * PSI_PA
LEAST_BSFC_OFF = 0.01
LEAST_CONNECTIONS_OFF_V = 0.05
DYNO_AND_INJECTORS = "4 %"
METER_V = "0.1 V"
MOST_POINTS = 6
BSFC_UNITS = {"us": ("lb/(hp*h)", 3), "metric": ("g/kWh", 0)}
POWER_UNITS = {"us": "hp", "metric": "kW"}


def bsfc_kg_J(samples: Samples, full: Sequence[int], system: FuelSystem) -> float | None:
    """Fuel burnt for each joule at the crank, from flow and dyno power; None without power."""
    power = samples.table.columns.get("power")
    if power is None:
        return None
    goal = system.session.goal
    highest = max((power[at] for at in full if not isnan(power[at])), default=0.0)
    burnt = [
        samples.flow[at]
        * samples.density_kg_m3
        / crank_power_w(
            power_w=power[at], at_wheels=goal.power_at == "wheels", driveline_loss=goal.driveline_loss
        )
        for at in full
        if power[at] > highest / 10
    ]
    return median(burnt) if burnt else None


def log_proposals(
    system: FuelSystem,
    pump: PumpKnown,
    rail_held: Held | None,
    bins: Sequence[Bin],
    *,
    bsfc: float | None,
    connections_v: float | None,
) -> tuple[Proposal, ...]:
    """The proposals whose values their keys would take."""
    found = (
        *_health(system, pump),
        *_base(system, rail_held),
        *_bsfc(system, bsfc),
        *_connections(system, connections_v),
        *_pull(system, bins, bsfc),
    )
    return tuple(one for one in found if one.key == "pull" or _is_taken(one.key, one.value))


def _is_taken(key: str, value: object) -> bool:
    try:
        read(field_at(key), value)
    except Rejected:
        return False
    return True


def _health(system: FuelSystem, pump: PumpKnown) -> Iterator[Proposal]:
    if pump.known != "factor" or pump.factor is None or pump.tolerance is None or system.session.pump is None:
        return
    health = percent(pump.factor * system.session.pump.health)
    yield Proposal(
        "pump.health",
        health,
        "tolerance.pump_flow",
        percent(pump.tolerance),
        "pressure sagged in the log",
    )


def _base(system: FuelSystem, rail_held: Held | None) -> Iterator[Proposal]:
    if rail_held is None or not rail_held.proven or rail_held.high_at_idle:
        return
    base, units = rail_held.at(0.0), system.session.show_units
    off, error = abs(base - system.session.pressure.base), rail_held.error_at(0.0)
    if off > LEAST_BASE_OFF_PA + 2 * error:
        tolerance = pressure_text(max(2 * error, PSI_PA / 2), units)
        yield Proposal(
            "pressure.base", pressure_text(base, units), "tolerance.base", tolerance, "rail in the log"
        )


def _bsfc(system: FuelSystem, bsfc: float | None) -> Iterator[Proposal]:
    if bsfc is None or abs(bsfc / system.demand.bsfc_kg_J - 1) < LEAST_BSFC_OFF:
        return
    unit, places = BSFC_UNITS[system.session.show_units]
    yield Proposal(
        "engine.bsfc",
        f"{from_si(bsfc, unit):.{places}f} {unit}",
        "tolerance.fuel_use",
        DYNO_AND_INJECTORS,
        "flow and dyno power in the log",
    )


def _connections(system: FuelSystem, volts: float | None) -> Iterator[Proposal]:
    wiring = system.session.wiring
    if volts is None or wiring is None or volts < 0:
        return
    if abs(volts - wiring.connections) > LEAST_CONNECTIONS_OFF_V:
        yield Proposal(
            "wiring.connections", f"{volts:.2f} V", "tolerance.voltage", METER_V, "volts in the log"
        )


def _pull(system: FuelSystem, bins: Sequence[Bin], bsfc: float | None) -> Iterator[Proposal]:
    """A few of the bins as points of full power; their power by what was burnt there."""
    known = [one for one in bins if one.rpm_low is not None and one.boost_Pa >= 0 and one.flow_m3_s > 0]
    if len(known) < 2:
        return
    count = min(MOST_POINTS, len(known))
    chosen = [known[number * (len(known) - 1) // (count - 1)] for number in range(count)]
    points = [_point(system, one, bsfc) for one in chosen]
    if all(
        _is_taken("pull.power", point["power"]) and _is_taken("pull.rpm", point["rpm"]) for point in points
    ):
        yield Proposal("pull", points, None, None, "bins of the log")


def _point(system: FuelSystem, one: Bin, bsfc: float | None) -> dict[str, str | int]:
    goal, units = system.session.goal, system.session.show_units
    burnt = one.flow_m3_s * system.fuel.density_kg_m3
    power = burnt / (system.demand.bsfc_kg_J if bsfc is None else bsfc)
    if goal.power_at == "wheels":
        power *= 1 - goal.driveline_loss
    unit = POWER_UNITS[units]
    assert one.rpm_low is not None and one.rpm_high is not None
    return {
        "rpm": round((one.rpm_low + one.rpm_high) / 2),
        "power": f"{from_si(power, unit):.0f} {unit}",
        "boost": pressure_text(one.boost_Pa, units),
    }
