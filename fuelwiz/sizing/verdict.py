"""The build as a whole, judged at one size of feed: its pump, inlet, return, surge pot, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fuelwiz.once import once
from fuelwiz.record import record
from fuelwiz.session import Size, Surge
from fuelwiz.sizing.choices import wire_choices
from fuelwiz.sizing.electrics import fullest_circuit, fuse_fails, wiring_figures
from fuelwiz.sizing.fuel_system import FuelSystem
from fuelwiz.sizing.injection import injector_figures, injectors_fail
from fuelwiz.sizing.part_figures import (
    Circuit,
    InjectorFigures,
    InletFigures,
    PumpFigures,
    ReturnFigures,
    SurgeFigures,
    WireChoice,
    WiringFigures,
)
from fuelwiz.sizing.returns import Return
from fuelwiz.sizing.size_rows import least, limits_at_any_point, too_fast, too_fast_at_full_delivery
from fuelwiz.sizing.sized_system import SizedSystem, VapourMargins
from fuelwiz.sizing.stages import stages
from fuelwiz.sizing.vocabulary import BUILD_LIMITS, LIMITS, BuildLimit, Limit, band_of


@dataclass(frozen=True)
class BuildVerdict:
    """A build at its pick."""

    sized: SizedSystem

    @once
    def pump(self) -> PumpFigures | None:
        """The pump apart from any one size."""
        sized, system = self.sized, self.sized.system
        pumps, pump = system.pumps, system.session.pump
        if not sized.system.solvable or pumps is None or pump is None:
            return None
        both: tuple[float | None, float | None] = None, None
        if pump.kind is None:
            both = (
                sized.capacity_m3_s(pumps=pumps.by("turbine")),
                sized.capacity_m3_s(pumps=pumps.by("displacement")),
            )
        return PumpFigures(
            capacity_without_feed_loss_m3_s=sized.capacity_m3_s(pumps=pumps, feed="none"),
            capacity_turbine_m3_s=both[0],
            capacity_displacement_m3_s=both[1],
            dead_head_Pa=self.dead_head_pa,
            lowest_rating_Pa=self.lowest_rating_pa,
            stages=stages(sized),
        )

    @once
    def dead_head_pa(self) -> float | None:
        """Pressure behind the pumps when nothing flows through the feed; None where nothing would stop it rising."""
        pumps = self.sized.system.pumps_at_most
        assert pumps is not None
        rise = pumps.dead_head_rise_pa
        return None if rise is None else rise + self.sized.system.inlet_gauge_pa(0.0, pumps)

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
    def behind(self) -> Return:
        """What is behind the regulator."""
        return Return(self.sized)

    @once
    def return_line(self) -> ReturnFigures | None:
        """The return at idle."""
        return self.behind.judged()

    def return_fails(self, return_pick: ReturnPick | None) -> bool:
        """Whether the regulator cannot hold at idle; without a pick, with the build's own."""
        if not self.behind.applies:
            return False
        if return_pick is None:
            return not self.behind.own_pick_holds()
        return not self.behind.holds(return_pick.size)

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
        return self._wires(metric=False)

    @once
    def metric_wire_choices(self) -> tuple[WireChoice, ...]:
        """The same of metric wire."""
        return self._wires(metric=True)

    def _wires(self, *, metric: bool) -> tuple[WireChoice, ...]:
        wiring, circuit = self.sized.system.session.wiring, self.circuit
        if wiring is None or circuit is None:
            return ()
        return wire_choices(wiring, circuit.current_A, circuit.fuse_A, metric=metric)

    @property
    def wiring(self) -> WiringFigures | None:
        """That circuit as the result shows it."""
        return wiring_figures(self.circuit, self.wire_choices, self.metric_wire_choices)

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
        if not self._lift_brings_all(pot):
            return system.flow_m3_s
        pumps, idle_pumps = system.pumps_at_most, system.idle_pumps_at_most
        if not self.sized.system.solvable or pumps is None or idle_pumps is None:
            return None
        idle = self.sized.capacity_m3_s(pumps=idle_pumps, rail_pa=system.pressure.idle_rail_Pa)
        return max(self.sized.capacity_m3_s(pumps=pumps), idle)

    def _lift_brings_all(self, pot: Surge) -> bool:
        """Whether the return goes past the pot to the tank, so that the lift pump brings all that is delivered."""
        return pot.return_to == "tank" and self.sized.system.session.pressure.regulator != "none"

    def limits(self, return_pick: ReturnPick | None) -> tuple[BuildLimit, ...]:
        """What is wrong with the build as a whole, in the order of the verdict's table.

        The return is judged at a pick; without one, at the build's own.
        """
        found = set(self.each_limit(return_pick))
        return tuple(limit for limit in BUILD_LIMITS if limit in found)

    def each_limit(self, return_pick: ReturnPick | None) -> Iterator[BuildLimit]:
        """The same one by one, what is quick to find out first."""
        if not self.sized.system.has_runs:
            return
        for point in self.sized.and_points():
            yield from point_limits(point)
        if self.lift_fails:
            yield "lift"
        if fuse_fails(self.sized):
            yield "fuse"
        if self.return_fails(return_pick):
            yield "return"
        if self.rating_fails:
            yield "rating"

    @property
    def lift_fails(self) -> bool:
        """Whether the lift pump gives less than the surge pot needs."""
        pot = self.sized.system.session.surge
        margin = None if self.surge is None else self.surge.lift_margin
        if margin is None or pot is None:
            return False
        return margin < (0.0 if self._lift_brings_all(pot) else self.sized.system.session.goal.reserve)

    @property
    def rating_fails(self) -> bool:
        """Whether the dead head goes above what a part is rated for, or would never end."""
        if not self.sized.system.solvable or self.lowest_rating_pa is None:
            return False
        return self.dead_head_pa is None or self.dead_head_pa > self.lowest_rating_pa


