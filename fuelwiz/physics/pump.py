"""A fuel pump: flow against pressure at a voltage, carried to another, and the current that it draws."""

from __future__ import annotations

import bisect
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from fuelwiz.physics.fuel import PSI_PA

ONE_POINT_SLOPE = 0.01 / PSI_PA  # part of its flow lost for each pascal more: common practice, no source
NEAR = 1e-9

Points = tuple[tuple[float, float], ...]


def pchip_slopes(x: Sequence[float], y: Sequence[float]) -> list[float]:
    """Slopes of the monotone cubic of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 1984, 5, 300), as scipy has it."""
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
    """Flow in m3/s against pressure across the pump in pascals, at the sheet's voltage; pressures rise."""

    voltage: float
    points: Points

    @cached_property
    def _pressures(self) -> list[float]:
        return [pressure for pressure, _ in self.points]

    @cached_property
    def _slopes(self) -> list[float]:
        return pchip_slopes(self._pressures, [flow for _, flow in self.points])

    def flow_m3_s(self, pressure_pa: float) -> float:
        """Flow at a pressure and the sheet's voltage, never below nought; beyond the points a straight line."""
        points = self.points
        if len(points) == 1:
            known, flow = points[0]
            return max(0.0, flow * (1 - ONE_POINT_SLOPE * (pressure_pa - known)))
        if pressure_pa <= points[0][0]:
            return max(0.0, _on_line(points[0], points[1], pressure_pa))
        if pressure_pa >= points[-1][0]:
            return max(0.0, _on_line(points[-2], points[-1], pressure_pa))
        right = bisect.bisect_right(self._pressures, pressure_pa)
        (p0, q0), (p1, q1) = points[right - 1], points[right]
        width = p1 - p0
        t = (pressure_pa - p0) / width
        s = 1 - t
        bend = self._slopes[right - 1] * s - self._slopes[right] * t
        return q0 * s * s * (1 + 2 * t) + q1 * t * t * (3 - 2 * t) + width * t * s * bend

    def reaches(self, pressure_pa: float) -> bool:
        """Whether a pressure lies within the points, so that nothing is guessed; never with one point alone."""
        slack = NEAR * abs(self.points[-1][0])
        return len(self.points) > 1 and self.points[0][0] - slack <= pressure_pa <= self.points[-1][0] + slack

    @cached_property
    def never_ends(self) -> bool:
        """Whether the last two points have the same flow, so that no pressure would stop it."""
        return len(self.points) > 1 and self.points[-1][1] > 0 and self.points[-1][1] == self.points[-2][1]

    @cached_property
    def end_pa(self) -> float:
        """The lowest pressure at which nothing flows any more; infinite where that never happens."""
        if self.never_ends:
            return float("inf")
        for pressure, flow in self.points:
            if flow == 0:
                return pressure if len(self.points) > 1 else 0.0
        if len(self.points) == 1:
            return self.points[0][0] + 1 / ONE_POINT_SLOPE
        (p0, q0), (p1, q1) = self.points[-2:]
        return p1 + q1 * (p1 - p0) / (q0 - q1)


def _on_line(first: tuple[float, float], second: tuple[float, float], x: float) -> float:
    (x0, y0), (x1, y1) = first, second
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


@dataclass(frozen=True)
class Pump:
    """One pump: its curves with voltages that rise, and its current against pressure."""

    curves: tuple[Curve, ...]
    current: Points = ()

    def weights(self, volts: float) -> list[tuple[Curve, float]]:
        """The curves that count at a voltage and how much: the two that bracket it, else the nearest alone."""
        if volts <= self.curves[0].voltage:
            return [(self.curves[0], 1.0)]
        for low, high in pairwise(self.curves):
            if volts <= high.voltage:
                share = (volts - low.voltage) / (high.voltage - low.voltage)
                return [(low, 1 - share), (high, share)] if share < 1 else [(high, 1.0)]
        return [(self.curves[-1], 1.0)]

    def flow_m3_s(self, pressure_pa: float, volts: float) -> float:
        """Flow at a pressure across one pump and the volts at it.

        Carried from the sheet's voltage by the affinity laws with speed in proportion to volts: flow with the
        speed, pressure with its square (TP-410, pump affinity laws).
        """
        if volts <= 0:
            return 0.0
        flow = 0.0
        for curve, weight in self.weights(volts):
            speed = volts / curve.voltage
            flow += weight * speed * curve.flow_m3_s(pressure_pa / (speed * speed))
        return flow

    def extrapolates(self, pressure_pa: float, volts: float) -> bool:
        """Whether a flow at that pressure and those volts is guessed beyond the points of a curve that counts."""
        if volts <= 0:
            return True
        return not all(
            curve.reaches(pressure_pa * (curve.voltage / volts) ** 2) for curve, _ in self.weights(volts)
        )

    @cached_property
    def never_ends(self) -> bool:
        """Whether any curve keeps its flow however high the pressure."""
        return any(curve.never_ends for curve in self.curves)

    def end_pa(self, volts: float) -> float:
        """The pressure at which one pump's flow ends at those volts."""
        if volts <= 0:
            return 0.0
        return max(curve.end_pa * (volts / curve.voltage) ** 2 for curve, _ in self.weights(volts))

    def current_A(self, pressure_pa: float) -> float | None:
        """Current of one pump at a pressure, whatever the volts; None where no sheet says it."""
        points = self.current
        if not points:
            return None
        if len(points) == 1:
            return points[0][1]
        right = min(max(bisect.bisect_left(points, (pressure_pa, 0.0)), 1), len(points) - 1)
        return max(0.0, _on_line(points[right - 1], points[right], pressure_pa))
