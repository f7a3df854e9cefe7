"""The full-load samples of a log by engine speed: pressure across the injectors, flow, and what the pumps could send."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from fuelwiz.measured.figures import Bin
from fuelwiz.measured.log.pulls import Pull
from fuelwiz.measured.log.pump import Pumps
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.statistics import median
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedLine

STEP_RPM = 250
FEWEST = 5


def bins_of(
    samples: Samples,
    pulls: Sequence[Pull],
    *,
    system: FuelSystem,
    pumps: Pumps | None,
    feed: FeedLine | None,
    sagging: frozenset[int],
) -> tuple[Bin, ...]:
    """The bins, slowest first, of 5 samples at least; one a pull where no speed was logged.

    `feed` is that of a regulator at the tank, whose loss lowers what is wanted at the rail.
    """
    found = []
    for low, high, among in _groups(samples, pulls):
        boost = median([samples.boost[at] for at in among])
        rail = median([samples.rail[at] for at in among])
        flow = median([samples.flow[at] for at in among])
        lost = feed.loss_pa(flow) if feed is not None else 0.0
        found.append(
            Bin(
                rpm_low=low,
                rpm_high=high,
                boost_Pa=boost,
                target_Pa=system.rail_pa(boost) - boost - lost,
                injector_Pa=median([samples.rail[at] - samples.boost[at] for at in among]),
                flow_m3_s=flow,
                capacity_m3_s=None if pumps is None else capacity_m3_s(pumps, among, rail),
                sags=2 * sum(at in sagging for at in among) > len(among),
            )
        )
    return tuple(found)


def _groups(
    samples: Samples, pulls: Sequence[Pull]
) -> Iterator[tuple[float | None, float | None, Sequence[int]]]:
    if samples.rpm is None:
        yield from ((None, None, pull.samples) for pull in pulls if len(pull.samples) >= FEWEST)
        return
    by_speed: dict[int, list[int]] = {}
    for pull in pulls:
        for at in pull.samples:
            by_speed.setdefault(int(samples.rpm[at] // STEP_RPM), []).append(at)
    for number in sorted(by_speed):
        if len(by_speed[number]) >= FEWEST:
            yield number * STEP_RPM, (number + 1) * STEP_RPM, by_speed[number]


def capacity_m3_s(pumps: Pumps, among: Sequence[int], rail_pa: float) -> float:
    """What the model says the pumps could send at a rail pressure, at the volts of some samples."""
    volts = pumps.samples.median_of("volts", among)
    battery = pumps.samples.median_of("battery", among)
    as_given = pumps.pumps
    if volts is None and battery is None:
        running = as_given
    elif volts is not None or as_given.supply.measured:
        given = as_given.supply.volts if volts is None else volts
        running = replace(as_given, supply=replace(as_given.supply, volts=given, measured=True))
    else:
        assert battery is not None
        running = replace(as_given, supply=replace(as_given.supply, volts=battery))
    return pumps.model.capacity_m3_s(rail_pa, running)


def lowest_of(bins: Sequence[Bin]) -> int | None:
    """The bin whose pressure across the injectors lies furthest below what is wanted; None without bins."""
    return max(range(len(bins)), key=lambda at: bins[at].target_Pa - bins[at].injector_Pa, default=None)


def tightest_of(bins: Sequence[Bin]) -> int | None:
    """The bin at which the pumps could send least beyond what the engine takes; None where that is not known."""
    spare = {
        at: one.capacity_m3_s / one.flow_m3_s
        for at, one in enumerate(bins)
        if one.capacity_m3_s is not None and one.flow_m3_s > 0
    }
    return min(spare, key=spare.__getitem__, default=None)
