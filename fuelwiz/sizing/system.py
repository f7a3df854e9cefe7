"""A build at one candidate size: what the pumps work against, and the points where they meet."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.roots import root
from fuelwiz.session import Size
from fuelwiz.sizing.build import Build
from fuelwiz.sizing.lines import FeedLine, feed_line, filters_loss_pa

MOST_SAG = 0.05  # of the pressure across the injectors; common practice, no source


@dataclass(frozen=True)
class System:
    """A build with its feed at one candidate, None where every run keeps a bore of its own."""

    build: Build
    candidate: Size | None

    @cached_property
    def feed(self) -> FeedLine:
        """The feed at this candidate."""
        return feed_line(
            self.build.session.feed,
            self.candidate,
            at_tank=self.build.at_tank,
            density_kg_m3=self.build.fuel.density_kg_m3,
            viscosity_m2_s=self.build.fuel.viscosity_m2_s,
        )

    def pump_filters_pa(self, flow_m3_s: float) -> float:
        """Loss of the filters between the pump and a regulator at the tank."""
        return filters_loss_pa(
            [part for part in self.build.session.feed.filter if part.place == "pump"], flow_m3_s
        )

    def rise_pa(
        self,
        flow_m3_s: float,
        *,
        rail_pa: float | None = None,
        pumps: PumpSet | None = None,
        feed_counts: bool = True,
    ) -> float:
        """Pressure rise across the pumps at a flow: what leaves them less what reaches them.

        At the set rail pressure and with all pumps unless said otherwise; `feed_counts` false takes the feed's
        own loss as nought.
        """
        build = self.build
        out = build.pressure.rail_Pa if rail_pa is None else rail_pa
        if build.at_tank:
            out += self.pump_filters_pa(flow_m3_s)
        elif feed_counts:
            out += self.feed.loss_pa(flow_m3_s)
        return out - build.inlet_gauge_pa(flow_m3_s, pumps or build.pumps)

    def capacity_m3_s(
        self, *, pumps: PumpSet, rail_pa: float | None = None, feed_counts: bool = True
    ) -> float:
        """The flow that pumps send into this system."""
        return pumps.capacity_m3_s(
            lambda flow: self.rise_pa(flow, rail_pa=rail_pa, pumps=pumps, feed_counts=feed_counts)
        )

    @cached_property
    def demand_rise_pa(self) -> float:
        """The rise that the demand asks for."""
        return self.rise_pa(self.build.flow_m3_s)

    @cached_property
    def capacity(self) -> float | None:
        """The flow that all the pumps send; None without a pump."""
        pumps = self.build.pumps
        return None if pumps is None else self.capacity_m3_s(pumps=pumps)

    @cached_property
    def pressure_at_capacity_pa(self) -> float:
        """Pressure across one pump at capacity; where nothing flows, where its flow ends."""
        pumps = self.build.pumps
        assert pumps is not None and self.capacity is not None
        rise = self.rise_pa(self.capacity)
        return rise / pumps.stages if self.capacity > 0 else pumps.at_no_flow_pa(rise)

    @cached_property
    def sag_pa(self) -> float | None:
        """How far the rail sags below a regulator at the tank at the demand; None with any other."""
        return self.feed.loss_pa(self.build.flow_m3_s) if self.build.at_tank else None

    @cached_property
    def sag_flow_m3_s(self) -> float:
        """The flow at which the rail sags by 5 % of the pressure across the injectors; 0 where it does at none."""
        allowed = MOST_SAG * self.build.pressure.injector_Pa
        return flow_where(self.feed, allowed, self.build.flow_m3_s)

    def max_power_w(self, capacity_m3_s: float) -> float:
        """Crank power that a capacity feeds at the same boost, no more than the sag allows."""
        flow = min(capacity_m3_s, self.sag_flow_m3_s) if self.build.at_tank else capacity_m3_s
        return self.build.demand.crank_power_W * flow / self.build.flow_m3_s

    @property
    def could_make_pa(self) -> float | None:
        """The highest rise at which the pumps still deliver the demand."""
        return self.build.could_make_pa

    @cached_property
    def rail_at_goal_pa(self) -> float:
        """The rail pressure that the pumps hold while the engine takes its full demand, never below nought."""
        assert self.capacity is not None
        rail = self.build.pressure.rail_Pa
        could = self.could_make_pa
        if self.capacity < self.build.flow_m3_s and could is not None:
            rail = min(rail, rail + could - self.demand_rise_pa)
        return max(0.0, rail - (self.sag_pa or 0.0))


def flow_where(feed: FeedLine, loss_pa: float, about_m3_s: float) -> float:
    """The flow at which a feed loses so much; 0 where it loses more at no flow. `about_m3_s` is where to start."""
    if feed.loss_pa(0.0) > loss_pa:
        return 0.0
    most = about_m3_s
    while feed.loss_pa(most) < loss_pa:
        most *= 2
    return root(lambda flow: feed.loss_pa(flow) - loss_pa, 0.0, most)
