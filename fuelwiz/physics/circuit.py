"""Pumps on their wiring against a system: the working point, what the pumps could make, and where they end."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from fuelwiz.physics.pump import Pump
from fuelwiz.physics.roots import root

ASSUMED_VOLTS = 13.0  # at the pump where neither volts nor wiring are known; common practice, no source
SCAN_STEPS = 64


@dataclass(frozen=True, slots=True)
class Supply:
    """What feeds the pumps: volts at rest, those lost in connections, and the resistance of one circuit's loop."""

    volts: float = ASSUMED_VOLTS
    connections: float = 0.0
    resistance_ohm: float = 0.0
    circuits: int = 1
    measured: bool = False  # volts were measured at the pump, or are assumed: current takes nothing from them


@dataclass(frozen=True)
class PumpSet:
    """Running pumps, one beside the other or one behind the other, on a supply."""

    pump: Pump
    running: int
    in_series: bool
    supply: Supply

    @cached_property
    def on_fullest_circuit(self) -> int:
        """How many running pumps share the fullest circuit."""
        return math.ceil(self.running / min(self.supply.circuits, self.running))

    @property
    def flow_ways(self) -> int:
        """Over how many pick-ups the flow divides."""
        return 1 if self.in_series else self.running

    @property
    def stages(self) -> int:
        """Over how many pumps the rise divides."""
        return self.running if self.in_series else 1

    def volts(self, pressure_pa: float) -> float:
        """Volts at a pump that works against that pressure, never below nought."""
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

    def capacity_m3_s(self, rise_at: Callable[[float], float]) -> float:
        """The flow at which the pumps make the rise that the system asks for at it; 0 where they cannot at no flow."""
        most = self.flow_m3_s(rise_at(0.0))
        if most <= 0:
            return 0.0

        def spare(flow: float) -> float:
            return self.flow_m3_s(rise_at(flow)) - flow

        while spare(most) > 0:
            most *= 2
        return root(spare, 0.0, most)

    @cached_property
    def _volts_may_rise(self) -> bool:
        """Whether a pump that works harder may draw less and so see more volts: then a flow may have two pressures."""
        falls = any(later < earlier for (_, earlier), (_, later) in pairwise(self.pump.current))
        return falls and self.supply.resistance_ohm > 0 and not self.supply.measured

    @cached_property
    def end_pa(self) -> float | None:
        """The pressure at which one pump's flow ends, its volts there counted; None where it never does."""
        if self.pump.never_ends:
            return None
        volts = self.supply.volts
        most = max(curve.end_pa * (volts / curve.voltage) ** 2 for curve in self.pump.curves)

        def left(pressure: float) -> float:
            return self.pump.end_pa(self.volts(pressure)) - pressure

        low = 0.0
        if self._volts_may_rise:
            low = next(
                (most * i / SCAN_STEPS for i in range(SCAN_STEPS) if left(most * (i + 1) / SCAN_STEPS) <= 0),
                0.0,
            )
            most = min(most, low + most / SCAN_STEPS) if low else most
        return root(left, low, most)

    def highest_rise_pa(self, flow_m3_s: float) -> float | None:
        """The highest rise at which the pumps still deliver a flow above nought; None where there is no highest.

        Below nought where something has to push the flow through them, minus infinity where nothing could.
        """

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

    @cached_property
    def _end_of_sheet_pa(self) -> float:
        """A pressure beyond the points of every curve at the supply's volts."""
        volts = self.supply.volts
        return 1e5 + max(curve.points[-1][0] * (volts / curve.voltage) ** 2 for curve in self.pump.curves)

    def at_no_flow_pa(self, rise_pa: float) -> float:
        """Pressure across one pump that sends nothing: where its flow ends, else the rise that is asked for."""
        return rise_pa / self.stages if self.end_pa is None else self.end_pa
