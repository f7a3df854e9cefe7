"""Whether the rail sags with flow at full load: only then does a log tell what the pumps can send."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from math import inf

from fuelwiz.measured.log.held import FEWEST, WORTH_NAMING, Held
from fuelwiz.measured.log.pulls import Means, Pull, lasting
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.statistics import median, median_estimate, quantile, through_origin
from fuelwiz.record import record
from fuelwiz.sizing.lines import FeedLine

LEAST_SAG_S = 0.3
SURE = 4.0
"""A difference is told from none where it is so many times its standard error."""
LEAK_AT_MOST = 0.35
"""Where the log tells no slope of the regulator, a leaking hose may take so much: common practice, no source."""
CALM_FLOW = 0.8
"""Below so much of the flow at full load the pumps are taken to keep up: there the line's own loss is told."""
LEAST_LOSS_PA = 2e3


@record
class Shortfall:
    """How far the rail lies below what it holds with little flow, at each full-load sample, and where it sags."""

    samples: tuple[int, ...]
    pa: tuple[float, ...]
    sagging: tuple[int, ...]
    feed_scale: float
    feed_scale_error: float


def shortfall(
    samples: Samples,
    pulls: Sequence[Pull],
    steady: Sequence[int],
    rail_held: Held,
    *,
    base_pa: float,
    top_flow: float,
    feed: FeedLine | None,
) -> Shortfall:
    """The shortfall at full load.

    Args:
        samples: the log.
        pulls: its pulls.
        steady: samples with the engine running at a steady boost.
        rail_held: what the rail holds with little flow.
        base_pa: pressure that the regulator is set to.
        top_flow: flow at full load, m3/s.
        feed: the feed of a regulator at the tank, whose loss the rail sees; None with any other.
    """
    full = [at for pull in pulls for at in pull.samples]
    scale, error = _feed_scale(samples, steady, rail_held, top_flow, feed)
    short = array("d", [0.0]) * len(samples.time)
    for at in full:
        lost = scale * feed.loss_pa(samples.flow[at]) if feed is not None else 0.0
        short[at] = rail_held.at(samples.boost[at]) - lost - samples.rail[at]
    below = [short[at] for at in full]
    found: list[int] = []
    is_known = feed is None or error < inf
    if is_known and _falls_with_flow(samples, full, below, rail_held, base_pa):
        if not rail_held.proven:
            start = _at_least_flow(samples, full, below)
            for at in full:
                short[at] -= start
        found = _sagging(samples, pulls, short, rail_held, base_pa)
    return Shortfall(tuple(full), tuple(short[at] for at in full), tuple(found), scale, error)


def _feed_scale(
    samples: Samples, steady: Sequence[int], rail_held: Held, top_flow: float, feed: FeedLine | None
) -> tuple[float, float]:
    """The feed's loss as the log has it over the model's, and its standard error; infinite where it is not told."""
    if feed is None:
        return 1.0, inf
    calm = [at for at in steady if samples.flow[at] < CALM_FLOW * top_flow]
    losses = [feed.loss_pa(samples.flow[at]) for at in calm]
    if sum(loss > LEAST_LOSS_PA for loss in losses) < FEWEST:
        return 1.0, inf
    drops = [rail_held.at(samples.boost[at]) - samples.rail[at] for at in calm]
    found = through_origin(losses, drops)
    return max(found.value, 0.0), found.error


def _falls_with_flow(
    samples: Samples, full: Sequence[int], below: Sequence[float], rail_held: Held, base_pa: float
) -> bool:
    """Whether the shortfall grows with what the engine asks for, more than a leaking hose could make it."""
    opening = [samples.opening[at] for at in full]
    half, most = quantile(opening, 0.5), quantile(opening, 0.9)
    pairs = list(zip(opening, below, strict=True))
    calm = median_estimate([short for asked, short in pairs if asked <= half])
    hard = median_estimate([short for asked, short in pairs if asked >= most])
    boosts = [samples.boost[at] for at in full]
    leak = 3 * rail_held.slope_error if rail_held.proven else LEAK_AT_MOST
    by_boost = leak * (quantile(boosts, 0.95) - quantile(boosts, 0.05))
    by_chance = SURE * (calm.error + hard.error)
    return hard.value - calm.value > WORTH_NAMING / 2 * base_pa + by_boost + by_chance


def _at_least_flow(samples: Samples, full: Sequence[int], below: Sequence[float]) -> float:
    """The shortfall at the full-load samples that ask for least."""
    edge = quantile([samples.opening[at] for at in full], 0.25)
    return median([short for at, short in zip(full, below, strict=True) if samples.opening[at] <= edge])


def _sagging(
    samples: Samples, pulls: Sequence[Pull], short: Sequence[float], rail_held: Held, base_pa: float
) -> list[int]:
    """Full-load samples whose rail, noise evened out, lies too low for long enough."""
    found: list[int] = []
    for pull in pulls:
        time = [samples.time[at] for at in pull.samples]
        means = Means(time, [short[at] for at in pull.samples])
        low = [
            number
            for number, at in enumerate(pull.samples)
            if means.around(number) > WORTH_NAMING * base_pa + 2 * rail_held.error_at(samples.boost[at])
        ]
        found += [pull.samples[number] for number in lasting(time, low, LEAST_SAG_S)]
    return found
