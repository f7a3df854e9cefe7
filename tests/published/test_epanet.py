"""The working point of pump, feed, regulator and return against EPANET 2.2, run here through wntr.

EPANET counts friction by Swamee and Jain from Re 4000 where the program has Colebrook, and gravity as
32.2 ft/s2: together up to 0.3 % of a pump's flow.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.physics.circuit import PumpSet, Supply
from fuelwiz.physics.line import Run

from .network import (
    PA_PER_M,
    Network,
    State,
    add_run,
    by_epanet,
    by_physics,
    loss_m,
    new_model,
    sample_pump,
    solved,
)
from .reference import VALUES, near, row

SYSTEM = VALUES["epanet_system"]
SMOOTH_M = 1.5e-6


def run_of(case: dict[str, Any], name: str) -> Run:
    """A run of a published case."""
    bore, roughness = case[f"{name}_D_mm"] / 1e3, case[f"{name}_eps_mm"] / 1e3
    return Run(bore, case[f"{name}_L_m"], roughness, case[f"{name}_K"])


def network_of(name: str) -> Network:
    """A published case as a network."""
    case = row(SYSTEM["cases"], id=name)
    return Network(
        viscosity_m2_s=case["nu_m2_s"],
        demand_m3_s=case["demand_Lps"] / 1e3,
        setting_m=case["regulator_set_m"],
        suction=run_of(case, "suction"),
        feed=run_of(case, "feed"),
        back=run_of(case, "return"),
        pumps=case["n_pumps"],
    )


GASOLINE = network_of("FS1")
NETWORKS = {
    "one pump, regulator holds": GASOLINE,
    "thick like E85": network_of("FS4"),
    "two pumps": replace(GASOLINE, pumps=2, demand_m3_s=0.10e-3),
    "three pumps on one feed": replace(GASOLINE, pumps=3, demand_m3_s=0.12e-3),
    "nothing burned": replace(GASOLINE, demand_m3_s=0.0),
    "return far too small": replace(GASOLINE, demand_m3_s=0.01e-3, back=Run(3e-3, 4.5, SMOOTH_M, 6.0)),
    "return too small, two pumps": replace(
        GASOLINE, pumps=2, demand_m3_s=0.005e-3, back=Run(4.6e-3, 4.5, SMOOTH_M, 6.0)
    ),
    "demand beyond the pump": replace(GASOLINE, demand_m3_s=0.09e-3),
    "demand far beyond the pump": replace(GASOLINE, demand_m3_s=0.105e-3),
    "narrow feed": replace(GASOLINE, feed=Run(5e-3, 4.5, SMOOTH_M, 6.0)),
    "rough rubber": replace(GASOLINE, feed=Run(8.7e-3, 4.5, 10e-6, 12.0)),
}


def assert_agree(ours: State, theirs: State) -> None:
    """Within the spread of friction formulas; EPANET writes single precision and leaks a little when shut."""
    assert ours.pump_flow_m3_s == near(theirs.pump_flow_m3_s, SYSTEM["tol_rel_Q_pump"])
    assert ours.return_flow_m3_s == pytest.approx(
        theirs.return_flow_m3_s, rel=SYSTEM["tol_rel_Q_return"], abs=5e-8
    )
    assert ours.inlet_m == pytest.approx(theirs.inlet_m, abs=SYSTEM["tol_abs_h_inlet_m"])
    assert ours.outlet_m == near(theirs.outlet_m, SYSTEM["tol_rel_h_rail"])
    assert ours.rail_m == near(theirs.rail_m, SYSTEM["tol_rel_h_rail"])
    assert ours.after_m == pytest.approx(theirs.after_m, rel=SYSTEM["tol_rel_h_after"], abs=2e-4)


@pytest.mark.parametrize("name", NETWORKS)
def test_circuit(name: str, tmp_path: Path) -> None:
    """EPANET 2.2 by wntr on the same network."""
    assert_agree(by_physics(NETWORKS[name]), by_epanet(NETWORKS[name], tmp_path))


def test_the_networks_differ_as_their_names_say() -> None:
    """The regulator holds, cannot hold, or is shut: so that all three are checked."""
    states = {name: by_physics(network) for name, network in NETWORKS.items()}
    assert states["one pump, regulator holds"].rail_m == near(GASOLINE.setting_m, 1e-12)
    assert states["return far too small"].rail_m > 1.3 * GASOLINE.setting_m
    assert states["demand beyond the pump"].rail_m < 0.9 * GASOLINE.setting_m


@pytest.mark.parametrize("name", ["FS1", "FS4"])
@pytest.mark.parametrize("column", ["epanet", "own_colebrook"])
def test_circuit_as_tabled(name: str, column: str) -> None:
    """EPANET 2.2 as it stood with wntr 1.5.0, and an independent solve with Colebrook, to 0.01 %."""
    case, ours = row(SYSTEM["cases"], id=name), by_physics(network_of(name))
    tabled = case if column == "epanet" else case["own_colebrook"]
    tight = column == "own_colebrook"
    flow_tol = 0.0001 if tight else SYSTEM["tol_rel_Q_pump"]
    assert ours.pump_flow_m3_s * 1e3 == near(tabled["Q_pump_Lps"], flow_tol)
    assert ours.rail_m == near(tabled["h_rail_m"], SYSTEM["tol_rel_h_rail"])
    after_tol = 0.001 if tight else SYSTEM["tol_rel_h_after"]
    assert ours.after_m == near(tabled["h_after_regulator_m"], after_tol)


def test_one_pipe(tmp_path: Path) -> None:
    """EPANET 2.2: a pump between two reservoirs, one pipe, 42 m up; run here and as tabled."""
    pump = VALUES["epanet_pump"]
    case = row(pump["cases"], id="PC1")
    line = Run(case["D_mm"] / 1e3, case["L_m"], case["eps_mm"] / 1e3, case["K"])
    model = new_model(case["nu_m2_s"])
    model.add_reservoir("LOW", base_head=0.0)
    model.add_reservoir("HIGH", base_head=case["static_m"])
    model.add_junction("OUTLET", base_demand=0.0, elevation=0.0)
    model.add_pump("PUMP", "LOW", "OUTLET", "HEAD", "PUMP")
    add_run(model, "LINE", "OUTLET", "HIGH", line)
    flows, heads = solved(model, tmp_path)

    def head_m(flow: float) -> float:
        return case["static_m"] + loss_m(line, flow, case["nu_m2_s"])

    pumps = PumpSet(sample_pump(), 1, False, Supply(13.5, measured=True))
    flow = pumps.capacity_m3_s(lambda flow: head_m(flow) * PA_PER_M)
    for expected in (flows["LINE"] * 1e3, case["Q_Lps"]):
        assert flow * 1e3 == near(expected, pump["tol_rel_Q"])
    assert flow * 1e3 == near(case["Q_colebrook_Lps"], 1e-5)
    for expected in (heads["OUTLET"], case["H_pump_node_m"]):
        assert head_m(flow) == near(expected, SYSTEM["tol_rel_h_rail"])
