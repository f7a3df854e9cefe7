"""A run of line: velocity, Reynolds number, friction and what the run loses at a flow."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from fuelwiz.physics.relations import from_fluids

GRAVITY = 9.80665
LAMINAR_BELOW = 2040.0
TURBULENT_FROM = 4000.0
ROUGHNESS_M = {"nominal": 1.5e-6, "ptfe": 1.5e-6, "tube": 1.5e-6, "rubber": 10e-6}


@dataclass(frozen=True, slots=True)
class Run:
    """One run of line with a bore; `loss_coefficient` is the sum of its fittings on that bore."""

    bore_m: float
    length_m: float
    roughness_m: float
    loss_coefficient: float
    rise_m: float = 0.0
    side_by_side: int = 1


@dataclass(frozen=True, slots=True)
class RunLoss:
    """What a run loses, in pascals, by cause."""

    friction_pa: float
    fittings_pa: float
    rise_pa: float

    @property
    def total_pa(self) -> float:
        """All three together."""
        return self.friction_pa + self.fittings_pa + self.rise_pa


def velocity_m_s(*, flow_m3_s: float, bore_m: float, side_by_side: int = 1) -> float:
    """Mean velocity in a bore, the flow shared by equal lines side by side."""
    return flow_m3_s / (side_by_side * math.pi / 4 * bore_m * bore_m)


def reynolds(*, velocity_m_s: float, bore_m: float, viscosity_m2_s: float) -> float:
    """Reynolds number of the flow in a bore."""
    return velocity_m_s * bore_m / viscosity_m2_s


def friction_factor(*, reynolds: float, relative_roughness: float) -> float:
    """Darcy friction factor: 64/Re to Re 2040, Colebrook from 4000, a straight blend between.

    Colebrook by Clamond's method (Ind. Eng. Chem. Res. 2009, 48, 3665), as fluids has it. Raises
    ZeroDivisionError at Re 0: nothing flows there, and nothing is lost.
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
    """Darcy-Weisbach loss of a run with its fittings, and the weight of the liquid that it lifts."""
    lift = density_kg_m3 * GRAVITY * run.rise_m
    if flow_m3_s <= 0:
        return RunLoss(0.0, 0.0, lift)
    speed = velocity_m_s(flow_m3_s=flow_m3_s, bore_m=run.bore_m, side_by_side=run.side_by_side)
    number = reynolds(velocity_m_s=speed, bore_m=run.bore_m, viscosity_m2_s=viscosity_m2_s)
    head = density_kg_m3 * speed * speed / 2
    factor = friction_factor(reynolds=number, relative_roughness=run.roughness_m / run.bore_m)
    return RunLoss(factor * run.length_m / run.bore_m * head, run.loss_coefficient * head, lift)
