"""The injectors: their duty behind a regulator at the tank, by hand."""

from __future__ import annotations

import math

import pytest

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
