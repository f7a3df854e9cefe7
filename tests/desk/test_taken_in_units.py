"""What is taken where nothing is told stands in the units of the build, in fields and in the rows of lists."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.wizard.form.form_rows import columns

from .desks import empty


@pytest.mark.parametrize(
    ("units", "velocities", "column"),
    [("us", "4 6 8 10", "ft/s"), ("metric", "1.22 1.83 2.44 3.05", "m/s")],
)
def test_edges_of_velocities(tmp_path: Path, units: str, velocities: str, column: str) -> None:
    desk = empty(tmp_path)
    desk.choose("units", units)
    field = desk.text_in_field("bands.feed")
    assert (field.text, field.unit, field.assumed) == (velocities, column, True)
    desk.type("bands.feed", f"{field.text} {field.unit}")
    assert "bands.feed" not in desk.refused and not desk.text_in_field("bands.feed").assumed


@pytest.mark.parametrize(("units", "power"), [("us", "hp"), ("metric", "kW"), ("metric_hp", "hp")])
def test_the_unit_of_power(tmp_path: Path, units: str, power: str) -> None:
    desk = empty(tmp_path)
    desk.choose("units", units)
    assert desk.text_in_field("show_power").text == power


@pytest.mark.parametrize(
    ("path", "shown"), [("inlet.run", "0.61 m"), ("feed.run", "4.57 m"), ("return_line.run", "4.57 m")]
)
def test_the_length_that_is_taken_in_the_row_of_a_run(tmp_path: Path, path: str, shown: str) -> None:
    desk = empty(tmp_path)
    desk.choose("units", "metric")
    desk.type("goal.power", "300")
    desk.add(path, {})
    assert columns(desk, path, 0, {})[2] == shown
