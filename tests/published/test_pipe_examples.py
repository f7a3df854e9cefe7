"""Worked examples of pipes, some of which climb or fall."""

from __future__ import annotations

import math
from typing import Any

import pytest

from fuelwiz.physics.fittings import loss_coefficient, part_loss_pa
from fuelwiz.physics.line import GRAVITY, Run, friction_factor, reynolds, run_loss, velocity_m_s

from .reference import FOOT_M, HORSEPOWER_W, VALUES, near, row

EXAMPLES = VALUES["pipe_example"]


def example(name: str) -> tuple[dict[str, Any], dict[str, Any], dict[str, Any]]:
    """Inputs, expected values and tolerances of an example."""
    found = row(EXAMPLES, id=name)
    return found["inputs"], found["expect"], found["tol_rel"]


def test_oil_down_a_slope() -> None:
    """White, Fluid Mechanics, example 6.7: velocity rounded to two figures, the factor read from a chart."""
    given, expect, tol = example("WHITE_6_7")
    fall = given["L_m"] * math.sin(math.radians(given["slope_deg"]))
    run = Run(given["D_m"], given["L_m"], given["roughness_m"], 0.0, rise_m=fall)
    loss = run_loss(
        run,
        flow_m3_s=given["Q_m3_s"],
        density_kg_m3=given["rho_kg_m3"],
        viscosity_m2_s=given["nu_m2_s"],
    )
    speed = velocity_m_s(flow_m3_s=given["Q_m3_s"], bore_m=given["D_m"])
    number = reynolds(velocity_m_s=speed, bore_m=given["D_m"], viscosity_m2_s=given["nu_m2_s"])
    factor = friction_factor(reynolds=number, relative_roughness=given["roughness_m"] / given["D_m"])
    assert speed == near(expect["V_m_s"], tol["V_m_s"])
    assert number == near(expect["Re"], tol["Re"])
    assert factor == near(expect["f"], tol["f"])
    assert loss.friction_pa / (given["rho_kg_m3"] * GRAVITY) == near(expect["head_m"], tol["head_m"])
    assert loss.rise_pa < 0
    assert loss.total_pa == near(expect["dp_Pa"], tol["dp_Pa"])


def test_water_up_to_a_reservoir() -> None:
    """Fox & McDonald, Introduction to Fluid Mechanics, example 8.5 (from memory), three figures printed."""
    given, expect, tol = example("FOX_8_5")
    viscosity = given["mu_Pa_s"] / given["rho_kg_m3"]
    run = Run(given["D_m"], given["L_m"], given["roughness_m"], 0.0, rise_m=given["lift_m"])
    loss = run_loss(
        run, flow_m3_s=given["Q_m3_s"], density_kg_m3=given["rho_kg_m3"], viscosity_m2_s=viscosity
    )
    speed = velocity_m_s(flow_m3_s=given["Q_m3_s"], bore_m=given["D_m"])
    number = reynolds(velocity_m_s=speed, bore_m=given["D_m"], viscosity_m2_s=viscosity)
    assert speed == near(expect["V_m_s"], tol["V_m_s"])
    assert number == near(expect["Re"], tol["Re"])
    assert friction_factor(reynolds=number, relative_roughness=0.0) == near(expect["f"], tol["f"])
    assert loss.total_pa == near(expect["p1_gauge_Pa"], tol["p1_gauge_Pa"])


def test_water_in_a_smooth_pipe() -> None:
    """TP-410 example 7-1, three figures printed."""
    given, expect, tol = example("TP410_7_1")
    speed = velocity_m_s(flow_m3_s=given["Q_m3_s"], bore_m=given["D_m"])
    factor = friction_factor(reynolds=given["Re_given"], relative_roughness=given["roughness_m"])
    assert speed == near(expect["V_m_s"], tol["V_m_s"])
    assert factor == near(expect["f"], tol["f"])


def test_thick_oil_up_through_valves() -> None:
    """TP-410 example 7-9 as the fluids notebook works it: laminar, up 50 ft, valves and elbow of 178 fT.

    Its total K holds the friction of the pipe, f L/D, as well.
    """
    given, expect, tol = example("TP410_7_9")
    bore, viscosity = given["D_m"], given["mu_Pa_s"] / given["rho_kg_m3"]
    through_tee = loss_coefficient("tee_run", bore, 1.0)  # 20 fT
    assert through_tee / 20 == near(given["fT"], tol["K_total"])
    run = Run(bore, given["L_m"], 0.0, given["sum_K_over_fT"] * through_tee / 20, rise_m=given["lift_m"])
    loss = run_loss(
        run, flow_m3_s=given["Q_m3_s"], density_kg_m3=given["rho_kg_m3"], viscosity_m2_s=viscosity
    )
    speed = velocity_m_s(flow_m3_s=given["Q_m3_s"], bore_m=bore)
    number = reynolds(velocity_m_s=speed, bore_m=bore, viscosity_m2_s=viscosity)
    assert speed == near(expect["V_m_s"], tol["V_m_s"])
    assert number == near(expect["Re"], tol["Re"])
    assert friction_factor(reynolds=number, relative_roughness=0.0) == near(expect["f"], tol["f"])
    velocity_head = given["rho_kg_m3"] * speed * speed / 2
    assert (loss.friction_pa + loss.fittings_pa) / velocity_head == near(expect["K_total"], tol["K_total"])
    assert loss.total_pa == near(expect["dp_Pa"], tol["dp_Pa"])


@pytest.mark.parametrize("by", ["printed", "fluids"])
def test_power_to_lift_water(by: str) -> None:
    """TP-410 example 7-15: 100 gal/min lifted by the head found there; three figures, or as fluids has it."""
    given, expect, tol = example("TP410_7_15")
    head_m = given["head_printed_m"] if by == "printed" else expect["head_fluids_ft"] * FOOT_M
    loss = run_loss(
        Run(0.0779, 0.0, 0.0, 0.0, rise_m=head_m),
        flow_m3_s=given["Q_m3_s"],
        density_kg_m3=given["rho_kg_m3"],
        viscosity_m2_s=1e-6,
    )
    power = loss.total_pa * given["Q_m3_s"] / given["efficiency"]
    assert power / HORSEPOWER_W == near(expect[f"power_hp_{by}"], tol[f"power_hp_{by}"])


def test_valve_by_its_flow_and_by_its_coefficient() -> None:
    """TP-410 example 7-2: a valve of Kv 500 m3/h (at 1 bar, water) in a 154 mm pipe is a K of 3.6.

    Kv is told for water of 1000 kg/m3; fluids counts its constants to a part in a thousand.
    """
    valve = row(VALUES["loss_coefficient"], what="Kv=500 m3/h, D=154 mm -> K")
    flow = 0.05
    as_part = part_loss_pa(flow_m3_s=flow, rated_flow_m3_s=500 / 3600, rated_loss_pa=1e5)
    as_fitting = run_loss(
        Run(0.154, 0.0, 0.0, valve["value"]), flow_m3_s=flow, density_kg_m3=1000.0, viscosity_m2_s=1e-6
    )
    assert as_fitting.total_pa == near(as_part, 0.001)
