"""What the rail holds while little fuel is taken: a straight line over boost, told from a return that is too small."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from fuelwiz.measured.log.pulls import STEADY_PA_S, Means, Pull
from fuelwiz.measured.log.samples import NO_FUEL_PRESSURE_PA, Samples
from fuelwiz.measured.statistics import Line, median, median_estimate, quantile, straight_line
from fuelwiz.record import record

MOST_LOOKED_AT = 20_000
LITTLE_FLOW = 0.3
"""Little flow: less than so much of what the engine takes at full load."""
FEWEST = 20
LEAST_RANGE_PA = 2e4
"""Over less boost than this no slope can be told."""
RUNS_FROM_RPM = 400.0
WORTH_NAMING = 0.03
"""A pressure off by so much of base is worth naming."""


@record
class Held:
    """Rail pressure over boost with little flow; `proven` where the log itself tells its slope."""

    offset_pa: float
    slope: float
    error_pa: float
    slope_error: float
    middle_pa: float
    proven: bool
    high_at_idle: bool

    def at(self, boost_pa: float) -> float:
        """Rail pressure that is held at a boost."""
        return self.offset_pa + self.slope * boost_pa

    def error_at(self, boost_pa: float) -> float:
        """Its standard error."""
        off = self.slope_error * (boost_pa - self.middle_pa)
        return sqrt(self.error_pa * self.error_pa + off * off)


def steady_samples(samples: Samples, boosts: Means) -> list[int]:
    """Samples with the engine running at a boost that does not change, thinned out where they are many."""
    rail, rpm = samples.rail, samples.rpm
    step = max(1, len(rail) // MOST_LOOKED_AT)
    return [
        at
        for at in range(0, len(rail), step)
        if rail[at] > NO_FUEL_PRESSURE_PA
        and (rpm is None or rpm[at] > RUNS_FROM_RPM)
        and abs(boosts.rate(at)) < STEADY_PA_S
    ]


def little_flow(samples: Samples, steady: Sequence[int], top_flow: float) -> list[int]:
    """The steady samples at which the engine takes little fuel."""
    return [at for at in steady if samples.flow[at] < LITTLE_FLOW * top_flow]


def top_flow(samples: Samples, pulls: Sequence[Pull]) -> float:
    """What the engine takes at full load at most, but for stray samples."""
    return quantile([samples.flow[at] for pull in pulls for at in pull.samples], 0.95)


def held(
    samples: Samples, little: Sequence[int], full: Sequence[int], *, base_pa: float, slope: float
) -> Held | None:
    """What the rail holds with little flow; None where no sample tells.

    Args:
        samples: the log.
        little: samples with little flow.
        full: samples at full load.
        base_pa: pressure that the regulator is said to be set to.
        slope: of rail over boost that it should have: 1 where it follows the manifold, else 0.
    """
    if len(little) < FEWEST:
        return None
    boost = [samples.boost[at] for at in little]
    rail = [samples.rail[at] for at in little]
    if quantile(boost, 0.95) - quantile(boost, 0.05) < LEAST_RANGE_PA:
        return _of_slope(boost, rail, slope)
    line = straight_line(boost, rail)
    assert line is not None
    upper = _upper(boost, rail)
    high_at_idle = upper is not None and _excess(boost, rail, upper) > WORTH_NAMING * base_pa
    if upper is not None and high_at_idle:
        line = upper
    above = [samples.rail[at] - line.at(samples.boost[at]) for at in full]
    far = median([line.error_at(samples.boost[at]) for at in full])
    if median(above) > WORTH_NAMING * base_pa + 2 * far:
        # With little flow the return holds the rail up, not the regulator: what is held is known from the build alone.
        return Held(base_pa, slope, 0.0, 0.0, 0.0, proven=False, high_at_idle=True)
    return _of_line(line, high_at_idle=high_at_idle)


def _of_slope(boost: Sequence[float], rail: Sequence[float], slope: float) -> Held:
    offset = median_estimate([pressure - slope * at for at, pressure in zip(boost, rail, strict=True)])
    return Held(offset.value, slope, offset.error, 0.0, median(boost), proven=False, high_at_idle=False)


def _of_line(line: Line, *, high_at_idle: bool) -> Held:
    return Held(
        line.at(0.0),
        line.slope,
        line.scatter / sqrt(line.count),
        line.slope_error,
        line.middle,
        proven=True,
        high_at_idle=high_at_idle,
    )


def _upper(boost: Sequence[float], rail: Sequence[float]) -> Line | None:
    """The line through the samples in the upper half of the boosts, None where they do not tell one."""
    half = (quantile(boost, 0.05) + quantile(boost, 0.95)) / 2
    above = [(at, pressure) for at, pressure in zip(boost, rail, strict=True) if at > half]
    boosts = [at for at, _ in above]
    if len(above) < FEWEST or quantile(boosts, 0.95) - quantile(boosts, 0.05) < LEAST_RANGE_PA / 2:
        return None
    line = straight_line(boosts, [pressure for _, pressure in above])
    lowest = quantile(boost, 0.05)
    return (
        line if line is not None and line.error_at(lowest) * 6 < abs(line.at(lowest)) * WORTH_NAMING else None
    )


def _excess(boost: Sequence[float], rail: Sequence[float], line: Line) -> float:
    """How far the rail stands above a line at the lowest boosts."""
    edge = quantile(boost, 0.2)
    return median([pressure - line.at(at) for at, pressure in zip(boost, rail, strict=True) if at <= edge])
