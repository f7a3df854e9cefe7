"""The return line at idle: the pressure that it needs, and how far the rail creeps where the regulator cannot hold."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fuelwiz.physics.roots import root

CALLED_OUT_SHARE = 0.6  # of the idle rail pressure; common practice, no source


@dataclass(frozen=True, slots=True)
class ReturnState:
    """Flow in the return, the pressure that it needs ahead of the regulator, and the rail's creep."""

    flow_m3_s: float
    back_pressure_pa: float
    holds: bool
    creep_pa: float


def settle(
    *,
    set_pressure_pa: float,
    flow_at: Callable[[float], float],
    back_pressure_at: Callable[[float], float],
) -> ReturnState:
    """Where pump, feed and return agree at idle.

    `flow_at` gives the flow in the return at a rail pressure, `back_pressure_at` the pressure that the return needs
    at a flow; both gauge. Where the return needs more than the regulator wants, the rail rises until they agree.
    """
    flow = flow_at(set_pressure_pa)
    back = back_pressure_at(flow)
    if back <= set_pressure_pa:
        return ReturnState(flow, back, True, 0.0)
    rail = root(lambda rail: back_pressure_at(flow_at(rail)) - rail, set_pressure_pa, back)
    flow = flow_at(rail)
    return ReturnState(flow, back_pressure_at(flow), False, rail - set_pressure_pa)
