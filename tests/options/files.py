"""Parts files to begin a test with, and what a search of one comes to for a build."""

from __future__ import annotations

import random
import tomllib
from pathlib import Path
from typing import Any

from fuelwiz.options.figures import OptionsFigures
from fuelwiz.options.outcome import options
from fuelwiz.options.parts_check import validate_parts
from fuelwiz.options.search import Asked, Search
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

SAMPLES = Path(__file__).parents[2] / "saved_sessions"
SAMPLE_PARTS = SAMPLES / "parts" / "sample-parts.toml"
BEGINNING = {"format": 1, "kind": "parts"}


def plain(path: Path) -> dict[str, Any]:
    """What a file holds."""
    return tomllib.loads(path.read_text(encoding="utf-8"))


def build(name: str = "gravel-four", **sections: Any) -> dict[str, Any]:
    """What a sample build holds, some sections replaced; None takes one out."""
    told = plain(SAMPLES / f"{name}.toml") | sections
    return {key: value for key, value in told.items() if value is not None}


def search(built: dict[str, Any], parts: dict[str, Any], asked: Asked | None = None) -> Search:
    """A search ready to go."""
    session = validate(built, "a build")
    return Search(session, validate_parts(parts), quick_figures(session), asked or Asked())


def found(built: dict[str, Any], parts: dict[str, Any], asked: Asked | None = None) -> OptionsFigures:
    """What it comes to."""
    return options(search(built, parts, asked))


def pump(flow: float, **more: Any) -> dict[str, Any]:
    """A pump of the file that gives so many gal/h at 20 psi, less at more pressure."""
    points = [
        [f"{psi} psi", f"{share * flow:.4f} gal/h"] for psi, share in ((20, 1.0), (60, 0.8), (100, 0.45))
    ]
    return {"curve": [{"points": points}], "alcohol": True, **more}


def any_parts(pick: random.Random) -> dict[str, Any]:
    """A small parts file, made up: prices and weights missing here and there."""

    def price(low: int, high: int) -> dict[str, Any]:
        told: dict[str, Any] = {}
        if pick.random() < 0.85:
            told["price"] = pick.randint(low, high)
        if pick.random() < 0.1:
            told["owned"] = True
        return told

    pumps = []
    for number in range(pick.randint(1, 3)):
        told = pump(pick.uniform(50, 160), name=f"pump {number}", most=pick.randint(1, 3), **price(50, 400))
        if pick.random() < 0.8:
            told["current"] = [
                ["20 psi", f"{pick.uniform(5, 9):.2f} A"],
                ["80 psi", f"{pick.uniform(9, 18):.2f} A"],
            ]
        if pick.random() < 0.3:
            told["kind"] = pick.choice(["turbine", "displacement"])
        if pick.random() < 0.2:
            told["alcohol"] = False
        if pick.random() < 0.7:
            told["weight"] = f"{pick.uniform(0.2, 1):.2f} kg"
        pumps.append(told)
    hoses = [
        {"hose": "ptfe", "size": size, "per": pick.choice(["1 ft", "1 m"]), **price(4, 20)}
        | ({"end": pick.randint(10, 50)} if pick.random() < 0.9 else {})
        for size in pick.sample(["-4", "-6", "-8", "-10", "-12"], pick.randint(1, 4))
    ]
    wires = [
        {"wire": wire, **price(1, 3)} for wire in pick.sample(["14 AWG", "12 AWG", "10 AWG", "8 AWG"], 2)
    ]
    injectors = [
        {"rated_flow": f"{pick.choice([800, 1000, 1300, 1700])} cc/min", **price(60, 150)}
        for _ in range(pick.randint(0, 2))
    ]
    told = {**BEGINNING, "pump": pumps, "hose": hoses, "wire": wires, "injectors": injectors}
    if pick.random() < 0.7:
        regulator = {
            "rated_flow": "120 gal/h",
            "rated_loss": f"{pick.choice([2, 4, 8])} psi",
            **price(80, 200),
        }
        if pick.random() < 0.8:
            regulator["set_range"] = ["30 psi", "70 psi"]
        told["regulator"] = [regulator]
    return told
