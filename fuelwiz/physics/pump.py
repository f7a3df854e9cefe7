"""A fuel pump: flow at a pressure and a voltage by the law of its kind, and the current that it draws."""

from __future__ import annotations

import bisect
import math
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from fuelwiz.once import once
from fuelwiz.physics.curve import Curve, Points

Law = Literal["turbine", "displacement", "lower", "higher"]
"""How a sheet is carried to other volts; the last two are the lower and the higher of the first two."""


def carried_m3_s(curve: Curve, *, pressure_pa: float, volts: float, law: Law) -> float:
    """Flow in m3/s of a sheet carried to other volts, at a pressure across the pump in Pa.

    With speed in proportion to volts, s = V/V0. A bladed wheel follows the affinity laws, Q = s Q0(P / s2): flow
    with the speed, pressure with its square (TP-410). A displacement pump sweeps the same volume each turn, and
    its leak hangs on the pressure alone: each volt adds the same flow at every pressure,
    Q = Q0(P) + (s - 1) Q0(0) (slip model of positive displacement pumps; Karassik, Pump Handbook, from memory).
    Both are theory, good to a volt or two from the sheet's. Without volts nothing flows.

    >>> sheet = Curve(12.0, ((2e5, 9e-5), (4e5, 7e-5)))
    >>> round(carried_m3_s(sheet, pressure_pa=3e5, volts=13.2, law="displacement"), 7)
    9.1e-05
    >>> round(carried_m3_s(sheet, pressure_pa=3e5 * 1.21, volts=13.2, law="turbine"), 7)
    8.8e-05
    """
    if volts <= 0:
        return 0.0
    speed = volts / curve.voltage
    if speed == 1:
        return curve.flow_m3_s(pressure_pa)
    if law == "turbine":
        return speed * curve.flow_m3_s(pressure_pa / (speed * speed))
    swept = max(0.0, curve.line_m3_s(pressure_pa) + (speed - 1) * curve.without_pressure_m3_s)
    if law == "displacement":
        return swept
    wheel = speed * curve.flow_m3_s(pressure_pa / (speed * speed))
    return min(wheel, swept) if law == "lower" else max(wheel, swept)


def carried_end_pa(curve: Curve, *, volts: float, law: Law) -> float:
    """The pressure in Pa at which a sheet carried to other volts ends; infinite where it never does.

    >>> sheet = Curve(12.0, ((2e5, 8e-5), (4e5, 6e-5)))
    >>> round(carried_end_pa(sheet, volts=6.0, law="turbine"))
    250000
    >>> round(carried_end_pa(sheet, volts=6.0, law="displacement"))
    500000
    """
    if volts <= 0:
        return 0.0
    speed = volts / curve.voltage
    wheel = curve.end_pa * speed * speed
    if law == "turbine" or speed == 1:
        return wheel
    swept = curve.pressure_where_pa((1 - speed) * curve.without_pressure_m3_s)
    if law == "displacement":
        return swept
    return min(wheel, swept) if law == "lower" else max(wheel, swept)


@dataclass(frozen=True)
class Pump:
    """One pump: its curves with voltages that rise, its current in A against pressure in Pa, and its law.

    >>> sheet = Curve(13.5, ((2e5, 9e-5), (6e5, 5e-5)))
    >>> pump = Pump((sheet,), ((2e5, 8.0), (6e5, 12.0)))
    >>> round(pump.flow_m3_s(4e5, 13.5), 9), pump.current_A(4e5)
    (7e-05, 10.0)
    """

    curves: tuple[Curve, ...]
    current: Points = ()
    law: Law = "turbine"

    def by(self, law: Law) -> Pump:
        """The same pump by another law."""
        return self if law == self.law else replace(self, law=law)

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
        """Flow in m3/s at a pressure across one pump in Pa and the volts at it.

        Between two sheets each is read at that pressure, weighted linearly in volts: a measured pair beats any
        law. Outside them the nearest is carried by the law.

        >>> low, high = Curve(12.0, ((2e5, 8e-5), (6e5, 4e-5))), Curve(14.0, ((2e5, 1e-4), (6e5, 6e-5)))
        >>> round(Pump((low, high)).flow_m3_s(4e5, 13.0), 9)
        7e-05
        """
        if volts <= 0:
            return 0.0
        counting = self.weights(volts)
        if len(counting) == 1:
            return carried_m3_s(counting[0][0], pressure_pa=pressure_pa, volts=volts, law=self.law)
        return sum(weight * curve.flow_m3_s(pressure_pa) for curve, weight in counting)

    def extrapolates(self, pressure_pa: float, volts: float) -> bool:
        """Whether a flow at that pressure in Pa and those volts is guessed beyond the points of a curve that counts.

        Judged by the law that gives less there.

        >>> Pump((Curve(13.5, ((2e5, 9e-5), (6e5, 5e-5))),)).extrapolates(7e5, 13.5)
        True
        """
        if volts <= 0:
            return True
        counting = self.weights(volts)
        if len(counting) == 2:
            return not all(curve.reaches(pressure_pa) for curve, _ in counting)
        curve = counting[0][0]
        speed = volts / curve.voltage
        wheel = curve.reaches(pressure_pa / (speed * speed))
        swept = curve.reaches(pressure_pa)
        if self.law == "turbine":
            return not wheel
        if self.law == "displacement":
            return not swept
        by_wheel = carried_m3_s(curve, pressure_pa=pressure_pa, volts=volts, law="turbine")
        by_sweep = carried_m3_s(curve, pressure_pa=pressure_pa, volts=volts, law="displacement")
        return not (wheel if by_wheel <= by_sweep else swept)

    @once
    def never_ends(self) -> bool:
        """Whether any curve keeps its flow however high the pressure."""
        return any(curve.never_ends for curve in self.curves)

    def end_pa(self, volts: float) -> float:
        """The pressure in Pa at which one pump's flow ends at those volts; infinite where it never does.

        >>> round(Pump((Curve(13.5, ((2e5, 9e-5), (6e5, 5e-5))),)).end_pa(13.5))
        1100000
        """
        if volts <= 0:
            return 0.0
        counting = self.weights(volts)
        if len(counting) == 1:
            return carried_end_pa(counting[0][0], volts=volts, law=self.law)
        return max(curve.end_pa for curve, _ in counting)

    def far_end_pa(self, volts: float) -> float:
        """A pressure in Pa at which nothing flows at those volts or fewer; infinite where there is none."""
        ends = (carried_end_pa(curve, volts=max(volts, curve.voltage), law=self.law) for curve in self.curves)
        return max(ends, default=math.inf)

    def current_A(self, pressure_pa: float) -> float | None:
        """Current of one pump in A at a pressure in Pa, whatever the volts; None where no sheet says it.

        Linear between the points, the end slopes carried on, never below zero.

        >>> Pump((), ((2e5, 8.0), (6e5, 12.0))).current_A(7e5)
        13.0
        """
        points = self.current
        if not points:
            return None
        if len(points) == 1:
            return points[0][1]
        right = 1
        if len(points) > 2:
            right = min(max(bisect.bisect_left(points, (pressure_pa, 0.0)), 1), len(points) - 1)
        (low, less), (high, more) = points[right - 1], points[right]
        amps = less + (more - less) * (pressure_pa - low) / (high - low)
        return amps if amps > 0.0 else 0.0
