"""The return at idle: a regulator that holds, one that cannot, and the edge between."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.return_line import ReturnState, settle


def idle(*, needs: float, strength: float = 1e-4, end: float = 6e5, set_pressure: float = 2e5) -> ReturnState:
    """A pump whose flow falls in a straight line, and a return that needs `needs` Pa at all of it."""
    return settle(
        set_pressure_pa=set_pressure,
        flow_at=lambda rail: max(0.0, strength * (1 - rail / end)),
        back_pressure_at=lambda flow: needs * (flow / strength) ** 2,
    )


def test_a_wide_return_lets_the_regulator_hold() -> None:
    state = idle(needs=1e5)
    assert state.holds
    assert state.creep_pa == 0.0
    assert state.flow_m3_s == pytest.approx(1e-4 * (1 - 2 / 6))
    assert state.back_pressure_pa == pytest.approx(1e5 * (4 / 6) ** 2)


def test_at_the_edge_it_still_holds_and_just_beyond_it_creeps() -> None:
    edge = 2e5 / (4 / 6) ** 2
    assert idle(needs=edge * (1 - 1e-9)).holds
    beyond = idle(needs=edge * 1.001)
    assert not beyond.holds
    assert 0 < beyond.creep_pa < 200


@settings(deadline=None)
@given(needs=st.floats(5e5, 1e9))
def test_the_rail_creeps_to_where_pump_and_return_agree(needs: float) -> None:
    state = idle(needs=needs)
    rail = 2e5 + state.creep_pa
    assert not state.holds
    assert 2e5 < rail < 6e5
    assert state.back_pressure_pa == pytest.approx(rail, rel=1e-6)
    assert state.flow_m3_s == pytest.approx(1e-4 * (1 - rail / 6e5), rel=1e-6)


@settings(deadline=None)
@given(needs=st.floats(1e3, 1e8), more=st.floats(1.01, 10.0))
def test_a_narrower_return_never_creeps_less(needs: float, more: float) -> None:
    assert idle(needs=needs * more).creep_pa >= idle(needs=needs).creep_pa


def test_a_return_that_needs_more_than_the_pump_can_make() -> None:
    """A tank at more pressure than the pump's end: nothing comes back, and the rail stands at the tank's."""
    state = settle(
        set_pressure_pa=2e5, flow_at=lambda rail: max(0.0, 1 - rail / 6e5), back_pressure_at=lambda q: 7e5 + q
    )
    assert not state.holds
    assert state.flow_m3_s == 0.0
    assert state.back_pressure_pa == 7e5
    assert state.creep_pa == pytest.approx(5e5)


def test_a_relief_that_holds_the_pressure_leaves_what_the_return_lets_through() -> None:
    """The pump gives 1e-4 to 300 kPa and nothing above; the return needs 300 kPa at half of that."""
    state = settle(
        set_pressure_pa=2e5,
        flow_at=lambda rail: 1e-4 if rail < 3e5 else 0.0,
        back_pressure_at=lambda flow: 6e5 * flow / 1e-4,
    )
    assert not state.holds
    assert state.creep_pa == pytest.approx(1e5)
    assert state.flow_m3_s == pytest.approx(5e-5)
    assert state.back_pressure_pa == pytest.approx(3e5)
