"""Desks to begin a test with."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk import Desk

EXAMPLES = Path(__file__).parents[1] / "examples"
NB = "\u00a0"


def empty(folder: Path) -> Desk:
    """A new build that is being looked at."""
    desk = Desk.new(folder)
    desk.update()
    return desk


def opened(folder: Path, example: str = "hill-climb-six") -> Desk:
    """An example build, opened from a copy of its file."""
    path = folder / f"{example}.toml"
    path.write_text((EXAMPLES / f"{example}.toml").read_text(encoding="utf-8"), encoding="utf-8")
    desk = Desk.open(path)
    desk.update()
    return desk


def told(folder: Path, **answers: str) -> Desk:
    """A build with a power and these answers, by key with __ for the dots."""
    desk = empty(folder)
    for key, text in {"goal__power": "750 hp", **answers}.items():
        desk.type(key.replace("__", "."), text)
    return desk
