"""What is known of the pump: nothing yet, one figure, a curve, or the invented one to learn with."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from fuelwiz.desk.composites.kinds import ChoiceQuestion
from fuelwiz.desk.composites.units_shown import system_of
from fuelwiz.desk.plain import value_at
from fuelwiz.desk.state import State
from fuelwiz.shown_units import base_system

KEY = "pump.known"
SAMPLE_PUMP: Mapping[str, Any] = MappingProxyType(
    {
        "name": "sample pump, invented",
        "voltage": "13.5 V",
        "points": {
            "us": (
                ("20 psi", "151 gal/h"),
                ("40 psi", "142 gal/h"),
                ("60 psi", "131 gal/h"),
                ("80 psi", "117 gal/h"),
                ("100 psi", "98 gal/h"),
            ),
            "metric": (
                ("1.5 bar", "570 L/h"),
                ("3 bar", "530 L/h"),
                ("4 bar", "500 L/h"),
                ("5.5 bar", "445 L/h"),
                ("7 bar", "365 L/h"),
            ),
        },
    }
)
"""An invented pump to learn with, its curve in round figures of either units."""


def _read(state: State) -> str | None:
    """What is known of the pump: none, one figure, or a curve, by its points where it has any."""
    curves = value_at(state.plain, ("pump", "curve")) or ()
    points = max((len(curve.get("points") or ()) for curve in curves), default=0)
    picked = state.picked.get(KEY)
    if points > 1 or len(curves) > 1:
        return "sample" if _is_sample(state) else "curve"
    if points == 1:
        return picked if picked in {"figure", "curve"} else "figure"
    return picked


def _is_sample(state: State) -> bool:
    return (
        value_at(state.plain, ("pump", "name")) == SAMPLE_PUMP["name"] and state.picked.get(KEY) == "sample"
    )


def _put(state: State, answer: str) -> State:
    """The curve that stood is stashed under its answer, and what was stashed under the new one comes back."""
    before = _read(state)
    if before == answer:
        return state
    curves = value_at(state.plain, ("pump", "curve"))
    if curves and before:
        state = state.with_stashed(f"pump.{before}", curves)
    if value_at(state.plain, ("pump", "name")) == SAMPLE_PUMP["name"]:
        state = state.without("pump.name")
    state = state.without("pump.curve").with_picked(KEY, answer)
    if answer == "sample":
        return _with_sample(state)
    back = state.stashed.get(f"pump.{answer}")
    return state.with_value("pump.curve", back) if back else state


def _with_sample(state: State) -> State:
    units = base_system(system_of(state.plain))
    points = [list(point) for point in SAMPLE_PUMP["points"][units]]
    state = state.with_value("pump.curve", [{"voltage": SAMPLE_PUMP["voltage"], "points": points}])
    return state.with_value("pump.name", SAMPLE_PUMP["name"])


KNOWN = ChoiceQuestion(KEY, _read, _put, "none")
