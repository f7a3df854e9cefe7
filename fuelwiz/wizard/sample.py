"""The guided sample: an invented build to change and watch."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk.desk import Desk

ANSWERS = (
    ("name", "Guided sample"),
    ("notes", "An invented car with invented parts, to learn with."),
    ("goal.power", "560 hp"),
    ("engine.cylinders", "6"),
    ("engine.induction", "turbo"),
    ("pressure.base", "43.5 psi"),
    ("pressure.boost", "20 psi"),
    ("pump.volts", "13.5 V"),
    ("feed.length", "15 ft"),
    ("feed.hose", "ptfe"),
    ("feed.hoses", "3"),
    ("feed.bends", "2"),
    ("feed.filter", "120 gal/h"),
)


def sample_desk(folder: Path) -> Desk:
    """A build with every one of the first five steps answered; nothing of it is kept until it is saved."""
    desk = Desk.new(folder)
    desk.choose("fuel.which", "85 %")
    desk.choose("pump.known", "sample")
    for path, text in ANSWERS:
        desk.type(path, text)
    return desk.begun()
