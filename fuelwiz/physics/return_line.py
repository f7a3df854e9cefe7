"""The return line at idle: the pressure that it needs, and how far the rail creeps where the regulator cannot hold."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.physics.roots import root
from fuelwiz.record import record

AT_EASE_SHARE = 0.5  # of the idle rail pressure; common practice, no source
AGREED = 1e-6


@record
class ReturnState:
    """Flow in the return in m3/s, the pressure in Pa that it needs ahead of the regulator, and the rail's creep in Pa.

    >>> ReturnState(flow_m3_s=5e-5, back_pressure_pa=4e4, holds=True, creep_pa=0.0).holds
    True
    """

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

    `flow_at` gives the flow in m3/s in the return at a rail pressure in Pa, `back_pressure_at` the pressure that the
    return needs at a flow; both gauge. Where the return needs more than the regulator wants, the rail rises until
    they agree. Where a relief valve holds the pressure, the flow is what the return lets through at it.
    Mass balance of a steady flow; valid where the flow falls with the rail and the pressure rises with the flow.

    >>> state = settle(set_pressure_pa=2e5, flow_at=lambda rail: 1e-4 * (1 - rail / 6e5),
    ...                back_pressure_at=lambda flow: 4e5 * flow / 1e-4)
    >>> state.holds, round(state.creep_pa)
    (False, 40000)
    """
    most = flow_at(set_pressure_pa)
    back = back_pressure_at(most)
    if back <= set_pressure_pa:
        return ReturnState(most, back, True, 0.0)
    rail = root(lambda rail: back_pressure_at(flow_at(rail)) - rail, set_pressure_pa, back)
    flow = flow_at(rail)
    back = back_pressure_at(flow)
    if abs(back - rail) > AGREED * rail:
        flow = root(lambda flow: back_pressure_at(flow) - rail, 0.0, most)
        back = back_pressure_at(flow)
    return ReturnState(flow, back, False, rail - set_pressure_pa)
