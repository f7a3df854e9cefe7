"""The build as a whole, judged at one size of feed: its pump, inlet, return, surge pot, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fuelwiz.once import once
from fuelwiz.session import Size, Surge
from fuelwiz.sizing.candidates import spelled
from fuelwiz.sizing.choices import wire_choices
from fuelwiz.sizing.electrics import Circuit, fullest_circuit, wiring_figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.injection import injector_figures
from fuelwiz.sizing.lines import FeedRun
from fuelwiz.sizing.part_figures import (
    InjectorFigures,
    InletFigures,
    PumpFigures,
    PumpTarget,
    ReturnFigures,
    ReturnSize,
    SurgeFigures,
    WireChoice,
    WiringFigures,
)
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.size_rows import size_limits
from fuelwiz.sizing.sized_system import SizedSystem
from fuelwiz.sizing.vocabulary import BuildLimit, Limit, band_of, no_faster_than


@dataclass(frozen=True)
class BuildVerdict:
    """A build at its pick."""

    sized: SizedSystem

    @once
    def pump_target(self) -> PumpTarget | None:
        """What a pump has to give at the pick, with or without one."""
        system = self.sized.system
        if not system.has_runs:
            return None
        flow = system.demand.target_flow_m3_s
        return PumpTarget(spelled(self.sized.candidate), flow, self.sized.rise_pa(flow))

    @once
    def pump(self) -> PumpFigures | None:
        """The pump apart from any one size."""
        system = self.sized.system
        pumps, pump = system.pumps, system.session.pump
        if not self.sized.system.solvable or pumps is None or pump is None:
            return None
        stage = None
        if system.idle_pumps is not None and pump.running_at_idle < pump.count:
            stage = self.sized.max_power_w(self.sized.capacity_m3_s(pumps=system.idle_pumps))
        return PumpFigures(
            capacity_without_feed_loss_m3_s=self.sized.capacity_m3_s(pumps=pumps, feed_counts=False),
            dead_head_Pa=self.dead_head_pa,
            lowest_rating_Pa=self.lowest_rating_pa,
            stage_power_W=stage,
        )

    @once
    def dead_head_pa(self) -> float | None:
        """Pressure behind the pumps when nothing flows through the feed; None where nothing would stop it rising."""
        system = self.sized.system
        pumps, pump = system.pumps, system.session.pump
        assert pumps is not None and pump is not None
        end = None if pumps.end_pa is None else pumps.stages * pumps.end_pa
        if end is None or pump.relief is not None:
            if pump.relief is None:
                return None
            end = pump.relief if end is None else min(end, pump.relief)
        return end + system.inlet_gauge_pa(0.0, pumps)

    @once
    def lowest_rating_pa(self) -> float | None:
        """The lowest pressure rating of what the dead head reaches; None where none is given."""
        system = self.sized.system
        feed = system.session.feed
        if system.at_tank:
            rated = [part.pressure_rating for part in feed.filter if part.place == "pump"]
        else:
            rated = [run.pressure_rating for run in feed.run] + [part.pressure_rating for part in feed.filter]
        return min((rating for rating in rated if rating is not None), default=None)

    @once
    def return_line(self) -> ReturnFigures | None:
        """The return at idle."""
        return Return(self.sized).judged()

    @once
    def inlet(self) -> InletFigures | None:
        """The pump's inlet at capacity; None without one."""
        system = self.sized.system
        pumps, capacity = system.pumps, self.sized.capacity
        if (
            not self.sized.system.solvable
            or system.session.inlet is None
            or pumps is None
            or capacity is None
        ):
            return None
        velocity = system.inlet_velocity_m_s(capacity, pumps)
        return InletFigures(
            velocity_m_s=velocity,
            band=None if velocity is None else band_of(velocity, system.session.bands.inlet),
            pressure_abs_Pa=system.pressure.atmosphere_Pa + system.inlet_gauge_pa(capacity, pumps),
            vapour_margin_Pa=system.vapour_margin_pa(capacity, pumps),
        )

    @once
    def circuit(self) -> Circuit | None:
        """The fullest circuit of the pump's wiring."""
        return fullest_circuit(self.sized)

    @once
    def wire_choices(self) -> tuple[WireChoice, ...]:
        """Every gauge of wire in that circuit; empty where it cannot be judged."""
        wiring, circuit = self.sized.system.session.wiring, self.circuit
        if wiring is None or circuit is None:
            return ()
        return wire_choices(wiring, circuit.current_A, circuit.fuse_A)

    @property
    def wiring(self) -> WiringFigures | None:
        """That circuit as the result shows it."""
        return wiring_figures(self.circuit, self.wire_choices)

    @once
    def injectors(self) -> InjectorFigures | None:
        """The injectors at the goal."""
        return injector_figures(self.sized)

    @once
    def surge(self) -> SurgeFigures | None:
        """The surge pot; None without one, its needs unknown where they hang on a pump that is not there."""
        system = self.sized.system
        pot = system.session.surge
        if not system.has_runs or pot is None:
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
        system = self.sized.system
        if pot.return_to == "surge" or system.session.pressure.regulator == "none":
            return system.flow_m3_s
        if system.idle_pumps is None or self.sized.capacity is None:
            return None
        idle = self.sized.capacity_m3_s(pumps=system.idle_pumps, rail_pa=system.pressure.idle_rail_Pa)
        return max(self.sized.capacity, idle)

    def limits(self, judged_return: ReturnFigures | ReturnSize | None) -> tuple[BuildLimit, ...]:
        """What is wrong with the build as a whole, in the order of the verdict's table."""
        system = self.sized.system
        if not system.has_runs:
            return ()
        wrong: dict[BuildLimit, bool] = {
            "kept run": self.kept_run_fails,
            "injector pressure": system.pressure.injector_Pa <= 0,
            "injectors": self.injectors is not None and not self.injectors.within_limit,
            "return": judged_return is not None and not judged_return.holds,
            "lift": self.lift_fails,
            "rating": self.rating_fails,
            "fuse": self.circuit is not None and self.circuit.fails,
        }
        return tuple(word for word, fails in wrong.items() if fails)

    @property
    def kept_run_fails(self) -> bool:
        """Whether a run of the feed that keeps its own bore, beside others that follow, is too fast."""
        system, runs = self.sized.system, self.sized.feed.runs
        if all(run.follows for run in runs) or not any(run.follows for run in runs):
            return False
        return any(_too_fast(self.sized, run, system.session.bands.feed) for run in runs if not run.follows)

    @property
    def lift_fails(self) -> bool:
        """Whether the lift pump gives less than the surge pot needs."""
        pot = self.sized.system.session.surge
        needed = None if self.surge is None else self.surge.lift_needed_m3_s
        if needed is None or pot is None or pot.lift_flow is None:
            return False
        return pot.lift_flow < needed

    @property
    def rating_fails(self) -> bool:
        """Whether the dead head goes above what a part is rated for."""
        if not self.sized.system.solvable or self.dead_head_pa is None or self.lowest_rating_pa is None:
            return False
        return self.dead_head_pa > self.lowest_rating_pa


@dataclass(frozen=True, slots=True)
class Judgement:
    """Margins and limits of a build at given sizes, size and build together."""

    margin: float | None
    vapour_margin_pa: float | None
    limits: tuple[Limit, ...]


@dataclass(frozen=True, slots=True)
class ReturnPick:
    """The size of return that is judged; `size` None stands for runs that all keep a bore of their own."""

    size: Size | None


def judge(system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None) -> Judgement:
    """A build at a pick of feed and return; without a return pick, the build's own."""
    sized = SizedSystem(system, pick)
    verdict = BuildVerdict(sized)
    behind = Return(sized)
    returning = None
    if behind.applies:
        returning = verdict.return_line if return_pick is None else behind.size_figures(return_pick.size)
    return Judgement(sized.margin, sized.vapour_margin_pa, (*size_limits(sized), *verdict.limits(returning)))


def _too_fast(sized: SizedSystem, run: FeedRun, bands: Sequence[float]) -> bool:
    """Whether a run's velocity would refuse it, were it a candidate."""
    if not no_faster_than(band_of(run.velocity_m_s(sized.system.flow_m3_s), bands), "brisk"):
        return True
    full = sized.full_velocity_m_s(run)
    return full is not None and band_of(full, bands) == "too fast"
