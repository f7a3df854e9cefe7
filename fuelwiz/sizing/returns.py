"""The return line: what every candidate does at idle, and the smallest that holds."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from fuelwiz.physics.fittings import part_loss_pa
from fuelwiz.physics.line import run_loss, velocity_m_s
from fuelwiz.physics.return_line import settle
from fuelwiz.session import Size
from fuelwiz.sizing.candidates import candidates, spelled
from fuelwiz.sizing.figures import ReturnFigures, ReturnSize
from fuelwiz.sizing.lines import parts_loss_pa, plain_run
from fuelwiz.sizing.system import System


@dataclass(frozen=True)
class Return:
    """The return line behind a system's regulator at the rail."""

    system: System

    @property
    def applies(self) -> bool:
        """Whether there is a return to judge: a regulator at the rail, a pump, a feed and a return line."""
        build = self.system.build
        session = build.session
        return (
            build.at_rail
            and build.pumps is not None
            and bool(session.feed.run)
            and session.return_line is not None
        )

    @cached_property
    def rows(self) -> tuple[Size | None, ...]:
        """The candidates, smallest bore first."""
        line = self.system.build.session.return_line
        assert line is not None
        return candidates(line.sizes, line.chosen, line.run)

    def idle_flow_m3_s(self, rail_pa: float) -> float:
        """Flow in the return at idle at a rail pressure: what the idle pumps send less what the engine burns."""
        build = self.system.build
        assert build.idle_pumps is not None
        delivery = self.system.capacity_m3_s(pumps=build.idle_pumps, rail_pa=rail_pa)
        return max(0.0, delivery - build.idle_fuel_m3_s)

    @cached_property
    def set_flow_m3_s(self) -> float:
        """Flow in the return at the set idle pressure, the same for every candidate."""
        return self.idle_flow_m3_s(self.system.build.pressure.idle_rail_Pa)

    def size_figures(self, candidate: Size | None) -> ReturnSize:
        """What one candidate does at idle."""
        build = self.system.build
        line = build.session.return_line
        assert line is not None
        runs = [plain_run(run, candidate, build.session.feed.end_ratio) for run in line.run]

        def back_pressure(flow: float) -> float:
            loss = build.session.tank.pressure + parts_loss_pa(line.part, flow)
            loss += part_loss_pa(
                flow_m3_s=flow,
                rated_flow_m3_s=line.regulator.rated_flow,
                rated_loss_pa=line.regulator.rated_loss,
            )
            for run in runs:
                loss += run_loss(
                    run,
                    flow_m3_s=flow,
                    density_kg_m3=build.fuel.density_kg_m3,
                    viscosity_m2_s=build.fuel.viscosity_m2_s,
                ).total_pa
            return loss

        idle = build.pressure.idle_rail_Pa
        state = settle(
            set_pressure_pa=idle,
            flow_at=lambda rail: self.set_flow_m3_s if rail == idle else self.idle_flow_m3_s(rail),
            back_pressure_at=back_pressure,
        )
        velocity = max(
            (
                velocity_m_s(flow_m3_s=state.flow_m3_s, bore_m=run.bore_m, side_by_side=run.side_by_side)
                for run in runs
            ),
            default=None,
        )
        return ReturnSize(
            spelled(candidate), state.flow_m3_s, velocity, state.back_pressure_pa, state.holds, state.creep_pa
        )

    def judged(self) -> ReturnFigures | None:
        """Every candidate, and the one that is judged: the chosen one, else the smallest that holds, else the largest.

        None where there is no return to judge.
        """
        if not self.applies:
            return None
        sizes = tuple(self.size_figures(row) for row in self.rows)
        holding = next((size for size in sizes if size.holds), None)
        picked = next((size for size in sizes if size.size == self.chosen), holding or sizes[-1])
        return ReturnFigures(
            size=picked.size,
            flow_m3_s=picked.flow_m3_s,
            velocity_m_s=picked.velocity_m_s,
            back_pressure_Pa=picked.back_pressure_Pa,
            holds=picked.holds,
            creep_Pa=picked.creep_Pa,
            smallest_that_holds=None if holding is None else holding.size,
            sizes=sizes,
        )

    @property
    def chosen(self) -> str | None:
        """The row that the builder settled on, None where nothing is chosen or no run follows it."""
        line = self.system.build.session.return_line
        if line is None or line.chosen is None or self.rows == (None,):
            return None
        return line.chosen.text

    def candidate(self, size: str) -> Size | None:
        """The candidate that a row is spelled after."""
        return next(row for row in self.rows if spelled(row) == size)
