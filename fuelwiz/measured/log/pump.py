"""What a log tells of the pumps: how good they are where the rail sags, how good at least where it does not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fuelwiz.measured.figures import PumpKnown
from fuelwiz.measured.log.sag import Shortfall
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.model import Model
from fuelwiz.measured.statistics import median, median_estimate
from fuelwiz.physics.circuit import PumpSet

LEAST_TOLERANCE = 0.03
MOST_LOOKED_AT = 4000
FEWEST_SAGGING = 3
HALVES_AGREE = 0.04
"""Where the rail sags because of the pumps, shallow and deep sags tell the same factor, to this and three errors."""


@dataclass(frozen=True)
class Pumps:
    """The build's pumps as they ran in a log; their volts logged, calculated from the battery's, or the model's."""

    model: Model
    samples: Samples
    pumps: PumpSet
    feed_scale: float = 1.0

    def volts(self, at: int, pressure_pa: float) -> float:
        """Volts at one pump at a sample, with a pressure across it."""
        return self.volts_from(self._logged("volts", at), self._logged("battery", at), pressure_pa)

    def volts_from(self, volts: float | None, battery: float | None, pressure_pa: float) -> float:
        """Volts at one pump from those that were logged there, at the battery, or nowhere."""
        if volts is not None:
            return volts
        supply = self.pumps.supply
        if battery is None or supply.measured:
            return self.pumps.volts(pressure_pa)
        current = self.pumps.pump.current_A(pressure_pa) or 0.0
        return battery - supply.connections - self.pumps.on_fullest_circuit * current * supply.resistance_ohm

    def _logged(self, key: str, at: int) -> float | None:
        column = self.samples.table.columns.get(key)
        return None if column is None or column[at] - column[at] != 0 else column[at]

    def pressure_pa(self, rail_pa: float, flow_m3_s: float) -> float:
        """Pressure across one pump while all that it sends goes to the engine."""
        rise = self.model.rise_pa(rail_pa, flow_m3_s, self.pumps)
        rise += (self.feed_scale - 1) * self.model.sized.feed.loss_pa(flow_m3_s)
        return rise / self.pumps.stages

    def model_flow_m3_s(self, pressure_pa: float, volts: float) -> float:
        """What all the pumps send by the model."""
        return self.pumps.flow_ways * self.pumps.pump.flow_m3_s(pressure_pa, volts)

    def ratio(self, at: int) -> float | None:
        """Flow at a sample over what the model says the pumps send there; None where that is nothing."""
        flow = self.samples.flow[at]
        pressure = self.pressure_pa(self.samples.rail[at], flow)
        given = self.model_flow_m3_s(pressure, self.volts(at, pressure))
        return flow / given if given > 0 else None


def pump_known(pumps: Pumps | None, short: Shortfall | None, full: Sequence[int]) -> PumpKnown:
    """What the log tells of the pumps; nothing without a pump or a feed."""
    if pumps is None:
        return PumpKnown("nothing", None, None)
    factor = None if short is None else _factor(pumps, short)
    if factor is not None:
        return factor
    return _at_least(pumps, full)


def _factor(pumps: Pumps, short: Shortfall) -> PumpKnown | None:
    """The factor where the rail sags; None where it does not, or where shallow and deep sags tell another."""
    if len(short.sagging) < FEWEST_SAGGING:
        return None
    depth = dict(zip(short.samples, short.pa, strict=True))
    step = max(1, len(short.sagging) // MOST_LOOKED_AT)
    deepest_last = sorted(short.sagging[::step], key=depth.__getitem__)
    ratios = [ratio for at in deepest_last if (ratio := pumps.ratio(at)) is not None]
    if len(ratios) < FEWEST_SAGGING:
        return None
    found = median_estimate(ratios)
    half = len(ratios) // 2
    shallow, deep = median_estimate(ratios[:half]), median_estimate(ratios[half:])
    allowed = HALVES_AGREE * found.value + 3 * (shallow.error + deep.error)
    if abs(shallow.value - deep.value) > allowed:
        return None
    return PumpKnown("factor", found.value, max(2 * found.error / found.value, LEAST_TOLERANCE))


def _at_least(pumps: Pumps, full: Sequence[int]) -> PumpKnown:
    """The highest ratio that lasted: the pumps sent this much at least."""
    step = max(1, len(full) // MOST_LOOKED_AT)
    ratios = [ratio for at in full[::step] if (ratio := pumps.ratio(at)) is not None]
    if not ratios:
        return PumpKnown("nothing", None, None)
    upper = sorted(ratios)[len(ratios) * 3 // 4 :]
    return PumpKnown("at least", median(upper), LEAST_TOLERANCE)
