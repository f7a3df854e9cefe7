"""A build at one candidate size: what the pumps work against, and the points where they meet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fuelwiz.once import once
from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.roots import root
from fuelwiz.record import record
from fuelwiz.session import Size
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.lines import FeedLine, FeedLoss, FeedRun, bare_hose, feed_line, filters_terms
from fuelwiz.sizing.thresholds import COSTS_THE_PUMP, MOST_SAG

BARELY = 1e-6
NO_FLOW_IS_SO_GREAT_M3_S = 1e3

FeedCounts = Literal["all", "no runs", "none"]
"""How much of the feed's loss stands against the pumps."""


@record
class VapourMargins:
    """How far the pump's inlet stays above the fuel's vapour pressure, Pa; None where not known."""

    at_goal_pa: float | None
    lowest_pa: float | None  # of the goal and every further point of full power

    def no_better_than(self, other: VapourMargins) -> VapourMargins:
        """The lower of each."""
        return VapourMargins(
            _lower(self.at_goal_pa, other.at_goal_pa), _lower(self.lowest_pa, other.lowest_pa)
        )


@dataclass(frozen=True)
class SizedSystem:
    """A build with its feed at one candidate, None where every run keeps a bore of its own."""

    system: FuelSystem
    candidate: Size | None

    @once
    def points(self) -> tuple[SizedSystem, ...]:
        """The same at each further point of full power."""
        points = tuple(SizedSystem(system, self.candidate) for system in self.system.points)
        for point in points:
            point.__dict__["feed"] = self.feed
        return points

    def and_points(self) -> Iterator[SizedSystem]:
        """The build at its goal, then at each further point."""
        yield self
        yield from self.points

    @once
    def feed(self) -> FeedLine:
        """The feed at this candidate."""
        return feed_line(
            self.system.session.feed,
            self.candidate,
            at_tank=self.system.at_tank,
            density_kg_m3=self.system.fuel.density_kg_m3,
            viscosity_m2_s=self.system.fuel.viscosity_m2_s,
        )

    @once
    def _pump_filters(self) -> tuple[float, float]:
        """What the filters between the pump and a regulator at the tank lose for each m3/s, and for its square."""
        return filters_terms([part for part in self.system.session.feed.filter if part.place == "pump"])

    def pump_filters_pa(self, flow_m3_s: float) -> float:
        """Loss of the filters between the pump and a regulator at the tank."""
        linear, squared = self._pump_filters
        return flow_m3_s * (linear + squared * flow_m3_s)

    def rise_pa(
        self,
        flow_m3_s: float,
        *,
        rail_pa: float | None = None,
        pumps: PumpSet | None = None,
        feed: FeedCounts = "all",
    ) -> float:
        """Pressure rise across the pumps at a flow: what leaves them less what reaches them.

        At the set rail pressure and with all pumps unless said otherwise.
        """
        system = self.system
        out = system.pressure.rail_Pa if rail_pa is None else rail_pa
        if system.at_tank:
            out += self.pump_filters_pa(flow_m3_s)
        elif feed == "all":
            out += self.feed.loss_pa(flow_m3_s)
        elif feed == "no runs":
            out += self.feed.without_runs_pa(flow_m3_s)
        return out - system.inlet_gauge_pa(flow_m3_s, pumps or system.pumps)

    def capacity_m3_s(
        self,
        *,
        pumps: PumpSet,
        rail_pa: float | None = None,
        feed: FeedCounts = "all",
        relieved: bool = True,
    ) -> float:
        """The flow that pumps send into this system, no more than their relief lets through."""
        return pumps.capacity_m3_s(
            lambda flow: self.rise_pa(flow, rail_pa=rail_pa, pumps=pumps, feed=feed), relieved=relieved
        )

    @once
    def demand_loss(self) -> FeedLoss:
        """What the feed loses at the demand, by cause."""
        return self.feed.loss(self.system.flow_m3_s)

    @once
    def demand_rise_pa(self) -> float:
        """The rise that the demand asks for."""
        system = self.system
        lost = self.pump_filters_pa(system.flow_m3_s) if system.at_tank else self.demand_loss.total_pa
        return system.pressure.rail_Pa + lost - system.demand_inlet_gauge_pa

    @once
    def capacity(self) -> float | None:
        """The flow that all the pumps send; None without a pump or a feed."""
        pumps = self.system.pumps
        return None if pumps is None or not self.system.has_runs else self.capacity_m3_s(pumps=pumps)

    @once
    def margin(self) -> float | None:
        """What the pumps can send over what the goal burns, less one; None without a pump or a feed."""
        return None if self.capacity is None else self.capacity / self.system.flow_m3_s - 1

    @once
    def vapour_margin_pa(self) -> float | None:
        """How far the pump's inlet stays above the fuel's vapour pressure at capacity; None where not known."""
        pumps, capacity = self.system.pumps, self.capacity
        return None if pumps is None or capacity is None else self.system.vapour_margin_pa(capacity, pumps)

    @once
    def vapour_margins(self) -> VapourMargins:
        """The same at the goal, and the lowest of the goal and every further point."""
        margins = [point.vapour_margin_pa for point in self.and_points()]
        known = [margin for margin in margins if margin is not None]
        return VapourMargins(self.vapour_margin_pa, min(known, default=None))

    @once
    def shown_run(self) -> FeedRun:
        """The run that a row speaks of; without a run of feed, one of PTFE hose at the candidate."""
        if self.system.has_runs:
            return self.feed.shown()
        assert self.candidate is not None
        return bare_hose(self.candidate, "ptfe")

    @once
    def velocity_m_s(self) -> float:
        """Velocity in that run at the demand."""
        return self.shown_run.velocity_m_s(self.system.flow_m3_s)

    def full_velocity_m_s(self, run: FeedRun) -> float | None:
        """Velocity in a run at capacity; None where a regulator ahead of it takes its share, or without a capacity."""
        if self.capacity is None or not self.system.at_rail:
            return None
        return run.velocity_m_s(self.capacity)

    @once
    def runs_cost_the_pump(self) -> bool | None:
        """Whether the loss of the feed's runs costs the pumps a share of their flow worth naming; None without a pump.

        No relief is counted. Without that loss they send so much more where they still spare it at that much more:
        one look in place of a working point. With the regulator at the tank the feed's loss is no matter of theirs.
        """
        pumps = self.system.pumps
        if not self.system.solvable or pumps is None:
            return None
        if self.system.at_tank:
            return False
        given = self.capacity
        if given is None or self._relief_opens(pumps, given):
            given = self.capacity_m3_s(pumps=pumps, relieved=False)
        so_much_more = given / (1 - COSTS_THE_PUMP)
        free = pumps.flow_m3_s(self.rise_pa(so_much_more, pumps=pumps, feed="no runs"))
        return free >= so_much_more and free > 0

    def _relief_opens(self, pumps: PumpSet, capacity_m3_s: float) -> bool:
        """Whether it may be the relief valve that holds a capacity down."""
        relief = pumps.relief_pa
        return relief is not None and self.rise_pa(capacity_m3_s) > relief * (1 - BARELY)

    @once
    def pressure_at_capacity_pa(self) -> float:
        """Pressure across one pump at capacity; where nothing flows, where its flow ends."""
        pumps = self.system.pumps
        assert pumps is not None and self.capacity is not None
        return self.pressure_across_pa(pumps, self.capacity)

    def pressure_across_pa(self, pumps: PumpSet, capacity_m3_s: float, rail_pa: float | None = None) -> float:
        """Pressure across one of some pumps at their capacity; where nothing flows, where its flow ends."""
        rise = self.rise_pa(capacity_m3_s, rail_pa=rail_pa, pumps=pumps)
        return rise / pumps.stages if capacity_m3_s > 0 else pumps.at_no_flow_pa(rise)

    @once
    def sag_pa(self) -> float | None:
        """How far the rail sags below a regulator at the tank at the demand; None with any other."""
        return self.demand_loss.total_pa if self.system.at_tank else None

    @once
    def sag_flow_m3_s(self) -> float:
        """The flow at which the rail sags by 5 % of the pressure across the injectors; 0 where it does at none."""
        allowed = MOST_SAG * self.system.pressure.injector_Pa
        return flow_where(self.feed, allowed, self.system.flow_m3_s)

    def max_power_w(self, capacity_m3_s: float) -> float:
        """Crank power that a capacity feeds at the same boost, no more than the sag allows."""
        flow = min(capacity_m3_s, self.sag_flow_m3_s) if self.system.at_tank else capacity_m3_s
        return self.system.demand.crank_power_W * flow / self.system.flow_m3_s

    @once
    def rail_at_goal_pa(self) -> float:
        """The rail pressure that the pumps hold while the engine takes its full demand, never below 0."""
        assert self.capacity is not None
        rail = self.system.pressure.rail_Pa
        could = self.system.could_make_pa
        if self.capacity < self.system.flow_m3_s and could is not None:
            rail = min(rail, rail + could - self.demand_rise_pa)
        return max(0.0, rail - (self.sag_pa or 0.0))


def flow_where(feed: FeedLine, loss_pa: float, about_m3_s: float) -> float:
    """The flow at which a feed loses so much; 0 where it loses more at no flow. `about_m3_s` is where to start."""
    if feed.loss_pa(0.0) > loss_pa:
        return 0.0
    most = about_m3_s
    while feed.loss_pa(most) < loss_pa and most < NO_FLOW_IS_SO_GREAT_M3_S:
        most *= 2
    return root(lambda flow: feed.loss_pa(flow) - loss_pa, 0.0, most)


def _lower(one: float | None, other: float | None) -> float | None:
    """The lower of two figures, either alone where the other is not known."""
    return min((figure for figure in (one, other) if figure is not None), default=None)
