"""One fuel circuit solved twice: by EPANET 2.2 through wntr, and by the program's own physics.

Tank, suction line, pumps side by side, feed, rail with the engine's demand, a valve that holds the rail's
pressure, and the return to the tank; all on one level, pressures in meters of the fuel. What takes a second to load
is loaded by the tests that run it: each process that shares the tests reads all of their files.
"""

from __future__ import annotations

import math
import warnings
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.physics.circuit import PumpSet, Supply
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.line import GRAVITY, Run, run_loss
from fuelwiz.physics.pump import Pump
from fuelwiz.physics.return_line import settle

if TYPE_CHECKING:
    import wntr

DENSITY_KG_M3 = 745.0  # drops out: heads are meters of the fuel
PA_PER_M = DENSITY_KG_M3 * GRAVITY
SHUT_OFF_M, FALL_M, FALL_AT_M3_S = 80.0, 20.0, 0.06e-3  # the pump: H = 80 m - 20 m (Q/0.06 L/s)^2


@dataclass(frozen=True)
class Network:
    """What the circuit is made of, SI units; the rail's setting in meters."""

    viscosity_m2_s: float
    demand_m3_s: float
    setting_m: float
    suction: Run
    feed: Run
    back: Run
    pumps: int = 1


@dataclass(frozen=True)
class State:
    """Flows in m3/s, heads in meters."""

    pump_flow_m3_s: float
    return_flow_m3_s: float
    inlet_m: float
    outlet_m: float
    rail_m: float
    after_m: float


def sample_pump() -> Pump:
    """The parabola of EPANET's three-point pump as points close together."""
    most = FALL_AT_M3_S * math.sqrt(SHUT_OFF_M / FALL_M)
    flows = [most * (1 - i / 400) for i in range(401)]
    return Pump(
        (Curve(13.5, tuple(((SHUT_OFF_M - FALL_M * (q / FALL_AT_M3_S) ** 2) * PA_PER_M, q) for q in flows)),)
    )


def new_model(viscosity_m2_s: float) -> wntr.network.WaterNetworkModel:
    """An empty EPANET model with Darcy and Weisbach's friction and the pump's curve."""
    import wntr

    model = wntr.network.WaterNetworkModel()
    options = model.options.hydraulic
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        options.headloss = "D-W"
    options.viscosity, options.accuracy, options.trials = viscosity_m2_s, 1e-9, 200
    options.inpfile_units = "LPS"
    model.options.time.duration = 0
    at_most = FALL_AT_M3_S * math.sqrt(SHUT_OFF_M / FALL_M)
    points = [(0.0, SHUT_OFF_M), (FALL_AT_M3_S, SHUT_OFF_M - FALL_M), (at_most, 0.0)]
    model.add_curve("PUMP", "HEAD", points)
    return model


def add_run(model: wntr.network.WaterNetworkModel, name: str, start: str, end: str, run: Run) -> None:
    """A run of line as an EPANET pipe with its minor losses."""
    model.add_pipe(name, start, end, run.length_m, run.bore_m, run.roughness_m, run.loss_coefficient)


def solved(model: wntr.network.WaterNetworkModel, folder: Path) -> tuple[dict[str, float], dict[str, float]]:
    """Flows of links in m3/s and heads of nodes in meters, as EPANET finds them."""
    import wntr

    results = wntr.sim.EpanetSimulator(model).run_sim(file_prefix=str(folder / "network"))
    flows, heads = results.link["flowrate"].iloc[0], results.node["head"].iloc[0]
    return {str(key): float(q) for key, q in flows.items()}, {str(key): float(h) for key, h in heads.items()}


def by_epanet(network: Network, folder: Path) -> State:
    """The circuit as EPANET 2.2 solves it; its temporary files go to the folder."""
    model = new_model(network.viscosity_m2_s)
    model.add_reservoir("TANK", base_head=0.0)
    for node in ("INLET", "OUTLET", "RAIL", "AFTER"):
        model.add_junction(node, base_demand=network.demand_m3_s if node == "RAIL" else 0.0, elevation=0.0)
    add_run(model, "SUCTION", "TANK", "INLET", network.suction)
    add_run(model, "FEED", "OUTLET", "RAIL", network.feed)
    add_run(model, "RETURN", "AFTER", "TANK", network.back)
    for number in range(network.pumps):
        model.add_pump(f"PUMP{number}", "INLET", "OUTLET", "HEAD", "PUMP")
    model.add_valve("REGULATOR", "RAIL", "AFTER", network.feed.bore_m, "PSV", 0.0, network.setting_m)
    flows, heads = solved(model, folder)
    return State(
        flows["FEED"], flows["RETURN"], heads["INLET"], heads["OUTLET"], heads["RAIL"], heads["AFTER"]
    )


def loss_m(run: Run, flow_m3_s: float, viscosity_m2_s: float) -> float:
    """Loss of a run in meters of the fuel."""
    loss = run_loss(run, flow_m3_s=flow_m3_s, density_kg_m3=DENSITY_KG_M3, viscosity_m2_s=viscosity_m2_s)
    return loss.total_pa / PA_PER_M


def by_physics(network: Network) -> State:
    """The circuit as the program's own physics solves it."""
    pumps = PumpSet(sample_pump(), network.pumps, False, Supply(13.5, measured=True))

    def loss(run: Run, flow: float) -> float:
        return loss_m(run, flow, network.viscosity_m2_s)

    def delivery(rail_m: float) -> float:
        return pumps.capacity_m3_s(
            lambda flow: (rail_m + loss(network.feed, flow) + loss(network.suction, flow)) * PA_PER_M
        )

    def state(flow: float, rail_m: float, return_flow: float, after_m: float) -> State:
        inlet, outlet = -loss(network.suction, flow), rail_m + loss(network.feed, flow)
        return State(flow, return_flow, inlet, outlet, rail_m, after_m)

    if delivery(network.setting_m) < network.demand_m3_s:
        flow = network.demand_m3_s
        rise = pumps.highest_rise_pa(flow)
        assert rise is not None
        return state(flow, rise / PA_PER_M - loss(network.feed, flow) - loss(network.suction, flow), 0.0, 0.0)
    settled = settle(
        set_pressure_pa=network.setting_m * PA_PER_M,
        flow_at=lambda rail_pa: max(0.0, delivery(rail_pa / PA_PER_M) - network.demand_m3_s),
        back_pressure_at=lambda flow: loss(network.back, flow) * PA_PER_M,
    )
    rail_m = network.setting_m + settled.creep_pa / PA_PER_M
    flow = settled.flow_m3_s
    return state(flow + network.demand_m3_s, rail_m, flow, settled.back_pressure_pa / PA_PER_M)
