"""A run of line: limits, joints of the friction law, and what must rise with what."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.line import (
    GRAVITY,
    LAMINAR_BELOW,
    ROUGHNESS_M,
    TURBULENT_FROM,
    Run,
    RunLoss,
    friction_factor,
    reynolds,
    run_loss,
    velocity_m_s,
)

HOSE = Run(bore_m=8e-3, length_m=4.0, roughness_m=1.5e-6, loss_coefficient=5.0)
FLOWS = st.floats(1e-7, 1e-3)


def loss(run: Run, flow: float, density: float = 745.0, viscosity: float = 6e-7) -> RunLoss:
    """Loss of a run of gasoline."""
    return run_loss(run, flow_m3_s=flow, density_kg_m3=density, viscosity_m2_s=viscosity)


def changed(run: Run, **values: Any) -> Run:
    """The run with some of its figures changed."""
    figures = {name: getattr(run, name) for name in Run.__dataclass_fields__}
    return Run(**(figures | values))


@pytest.mark.parametrize("roughness", [0.0, 1e-4, 1e-2])
@pytest.mark.parametrize("joint", [LAMINAR_BELOW, TURBULENT_FROM])
def test_nothing_jumps(joint: Any, roughness: float) -> None:
    """The friction factor is the same just below and just above where one law hands over to the next."""
    below, above = (
        friction_factor(reynolds=joint * (1 + step), relative_roughness=roughness) for step in (-1e-9, 1e-9)
    )
    assert below == pytest.approx(above, rel=1e-6)


def test_laminar_to_2040_whatever_the_wall() -> None:
    assert friction_factor(reynolds=2040.0, relative_roughness=0.05) == 64 / 2040
    assert friction_factor(reynolds=2041.0, relative_roughness=0.05) > 64 / 2041


def test_half_way_through_the_transition() -> None:
    """At Re 3020, the middle of 2040 and 4000, the mean of the two laws, each carried to there."""
    middle = friction_factor(reynolds=3020.0, relative_roughness=0.0)
    laminar = 64 / 3020
    turbulent = 2 * middle - laminar
    side = turbulent**-0.5
    assert 10 ** (-side / 2) * 3020 / side == pytest.approx(2.51, rel=1e-6)  # Colebrook, smooth


def test_nothing_flows_at_reynolds_zero() -> None:
    with pytest.raises(ZeroDivisionError):
        friction_factor(reynolds=0.0, relative_roughness=0.0)


@settings(deadline=None)
@given(number=st.floats(4000.0, 1e7), rough=st.floats(0.0, 0.02), more=st.floats(1e-5, 0.02))
def test_a_rougher_wall_rubs_more(number: float, rough: float, more: float) -> None:
    smooth = friction_factor(reynolds=number, relative_roughness=rough)
    assert friction_factor(reynolds=number, relative_roughness=rough + more) > smooth


@settings(deadline=None)
@given(flow=FLOWS, more=st.floats(1.001, 3.0))
def test_more_flow_loses_more(flow: float, more: float) -> None:
    """Through laminar, transition and turbulent alike."""
    assert loss(HOSE, flow * more).total_pa > loss(HOSE, flow).total_pa


@settings(deadline=None)
@given(flow=FLOWS, wider=st.floats(1.05, 2.0))
def test_a_wider_bore_loses_less(flow: float, wider: float) -> None:
    """Friction and fittings each; where the flow turns laminar too."""
    narrow, wide = loss(HOSE, flow), loss(changed(HOSE, bore_m=HOSE.bore_m * wider), flow)
    assert wide.friction_pa < narrow.friction_pa
    assert wide.fittings_pa < narrow.fittings_pa


@settings(deadline=None)
@given(flow=FLOWS, thicker=st.floats(1.01, 20.0))
def test_friction_grows_with_length_and_density_in_proportion(flow: float, thicker: float) -> None:
    once = loss(HOSE, flow)
    longer = loss(changed(HOSE, length_m=HOSE.length_m * thicker), flow)
    denser = loss(HOSE, flow, density=745.0 * thicker)
    assert longer.friction_pa == pytest.approx(once.friction_pa * thicker)
    assert longer.fittings_pa == once.fittings_pa
    assert denser.total_pa == pytest.approx(once.total_pa * thicker)


@settings(deadline=None)
@given(flow=FLOWS, count=st.integers(2, 8))
def test_lines_side_by_side_share_the_flow(flow: float, count: int) -> None:
    """Each of them loses what one loses at its share."""
    together, one = loss(changed(HOSE, side_by_side=count), flow), loss(HOSE, flow / count)
    assert together.total_pa == pytest.approx(one.total_pa)


@pytest.mark.parametrize("flow", [0.0, -1e-5])
def test_without_flow_only_the_rise_is_left(flow: float) -> None:
    """A flow that runs backward is counted as none."""
    still = loss(changed(HOSE, rise_m=2.0), flow)
    assert (still.friction_pa, still.fittings_pa) == (0.0, 0.0)
    assert still.total_pa == 745.0 * GRAVITY * 2.0


@pytest.mark.parametrize("rise", [-3.0, 0.0, 3.0])
def test_rise_takes_and_fall_gives(rise: float) -> None:
    level, sloped = loss(HOSE, 5e-5), loss(changed(HOSE, rise_m=rise), 5e-5)
    assert sloped.total_pa - level.total_pa == pytest.approx(745.0 * GRAVITY * rise)
    assert sloped.total_pa == sloped.friction_pa + sloped.fittings_pa + sloped.rise_pa


def test_a_run_without_length_and_fittings_loses_nothing() -> None:
    assert loss(changed(HOSE, length_m=0.0, loss_coefficient=0.0), 5e-5).total_pa == 0.0


def test_reynolds_is_velocity_times_bore_over_viscosity() -> None:
    speed = velocity_m_s(flow_m3_s=5e-5, bore_m=8e-3)
    assert reynolds(velocity_m_s=speed, bore_m=8e-3, viscosity_m2_s=6e-7) == pytest.approx(
        speed * 8e-3 / 6e-7
    )


def test_rubber_is_the_rough_one() -> None:
    """As the design of the physics has it: 1.5 um for all but rubber with 10 um."""
    assert ROUGHNESS_M == {"nominal": 1.5e-6, "ptfe": 1.5e-6, "tube": 1.5e-6, "rubber": 10e-6}
