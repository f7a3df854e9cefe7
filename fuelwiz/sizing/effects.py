"""How far each value that was assumed moves the answer: by the input that it belongs to."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.sizing.figures import Assumption
from fuelwiz.sizing.slow_figures import SpreadFigures
from fuelwiz.sizing.vocabulary import Input

INPUT_OF: dict[str, Input] = {
    "goal.driveline_loss": "driveline",
    "engine.bsfc": "fuel_use",
    "fuel.ethanol": "ethanol",
    "fuel.temperature": "temperature",
    "fuel.reid_pressure": "vapour",
    "pressure.base": "base",
    "pressure.boost": "boost",
    "pump.kind": "pump_kind",
    "pump.volts": "voltage",
    "feed.run.length": "length",
    "feed.run.fittings": "fittings",
    "feed.filter": "filters",
    "feed.filter.rated_flow": "filters",
    "feed.filter.rated_loss": "filters",
    "inlet.strainer": "filters",
    "inlet.strainer.rated_flow": "filters",
    "inlet.strainer.rated_loss": "filters",
    "return_line.regulator": "return_regulator",
}
"""The input that a key belongs to, the numbers of its lists left out; those that are not here belong to none."""


def with_effects(assumed: tuple[Assumption, ...], spread: SpreadFigures | None) -> tuple[Assumption, ...]:
    """What was assumed, with how far the least margin moves between the ends of the tolerance."""
    if spread is None:
        return assumed
    effects: dict[Input | None, float] = {one.input: one.effect for one in spread.inputs}
    return tuple(replace(one, effect=effects.get(_input_of(one.key))) for one in assumed)


def _input_of(key: str) -> Input | None:
    return INPUT_OF.get(".".join(part for part in key.split(".") if not part.isdecimal()))
