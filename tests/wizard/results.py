"""Results to draw: the examples with the figures of the independent solver."""

from __future__ import annotations

import json
import tomllib
from dataclasses import fields, is_dataclass
from functools import lru_cache
from pathlib import Path
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from textual.strip import Strip

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import assess
from fuelwiz.sizing.figures import Figures
from fuelwiz.sizing.plot import Plot
from fuelwiz.wizard.look import Look

EXAMPLES = Path(__file__).parents[1] / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))
LOOKS = {
    "256 dark": Look(),
    "256 light": Look(light=True),
    "16": Look(colours="16"),
    "none": Look(colours="none"),
    "ascii": Look(unicode=False, colours="none"),
}


@lru_cache
def drawn_result(name: str, units: str = "us") -> Result:
    """An example in words, with the figures of tests/examples/NAME.json."""
    plain = tomllib.loads((EXAMPLES / f"{name}.toml").read_text()) | {"show_units": units}
    session = validate(plain, name)
    own = assess(session)
    known = {key: getattr(own, key) for key in ("gauge", "wire_choices", "injector_choices")}
    figures = _built(Figures, json.loads((EXAMPLES / f"{name}.json").read_text()), known)
    return result(session, figures)


def _built(kind: Any, value: Any, known: dict[str, Any] | None = None) -> Any:
    """A frozen dataclass from parsed JSON, lists as tuples; `known` is what the JSON lacks."""
    if get_origin(kind) in (Union, UnionType):
        kind = next(arm for arm in get_args(kind) if arm is not type(None))
    if value is None:
        return None
    if get_origin(kind) is tuple:
        return tuple(_built(get_args(kind)[0], item) for item in value)
    if not is_dataclass(kind):
        return value
    hints = get_type_hints(kind)
    names = [field.name for field in fields(kind) if field.name not in (known or {})]
    return kind(**{name: _built(hints[name], value[name]) for name in names}, **(known or {}))


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
