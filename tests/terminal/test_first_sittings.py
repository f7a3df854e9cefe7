"""A first sitting, key by key on a real terminal: every fact gets in at the first pass, in few keys."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from .terminal import KEYS, Terminal, wizard

MOST_KEYS = 250
SIZES = [(80, 24), (60, 20)]


class Hands:
    """Whoever sits at the keys: each one is counted, a paste as one."""

    def __init__(self, terminal: Terminal) -> None:
        self.terminal = terminal
        self.keys = 0

    def tell(self, *keys: str, seen: str = "") -> None:
        """Keys by name, or a text key by key; then wait for what has to stand on the screen."""
        for key in keys:
            self.keys += 1 if key in KEYS else len(key)
            self.terminal.press(key)
        if seen:
            self.terminal.until(seen)

    def answer(self, *texts: str) -> None:
        """Each text typed and entered; an empty one is Enter alone."""
        for text in texts:
            self.tell(text, "enter")

    def paste(self, text: str) -> None:
        """Text from elsewhere, between the marks of a paste."""
        self.keys += 1
        self.terminal.press(f"\x1b[200~{text}\x1b[201~")


def said_in(file: Path) -> dict[str, Any]:
    return tomllib.loads(file.read_text(encoding="utf-8"))


def _is_the_four(said: dict[str, Any]) -> None:
    """Every fact of its owner is in the file."""
    assert (said["show_units"], said["show_power"]) == ("metric", "hp")
    assert said["goal"] == {"power": "300 hp", "power_at": "wheels", "next_power": "350 hp"}
    assert said["engine"] == {"cylinders": 4, "induction": "turbo"}
    assert said["fuel"]["ethanol"] == "85 %"
    assert said["pressure"] == {
        "base": "3 bar",
        "boost": "1.4 bar",
        "reference": "manifold",
        "regulator": "rail",
    }
    assert said["pump"]["place"] == "tank" and said["pump"]["count"] == 1
    assert said["pump"]["curve"] == [
        {
            "voltage": "13.5 V",
            "points": [
                ["3 bar", "330 L/h"],
                ["4 bar", "295 L/h"],
                ["5 bar", "250 L/h"],
                ["6 bar", "190 L/h"],
            ],
        }
    ]
    assert said["pump"]["current"] == [["3 bar", "9 A"], ["4 bar", "11 A"], ["5 bar", "13 A"]]
    assert said["feed"]["chosen"] == "-6"
    assert said["feed"]["run"] == [
        {"hose": "rubber", "length": "4.5 m + 0.5 m", "fittings": {"straight": 2, "swept_90": 4}}
    ]
    assert said["feed"]["filter"] == [{}] and said["inlet"]["strainer"] == {}, "there, without figures"
    assert said["return_line"]["chosen"] == "5/16 in"
    assert said["return_line"]["run"] == [{"hose": "tube", "length": "4 m", "fittings": {"swept_90": 2}}]
    assert said["wiring"] == {
        "supply": "13.9 V",
        "wire": "2.5 square mm",
        "length": "3 m",
        "return_path": "chassis",
    }
    assert said["injectors"] == {"count": 4, "rated_flow": "850 cc/min", "rated_pressure": "3 bar"}
    assert said["fitted"] == {"has": ["line", "return_line", "regulator"], "filter": "10 micron"}
    assert said["stress"]["case"] == [{"name": "winter", "change": {"fuel.ethanol": "70 %"}}]


def _deeper_steps(hands: Hands) -> None:
    """From the lines to the bad days of one's own."""
    hands.tell("f4", seen="Line on the car")
    hands.answer("AN6", "4.5 m + 0.5 m")
    hands.tell("right", "enter")
    hands.answer("3", "4", "")
    hands.tell("f4", seen="Strainer fitted")
    hands.answer("", "", "", "5/16", "4")
    hands.tell("left", "enter")
    hands.answer("2", "")
    hands.tell("f4", seen="Wire")
    hands.answer("13.9", "2.5 square mm", "3")
    hands.tell("right", "enter")
    hands.tell("f4", seen="Injector flow")
    hands.answer("850 cc", "3", "4")
    hands.tell("f4", seen="press a to add")
    hands.tell("a", seen="Name of the day")
    hands.answer("winter")
    hands.tell("enter", seen="Differs that day  [")
    hands.tell("ethanol", seen="[ethanol")
    hands.tell("enter", seen="done: back")
    hands.answer("70")
    hands.tell("ctrl+g", "e", seen="On the car")
    hands.tell("down", "down", "down", "down", "down", "down")
    hands.answer("10 micron")


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_a_turbo_four_in_metric_units_with_horsepower(tmp_path: Path, width: int, height: int) -> None:
    """An invented car, as its owner tells it."""
    file = tmp_path / "four.toml"
    with wizard(file, width, height) as terminal:
        hands = Hands(terminal)
        terminal.until("Units")
        hands.tell("right", "right", "enter", seen="[             ]" if width == 80 else "[           ]")
        hands.answer("300", "350")
        hands.tell("right", "enter")
        hands.answer("", "", "4")
        hands.tell("f4", seen="Fuel temperature")
        hands.tell("right", "right", seen="E85")
        hands.tell("f4", seen="Regulator place")
        hands.answer("1.4", "", "3", "")
        hands.tell("f4", seen="no pump yet")
        hands.tell("right", "right", seen="Curve voltage")
        hands.answer("", "13.5")
        hands.answer("3 bar", "330 L/h", "9", "4", "295", "11", "5", "250", "13", "6", "190", "", "")
        hands.answer("1", "")
        _deeper_steps(hands)
        hands.tell("ctrl+s", seen="Saved")
        print(f"keys for the facts at {width} columns: {hands.keys}")
        assert hands.keys < MOST_KEYS
    _is_the_four(said_in(file))


