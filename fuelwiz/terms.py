"""The words of a file that are one of a list, and what people call them; the names of keys in a sentence.

They stand here, below all that speaks, because the list of builds and the report's sections name the same fuels and
hoses, and neither may know the other. Nothing heavy is loaded: the list of builds is painted from it at once.
"""

from __future__ import annotations

import re
from typing import Any, Literal, cast, get_args

Induction = Literal["none", "supercharger", "turbo"]
PureFuel = Literal["methanol"]
FuelKind = Literal["blend", PureFuel, "own"]
PumpKind = Literal["turbine", "displacement"]
PumpPlace = Literal["tank", "surge", "outside"]
FilterPlace = Literal["line", "pump"]
Hose = Literal["nominal", "ptfe", "rubber", "tube"]

USUAL_ETHANOL = "10 %"
VELOCITY_IS = "Velocity is"
"""What heads the column of words for a velocity."""

INDUCTIONS: dict[str, str] = {"none": "no boost", "supercharger": "supercharger", "turbo": "turbo"}
HOSES: dict[str, str] = {
    "nominal": "dash/16 in bore",
    "ptfe": "PTFE",
    "rubber": "rubber",
    "tube": "hard pipe",
}
FITTINGS = {
    "straight": "straight",
    "swept_45": "swept 45°",
    "swept_90": "swept 90°",
    "swept_180": "swept 180°",
    "forged_90": "forged 90°",
    "tee_run": "tee through",
    "tee_branch": "tee side",
    "entrance": "plain inlet",
    "exit": "plain outlet",
}
ON_THE_CAR: dict[str, str] = {
    "line": "feed line",
    "return_line": "return line",
    "pump": "pump",
    "regulator": "regulator",
    "injectors": "injectors",
    "filter": "filter",
    "strainer": "strainer",
    "wire": "wire",
}
"""Parts that may be on the car already."""
FILTER_PLACES: dict[str, str] = {"line": "in the line", "pump": "at the pump"}
KEYS = {
    "goal.power": "power",
    "goal.power_at": "place where power is measured",
    "goal.driveline_loss": "driveline loss",
    "goal.reserve": "reserve",
    "engine.induction": "induction",
    "engine.bsfc": "fuel use",
    "fuel.ethanol": "ethanol in the fuel",
    "fuel.temperature": "fuel temperature",
    "fuel.reid_pressure": "Reid pressure of the fuel",
    "pressure.base": "base pressure",
    "pressure.boost": "boost",
    "pressure.idle_vacuum": "vacuum at idle",
    "pressure.regulator": "place of the regulator",
    "pressure.altitude": "altitude",
    "pressure.reference": "reference of the regulator",
    "pump": "pump",
    "pump.kind": "kind of pump",
    "pump.curve.voltage": "voltage of the pump's curve",
    "pump.health": "flow of the pump over its sheet",
    "pump.volts": "voltage at the pump",
    "feed.run": "feed line",
    "feed.run.hose": "kind of hose",
    "feed.run.length": "length of the feed line",
    "feed.run.fittings": "fittings on the feed line",
    "feed.filter": "filter",
    "feed.filter.rated_flow": "filter flow",
    "feed.filter.rated_loss": "filter loss",
    "inlet": "pump inlet",
    "inlet.strainer": "strainer",
    "inlet.strainer.rated_flow": "strainer flow",
    "inlet.strainer.rated_loss": "strainer loss",
    "inlet.strainer.carries": "flow through the strainer",
    "inlet.run.carries": "flow through the suction run",
    "wiring.connections": "connection loss",
    "wiring.wire": "wire size",
    "wiring.length": "length of the wire",
    "engine.cylinders": "number of cylinders",
    "return_line": "return line",
    "return_line.regulator": "loss of the open regulator",
    "injectors": "injectors",
    "injectors.rated_pressure": "rated pressure of the injectors",
    "wiring": "wiring",
    "wiring.supply": "supply voltage",
}
"""Keys that may be left out, and some that a bad day may change, as nouns that can stand in a sentence."""

_NUMBERED = re.compile(r"\.\d+")
_PERCENT = re.compile(r"\s*([0-9]{1,3}(?:\.[0-9]{0,6})?)\s*%\s*")


def key_in_words(key: str) -> str:
    """A key as a noun; numbers of a list's entries do not matter."""
    return KEYS[_NUMBERED.sub("", key)]


def key_in_plain_words(key: str) -> str:
    """The same of any key: one without a noun of its own is told by its place."""
    bare = _NUMBERED.sub("", key)
    return KEYS.get(bare) or bare.replace(".", " ").replace("_", " ")


def fuel_name(kind: FuelKind, ethanol: float) -> str:
    """A fuel by the name that people use: E85, gasoline, own fuel, a pure one by its word; ethanol is a volume share."""
    match kind:
        case "blend":
            percent = round(ethanol * 100.0, 1)
            return f"E{percent:g}" if percent else "gasoline"
        case "own":
            return "own fuel"
        case _:
            return kind


def fuel_name_as_typed(kind: Any, ethanol: Any) -> str | None:
    """The name of a fuel from what a file holds, None for what was left out; None where it does not say it plainly."""
    if kind is None:
        kind = "blend"
    if kind not in get_args(FuelKind):
        return None
    typed = USUAL_ETHANOL if ethanol is None else ethanol
    percent = _PERCENT.fullmatch(typed) if isinstance(typed, str) else None
    if percent is None:
        return None if kind == "blend" else fuel_name(kind, 0.0)
    return fuel_name(cast(FuelKind, kind), float(percent[1]) / 100.0)
