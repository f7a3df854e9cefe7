"""A pump's sheet at one voltage: flow against pressure between its points and beyond them."""

from __future__ import annotations

import bisect
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from fuelwiz.facts import NEAR
from fuelwiz.once import once
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.physics.roots import root

ONE_POINT_SLOPE = 0.01 / PSI_PA  # part of its flow lost for each pascal more: common practice, no source

Points = tuple[tuple[float, float], ...]


def pchip_slopes(x: Sequence[float], y: Sequence[float]) -> list[float]:
    """Slopes at the points of a monotone cubic, in units of y over x.

    Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 1984, 5, 300, with the three-point ends that scipy
    has. Valid for two points or more, x rising.

    >>> pchip_slopes([0.0, 2.0], [3.0, -1.0])
    [-2.0, -2.0]
    >>> pchip_slopes([0.0, 1.0, 2.0], [0.0, 1.0, 0.0])[1]
    0.0
    """
    width = [right - left for left, right in pairwise(x)]
    steep = [(high - low) / h for (low, high), h in zip(pairwise(y), width, strict=True)]
    if len(steep) == 1:
        return [steep[0], steep[0]]
    slopes = [_end_slope(width[0], width[1], steep[0], steep[1])]
    for i in range(1, len(steep)):
        before, after = steep[i - 1], steep[i]
        if before * after <= 0:
            slopes.append(0.0)
            continue
        near, far = 2 * width[i] + width[i - 1], width[i] + 2 * width[i - 1]
        slopes.append((near + far) / (near / before + far / after))
    slopes.append(_end_slope(width[-1], width[-2], steep[-1], steep[-2]))
    return slopes


def _end_slope(width: float, next_width: float, steep: float, next_steep: float) -> float:
    """Three-point slope at an end, held so that the curve keeps its shape."""
    slope = ((2 * width + next_width) * steep - width * next_steep) / (width + next_width)
    if slope * steep <= 0:
        return 0.0
    if steep * next_steep <= 0 and abs(slope) > 3 * abs(steep):
        return 3 * steep
    return slope


@dataclass(frozen=True)
class Curve:
    """Flow in m3/s against pressure across the pump in Pa, at the sheet's voltage.

    Pressures rise and flows do not. Between the points a monotone cubic; beyond them the straight line through
    the two nearest; one point alone loses 1 % of its flow for each psi more (common practice, no source).

    >>> sheet = Curve(13.5, ((2e5, 9e-5), (4e5, 7e-5), (6e5, 4e-5)))
    >>> sheet.flow_m3_s(4e5), round(sheet.flow_m3_s(7e5), 9), sheet.flow_m3_s(9e5)
    (7e-05, 2.5e-05, 0.0)
    """

    voltage: float
    points: Points

    @once
    def _pressures(self) -> list[float]:
        return [pressure for pressure, _ in self.points]

    @once
    def _slopes(self) -> list[float]:
        return pchip_slopes(self._pressures, [flow for _, flow in self.points])

    def line_m3_s(self, pressure_pa: float) -> float:
        """Flow in m3/s at a pressure in Pa; past the sheet's end the straight line itself, below zero too.

        >>> round(Curve(13.5, ((2e5, 9e-5), (4e5, 7e-5))).line_m3_s(12e5), 9)
        -1e-05
        """
        points = self.points
        if len(points) == 1:
            known, flow = points[0]
            return flow * (1 - ONE_POINT_SLOPE * (pressure_pa - known))
        if pressure_pa <= points[0][0]:
            return on_line(points[0], points[1], pressure_pa)
        if pressure_pa >= points[-1][0]:
            return on_line(points[-2], points[-1], pressure_pa)
        right = bisect.bisect_right(self._pressures, pressure_pa)
        (p0, q0), (p1, q1) = points[right - 1], points[right]
        width = p1 - p0
        t = (pressure_pa - p0) / width
        s = 1 - t
        bend = self._slopes[right - 1] * s - self._slopes[right] * t
        return q0 * s * s * (1 + 2 * t) + q1 * t * t * (3 - 2 * t) + width * t * s * bend

    def flow_m3_s(self, pressure_pa: float) -> float:
        """Flow in m3/s at a pressure in Pa and the sheet's voltage, never below zero.

        >>> Curve(13.5, ((2e5, 9e-5), (4e5, 7e-5))).flow_m3_s(12e5)
        0.0
        """
        return max(0.0, self.line_m3_s(pressure_pa))

    @once
    def without_pressure_m3_s(self) -> float:
        """Flow in m3/s where nothing stands against the pump."""
        return self.line_m3_s(0.0)

    def reaches(self, pressure_pa: float) -> bool:
        """Whether a pressure in Pa lies within the points, so that nothing is guessed; never with one point alone.

        >>> Curve(13.5, ((2e5, 9e-5), (4e5, 7e-5))).reaches(4e5)
        True
        """
        slack = NEAR * abs(self.points[-1][0])
        return len(self.points) > 1 and self.points[0][0] - slack <= pressure_pa <= self.points[-1][0] + slack

    @once
    def never_ends(self) -> bool:
        """Whether the last two points have the same flow, so that no pressure would stop it."""
        return len(self.points) > 1 and self.points[-1][1] > 0 and self.points[-1][1] == self.points[-2][1]

    @once
    def end_pa(self) -> float:
        """The lowest pressure in Pa at which nothing flows any more; infinite where that never happens."""
        return self.pressure_where_pa(0.0)

    def pressure_where_pa(self, flow_m3_s: float) -> float:
        """The lowest pressure in Pa at which the line has come down to a flow, which may lie below zero.

        Infinite where it never does; the first point where no more than that flowed at any pressure.

        >>> Curve(13.5, ((2e5, 9e-5), (4e5, 7e-5))).pressure_where_pa(8e-5)
        300000.0
        """
        (first, most), (last, least) = self.points[0], self.points[-1]
        if len(self.points) == 1:
            return first + (1 - flow_m3_s / most) / ONE_POINT_SLOPE if most > 0 else 0.0
        if least > flow_m3_s:
            return _line_comes_to(self.points[-2], self.points[-1], flow_m3_s, never=math.inf)
        if most <= flow_m3_s:
            return min(first, _line_comes_to(self.points[0], self.points[1], flow_m3_s, never=first))
        for (p0, _), (p1, q1) in pairwise(self.points):
            if q1 <= flow_m3_s:
                return root(lambda pressure: self.line_m3_s(pressure) - flow_m3_s, p0, p1)
        return last


def on_line(first: tuple[float, float], second: tuple[float, float], x: float) -> float:
    """The straight line through two points, at x.

    >>> on_line((0.0, 1.0), (2.0, 5.0), 3.0)
    7.0
    """
    (x0, y0), (x1, y1) = first, second
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def _line_comes_to(
    first: tuple[float, float], second: tuple[float, float], y: float, *, never: float
) -> float:
    """Where the straight line through two points comes to y; `never` where it is level."""
    (x0, y0), (x1, y1) = first, second
    return never if y1 == y0 else x1 + (y - y1) * (x1 - x0) / (y1 - y0)
