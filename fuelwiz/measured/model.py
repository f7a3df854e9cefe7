"""The pumps of a build where something was measured: what the model says they send there."""

from __future__ import annotations

from dataclasses import dataclass, replace

from fuelwiz.once import once
from fuelwiz.physics.circuit import PumpSet
from fuelwiz.session import Session
from fuelwiz.sizing.candidates import candidate_called
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.sized_system import SizedSystem


@dataclass(frozen=True)
class Model:
    """A build at its pick, as it is held against what was measured."""

    sized: SizedSystem

    @classmethod
    def of(cls, session: Session, figures: Figures) -> Model:
        """The model of a session whose figures are known."""
        candidate = candidate_called(session.feed, figures.verdict.size)
        return cls(SizedSystem(FuelSystem(session), candidate))

    @property
    def system(self) -> FuelSystem:
        """The build without its size."""
        return self.sized.system

    @once
    def has_feed(self) -> bool:
        """Whether the loss between pump and rail is known."""
        return bool(self.system.session.feed.run)

    def pumps_at(self, running: int, volts: float) -> PumpSet | None:
        """So many pumps at volts that were measured at them; None without a pump."""
        pumps = self.system.pump_set(running)
        if pumps is None:
            return None
        return replace(pumps, supply=replace(pumps.supply, volts=volts, measured=True))

    def rise_pa(self, rail_pa: float, flow_m3_s: float, pumps: PumpSet | None) -> float:
        """Rise across the pumps with a measured rail pressure while the feed carries all of a flow."""
        sized = self.sized
        out = rail_pa + sized.feed.loss_pa(flow_m3_s)
        if self.system.at_tank:
            out += sized.pump_filters_pa(flow_m3_s)
        return out - self.system.inlet_gauge_pa(flow_m3_s, pumps)

    def capacity_m3_s(self, rail_pa: float, pumps: PumpSet) -> float:
        """What pumps send to a rail at a measured pressure while the feed carries all of it."""
        return pumps.capacity_m3_s(lambda flow: self.rise_pa(rail_pa, flow, pumps))
