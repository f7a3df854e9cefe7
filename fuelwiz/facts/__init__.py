"""The tables that the program stands on, each with its source in its file; read once."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from fuelwiz.errors import FactError

INCH_M = 0.0254
NOMINAL_DASHES = range(2, 33)
NEAR = 1e-9
"""How far apart two numbers may lie, as a share of them, that differ by how they were typed or added up alone."""


@cache
def table(name: str) -> dict[str, Any]:
    """One of the fact files as a dictionary: "fuels", "bores" or "wire"."""
    return tomllib.loads(Path(__file__).with_name(f"{name}.toml").read_text(encoding="utf-8"))


@cache
def bore_m(hose: str, dash: int) -> float:
    """The bore in meters of a hose of that dash size; FactError where the hose has no such size."""
    if hose == "nominal":
        if dash in NOMINAL_DASHES:
            return dash / 16 * INCH_M
        raise FactError(f"no nominal size -{dash}: it has -2 to -32")
    inches = table("bores")[hose].get(f"-{dash}")
    if inches is None:
        sizes = " ".join(table("bores")[hose])
        raise FactError(f"no {hose} hose of size -{dash}: it has {sizes}")
    return float(inches) * INCH_M
