"""The return line: what every candidate does at idle, and the smallest that holds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fuelwiz.once import once
from fuelwiz.physics.circuit import PumpSet
from fuelwiz.physics.fittings import part_loss_pa
from fuelwiz.physics.line import Run, loss_at_flows, velocity_m_s
from fuelwiz.physics.return_line import AT_EASE_SHARE, ReturnState, settle
from fuelwiz.physics.roots import root
from fuelwiz.session import ReturnLine, Size
from fuelwiz.sizing.candidates import candidates, spelled
from fuelwiz.sizing.lines import parts_term, plain_run
from fuelwiz.sizing.part_figures import ReturnFigures, ReturnSize, values_of
from fuelwiz.sizing.sized_system import NO_FLOW_IS_SO_GREAT_M3_S, SizedSystem
from fuelwiz.sizing.suction import pressure_on_the_return_pa

SOME_FLOW_M3_S = 1e-4


@dataclass(frozen=True)
class LetsThrough:
    """How much a return lets through at a pressure ahead of the regulator, each candidate solved once."""

    back_pressure_at: Callable[[Size | None], Callable[[float], float]]

    @once
    def _known(self) -> dict[tuple[Size | None, float], float]:
        return {}

    def most_m3_s(self, candidate: Size | None, pressure_pa: float) -> float:
        """The most that a candidate lets through at that pressure; below 0 where it takes more at no flow."""
        key = candidate, pressure_pa
        if key not in self._known:
            self._known[key] = self._solved(candidate, pressure_pa)
        return self._known[key]

    def _solved(self, candidate: Size | None, pressure_pa: float) -> float:
        needed_pa = self.back_pressure_at(candidate)
        if needed_pa(0.0) > pressure_pa:
            return -1.0
        end = SOME_FLOW_M3_S
        while needed_pa(end) <= pressure_pa and end < NO_FLOW_IS_SO_GREAT_M3_S:
            end *= 2
        return root(lambda flow: needed_pa(flow) - pressure_pa, 0.0, end)


@dataclass(frozen=True)
class Return:
    """The return line behind a system's regulator."""

    sized: SizedSystem

    @property
    def applies(self) -> bool:
        """Whether there is a return to judge: a regulator, a pump, a feed and a return line."""
        session = self.sized.system.session
        return (
            session.pressure.regulator != "none"
            and self.sized.system.solvable
            and session.return_line is not None
        )

    @property
    def line(self) -> ReturnLine:
        """What the session says of it."""
        line = self.sized.system.session.return_line
        assert line is not None
        return line

    @once
    def rows(self) -> tuple[Size | None, ...]:
        """The candidates, smallest bore first."""
        return candidates(self.line.sizes, self.line.chosen, self.line.run)

    def idle_flow_m3_s(self, pumps: PumpSet, rail_pa: float) -> float:
        """Flow in the return at idle at a rail pressure: what some pumps send less what the engine burns."""
        delivery = self.sized.capacity_m3_s(pumps=pumps, rail_pa=rail_pa)
        return max(0.0, delivery - self.sized.system.idle_fuel_m3_s)

    @once
    def pumps(self) -> PumpSet:
        """The pumps that run at idle."""
        pumps = self.sized.system.idle_pumps_at_most
        assert pumps is not None
        return pumps

    @once
    def all_on(self) -> PumpSet | None:
        """All the pumps, where fewer run at idle."""
        pumps = self.sized.system.pumps_at_most
        return pumps if pumps is not None and pumps.running > self.pumps.running else None

    @once
    def set_flow_m3_s(self) -> float:
        """Flow in the return at the set idle pressure, the same for every candidate."""
        return self.idle_flow_m3_s(self.pumps, self.sized.system.pressure.idle_rail_Pa)

    @once
    def set_flow_all_on_m3_s(self) -> float:
        """The same with all pumps on."""
        assert self.all_on is not None
        return self.idle_flow_m3_s(self.all_on, self.sized.system.pressure.idle_rail_Pa)

    def regulator_loss_pa(self, flow_m3_s: float) -> float:
        """What the regulator loses wide open."""
        regulator = self.line.regulator
        return part_loss_pa(
            flow_m3_s=flow_m3_s, rated_flow_m3_s=regulator.rated_flow, rated_loss_pa=regulator.rated_loss
        )

    def _runs(self, candidate: Size | None) -> list[Run]:
        end_ratio = self.sized.system.session.feed.end_ratio
        return [plain_run(run, candidate, end_ratio) for run in self.line.run]

    def _back_pressure_at(self, runs: list[Run]) -> Callable[[float], float]:
        """What a return of such runs needs ahead of the regulator, as a function of the flow."""
        system = self.sized.system
        head = pressure_on_the_return_pa(system.session)
        density, viscosity = system.fuel.density_kg_m3, system.fuel.viscosity_m2_s
        lost = [loss_at_flows(run, density_kg_m3=density, viscosity_m2_s=viscosity) for run in runs]
        parts = parts_term(self.line.part)

        def back_pressure(flow: float) -> float:
            regulator_and_parts = self.regulator_loss_pa(flow) + parts * flow * flow
            return head + regulator_and_parts + sum(run_pa(flow) for run_pa in lost)

        return back_pressure

    def holds(self, candidate: Size | None) -> bool:
        """Whether the regulator can hold the idle pressure with that candidate, where no more is asked."""
        return self._passes(candidate, self.sized.system.pressure.idle_rail_Pa)

    def at_ease(self, candidate: Size | None) -> bool:
        """Whether it holds with that candidate and much to spare."""
        return self._passes(candidate, AT_EASE_SHARE * self.sized.system.pressure.idle_rail_Pa)

    @once
    def lets_through(self) -> LetsThrough:
        """What each candidate lets through, whatever the pumps."""
        return LetsThrough(lambda candidate: self._back_pressure_at(self._runs(candidate)))

    def _passes(self, candidate: Size | None, pressure_pa: float) -> bool:
        """Whether what comes at the set idle pressure needs no more than a pressure ahead of the regulator."""
        most, system = self.lets_through.most_m3_s(candidate, pressure_pa), self.sized.system
        idle = system.pressure.idle_rail_Pa
        return most >= 0 and self.pumps.sends_no_more_than(
            most + system.idle_fuel_m3_s,
            lambda flow: self.sized.rise_pa(flow, rail_pa=idle, pumps=self.pumps),
        )

    def own_pick_holds(self) -> bool:
        """The same with the size that would be judged: the chosen one, else any that holds."""
        if self.chosen is not None:
            return self.holds(self.candidate(self.chosen))
        return any(self.holds(row) for row in reversed(self.rows))

    def _settled(self, runs: list[Run], pumps: PumpSet, set_flow_m3_s: float) -> ReturnState:
        """Where some pumps, the feed and a return of such runs agree."""
        idle = self.sized.system.pressure.idle_rail_Pa
        return settle(
            set_pressure_pa=idle,
            flow_at=lambda rail: set_flow_m3_s if rail == idle else self.idle_flow_m3_s(pumps, rail),
            back_pressure_at=self._back_pressure_at(runs),
        )

    def size_figures(self, candidate: Size | None) -> ReturnSize:
        """What one candidate does at idle."""
        runs = self._runs(candidate)
        state = self._settled(runs, self.pumps, self.set_flow_m3_s)
        all_on = None
        if self.all_on is not None:
            all_on = self._settled(runs, self.all_on, self.set_flow_all_on_m3_s).creep_pa
        velocities = (
            velocity_m_s(flow_m3_s=state.flow_m3_s, bore_m=run.bore_m, side_by_side=run.side_by_side)
            for run in runs
        )
        easy = AT_EASE_SHARE * self.sized.system.pressure.idle_rail_Pa
        return ReturnSize(
            size=spelled(candidate),
            flow_m3_s=state.flow_m3_s,
            velocity_m_s=max(velocities, default=None),
            back_pressure_Pa=state.back_pressure_pa,
            regulator_loss_Pa=self.regulator_loss_pa(state.flow_m3_s),
            holds=state.holds,
            at_ease=state.holds and state.back_pressure_pa <= easy,
            creep_Pa=state.creep_pa,
            creep_all_on_Pa=all_on,
        )

    def judged(self) -> ReturnFigures | None:
        """Every candidate, and the one that is judged; None where there is no return to judge.

        That is the chosen one, else the smallest at ease, else the smallest that holds, else the largest.
        """
        if not self.applies:
            return None
        sizes = tuple(self.size_figures(row) for row in self.rows)
        holding = next((size for size in sizes if size.holds), None)
        easy = next((size for size in sizes if size.at_ease), None)
        picked = next((size for size in sizes if size.size == self.chosen), easy or holding or sizes[-1])
        return ReturnFigures(
            **values_of(picked),
            smallest_that_holds=None if holding is None else holding.size,
            smallest_at_ease=None if easy is None else easy.size,
            sizes=sizes,
        )

    @property
    def chosen(self) -> str | None:
        """The row that the builder chose, None where nothing is chosen or no run follows it."""
        chosen = self.line.chosen
        return None if chosen is None or self.rows == (None,) else chosen.text

    def candidate(self, size: str) -> Size | None:
        """The candidate that a row is spelled after."""
        return next(row for row in self.rows if spelled(row) == size)
