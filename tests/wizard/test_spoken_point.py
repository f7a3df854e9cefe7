"""A pump's figure said in one sentence, at whichever of its fields."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from .keyboard import Keyboard, at_build

SAID = "250 L/h at 40 psi at 13.5 V"
ONE_FIGURE = """format = 1
name = "one"
[goal]
power = "600 hp"
[[pump.curve]]
voltage = "12.8 V"
points = [["43 psi", "60 gal/h"]]
"""
FIELDS = ("pump.figure.flow", "pump.figure.pressure", "pump.curve.0.voltage")
UNDERSTOOD = [{"voltage": "13.5 V", "points": [["40 psi", "250 L/h"]]}]


@pytest.fixture
def build(tmp_path: Path) -> Path:
    path = tmp_path / "one.toml"
    path.write_text(ONE_FIGURE)
    return path


def curves(keys: Keyboard) -> Any:
    return keys.desk.plain["pump"]["curve"]


async def say(keys: Keyboard, how: str, said: str) -> None:
    if how == "paste":
        await keys.paste(said)
    else:
        await keys.type(said)
        await keys.press(how)


@pytest.mark.parametrize("path", FIELDS)
@pytest.mark.parametrize("how", ["paste", "enter", "down", "tab"])
async def test_a_sentence_sets_the_whole_point_and_one_undo_takes_it_back(
    build: Path, path: str, how: str
) -> None:
    async with at_build(build) as keys:
        keys.form.go_to_path(path)
        before = curves(keys)
        await say(keys, how, SAID)
        assert curves(keys) == UNDERSTOOD
        assert not keys.desk.refused and keys.form.path == path and keys.screen.mode == "form"
        assert "Understood: 250 L/h at 40 psi, 13.5 V." in " ".join(keys.text.split())
        await keys.press("ctrl+z")
        assert curves(keys) == before and not keys.desk.refused


async def test_without_volts_those_that_stand_stay(build: Path) -> None:
    async with at_build(build) as keys:
        keys.form.go_to_path(FIELDS[0])
        await say(keys, "enter", "250 L/h at 40 psi")
        assert curves(keys) == [{"voltage": "12.8 V", "points": [["40 psi", "250 L/h"]]}]


@pytest.mark.parametrize("said", ["250 L/h at 13.5 V", "250 L/h", "9 L/h at 99999 psi", "8 A at 40 psi"])
async def test_what_says_no_whole_point_is_read_as_any_text(build: Path, said: str) -> None:
    async with at_build(build) as keys:
        keys.form.go_to_path(FIELDS[0])
        await say(keys, "enter", said)
        assert curves(keys)[0]["voltage"] == "12.8 V"
        assert curves(keys)[0]["points"][0][0] == "43 psi"


async def test_of_several_points_it_sets_the_one_it_is_said_at(build: Path) -> None:
    build.write_text(
        ONE_FIGURE.replace('["43 psi", "60 gal/h"]', '["30 psi", "70 gal/h"], ["43 psi", "60 gal/h"]')
    )
    async with at_build(build) as keys:
        keys.form.go_to_path("pump.curve.0.points.1.1")
        await say(keys, "enter", SAID)
        assert curves(keys) == [
            {"voltage": "13.5 V", "points": [["30 psi", "70 gal/h"], ["40 psi", "250 L/h"]]}
        ]
