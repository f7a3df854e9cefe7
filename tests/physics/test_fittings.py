"""Fittings, filters and parts: limits, and what must lose more than what."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.physics.fittings import KINDS, filter_loss_pa, loss_coefficient, part_loss_pa, sum_of_fittings

BORE_M = 8.7e-3
NARROWING = [kind for kind in KINDS if kind not in ("entrance", "exit")]


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_loses_something(kind: str) -> None:
    assert loss_coefficient(kind, BORE_M, 0.85) > 0


@settings(deadline=None)
@given(kind=st.sampled_from(NARROWING), ratio=st.floats(0.3, 0.98), bore=st.floats(1e-3, 60e-3))
def test_a_narrower_end_loses_more(kind: str, ratio: float, bore: float) -> None:
    assert loss_coefficient(kind, bore, ratio) > loss_coefficient(kind, bore, ratio + 0.02)


@pytest.mark.parametrize("bore", [1e-3, BORE_M, 60e-3])
def test_a_straight_end_that_does_not_narrow_loses_nothing(bore: float) -> None:
    assert loss_coefficient("straight", bore, 1.0) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize("ratio", [0.3, 0.85, 1.0])
def test_the_sharper_the_turn_the_more_it_loses(ratio: float) -> None:
    turns = ("straight", "swept_45", "swept_90", "swept_180", "forged_90")
    losses = [loss_coefficient(kind, BORE_M, ratio) for kind in turns]
    assert losses == sorted(losses)
    assert loss_coefficient("tee_branch", BORE_M, ratio) > loss_coefficient("tee_run", BORE_M, ratio)


def test_small_fittings_lose_more() -> None:
    """Friction factors rise as bores shrink, and TP-410's bends and tees with them."""
    for kind in ("swept_90", "tee_run", "tee_branch"):
        assert loss_coefficient(kind, 5e-3, 0.85) > loss_coefficient(kind, 20e-3, 0.85)


@pytest.mark.parametrize("kind", ["elbow", "", "Straight", "swept_30", "swept_", "swept_nan"])
def test_a_kind_that_there_is_not(kind: str) -> None:
    with pytest.raises(KeyError):
        loss_coefficient(kind, BORE_M, 0.85)


def test_fittings_add_up() -> None:
    counts = {"straight": 2, "swept_90": 3, "exit": 1, "tee_run": 0}
    one_by_one = [
        loss_coefficient(kind, BORE_M, 0.85) for kind in ["straight"] * 2 + ["swept_90"] * 3 + ["exit"]
    ]
    assert sum_of_fittings(counts, bore_m=BORE_M, end_ratio=0.85) == pytest.approx(sum(one_by_one))
    assert sum_of_fittings({}, bore_m=BORE_M, end_ratio=0.85) == 0


def filter_loss(flow: float, clogging: float = 1.0) -> float:
    """Loss of a filter that is rated 10 kPa at 1e-4 m3/s."""
    return filter_loss_pa(flow_m3_s=flow, rated_flow_m3_s=1e-4, rated_loss_pa=10e3, clogging=clogging)


def test_filter_at_its_rating_and_at_half_and_twice() -> None:
    """Half viscous and half inertial: 1, then 0.25 + 0.125, then 1 + 2 of the rated loss."""
    assert [filter_loss(1e-4 * share) for share in (0, 0.5, 1, 2)] == pytest.approx([0, 3750, 10e3, 30e3])


@given(flow=st.floats(0.0, 1e-3), clogging=st.floats(0.1, 20.0))
def test_a_clogged_filter_loses_in_proportion(flow: float, clogging: float) -> None:
    assert filter_loss(flow, clogging) == pytest.approx(clogging * filter_loss(flow))


def test_part_loses_with_the_square() -> None:
    losses = [
        part_loss_pa(flow_m3_s=q, rated_flow_m3_s=2e-4, rated_loss_pa=8e3) for q in (0, 1e-4, 2e-4, 4e-4)
    ]
    assert losses == pytest.approx([0, 2e3, 8e3, 32e3])
