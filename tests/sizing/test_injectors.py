"""The injectors: their duty behind a regulator at the tank, by hand."""

from __future__ import annotations

import math

import pytest

from fuelwiz.sizing.figures import Figures

from .builds import CC_PER_MIN, PSI, build, figures

HEPTANE_KG_M3 = 684.0  # the test fluid of SAE J1832 practice


@pytest.mark.parametrize("size", ["-4", "-6", "-10"])
def test_duty_is_that_at_the_pressure_which_the_sag_leaves(size: str) -> None:
    """Through an opening the mass flow goes with the root of density and pressure (Bernoulli)."""
    injectors = {"rated_flow": "440 cc/min", "rated_pressure": "3 bar"}
    found = figures(build("mild", {"injectors": injectors, "feed.chosen": size}))
    sag = found.pick.rail_sag_Pa
    assert sag is not None and found.injectors is not None
    assert sag > 0.2 * PSI, "so little would not be seen in the duty"
    across = 58 * PSI - sag
    each = 440 * CC_PER_MIN * math.sqrt(HEPTANE_KG_M3 * found.fuel.density_kg_m3 * across / 3e5)
    assert found.injectors.wide_open_flow_each_kg_s == pytest.approx(each, rel=1e-6)
    assert found.injectors.duty == pytest.approx(found.demand.mass_flow_kg_s / (8 * each), rel=1e-6)


def _next_and_typed(reference: str) -> tuple[Figures, Figures]:
    """A build with a next goal, and the same with that goal typed as its own."""
    pressure = {"pressure.reference": reference, "injectors": {"rated_flow": "440 cc/min"}}
    then = {"goal.next_power": "500 hp", "goal.next_boost": "8 psi", "goal.next_induction": "supercharger"}
    typed = {"goal.power": "500 hp", "pressure.boost": "8 psi", "engine.induction": "supercharger"}
    return figures(build("mild", pressure | then)), figures(build("mild", pressure | typed))


@pytest.mark.parametrize("reference", ["atmosphere", "manifold"])
def test_the_next_goal_asks_for_the_injectors_of_that_goal(reference: str) -> None:
    today, typed = _next_and_typed(reference)
    assert today.next is not None and typed.injectors is not None
    assert today.next.injector_rating_m3_s == pytest.approx(typed.injectors.smallest_rating_m3_s, rel=1e-6)


def test_injectors_against_an_open_regulator_lose_what_boost_takes() -> None:
    """Fuel over what the root of the pressure across passes (Bernoulli): 8 psi of boost leave 50 of 58 psi."""
    today, _ = _next_and_typed("atmosphere")
    assert today.next is not None and today.injectors is not None
    rating, now = today.next.injector_rating_m3_s, today.injectors.smallest_rating_m3_s
    assert rating is not None and now is not None
    fuel = today.next.target_flow_m3_s / today.demand.target_flow_m3_s
    assert rating / now > 1.03 * fuel, "the fuel alone would say too little"
    assert rating / now == pytest.approx(fuel * math.sqrt(58 / 50), rel=0.02)


@pytest.mark.parametrize("rise", ["-1.5 m", "0 m", "1.5 m"])
def test_the_ceiling_of_injectors_typed_as_a_goal_is_at_the_duty_limit(rise: str) -> None:
    """A feed that falls adds pressure where little flows: more than the set pressure stands across the injectors."""
    few = {"injectors": {"rated_flow": "60 cc/min"}, "feed.run.0.rise": rise, "feed.chosen": "-8"}
    found = figures(build("mild", few))
    ceiling = next(one.max_power_W for one in found.ceilings if one.part == "injectors")
    assert 0 < ceiling < found.demand.crank_power_W
    typed = figures(build("mild", few | {"goal.power": f"{ceiling / 1000!r} kW"}))
    assert typed.injectors is not None and typed.injectors.duty is not None
    assert typed.injectors.duty == pytest.approx(0.85, rel=1e-9)