OFFER = "12 V: 0 psi 80 gph, 40 psi 62 gph, 60 psi 50 gph, 80 psi 36 gph, 6, 8.5, 11 A at 40, 60, 80 psi"


def _runs(hands: Hands) -> None:
    """A pipe with a short hose at each end, run by run behind *more*."""
    hands.tell("ctrl+g", "m", seen="hide the further")
    ways = (
        (("right",), "1"),
        (("right",), "16"),
        (("left",), "1"),
    )  # a new run begins with the hose before it
    for number, (kind, length) in enumerate(ways, 1):
        hands.tell("enter", seen="Name of the run")
        hands.answer("")
        hands.tell(*kind, "enter")
        hands.answer(length)
        hands.tell("escape", seen=f"run {number} ")
        hands.tell("down")


def _first_four_steps(hands: Hands) -> None:
    """Goal with what lies behind *more*, fuel, pressure; no pump yet."""
    hands.answer("", "380", "500", "")
    hands.tell("left", "left", "enter")
    hands.answer("8", "")
    hands.tell("tab", "tab")
    hands.tell("right", "enter")
    hands.answer("8")
    hands.tell("f4", seen="Fuel temperature")
    hands.answer("")
    hands.tell("f4", seen="Regulator place")
    hands.tell("right", "enter")
    hands.answer("58", "")
    hands.tell("f4", seen="no pump yet")


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_a_carbureted_eight_that_gets_injection(tmp_path: Path, width: int, height: int) -> None:
    """An invented car with no pump yet, and two offers of one."""
    file = tmp_path / "eight.toml"
    with wizard(file, width, height) as terminal:
        hands = Hands(terminal)
        terminal.until("Units")
        _first_four_steps(hands)
        hands.tell("enter", seen="Line on the car")
        hands.answer("3/8")
        _runs(hands)
        hands.tell("f4", seen="Strainer fitted")
        hands.tell("f4", seen="Wire")
        hands.answer("13.8", "14 gauge", "18")
        hands.tell("right", "enter")
        hands.tell("ctrl+s", seen="Saved")
        terminal.until("look for")
        hands.tell("ctrl+g", "4", seen="Pump data")
        hands.tell("right", seen="Flow on the box")
        hands.answer("", "250 L/h", "40", "", "13.5")
        hands.tell("ctrl+g", "a", seen="Save as")
        hands.tell("one", "enter", seen="Saved")
        hands.tell("ctrl+g", "4", seen="Pump data")
        hands.tell("right", seen="Pressure")
        hands.paste(OFFER)
        terminal.until("4 points")
        hands.tell("f8", seen="points read")
        hands.tell("ctrl+g", "a", seen="Save as")
        hands.tell("ctrl+u", "two", "enter", seen="Saved")
        print(f"keys for the facts at {width} columns: {hands.keys}")
        assert hands.keys < MOST_KEYS
    said = said_in(file)
    assert "show_power" not in said and said["show_units"] == "us"
    assert said["goal"] == {
        "power": "380 hp",
        "power_at": "crank",
        "next_power": "500 hp",
        "next_boost": "8 psi",
        "next_induction": "supercharger",
    }
    assert said["engine"] == {"cylinders": 8, "induction": "none"}
    assert said["fuel"]["ethanol"] == "10 %"
    assert said["pressure"] == {"base": "58 psi", "reference": "atmosphere", "regulator": "tank"}
    assert "pump" not in said
    assert said["feed"]["chosen"] == "3/8 in"
    assert said["feed"]["run"] == [
        {"hose": "rubber", "length": "1 ft"},
        {"hose": "tube", "length": "16 ft"},
        {"hose": "rubber", "length": "1 ft"},
    ]
    assert said["wiring"] == {
        "supply": "13.8 V",
        "wire": "14 gauge",
        "length": "18 ft",
        "return_path": "chassis",
    }
    first = said_in(tmp_path / "one.toml")["pump"]
    assert first["curve"] == [{"voltage": "13.5 V", "points": [["40 psi", "250 L/h"]]}]
    second = said_in(tmp_path / "two.toml")["pump"]
    assert second["curve"] == [
        {
            "voltage": "12 V",
            "points": [["0 psi", "80 gph"], ["40 psi", "62 gph"], ["60 psi", "50 gph"], ["80 psi", "36 gph"]],
        }
    ]
    assert second["current"] == [["40 psi", "6 A"], ["60 psi", "8.5 A"], ["80 psi", "11 A"]]
