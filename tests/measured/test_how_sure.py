"""How sure an answer is: it shrinks by what was measured, each tolerance by its own input, and by nothing else."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path

import pytest

from fuelwiz.measured.figures import Proposal
from fuelwiz.measured.proposals import accepted
from fuelwiz.session import validate
from fuelwiz.sizing import assess
from fuelwiz.sizing.slow_figures import SpreadFigures

SAMPLE = Path(__file__).parents[2] / "saved_sessions" / "gravel-four.toml"
MEASURED = {
    "fuel_use": Proposal(
        "engine.bsfc", "0.833 lb/(hp*h)", "tolerance.fuel_use", "4 %", "flow and dyno power in the log"
    ),
    "base": Proposal("pressure.base", "3 bar", "tolerance.base", "0.5 psi", "gauge with the hose off"),
    "pump_flow": Proposal("pump.health", "100 %", "tolerance.pump_flow", "1.9 %", "bench tests"),
    "voltage": Proposal("wiring.connections", "0.15 V", "tolerance.voltage", "0.1 V", "volts in the log"),
}
"""What measures an input, each coming to what the build has already: only how far off it may be is new."""


@cache
def spread(*inputs: str) -> SpreadFigures:
    """How sure the sample is with some of its inputs measured."""
    plain = tomllib.loads(SAMPLE.read_text(encoding="utf-8"))
    figures = assess(validate(accepted(plain, [MEASURED[one] for one in inputs]), "car"))
    assert figures.spread is not None
    return figures.spread


def width(of: SpreadFigures, name: str) -> float:
    """How far one input alone moves the least to spare."""
    (found,) = (one for one in of.inputs if one.input == name)
    assert found.low is not None and found.high is not None
    return abs(found.high - found.low)


@pytest.mark.parametrize("name", MEASURED)
def test_what_is_measured_moves_the_answer_less_and_all_else_as_before(name: str) -> None:
    before, after = spread(), spread(name)
    for one in before.inputs:
        if one.input == name:
            assert width(after, name) < 0.8 * width(before, name)
        elif one.input != "pump_kind":
            assert width(after, one.input) == pytest.approx(width(before, one.input), rel=0.02, abs=1e-4)


def test_nine_in_ten_are_closer_together_with_all_of_it() -> None:
    before, after = spread().margin, spread(*MEASURED).margin
    assert after.high - after.low < 0.7 * (before.high - before.low)
    assert after.middle == pytest.approx(before.middle, abs=0.02)
