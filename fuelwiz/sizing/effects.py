"""How far each value that was assumed moves the answer: by the input that it belongs to."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.sizing.figures import Assumption
from fuelwiz.sizing.slow_figures import SpreadFigures
from fuelwiz.sizing.vocabulary import Input, input_of


def with_effects(assumed: tuple[Assumption, ...], spread: SpreadFigures | None) -> tuple[Assumption, ...]:
    """What was assumed, with how far the least margin moves between the ends of the tolerance."""
    if spread is None:
        return assumed
    effects: dict[Input | None, float] = {one.input: one.effect for one in spread.inputs}
    return tuple(replace(one, effect=effects.get(input_of(one.key))) for one in assumed)
