"""The build as a whole, judged at one size of feed: its pump, inlet, return, surge pot, and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from fuelwiz.session import Surge
from fuelwiz.sizing.bands import band_of, no_worse_than
from fuelwiz.sizing.candidates import spelled
from fuelwiz.sizing.electrics import heat_figures, wiring_figures
from fuelwiz.sizing.figures import (
    HeatFigures,
    InjectorFigures,
    InletFigures,
    PumpFigures,
    PumpTarget,
    ReturnFigures,
    ReturnSize,
    SurgeFigures,
    WiringFigures,
)
from fuelwiz.sizing.injection import injector_figures
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.rows import run_velocity_m_s
from fuelwiz.sizing.system import System


@dataclass(frozen=True)
class Whole:
    """A build at its pick."""

    system: System

    @cached_property
    def solved(self) -> bool:
        """Whether there is a pump and a feed, so that a working point can be found."""
        return self.system.build.pumps is not None and bool(self.system.build.session.feed.run)

    @cached_property
    def pump_target(self) -> PumpTarget | None:
        """What a pump has to give at the pick, with or without one."""
        build = self.system.build
        if not build.session.feed.run:
            return None
        flow = build.demand.target_flow_m3_s
        return PumpTarget(spelled(self.system.candidate), flow, self.system.rise_pa(flow))

    @cached_property
    def pump(self) -> PumpFigures | None:
        """The pump apart from any one size."""
        build = self.system.build
        pumps, said = build.pumps, build.session.pump
        if not self.solved or pumps is None or said is None:
            return None
        stage = None
        if build.idle_pumps is not None and said.running_at_idle < said.count:
            stage = self.system.max_power_w(self.system.capacity_m3_s(pumps=build.idle_pumps))
        return PumpFigures(
            capacity_without_feed_loss_m3_s=self.system.capacity_m3_s(pumps=pumps, feed_counts=False),
            dead_head_Pa=self.dead_head_pa,
            lowest_rating_Pa=self.lowest_rating_pa,
            stage_power_W=stage,
        )

    @cached_property
    def dead_head_pa(self) -> float | None:
        """Pressure behind the pumps when nothing flows through the feed; None where nothing would stop it rising."""
        build = self.system.build
        pumps, said = build.pumps, build.session.pump
        assert pumps is not None and said is not None
        end = None if pumps.end_pa is None else pumps.stages * pumps.end_pa
        if end is None or said.relief is not None:
            if said.relief is None:
                return None
            end = said.relief if end is None else min(end, said.relief)
        return end + build.inlet_gauge_pa(0.0, pumps)

    @cached_property
    def lowest_rating_pa(self) -> float | None:
        """The lowest pressure rating of what the dead head reaches; None where none is given."""
        build = self.system.build
        feed = build.session.feed
        if build.at_tank:
            rated = [part.pressure_rating for part in feed.filter if part.place == "pump"]
        else:
            rated = [run.pressure_rating for run in feed.run] + [part.pressure_rating for part in feed.filter]
        return min((rating for rating in rated if rating is not None), default=None)

    @cached_property
    def return_line(self) -> ReturnFigures | None:
        """The return at idle."""
        return Return(self.system).judged()

    @cached_property
    def inlet(self) -> InletFigures | None:
        """The pump's inlet at capacity; None without one."""
        build = self.system.build
        pumps, capacity = build.pumps, self.system.capacity
        if not self.solved or build.session.inlet is None or pumps is None or capacity is None:
            return None
        velocity = build.inlet_velocity_m_s(capacity, pumps)
        return InletFigures(
            velocity_m_s=velocity,
            band=None if velocity is None else band_of(velocity, build.session.bands.inlet),
            pressure_abs_Pa=build.pressure.atmosphere_Pa + build.inlet_gauge_pa(capacity, pumps),
            vapour_margin_Pa=build.vapour_margin_pa(capacity, pumps),
        )

    @cached_property
    def wiring(self) -> WiringFigures | None:
        """One circuit of the pump's wiring."""
        return wiring_figures(self.system)

    @cached_property
    def injectors(self) -> InjectorFigures | None:
        """The injectors at the goal."""
        return injector_figures(self.system)

    @cached_property
    def heat(self) -> HeatFigures | None:
        """What the pumps heat the tank by."""
        return heat_figures(self.system)

    @cached_property
    def surge(self) -> SurgeFigures | None:
        """The surge pot; None without one, its needs unknown where they hang on a pump that is not there."""
        build = self.system.build
        pot = build.session.surge
        if not build.session.feed.run or pot is None:
            return None
        needed = self.lift_needed_m3_s(pot)
        if not needed:
            return SurgeFigures(needed, None, None)
        return SurgeFigures(
            lift_needed_m3_s=needed,
            lift_margin=None if pot.lift_flow is None else pot.lift_flow / needed - 1,
            holds_s=None if pot.volume is None else pot.volume / needed,
        )

    def lift_needed_m3_s(self, pot: Surge) -> float | None:
        """What leaves the pot: the demand, or all that is delivered where the return goes past it to the tank."""
        build = self.system.build
        if pot.return_to == "surge" or build.session.pressure.regulator == "none":
            return build.flow_m3_s
        if build.idle_pumps is None or self.system.capacity is None:
            return None
        idle = self.system.capacity_m3_s(pumps=build.idle_pumps, rail_pa=build.pressure.idle_rail_Pa)
        return max(self.system.capacity, idle)

    def limits(self, judged_return: ReturnFigures | ReturnSize | None) -> tuple[str, ...]:
        """What is wrong with the build as a whole, in the order of the verdict's table."""
        build = self.system.build
        if not build.session.feed.run:
            return ()
        wrong = {
            "kept run": self.kept_run_fails,
            "injector pressure": build.pressure.injector_Pa <= 0,
            "injectors": self.injectors is not None and not self.injectors.within_limit,
            "return": judged_return is not None and not judged_return.holds,
            "lift": self.lift_fails,
            "rating": self.rating_fails,
            "fuse": self.fuse_fails,
        }
        return tuple(word for word, fails in wrong.items() if fails)

    @property
    def kept_run_fails(self) -> bool:
        """Whether a run of the feed that keeps its own bore, beside others that follow, is too fast."""
        build, runs = self.system.build, self.system.feed.runs
        if all(run.follows for run in runs) or not any(run.follows for run in runs):
            return False
        bands, capacity = build.session.bands.feed, self.system.capacity
        for run in runs:
            if run.follows:
                continue
            if not no_worse_than(band_of(run_velocity_m_s(run, build.flow_m3_s), bands), "strained"):
                return True
            full = run_velocity_m_s(run, capacity) if build.at_rail and capacity is not None else 0.0
            if band_of(full, bands) == "unfit":
                return True
        return False

    @property
    def lift_fails(self) -> bool:
        """Whether the lift pump gives less than the surge pot needs."""
        pot = self.system.build.session.surge
        needed = None if self.surge is None else self.surge.lift_needed_m3_s
        if needed is None or pot is None or pot.lift_flow is None:
            return False
        return pot.lift_flow < needed

    @property
    def rating_fails(self) -> bool:
        """Whether the dead head goes above what a part is rated for."""
        if not self.solved or self.dead_head_pa is None or self.lowest_rating_pa is None:
            return False
        return self.dead_head_pa > self.lowest_rating_pa

    @property
    def fuse_fails(self) -> bool:
        """Whether no fuse is large enough, or the one that is would not guard the wire."""
        wiring = self.wiring
        if wiring is None or wiring.peak_current_A is None:
            return False
        if wiring.fuse_A is None:
            return True
        return wiring.ampacity_A is not None and wiring.fuse_A > wiring.ampacity_A
