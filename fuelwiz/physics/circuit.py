"""Pumps on their wiring against a system: the working point, what the pumps could make, and where they end."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise

from fuelwiz.once import once
from fuelwiz.physics.pump import Law, Pump
from fuelwiz.physics.roots import root
from fuelwiz.record import record

ASSUMED_VOLTS = 13.0  # at the pump where neither volts nor wiring are known; common practice, no source
SCAN_STEPS = 64


@record
class Supply:
    """What feeds the pumps: volts at rest, those lost in connections, and the resistance of one circuit's loop.

    >>> Supply(13.8, connections=0.2, resistance_ohm=0.05).volts
    13.8
    """

    volts: float = ASSUMED_VOLTS
    connections: float = 0.0
    resistance_ohm: float = 0.0
    circuits: int = 1
    measured: bool = False  # volts were measured at the pump, or are assumed: current takes nothing from them


@dataclass(frozen=True)
class PumpSet:
    """Running pumps, one beside the other or one behind the other, on a supply.

    A relief valve, where there is one, opens at `relief_pa` across the pumps as a whole.

    >>> from fuelwiz.physics.curve import Curve
    >>> pumps = PumpSet(Pump((Curve(13.5, ((2e5, 9e-5), (6e5, 5e-5))),)), 2, False, Supply(13.5, measured=True))
    >>> round(pumps.flow_m3_s(4e5), 9), round(pumps.capacity_m3_s(lambda flow: 4e5 + 1e9 * flow), 7)
    (0.00014, 0.0001167)
    """

    pump: Pump
    running: int
    in_series: bool
    supply: Supply
    relief_pa: float | None = None

    def by(self, law: Law) -> PumpSet:
        """The same pumps by another law."""
        return self if law == self.pump.law else replace(self, pump=self.pump.by(law))

    @once
    def on_fullest_circuit(self) -> int:
        """How many running pumps share the fullest circuit."""
        return math.ceil(self.running / min(self.supply.circuits, self.running))

    @once
    def flow_ways(self) -> int:
        """Over how many pick-ups the flow divides."""
        return 1 if self.in_series else self.running

    @once
    def stages(self) -> int:
        """Over how many pumps the rise divides."""
        return self.running if self.in_series else 1

    def volts(self, pressure_pa: float) -> float:
        """Volts at a pump that works against that pressure, never below zero."""
        supply = self.supply
        if supply.measured:
            return supply.volts
        current = self.pump.current_A(pressure_pa) or 0.0
        lost = supply.connections + self.on_fullest_circuit * current * supply.resistance_ohm
        return max(0.0, supply.volts - lost)

    def flow_m3_s(self, rise_pa: float) -> float:
        """Flow of all running pumps against a rise across them as a whole."""
        pressure = rise_pa / self.stages
        return self.flow_ways * self.pump.flow_m3_s(pressure, self.volts(pressure))

    def capacity_m3_s(self, rise_at: Callable[[float], float], *, relieved: bool = True) -> float:
        """The flow in m3/s at which the pumps make the rise in Pa that the system asks for at it.

        0 where they cannot at no flow. No more than the flow at which the rise opens the relief valve; `relieved`
        false takes the valve away.
        """
        at_rest = rise_at(0.0)
        most = self.flow_m3_s(at_rest)
        if most <= 0:
            return 0.0

        def spare(flow: float) -> float:
            return self.flow_m3_s(rise_at(flow)) - flow

        end, left = most, spare(most)
        while left > 0:
            end *= 2
            left = spare(end)
        found = root(spare, 0.0, end, at_ends=(most, left))
        relief = self.relief_pa
        if not relieved or relief is None or rise_at(found) <= relief:
            return found
        return 0.0 if at_rest > relief else root(lambda flow: rise_at(flow) - relief, 0.0, found)

    def sends_no_more_than(self, flow_m3_s: float, rise_at: Callable[[float], float]) -> bool:
        """Whether that capacity is a flow in m3/s at most: one look in place of a working point."""
        if self._volts_may_rise:
            return self.capacity_m3_s(rise_at) <= flow_m3_s
        rise = rise_at(flow_m3_s)
        if self.relief_pa is not None and rise >= self.relief_pa:
            return True
        return self.flow_m3_s(rise) <= flow_m3_s or self.flow_m3_s(rise_at(0.0)) <= 0

    @once
    def _volts_may_rise(self) -> bool:
        """Whether a pump that works harder may draw less and so see more volts: then a flow may have two pressures."""
        falls = any(later < earlier for (_, earlier), (_, later) in pairwise(self.pump.current))
        return falls and self.supply.resistance_ohm > 0 and not self.supply.measured

    @once
    def end_pa(self) -> float | None:
        """The pressure in Pa at which one pump's flow ends, its volts there counted; None where it never does."""
        if self.pump.never_ends:
            return None
        most = self.pump.far_end_pa(self.supply.volts)
        if math.isinf(most):
            most = self.pump.end_pa(self.volts(0.0))
        if math.isinf(most):
            return None

        def left(pressure: float) -> float:
            return min(self.pump.end_pa(self.volts(pressure)), 2 * most) - pressure

        low = 0.0
        if self._volts_may_rise:
            low = next(
                (most * i / SCAN_STEPS for i in range(SCAN_STEPS) if left(most * (i + 1) / SCAN_STEPS) <= 0),
                0.0,
            )
            most = min(most, low + most / SCAN_STEPS) if low else most
        return root(left, low, most)

    def highest_rise_pa(self, flow_m3_s: float) -> float | None:
        """The highest rise in Pa at which the pumps still deliver a flow above zero; None where there is no highest.

        Below zero where something has to push the flow through them, minus infinity where nothing could. Never
        above the relief.
        """
        highest = self._highest_unrelieved_pa(flow_m3_s)
        if self.relief_pa is None:
            return highest
        return self.relief_pa if highest is None else min(highest, self.relief_pa)

    def _highest_unrelieved_pa(self, flow_m3_s: float) -> float | None:
        """The same without a relief valve."""

        def spare(pressure: float) -> float:
            return self.flow_m3_s(self.stages * pressure) - flow_m3_s

        most = sheet_end = self._end_of_sheet_pa
        while spare(most) >= 0:
            if most > 1e4 * sheet_end:
                return None
            most *= 2
        low = 0.0
        if self._volts_may_rise:
            step = most / SCAN_STEPS
            low = next((step * i for i in reversed(range(SCAN_STEPS)) if spare(step * i) >= 0), 0.0)
            most = low + step
        while spare(low) < 0:
            if low < -1e4 * sheet_end:
                return -math.inf
            low = 2 * low - sheet_end
        return self.stages * root(spare, low, most)

    @once
    def _end_of_sheet_pa(self) -> float:
        """A pressure beyond the points of every curve at the supply's volts."""
        volts = self.supply.volts
        return 1e5 + max(curve.points[-1][0] * (volts / curve.voltage) ** 2 for curve in self.pump.curves)

    def at_no_flow_pa(self, rise_pa: float) -> float:
        """Pressure in Pa across one pump that sends nothing: where its flow ends, else the rise that is asked for.

        No more than its share of the relief.
        """
        stands = rise_pa / self.stages if self.end_pa is None else self.end_pa
        return stands if self.relief_pa is None else min(stands, self.relief_pa / self.stages)

    @property
    def dead_head_rise_pa(self) -> float | None:
        """Rise in Pa across the pumps where nothing flows; None where nothing would stop it rising."""
        if self.end_pa is None:
            return self.relief_pa
        return (
            self.stages * self.end_pa
            if self.relief_pa is None
            else min(self.stages * self.end_pa, self.relief_pa)
        )
