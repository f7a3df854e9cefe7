"""What measurements come to: weighted mean, median, and a straight line, each with its error."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, pi, sqrt

from fuelwiz.record import record


@record
class Estimate:
    """A value and its standard error."""

    value: float
    error: float


@record
class Line:
    """A least-squares line y = intercept + slope x, with the standard errors of both, about the middle of its x."""

    slope: float
    slope_error: float
    middle: float
    middle_y: float
    scatter: float
    count: int

    def at(self, x: float) -> float:
        """The line at x."""
        return self.middle_y + self.slope * (x - self.middle)

    def error_at(self, x: float) -> float:
        """Standard error of the line at x."""
        off = self.slope_error * (x - self.middle)
        return sqrt(self.scatter * self.scatter / self.count + off * off)


def weighted_mean(values: Sequence[float], errors: Sequence[float]) -> Estimate:
    """The mean weighted by one over the square of each error, and its error.

    Args:
        values: one or more, in any unit.
        errors: of each, above 0.

    >>> weighted_mean([1.0, 3.0], [1.0, 1.0]).value
    2.0
    """
    weights = [1 / (error * error) for error in errors]
    total = sum(weights)
    mean = sum(weight * value for weight, value in zip(weights, values, strict=True)) / total
    return Estimate(mean, 1 / sqrt(total))


def median(values: Sequence[float]) -> float:
    """The middle of one or more values.

    >>> median([3.0, 1.0, 2.0, 10.0])
    2.5
    """
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def median_estimate(values: Sequence[float]) -> Estimate:
    """The median and its standard error, sqrt(pi / 2) times that of the mean; the scatter by absolute deviations.

    The scatter is 1.4826 times the median deviation: of values that scatter normally.
    """
    middle = median(values)
    scatter = 1.4826 * median([abs(value - middle) for value in values])
    return Estimate(middle, sqrt(pi / 2) * scatter / sqrt(len(values)))


def quantile(values: Sequence[float], share: float) -> float:
    """The value below which that share of one or more values lies.

    >>> quantile([5.0, 1.0, 2.0, 3.0, 4.0], 0.5)
    3.0
    """
    ordered = sorted(values)
    return ordered[min(int(share * len(ordered)), len(ordered) - 1)]


def straight_line(x: Sequence[float], y: Sequence[float]) -> Line | None:
    """The least-squares line through points, None where they are fewer than three or all at one x.

    >>> line = straight_line([0.0, 1.0, 2.0], [1.0, 3.0, 5.0])
    >>> line.slope, line.at(3.0)
    (2.0, 7.0)
    """
    count = len(x)
    if count < 3:
        return None
    middle, middle_y = sum(x) / count, sum(y) / count
    spread = sum((one - middle) ** 2 for one in x)
    if spread <= 0:
        return None
    slope = sum((one - middle) * (other - middle_y) for one, other in zip(x, y, strict=True)) / spread
    left = sum((other - middle_y - slope * (one - middle)) ** 2 for one, other in zip(x, y, strict=True))
    scatter = sqrt(left / (count - 2))
    return Line(slope, scatter / sqrt(spread), middle, middle_y, scatter, count)


def through_origin(x: Sequence[float], y: Sequence[float]) -> Estimate:
    """The slope of the least-squares line through the origin, and its standard error; an infinite one for no spread.

    >>> through_origin([1.0, 2.0], [2.0, 4.0]).value
    2.0
    """
    squares = sum(one * one for one in x)
    if squares <= 0 or len(x) < 2:
        return Estimate(0.0, inf)
    slope = sum(one * other for one, other in zip(x, y, strict=True)) / squares
    left = sum((other - slope * one) ** 2 for one, other in zip(x, y, strict=True))
    return Estimate(slope, sqrt(left / (len(x) - 1) / squares))
