"""Figures as people say them are understood, or refused with a word on where that is asked."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk.spoken_figures import power_said

from .desks import NB, empty, opened, told


@pytest.mark.parametrize(
    ("path", "typed", "kept"),
    [
        ("fuel.ethanol", "E70", "70 %"),
        ("fuel.ethanol", "e 70", "70 %"),
        ("fuel.ethanol", "70", "70 %"),
        ("fuel.ethanol", "E101", None),
        ("engine.rpm", "7600rpm", 7600),
        ("engine.rpm", "7600 RPM", 7600),
        ("engine.rpm", "7600 hp", None),
        ("engine.cylinders", "5rpm", None),
    ],
)
def test_a_figure_is_kept_as_a_file_has_it(
    tmp_path: Path, path: str, typed: str, kept: str | int | None
) -> None:
    desk = told(tmp_path)
    desk.type(path, typed)
    assert desk.value(path) == kept
    assert (path in desk.refused) == (kept is None)


def test_a_bad_day_takes_a_blend_by_its_name(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.add("stress.case", {"name": "winter"})
    desk.type("stress.case.0.change.fuel.ethanol", "E70")
    assert desk.value("stress.case.0.change") == {"fuel.ethanol": "70 %"}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("480whp", ("480 hp", "wheels")),
        ("480 WHP", ("480 HP", "wheels")),
        ("358 wkW", ("358 kW", "wheels")),
        ("480 hp at the wheels", ("480 hp", "wheels")),
        ("480 wheel hp", ("480 hp", "wheels")),
        ("480 at the wheels", ("480", "wheels")),
        ("480 rwhp", ("480 hp", "wheels")),
        ("500 hp at the crank", ("500 hp", "crank")),
        ("500 crank hp", ("500 hp", "crank")),
        ("500 hp", None),
        ("500", None),
        ("500 W", None),
        ("wheels", None),
    ],
)
def test_a_power_says_where_it_is_measured(text: str, said: tuple[str, str] | None) -> None:
    assert power_said(text) == said


def test_power_at_the_wheels_answers_where_it_is_measured_too(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.visit("goal.power")
    for end in range(1, len("480whp") + 1):
        desk.type("goal.power", "480whp"[:end])
    assert (desk.value("goal.power"), desk.value("goal.power_at")) == ("480 hp", "wheels")
    desk.type("goal.power", "480wh")
    assert desk.value("goal.power_at") is None
    desk.type("goal.power", "480")
    assert (desk.value("goal.power"), desk.value("goal.power_at")) == ("480 hp", None)


def test_both_are_undone_in_one_go(tmp_path: Path) -> None:
    desk = told(tmp_path, goal__power_at="wheels")
    desk.visit("goal.power")
    desk.type("goal.power", "600 hp at the crank")
    assert (desk.value("goal.power"), desk.value("goal.power_at")) == ("600 hp", "crank")
    desk.undo()
    assert (desk.value("goal.power"), desk.value("goal.power_at")) == ("750 hp", "wheels")


@pytest.mark.parametrize("path", ["goal.next_power", "pull.0.power", "stress.case.0.change.goal.power"])
def test_another_power_is_measured_where_the_first_one_is(tmp_path: Path, path: str) -> None:
    desk = opened(tmp_path)
    if path.startswith("pull"):
        desk.type("pull.0.boost", "10 psi")
    if path.startswith("stress"):
        desk.add("stress.case", {})
    desk.type(path, "900 whp")
    assert desk.value("goal.power_at") != "wheels"
    assert desk.refused[path].startswith("900 hp is power at the wheels; here it is wanted at the crank")
    assert "Measured at in Goal" in desk.refused[path]
    assert len(desk.text_in_field(path).refused or "") <= 32
    desk.type("goal.power_at", "wheels")
    assert desk.text_in_field(path).text.replace(NB, " ") == "900" and path not in desk.refused
