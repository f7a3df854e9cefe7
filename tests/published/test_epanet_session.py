"""Whole sessions against EPANET 2.2, run here through wntr: the figures that the program shows of a circuit.

Tolerances are those of the circuit alone: friction by Swamee and Jain, gravity as 32.2 ft/s2.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.physics.line import Run
from fuelwiz.session import Session, validate
from fuelwiz.sizing import quick_figures

from .network import DENSITY_KG_M3, PA_PER_M, Network, by_epanet, sample_pump
from .reference import VALUES, near
from .test_epanet import GASOLINE, NETWORKS

SYSTEM = VALUES["epanet_system"]
POWER_W = 300e3
ATMOSPHERE_PA = 101325.0
WIDE_SUCTION = replace(GASOLINE.suction, bore_m=60e-3)


def line(run: Run) -> dict[str, Any]:
    """A run of line as a session writes it; its bore is its own."""
    return {
        "hose": "ptfe",
        "bore": f"{run.bore_m * 1e3!r} mm",
        "length": f"{run.length_m!r} m",
        "extra_k": run.loss_coefficient,
    }


def session_of(network: Network, *, idle_m3_s: float | None = None) -> Session:
    """The session that describes a network: a fuel of one's own, and at idle the same demand or another."""
    points = sample_pump().curves[0].points
    bsfc_g_kwh = network.demand_m3_s * DENSITY_KG_M3 / POWER_W * 3.6e9
    idle = network.demand_m3_s if idle_m3_s is None else idle_m3_s
    return validate(
        {
            "format": 1,
            "goal": {"power": f"{POWER_W / 1e3!r} kW", "reserve": "0 %"},
            "engine": {"bsfc": f"{bsfc_g_kwh!r} g/kWh", "idle_fuel": f"{idle * 3.6e6!r} L/h"},
            "fuel": {
                "kind": "own",
                "density": f"{DENSITY_KG_M3!r} kg/m^3",
                "viscosity": f"{network.viscosity_m2_s * 1e6!r} mm^2/s",
                "lhv": "43 MJ/kg",
            },
            "pressure": {
                "base": f"{network.setting_m * PA_PER_M!r} Pa",
                "boost": "0 psi",
                "reference": "atmosphere",
            },
            "pump": {
                "count": network.pumps,
                "volts": "13.5 V",
                "curve": [{"points": [[f"{p!r} Pa", f"{q * 3.6e6!r} L/h"] for p, q in points[::4]]}],
            },
            "feed": {"run": [line(network.feed)], "filter": []},
            "inlet": {"run": [line(network.suction)], "strainer": False},
            "return_line": {
                "run": [line(network.back)],
                "regulator": {"rated_flow": "100 gal/h", "rated_loss": "0 psi"},
            },
        }
    )


HOLDS = {
    "one pump": GASOLINE,
    "thick like E85": NETWORKS["thick like E85"],
    "narrow feed": replace(NETWORKS["narrow feed"], demand_m3_s=0.03e-3),
    "two pumps": replace(NETWORKS["two pumps"], suction=WIDE_SUCTION),
    "three pumps": replace(NETWORKS["three pumps on one feed"], suction=WIDE_SUCTION),
}


@pytest.mark.parametrize("name", HOLDS)
def test_a_regulator_that_holds(name: str, tmp_path: Path) -> None:
    """EPANET 2.2: capacity, loss of the feed, inlet, flow and back pressure of the return.

    The program gives each pump its own pick-up, so with several the suction is too wide to matter.
    """
    theirs, figures = by_epanet(HOLDS[name], tmp_path), quick_figures(session_of(HOLDS[name]))
    (row,), back = figures.sizes, figures.return_line
    assert row.capacity_m3_s == near(theirs.pump_flow_m3_s, SYSTEM["tol_rel_Q_pump"])
    assert row.rail_at_goal_Pa / PA_PER_M == near(theirs.rail_m, SYSTEM["tol_rel_h_rail"])
    loss_m = theirs.outlet_m - theirs.rail_m
    assert row.full_delivery_loss_Pa / PA_PER_M == near(loss_m, SYSTEM["tol_rel_h_after"])
    inlet_m = (figures.inlet.pressure_abs_Pa - ATMOSPHERE_PA) / PA_PER_M
    assert inlet_m == pytest.approx(theirs.inlet_m, abs=SYSTEM["tol_abs_h_inlet_m"])
    assert back.holds
    assert back.flow_m3_s == near(theirs.return_flow_m3_s, SYSTEM["tol_rel_Q_return"])
    assert back.back_pressure_Pa / PA_PER_M == near(theirs.after_m, SYSTEM["tol_rel_h_after"])


def test_an_engine_that_burns_nothing_at_idle(tmp_path: Path) -> None:
    """EPANET 2.2: all that the pump delivers goes home."""
    theirs = by_epanet(NETWORKS["nothing burned"], tmp_path)
    back = quick_figures(session_of(GASOLINE, idle_m3_s=0.0)).return_line
    assert back.flow_m3_s == near(theirs.return_flow_m3_s, SYSTEM["tol_rel_Q_pump"])
    assert back.back_pressure_Pa / PA_PER_M == near(theirs.after_m, SYSTEM["tol_rel_h_after"])


def test_a_return_far_too_small(tmp_path: Path) -> None:
    """EPANET 2.2: the rail creeps up until pump and return agree, and the verdict names the return."""
    network = NETWORKS["return far too small"]
    theirs, figures = by_epanet(network, tmp_path), quick_figures(session_of(network))
    back = figures.return_line
    assert not back.holds
    assert "return" in figures.verdict.limits
    creep_m = theirs.rail_m - network.setting_m
    assert back.creep_Pa / PA_PER_M == near(creep_m, 3 * SYSTEM["tol_rel_h_rail"])
    assert back.flow_m3_s == near(theirs.return_flow_m3_s, SYSTEM["tol_rel_Q_return"])
    assert back.back_pressure_Pa / PA_PER_M == near(theirs.after_m, SYSTEM["tol_rel_h_rail"])


@pytest.mark.parametrize("name", ["demand beyond the pump", "demand far beyond the pump"])
def test_a_demand_beyond_the_pump(name: str, tmp_path: Path) -> None:
    """EPANET 2.2: the regulator shuts, the rail sags, and the pump falls short of the goal."""
    theirs, figures = by_epanet(NETWORKS[name], tmp_path), quick_figures(session_of(NETWORKS[name]))
    (row,) = figures.sizes
    assert row.margin < 0
    assert "pump" in row.limits
    assert row.rail_at_goal_Pa / PA_PER_M == near(theirs.rail_m, SYSTEM["tol_rel_h_rail"])
    made_m = theirs.outlet_m - theirs.inlet_m
    assert row.ladder.could_make_Pa / PA_PER_M == near(made_m, SYSTEM["tol_rel_h_rail"])
