"""A dyno sheet's points, pasted by their units, by the head of their columns, or in the usual order."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk.points.pull_table import read_pull

from .desks import told

WANTED = (("330 hp", "24 psi"), ("410 hp", "21 psi"))


@pytest.mark.parametrize(
    "text",
    [
        "4500 330 24\n7200 410 21",
        "4500 rpm, 330 hp, 24 psi\n7200 rpm, 410 hp, 21 psi",
        "boost,power,rpm\n24,330,4500\n21,410,7200",
        "330 hp at 4500 rpm and 24 psi\n\n410 hp at 7200 rpm and 21 psi",
    ],
)
def test_points_of_a_pull_are_read(text: str) -> None:
    found = read_pull(text, "us")
    assert (found.points, found.speeds, found.left_out) == (WANTED, ("4500", "7200"), ())


def test_bare_numbers_are_in_the_units_shown() -> None:
    assert read_pull("330 1.6", "metric_hp").points == (("330 hp", "1.6 bar"),)
    assert read_pull("330 1.6", "metric").points == (("330 kW", "1.6 bar"),)


def test_what_is_no_point_is_said() -> None:
    found = read_pull("4500 330 24\n7200 9999999 21\nhello 3", "us")
    assert len(found.points) == 1
    assert found.left_out == ('line 2, "7200 9999999 21": left out', 'line 3, "hello 3": left out')


def test_a_pull_goes_into_the_build(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.set_points("pull", read_pull("4500 330 24\n410 hp 21 psi", "us"))
    assert desk.value("pull") == [
        {"rpm": 4500, "power": "330 hp", "boost": "24 psi"},
        {"power": "410 hp", "boost": "21 psi"},
    ]
    assert desk.refused == {}
    desk.type("pull.1.boost", "1.5 bar")
    desk.type("pull.2.power", "300")
    desk.type("pull.2.boost", "20")
    assert desk.value("pull")[2] == {"power": "300 hp", "boost": "20 psi"}
