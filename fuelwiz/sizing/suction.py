"""What lies ahead of the pumps: the head of fuel, the strainer and the suction runs, each with the flow it carries."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fuelwiz.once import once
from fuelwiz.physics.fittings import filter_terms
from fuelwiz.physics.line import GRAVITY, Run, loss_at_flows, velocity_m_s
from fuelwiz.record import record
from fuelwiz.session import Session, Strainer
from fuelwiz.sizing.lines import plain_run


@record
class SuctionRun:
    """One run ahead of the pumps; `shared` where it carries the flow of all of them."""

    line: Run
    shared: bool


@dataclass(frozen=True)
class Suction:
    """Ahead of the pumps; pressures gauge. `head_pa` is the pressure on the fuel and the weight of what stands above.

    The pressure on the fuel is the tank's, or that of a surge pot that gives its own and holds the pump.
    """

    head_pa: float
    strainer: Strainer | None
    runs: tuple[SuctionRun, ...]
    density_kg_m3: float
    viscosity_m2_s: float

    @classmethod
    def of(cls, session: Session, *, density_kg_m3: float, viscosity_m2_s: float) -> Suction:
        """The suction side of a session."""
        pressure, inlet = pressure_on_the_fuel_pa(session), session.inlet
        if inlet is None:
            return cls(pressure, None, (), density_kg_m3, viscosity_m2_s)
        runs = tuple(
            SuctionRun(plain_run(run, None, session.feed.end_ratio), run.carries == "all")
            for run in inlet.run
        )
        head = pressure + density_kg_m3 * GRAVITY * inlet.fuel_head
        return cls(head, inlet.strainer, runs, density_kg_m3, viscosity_m2_s)

    @once
    def _strainer_terms(self) -> tuple[float, float]:
        """What the strainer loses for each m3/s, and for its square."""
        strainer = self.strainer
        if strainer is None:
            return 0.0, 0.0
        return filter_terms(
            rated_flow_m3_s=strainer.rated_flow,
            rated_loss_pa=strainer.rated_loss,
            clogging=strainer.clogging,
        )

    @once
    def _runs_at_flows(self) -> tuple[tuple[Callable[[float], float], bool], ...]:
        """What each run loses, made ready for many flows, and whether it carries all of them."""
        density, viscosity = self.density_kg_m3, self.viscosity_m2_s
        return tuple(
            (loss_at_flows(run.line, density_kg_m3=density, viscosity_m2_s=viscosity), run.shared)
            for run in self.runs
        )

    @once
    def _strainer_shared(self) -> bool:
        return self.strainer is not None and self.strainer.carries == "all"

    def gauge_pa(self, flow_m3_s: float, ways: int) -> float:
        """Pressure at the pumps' inlet at a flow of all of them, which `ways` pick-ups share."""
        each = flow_m3_s / ways
        linear, squared = self._strainer_terms
        strained = flow_m3_s if self._strainer_shared else each
        pressure = self.head_pa - strained * (linear + squared * strained)
        for run_pa, shared in self._runs_at_flows:
            pressure -= run_pa(flow_m3_s if shared else each)
        return pressure

    def velocity_m_s(self, flow_m3_s: float, ways: int) -> float | None:
        """Velocity in the fastest run; None without one."""
        return max(
            (
                velocity_m_s(
                    flow_m3_s=flow_m3_s if run.shared else flow_m3_s / ways,
                    bore_m=run.line.bore_m,
                    side_by_side=run.line.side_by_side,
                )
                for run in self.runs
            ),
            default=None,
        )


def pressure_on_the_fuel_pa(session: Session) -> float:
    """Gauge pressure on the fuel that the pumps draw from."""
    pot, pump = session.surge, session.pump
    if pump is not None and pump.place == "surge" and pot is not None and pot.pressure is not None:
        return pot.pressure
    return session.tank.pressure


def pressure_on_the_return_pa(session: Session) -> float:
    """Gauge pressure on the fuel that the return goes home to."""
    goes_to_pot = session.surge is not None and session.surge.return_to == "surge"
    return pressure_on_the_fuel_pa(session) if goes_to_pot else session.tank.pressure
