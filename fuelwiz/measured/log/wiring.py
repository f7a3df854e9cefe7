"""What a log tells of the wires to the pump: the resistance of the loop, and what connections lose."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.measured.log.pulls import Means
from fuelwiz.measured.log.pump import Pumps
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.statistics import median, quantile, straight_line

LEAST_RANGE_A = 1.0
SURE_TO = 0.3
"""A resistance is told where two standard errors are no more than so much of it."""
STEPS = 12
"""Between so many rail pressures the model's current is read off a straight line."""


def wiring_ohm(samples: Samples, pumps: Pumps | None, steady: Sequence[int]) -> float | None:
    """Resistance of one circuit's loop: the slope of the volts at the pump against its current."""
    volts, battery = samples.table.columns.get("volts"), samples.table.columns.get("battery")
    if volts is None:
        return None
    amps = currents_a(samples, pumps, steady)
    if amps is None:
        return None
    rows = [
        (current, volts[at] if battery is None else volts[at] - battery[at])
        for at, current in zip(steady, amps, strict=True)
    ]
    known = [(current, volt) for current, volt in rows if volt - volt == 0]
    line = straight_line([current for current, _ in known], [volt for _, volt in known])
    if line is None or line.slope >= 0:
        return None
    ranged = [current for current, _ in known]
    if quantile(ranged, 0.95) - quantile(ranged, 0.05) < LEAST_RANGE_A:
        return None
    return -line.slope if 2 * line.slope_error < SURE_TO * -line.slope else None


def currents_a(samples: Samples, pumps: Pumps | None, among: Sequence[int]) -> list[float] | None:
    """Current of the fullest circuit at some samples: as logged, else the model's at that pressure; None without."""
    logged = samples.table.columns.get("current")
    shared = 1 if pumps is None else pumps.pumps.on_fullest_circuit
    if logged is not None:
        return [shared * logged[at] if logged[at] - logged[at] == 0 else 0.0 for at in among]
    if pumps is None or not pumps.pumps.pump.current or not among:
        return None
    even = Means(samples.time, samples.rail)
    rails = [even.around(at) for at in among]
    if pumps.model.system.at_tank:
        return [shared * _at_tank_a(pumps, rail, at) for rail, at in zip(rails, among, strict=True)]
    return [shared * current for current in _at_rail_a(pumps, rails)]


def _at_tank_a(pumps: Pumps, rail_pa: float, at: int) -> float:
    """The model's current of one pump ahead of a regulator at the tank: the feed carries what the engine takes."""
    pressure = pumps.pressure_pa(rail_pa, pumps.samples.flow[at])
    return pumps.pumps.pump.current_A(pressure) or 0.0


def _at_rail_a(pumps: Pumps, rails: Sequence[float]) -> Iterator[float]:
    """The model's current of one pump with all that it sends going through the feed, by a table of rail pressures."""
    low, high = quantile(rails, 0.01), quantile(rails, 0.99)
    step = max((high - low) / STEPS, 1.0)
    sized, running = pumps.model.sized, pumps.pumps
    table = []
    for number in range(STEPS + 2):
        rail = low + step * number
        capacity = sized.capacity_m3_s(pumps=running, rail_pa=rail)
        pressure = sized.pressure_across_pa(running, capacity, rail)
        table.append(running.pump.current_A(pressure) or 0.0)
    for rail in rails:
        place = min(max((rail - low) / step, 0.0), STEPS + 0.999)
        number = int(place)
        yield table[number] + (place - number) * (table[number + 1] - table[number])


def connections_v(samples: Samples, pumps: Pumps | None, full: Sequence[int]) -> float | None:
    """Volts that connections lose at full load: from battery to pump less what the wire itself loses; None unknown."""
    volts, battery = samples.table.columns.get("volts"), samples.table.columns.get("battery")
    if volts is None or battery is None or pumps is None:
        return None
    ohm = pumps.model.system.loop_ohm or 0.0
    amps = currents_a(samples, pumps, full)
    if amps is None:
        return None
    lost = [battery[at] - volts[at] - ohm * current for at, current in zip(full, amps, strict=True)]
    known = [volt for volt in lost if volt - volt == 0]
    return median(known) if known else None
