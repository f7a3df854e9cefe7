"""Results to draw: the examples with the figures of the independent solver."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from independent import independent_figures
from textual.strip import Strip

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import assess
from fuelwiz.sizing.figures import Plot
from fuelwiz.wizard.look import Look

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))
LOOKS = {
    "256 dark": Look(),
    "256 light": Look(light=True),
    "16": Look(colors="16"),
    "none": Look(colors="none"),
    "ascii": Look(unicode=False, colors="none"),
}


@lru_cache
def drawn_result(name: str, units: str = "us") -> Result:
    """An example in words, with the figures of tests/examples/NAME.json."""
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text()) | {"show_units": units}
    session = validate(plain, name)
    return result(session, independent_figures(name, session))


@lru_cache
def filled_result(name: str, units: str = "us") -> Result:
    """An example with all that the program itself works out: what changes buy, and how sure it is."""
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text()) | {"show_units": units}
    session = validate(plain, name)
    return result(session, assess(session))


def unfilled_result(name: str) -> Result:
    """The same before anything of that is there."""
    found = filled_result(name)
    return result(found.session, replace(found.figures, changes=(), way_out=None, spread=None))


def crossing_lines(of: Result, highlighted: str) -> Plot | None:
    """Curves to draw: a straight pump line and parabolas, which meet where the result's figures say."""
    row = of.figures.row(highlighted)
    if row is None or row.capacity_m3_s is None:
        return None
    goal = of.figures.demand.volume_flow_m3_s
    flows = tuple(goal * step / 20 for step in range(0, 41))

    def asked(size: Any, flow: float) -> float:
        return size.pump_rise_Pa - size.feed_loss_Pa + size.feed_loss_Pa * (flow / goal) ** 2

    met = asked(row, row.capacity_m3_s)
    pump = tuple(met + (row.capacity_m3_s - flow) / goal * 8e5 for flow in flows)
    systems = {size.size: tuple(asked(size, flow) for flow in flows) for size in of.figures.sizes}
    return Plot(flows, pump, systems, goal, (row.capacity_m3_s, met))


def text(lines: list[Strip]) -> list[str]:
    """What the lines say, without the blanks at their ends."""
    return [line.text.rstrip() for line in lines]
