"""Pumps against worked examples: the affinity laws, and the point where a pump meets its system."""

from __future__ import annotations

import math

import pytest

from fuelwiz.physics.circuit import PumpSet, Supply
from fuelwiz.physics.curve import Curve
from fuelwiz.physics.line import GRAVITY, velocity_m_s
from fuelwiz.physics.pump import Pump

from .reference import FOOT_M, GALLON_M3, HORSEPOWER_W, INCH_M, VALUES, near, row

AFFINITY = VALUES["affinity"]
PARABOLA = VALUES["pump_parabola"]
GALLON_MIN = GALLON_M3 / 60
CUBIC_FOOT = FOOT_M**3
WATER_KG_M3 = 998.0
PA_PER_FOOT = WATER_KG_M3 * GRAVITY * FOOT_M


def test_affinity_laws() -> None:
    """TP-410 example 7-33: a pump slowed from 3500 to 1700 turns; volts stand for turns."""
    head, flow = AFFINITY["H1_ft"] * PA_PER_FOOT, AFFINITY["Q1_gpm"] * GALLON_MIN
    points = ((0.9 * head, 1.2 * flow), (head, flow), (1.1 * head, 0.7 * flow))
    pump = Pump((Curve(AFFINITY["n1"], points),))
    slow_head, slow_flow = AFFINITY["H2_ft"] * PA_PER_FOOT, AFFINITY["Q2_gpm"] * GALLON_MIN
    assert pump.flow_m3_s(head, AFFINITY["n1"]) == near(flow, AFFINITY["tol_rel"])
    assert pump.flow_m3_s(slow_head, AFFINITY["n2"]) == near(slow_flow, AFFINITY["tol_rel"])
    share = slow_head * pump.flow_m3_s(slow_head, AFFINITY["n2"]) / (head * flow)
    assert AFFINITY["P1_hp"] * share == near(AFFINITY["P2_hp"], AFFINITY["tol_rel"])


def parabola_pump() -> Pump:
    """The pump of the textbook, h = 365 - 20 Q^2 in ft and ft3/s, as points close together."""
    most = math.sqrt(365 / 20)
    flows = [most * (1 - i / 600) for i in range(601)]
    points = tuple(((365 - 20 * q * q) * PA_PER_FOOT, q * CUBIC_FOOT) for q in flows)
    return Pump((Curve(13.5, points),))


def friction_ft(flow_cfs: float) -> float:
    """Loss of the two pipes, their friction factors given: f L/D v^2/2g, minor losses left out."""
    loss = 0.0
    for factor, length_ft, bore_in in [(0.022, 90, 10), (0.028, 4900, 8)]:
        speed = velocity_m_s(flow_m3_s=flow_cfs * CUBIC_FOOT, bore_m=bore_in * INCH_M)
        loss += factor * length_ft * 12 / bore_in * speed * speed / (2 * GRAVITY) / FOOT_M
    return loss


def test_the_system_of_the_textbook() -> None:
    """K of the pipes in ft/(ft3/s)^2, by arithmetic with 32.174 ft/s2."""
    assert friction_ft(1.0) == near(PARABOLA["K_system_ft_per_cfs2"], PARABOLA["tol_rel"])


@pytest.mark.parametrize(
    ("arrangement", "running", "in_series"),
    [("one pump", 1, False), ("two in series", 2, True), ("two in parallel", 2, False)],
)
def test_where_pump_and_system_meet(arrangement: str, running: int, in_series: bool) -> None:
    """A textbook problem that asks for a graph; its closed-form answer, six figures: ha = 290 ft + K Q^2."""
    answer = row(PARABOLA["results"], arrangement=arrangement)
    pumps = PumpSet(parabola_pump(), running, in_series, Supply(13.5, measured=True))

    def rise(flow_m3_s: float) -> float:
        return (290 + friction_ft(flow_m3_s / CUBIC_FOOT)) * PA_PER_FOOT

    flow = pumps.capacity_m3_s(rise)
    assert flow / CUBIC_FOOT == near(answer["Q_cfs"], PARABOLA["tol_rel"])
    assert rise(flow) / PA_PER_FOOT == near(answer["H_ft"], PARABOLA["tol_rel"])
    assert pumps.highest_rise_pa(flow) / PA_PER_FOOT == near(answer["H_ft"], PARABOLA["tol_rel"])


def test_a_pump_makes_base_and_boost_and_loss() -> None:
    """Common practice, no source: the pump must make base pressure, boost and the loss of the line."""
    base, boost = 3e5, 1.5e5
    pump = Pump((Curve(13.5, ((0.0, 12e-5), (6e5, 6e-5), (9e5, 3e-5))),))

    def loss(flow: float) -> float:
        return 0.2e5 * (flow / 2e-5) ** 2

    pumps = PumpSet(pump, 1, False, Supply(13.5, measured=True))
    flow = pumps.capacity_m3_s(lambda flow: base + boost + loss(flow))
    assert loss(flow) > 0.1e5
    assert pump.flow_m3_s(base + boost + loss(flow), 13.5) == near(flow, 1e-9)
    assert pumps.highest_rise_pa(flow) == near(base + boost + loss(flow), 1e-9)


def test_power_of_a_pump_that_slows() -> None:
    """TP-410 affinity laws: hydraulic power falls with the cube of the speed."""
    pumps = parabola_pump()
    fast = 300 * PA_PER_FOOT * pumps.flow_m3_s(300 * PA_PER_FOOT, 13.5) / HORSEPOWER_W
    slow_rise = 300 * PA_PER_FOOT * 0.8**2
    slow = slow_rise * pumps.flow_m3_s(slow_rise, 13.5 * 0.8) / HORSEPOWER_W
    assert slow / fast == near(0.8**3, 1e-9)