def point_limits(sized: SizedSystem) -> Iterator[BuildLimit]:
    """What is wrong with the build at one point of full power."""
    if any(too_fast(sized, run) or too_fast_at_full_delivery(sized, run) for run in sized.feed.kept()):
        yield "kept run"
    if sized.system.pressure.injector_Pa <= 0:
        yield "injector pressure"
    if injectors_fail(sized):
        yield "injectors"


@record
class Judgment:
    """Margins and limits of a build at given sizes, size and build together; the margin is the least of all points.

    `duty` is that of the injectors at the goal.
    """

    margin: float | None
    vapour: VapourMargins
    limits: tuple[Limit, ...]
    duty: float | None


@record
class ReturnPick:
    """The size of return that is judged; `size` None stands for runs that all keep a bore of their own."""

    size: Size | None


def judge(system: FuelSystem, pick: Size | None, return_pick: ReturnPick | None) -> Judgment:
    """A build at a pick of feed and return; without a return pick, the build's own."""
    return judge_sized(SizedSystem(system, pick), return_pick)


def judge_sized(sized: SizedSystem, return_pick: ReturnPick | None) -> Judgment:
    """The same of a build that is at its pick of feed."""
    return judgment_of(BuildVerdict(sized), return_pick)


def judgment_of(verdict: BuildVerdict, return_pick: ReturnPick | None) -> Judgment:
    """The same of a build of which something is known already."""
    sized = verdict.sized
    found = least(sized)
    return Judgment(
        None if found is None else found.margin,
        sized.vapour_margins,
        (*limits_at_any_point(sized), *verdict.limits(return_pick)),
        None if verdict.injectors is None else verdict.injectors.duty,
    )


def limits_on_a_bad_day(judgment: Judgment) -> tuple[Limit, ...]:
    """The limits of a build whose reserve counts as 0; vapour is one where the fuel boils, whatever the pump's place."""
    return with_vapour(judgment.limits, judgment.vapour.lowest_pa)


def with_vapour(limits: tuple[Limit, ...], lowest_pa: float | None) -> tuple[Limit, ...]:
    """The same limits, vapour among them only where the fuel boils at the goal or a point."""
    boils = lowest_pa is not None and lowest_pa < 0
    if boils == ("vapour" in limits):
        return limits
    found = {*limits, "vapour"} if boils else set(limits) - {"vapour"}
    return tuple(limit for limit in LIMITS if limit in found)
