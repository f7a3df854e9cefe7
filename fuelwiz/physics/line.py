"""A run of line: velocity, Reynolds number, friction and what the run loses at a flow."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cache

from fuelwiz.physics.relations import from_fluids
from fuelwiz.record import record

GRAVITY = 9.80665
LAMINAR_BELOW = 2040.0
TURBULENT_FROM = 4000.0
WALL_INCH_M, WALL_METRIC_M = 0.035 * 0.0254, 1e-3
"""Wall of a tube that is named in inches and in millimeters, where none is given: common practice, no source."""
ROUGHNESS_M = {"nominal": 1.5e-6, "ptfe": 1.5e-6, "tube": 1.5e-6, "rubber": 10e-6}


@record
class Run:
    """One run of line with a bore in m; `loss_coefficient` is the sum of its fittings on that bore.

    >>> Run(bore_m=0.01, length_m=4.0, roughness_m=1.5e-6, loss_coefficient=0.5).side_by_side
    1
    """

    bore_m: float
    length_m: float
    roughness_m: float
    loss_coefficient: float
    rise_m: float = 0.0
    side_by_side: int = 1


@record
class RunLoss:
    """What a run loses, in Pa, by cause.

    >>> RunLoss(friction_pa=100.0, fittings_pa=20.0, rise_pa=-5.0).total_pa
    115.0
    """

    friction_pa: float
    fittings_pa: float
    rise_pa: float

    @property
    def total_pa(self) -> float:
        """All three together."""
        return self.friction_pa + self.fittings_pa + self.rise_pa


def tube_bore_m(*, outside_m: float, wall_m: float) -> float:
    """Bore in m of a tube that is named by its outside diameter, as the trade names pipe; both in m.

    Geometry; zero or less where the walls leave nothing.

    >>> round(tube_bore_m(outside_m=0.008, wall_m=0.001), 6)
    0.006
    """
    return outside_m - 2 * wall_m


def velocity_m_s(*, flow_m3_s: float, bore_m: float, side_by_side: int = 1) -> float:
    """Mean velocity in m/s of a flow in m3/s in a bore in m, the flow shared by equal lines side by side.

    Continuity.

    >>> round(velocity_m_s(flow_m3_s=1e-4, bore_m=0.01), 4)
    1.2732
    """
    return flow_m3_s / (side_by_side * math.pi / 4 * bore_m * bore_m)


def reynolds(*, velocity_m_s: float, bore_m: float, viscosity_m2_s: float) -> float:
    """Reynolds number of a velocity in m/s in a bore in m, by the kinematic viscosity in m2/s.

    >>> round(reynolds(velocity_m_s=1.0, bore_m=0.01, viscosity_m2_s=1e-6))
    10000
    """
    return velocity_m_s * bore_m / viscosity_m2_s


def friction_factor(*, reynolds: float, relative_roughness: float) -> float:
    """Darcy friction factor: 64/Re to Re 2040, Colebrook from 4000, a straight blend between.

    Colebrook by Clamond's method (Ind. Eng. Chem. Res. 2009, 48, 3665), as fluids has it. Raises
    ZeroDivisionError at Re 0: nothing flows there, and nothing is lost. Valid for a relative roughness to 0.05.

    >>> friction_factor(reynolds=1000, relative_roughness=0.0)
    0.064
    >>> round(friction_factor(reynolds=1e5, relative_roughness=0.0), 4)
    0.018
    """
    if reynolds <= LAMINAR_BELOW:
        return 64 / reynolds
    turbulent = float(_clamond()(reynolds, relative_roughness))
    if reynolds >= TURBULENT_FROM:
        return turbulent
    laminar = 64 / reynolds
    share = (reynolds - LAMINAR_BELOW) / (TURBULENT_FROM - LAMINAR_BELOW)
    return laminar + share * (turbulent - laminar)


@cache
def _clamond() -> Callable[[float, float], float]:
    """Colebrook's factor from a Reynolds number and a relative roughness."""
    solve: Callable[[float, float], float] = from_fluids("friction").Clamond
    return solve


def run_loss(run: Run, *, flow_m3_s: float, density_kg_m3: float, viscosity_m2_s: float) -> RunLoss:
    """Darcy-Weisbach loss in Pa of a run with its fittings, and the weight of the liquid that it lifts.

    Flow in m3/s, density in kg/m3, kinematic viscosity in m2/s. Valid for a steady flow of a liquid in a round bore
    that does not give (TP-410).

    >>> run = Run(bore_m=0.01, length_m=4.0, roughness_m=1.5e-6, loss_coefficient=2.0)
    >>> loss = run_loss(run, flow_m3_s=1e-4, density_kg_m3=750.0, viscosity_m2_s=6e-7)
    >>> round(loss.fittings_pa)
    1216
    """
    lift = density_kg_m3 * GRAVITY * run.rise_m
    if flow_m3_s <= 0:
        return RunLoss(0.0, 0.0, lift)
    speed = velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.bore_m, side_by_side=run.side_by_side)
    number = reynolds(velocity_m_s=speed, bore_m=run.bore_m, viscosity_m2_s=viscosity_m2_s)
    head = density_kg_m3 * speed * speed / 2
    factor = friction_factor(reynolds=number, relative_roughness=run.roughness_m / run.bore_m)
    return RunLoss(factor * run.length_m / run.bore_m * head, run.loss_coefficient * head, lift)


def loss_at_flows(run: Run, *, density_kg_m3: float, viscosity_m2_s: float) -> Callable[[float], float]:
    """All that a run loses in Pa as a function of the flow in m3/s: `run_loss` made ready for many flows.

    >>> run = Run(bore_m=0.01, length_m=4.0, roughness_m=1.5e-6, loss_coefficient=2.0)
    >>> ready = loss_at_flows(run, density_kg_m3=750.0, viscosity_m2_s=6e-7)
    >>> whole = run_loss(run, flow_m3_s=1e-4, density_kg_m3=750.0, viscosity_m2_s=6e-7)
    >>> abs(ready(1e-4) / whole.total_pa - 1) < 1e-12
    True
    """
    lift = density_kg_m3 * GRAVITY * run.rise_m
    speed = velocity_m_s(flow_m3_s=1.0, bore_m=run.bore_m, side_by_side=run.side_by_side)
    number = reynolds(velocity_m_s=speed, bore_m=run.bore_m, viscosity_m2_s=viscosity_m2_s)
    head = density_kg_m3 * speed * speed / 2
    rough = run.roughness_m / run.bore_m
    slender, loss_coefficient = run.length_m / run.bore_m, run.loss_coefficient

    def loss_pa(flow_m3_s: float) -> float:
        if flow_m3_s <= 0:
            return lift
        factor = friction_factor(reynolds=number * flow_m3_s, relative_roughness=rough)
        return (factor * slender + loss_coefficient) * head * flow_m3_s * flow_m3_s + lift

    return loss_pa
