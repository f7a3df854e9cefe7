"""What a log shows of a system that is not as it should be, by name, with when it is first seen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.measured.figures import Shown
from fuelwiz.measured.log.held import WORTH_NAMING, Held
from fuelwiz.measured.log.pulls import Pull
from fuelwiz.measured.log.sag import SURE, Shortfall
from fuelwiz.measured.log.samples import Samples
from fuelwiz.measured.statistics import median, straight_line

LEAKS_BELOW = 0.97
LINE_LOSES_MORE = 1.25
FEWEST_LAPS = 3


def signatures(
    samples: Samples,
    pulls: Sequence[Pull],
    little: Sequence[int],
    rail_held: Held | None,
    short: Shortfall | None,
    *,
    base_pa: float,
    follows: bool,
) -> Iterator[Shown]:
    """The signatures, in their order; `follows` tells whether the regulator should follow the manifold."""
    if rail_held is None or short is None:
        return
    time = samples.time
    if short.sagging:
        yield Shown("falls with flow", time[short.sagging[0]])
    elif line_loses_more(short):
        yield Shown("falls with its square", time[pulls[0].samples[0]])
    if rail_held.high_at_idle:
        lowest = min(little, key=lambda at: samples.boost[at])
        yield Shown("high at idle", time[lowest])
    later = _falls_later(samples, pulls, short, base_pa)
    if later is not None:
        yield Shown("falls later", later)
    error = rail_held.error_at(0.0)
    if rail_held.proven and rail_held.at(0.0) < base_pa * (1 - WORTH_NAMING) - 2 * error:
        yield Shown("set low", time[little[0]])
    if leaks(rail_held, follows=follows):
        yield Shown("slope", time[pulls[0].samples[0]])


def line_loses_more(short: Shortfall) -> bool:
    """Whether the line behind a regulator at the tank loses more than the model has it."""
    return short.feed_scale - 2 * short.feed_scale_error > LINE_LOSES_MORE


def leaks(rail_held: Held, *, follows: bool) -> bool:
    """Whether the rail rises so much less than the manifold that its hose leaks or is pinched."""
    slope, error = rail_held.slope, rail_held.slope_error
    return follows and rail_held.proven and slope < LEAKS_BELOW and slope + 2 * error < 1


def _falls_later(samples: Samples, pulls: Sequence[Pull], short: Shortfall, base_pa: float) -> float | None:
    """When the rail first lies lower than in the pulls before, pull after pull; None where it does not."""
    if len(pulls) < FEWEST_LAPS:
        return None
    below = dict(zip(short.samples, short.pa, strict=True))
    starts = [samples.time[pull.samples[0]] for pull in pulls]
    middles = [median([below[at] for at in pull.samples]) for pull in pulls]
    line = straight_line(starts, middles)
    if line is None or line.slope <= SURE / 2 * line.slope_error or line.slope <= 0:
        return None
    third = max(1, len(pulls) // 3)
    first = sum(middles[:third]) / third
    if sum(middles[-third:]) / third - first <= WORTH_NAMING * base_pa:
        return None
    return next(
        at for at, middle in zip(starts, middles, strict=True) if middle - first > WORTH_NAMING * base_pa
    )
