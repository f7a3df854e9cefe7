"""Velocity in a bore: formulas of fluid power, and figures that people in the trade go by."""

from __future__ import annotations

import math

import pytest

from fuelwiz.physics.line import velocity_m_s

from .reference import FOOT_M, GALLON_M3, INCH_M, VALUES, near, printed

CHECK = VALUES["velocity_unit_check"]
CASE = CHECK["case"]


def feet_a_second(gallons_an_hour: float, bore_in: float) -> float:
    """Velocity in ft/s at a flow in US gal/h and a bore in inches."""
    speed = velocity_m_s(flow_m3_s=gallons_an_hour * GALLON_M3 / 3600, bore_m=bore_in * INCH_M)
    return speed / FOOT_M


def test_exact() -> None:
    """10 US gal/min in half an inch: 231 in3 to the gallon, by arithmetic."""
    assert feet_a_second(CASE["Q_gpm"] * 60, CASE["ID_in"]) == near(CASE["V_exact_ft_s"], 1e-6)


def test_rule_of_fluid_power() -> None:
    """V = 0.3208 Q/A to four figures: common in notes on fluid power, from memory; exact by arithmetic above."""
    speed = feet_a_second(CASE["Q_gpm"] * 60, CASE["ID_in"])
    assert speed == near(CASE["V_ft_s"], CHECK["tol_rel"])
    assert speed == near(0.3208 * CASE["Q_gpm"] / (math.pi / 4 * CASE["ID_in"] ** 2), CHECK["tol_rel"])


@pytest.mark.parametrize(
    ("flow", "bore_in", "speed"), [(100, 3 / 8, 4.8), (100, 1 / 2, 2.7), (100, 5 / 8, 1.7), (120, 3 / 8, 5.8)]
)
def test_figures_of_the_trade(flow: int, bore_in: float, speed: float) -> None:
    """Common practice, no source: gal/h in a nominal bore, one decimal in ft/s."""
    assert feet_a_second(flow, bore_in) == printed(speed, 1)


@pytest.mark.parametrize("flow", [10.0, 100.0])
def test_lines_side_by_side_share_the_flow(flow: float) -> None:
    """By arithmetic: four bores of 1/4 in have the area of one of 1/2 in."""
    one = velocity_m_s(flow_m3_s=flow, bore_m=0.5 * INCH_M)
    assert velocity_m_s(flow_m3_s=flow, bore_m=0.25 * INCH_M, side_by_side=4) == near(one, 1e-12)
