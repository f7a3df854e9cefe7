"""A sum of independent effects, each a parabola of a standard normal input: its value and its percentiles."""

from __future__ import annotations

import math
from collections.abc import Sequence
from statistics import NormalDist

from fuelwiz.record import record


@record
class Effect:
    """What one input adds at `z`: `slope * z + bend * z**2`; `step` where it adds that above 0 and takes it below.

    >>> Effect(slope=0.5, bend=0.25).at(2.0), Effect(step=0.1).at(-1.3)
    (2.0, -0.1)
    """

    slope: float = 0.0
    bend: float = 0.0
    step: float = 0.0

    def at(self, z: float) -> float:
        """What it adds at `z`."""
        return self.slope * z + self.bend * z * z + (self.step if z >= 0 else -self.step)

    @property
    def cumulants(self) -> tuple[float, float, float, float]:
        """The first four of what it adds (of a parabola and of a toss of a coin; each stands alone)."""
        a, b, s = self.slope, self.bend, self.step
        return (
            b,
            a * a + 2 * b * b + s * s,
            6 * a * a * b + 8 * b * b * b,
            48 * a * a * b * b + 48 * b * b * b * b - 2 * s * s * s * s,
        )


@record
class AdditiveModel:
    """A middle and the effects of independent inputs around it.

    >>> round(AdditiveModel(10.0, (Effect(1.0), Effect(1.0), Effect(1.0), Effect(1.0))).percentile(0.975), 2)
    13.92
    """

    middle: float
    effects: tuple[Effect, ...]

    def at(self, z: Sequence[float]) -> float:
        """The sum at a point."""
        return self.middle + sum([effect.at(one) for effect, one in zip(self.effects, z, strict=True)], 0.0)

    def percentile(self, share: float) -> float:
        """What that share of the values stays below: the expansion of Cornish and Fisher (1938) to fourth order.

        Valid for a share well inside 0 to 1 and effects that no single bent one rules.
        """
        mean, variance, third, fourth = (
            sum(effect.cumulants[order] for effect in self.effects) for order in range(4)
        )
        if variance <= 0:
            return self.middle + mean
        deviation = math.sqrt(variance)
        skew, peak = third / (deviation * variance), fourth / (variance * variance)
        x = NormalDist().inv_cdf(share)
        square = x * x
        bent = x * (square - 3) * peak / 24 - x * (2 * square - 5) * skew * skew / 36
        x += (square - 1) * skew / 6 + bent
        return self.middle + mean + deviation * x


def percentile_of(values: Sequence[float], share: float) -> float:
    """The percentile of values that rise, each standing for an equal share of all, straight lines between them.

    >>> percentile_of([1.0, 2.0, 3.0, 4.0], 0.5)
    2.5
    """
    place = min(max(share * len(values) - 0.5, 0.0), len(values) - 1.0)
    below = min(int(place), len(values) - 2) if len(values) > 1 else 0
    above = min(below + 1, len(values) - 1)
    return values[below] + (values[above] - values[below]) * (place - below)
