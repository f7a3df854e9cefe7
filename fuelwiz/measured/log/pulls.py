"""The full-load samples of a log, and the pulls that they make up."""

from __future__ import annotations

import heapq
from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence

from fuelwiz.facts import NEAR
from fuelwiz.measured.log.samples import Samples
from fuelwiz.record import record

WITHIN = 0.10
"""Full load: boost, else duty, within so much of the log's highest."""
BOOSTED_FROM_PA = 2e4
"""An engine whose boost never comes so far has none: its full load is told by duty."""
STEADY_PA_S = 5e4
LEAST_PULL_S = 1.0
MOST_GAP_S = 0.2
AROUND_S = 0.1
"""Means of so much time before and after tell how fast the boost changes, noise or not."""
MOST_AROUND = 500
"""No more samples than these count for a mean, however many the logger writes."""
HIGHEST_OF = 5
"""The highest is that of the log but for a few stray samples."""


@record
class Pull:
    """One pull: its samples, which are in order."""

    samples: tuple[int, ...]


class Means:
    """Means of a quantity over stretches of time."""

    def __init__(self, time: Sequence[float], values: Sequence[float]) -> None:
        self._time, self._values = time, values
        self._sums = array("d", [0.0])
        total = 0.0
        for value in values:
            total += value
            self._sums.append(total)

    def between(self, first: int, behind: int) -> float:
        """The mean of the samples from one to just before another."""
        return (self._sums[behind] - self._sums[first]) / (behind - first)

    def around(self, at: int) -> float:
        """The mean of the samples within `AROUND_S` of one."""
        return self.between(self._from(at), self._behind(at))

    def rate(self, at: int) -> float:
        """How fast it changes at a sample, a second; 0 for a sample that stands alone."""
        first, behind = self._from(at), self._behind(at)
        if behind - first < 2 or self._time[behind - 1] <= self._time[first]:
            return 0.0
        if first == at or behind == at + 1:
            before, after = self._values[first], self._values[behind - 1]
            return (after - before) / (self._time[behind - 1] - self._time[first])
        middle_before = (self._time[first] + self._time[at - 1]) / 2
        middle_after = (self._time[at + 1] + self._time[behind - 1]) / 2
        return (self.between(at + 1, behind) - self.between(first, at)) / (middle_after - middle_before)

    def _from(self, at: int) -> int:
        return bisect_left(self._time, self._time[at] - AROUND_S - NEAR, max(0, at - MOST_AROUND), at)

    def _behind(self, at: int) -> int:
        most = min(len(self._time), at + 1 + MOST_AROUND)
        return bisect_right(self._time, self._time[at] + AROUND_S + NEAR, at + 1, most)


def pulls_of(samples: Samples, boosts: Means) -> tuple[Pull, ...]:
    """The pulls: full-load samples, a second or more of them with no gap of 0.2 s."""
    load = _load(samples)
    highest = heapq.nlargest(HIGHEST_OF, load)[-1]
    full = [
        at
        for at, value in enumerate(load)
        if value >= (1 - WITHIN) * highest and abs(boosts.rate(at)) < STEADY_PA_S
    ]
    return tuple(Pull(tuple(pull)) for pull in _stretches(samples.time, full, MOST_GAP_S, LEAST_PULL_S))


def _load(samples: Samples) -> Sequence[float]:
    boosted = heapq.nlargest(HIGHEST_OF, samples.boost)[-1] >= BOOSTED_FROM_PA
    return samples.boost if boosted else samples.opening


def _stretches(
    time: Sequence[float], chosen: Sequence[int], most_gap_s: float, least_s: float
) -> Iterator[list[int]]:
    """Chosen samples that follow each other without a gap, where they last long enough."""
    stretch: list[int] = []
    for at in chosen:
        if stretch and time[at] - time[stretch[-1]] >= most_gap_s - NEAR:
            if time[stretch[-1]] - time[stretch[0]] >= least_s - NEAR:
                yield stretch
            stretch = []
        stretch.append(at)
    if stretch and time[stretch[-1]] - time[stretch[0]] >= least_s - NEAR:
        yield stretch


def lasting(time: Sequence[float], chosen: Sequence[int], least_s: float) -> list[int]:
    """Chosen samples of which enough follow each other."""
    return [at for stretch in _stretches(time, chosen, MOST_GAP_S, least_s) for at in stretch]
