"""The closed lists of words that figures use: limits, bands, parts, bad days, states of a gauge."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, get_args

from fuelwiz.physics.line import LAMINAR_BELOW, TURBULENT_FROM

SizeLimit = Literal["velocity", "delivery", "sag", "pump", "relief", "vapour", "inlet"]
"""What can be wrong with a size of feed line, in the order of the answer."""

BuildLimit = Literal["kept run", "injector pressure", "injectors", "return", "lift", "rating", "fuse"]
"""What can be wrong with the build whatever the size, in the order of the answer, behind the size's."""

Limit = Literal[SizeLimit, BuildLimit]

LineLimit = Literal["velocity", "delivery", "sag"]
"""The limits of a size that the line alone is to blame for."""

Band = Literal["easy", "good", "brisk", "fast", "too fast"]
"""What a velocity means, slowest first."""

CeilingPart = Literal["pump", "feed", "filter", "inlet", "injectors"]
CeilingBasis = Literal["solved", "rule"]

Case = Literal[
    "low volts",
    "hot fuel",
    "dirty filters",
    "boost spike",
    "worn pump",
    "more ethanol",
    "less ethanol",
    "altitude",
    "one pump dead",
    "bad day",
]
"""The bad days that the program asks for by itself, in their order; a builder's own go by the builder's names."""

Input = Literal[
    "fuel_use",
    "driveline",
    "ethanol",
    "temperature",
    "boost",
    "base",
    "pump_flow",
    "voltage",
    "pump_kind",
    "feed_bore",
    "fittings",
    "length",
    "filters",
    "vapour",
    "injector_flow",
    "return_regulator",
    "return_bore",
]
"""What is not known exactly, in the order of the list."""

Change = Literal[
    "feed",
    "regulator",
    "return",
    "wire",
    "circuits",
    "lower base",
    "higher base",
    "pump",
    "filters",
    "clean",
    "injectors",
    "cooler",
]
"""The one thing that may be changed about a build, in the order of the list."""

FlowRegime = Literal["laminar", "transitional", "turbulent"]

PathKind = Literal["strainer", "suction", "filter", "run", "part"]
"""What lies on the fuel's way from the tank to the rail, beside the pump."""

GaugeState = Literal["hose off", "idle", "full power"]

SIZE_LIMITS: tuple[SizeLimit, ...] = get_args(SizeLimit)
BUILD_LIMITS: tuple[BuildLimit, ...] = get_args(BuildLimit)
LIMITS: tuple[Limit, ...] = (*SIZE_LIMITS, *BUILD_LIMITS)
LINE_LIMITS: tuple[LineLimit, ...] = get_args(LineLimit)
BANDS: tuple[Band, ...] = get_args(Band)
CASES: tuple[Case, ...] = get_args(Case)
INPUTS: tuple[Input, ...] = get_args(Input)
CHANGES: tuple[Change, ...] = get_args(Change)

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

ADDED: frozenset[Input] = frozenset(("driveline", "ethanol", "temperature", "boost", "base", "voltage"))
"""The inputs whose tolerance is added; those of the others multiply."""

FIXED = "fixed"
"""What the one row of a line is called where every run keeps a bore of its own."""


def band_of(velocity_m_s: float, thresholds: Sequence[float]) -> Band:
    """The band of a velocity; a band includes its upper edge. `thresholds` are four rising velocities in m/s."""
    return next(
        (band for band, edge in zip(BANDS, thresholds, strict=False) if velocity_m_s <= edge), BANDS[-1]
    )


def no_faster_than(band: Band, limit: Band) -> bool:
    """Whether a band is that one or a slower one."""
    return BANDS.index(band) <= BANDS.index(limit)


def regime_at(reynolds: float) -> FlowRegime:
    """How a flow runs at a Reynolds number, by the edges of the friction factor."""
    if reynolds <= LAMINAR_BELOW:
        return "laminar"
    return "transitional" if reynolds < TURBULENT_FROM else "turbulent"


def is_fixed(size: str | None) -> bool:
    """Whether a row's name stands for a line whose every run keeps a bore of its own."""
    return size == FIXED


def input_of(key: str) -> Input | None:
    """The input that a key belongs to; None for one that belongs to none."""
    return INPUT_OF.get(".".join(part for part in key.split(".") if not part.isdecimal()))
