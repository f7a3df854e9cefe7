"""Compare from inside a build: with itself as saved, with what a what-if is tried against, with another one."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from textual.pilot import Pilot

from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.compare_screen import CompareScreen
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.editor.compare_dialog import ALONE, NEEDS
from fuelwiz.wizard.find_screen import FindScreen
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.painted import Painted
from fuelwiz.wizard.what_if import WhatIfScreen

from .keyboard import EXAMPLES, Keyboard, event_of

SIZES = [(80, 24), (60, 20), (120, 36), (160, 50)]


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """The invented coupe of the examples: 560 hp on E85, alone in its folder."""
    return Path(shutil.copy(EXAMPLES / "hill-climb-coupe.toml", tmp_path / "coupe.toml"))


def shown(pilot: Pilot[int]) -> str:
    """All that stands on the screen in front."""
    return "\n".join(
        view.render_line(y).text.replace("\u00a0", " ")
        for view in pilot.app.screen.query(Painted)
        for y in range(view.size.height)
    )


async def side_by_side(pilot: Pilot[int]) -> str:
    """What the comparison says once it is there."""
    for _ in range(200):
        if isinstance(pilot.app.screen, CompareScreen) and "Different inputs" in shown(pilot):
            return shown(pilot)
        await pilot.pause(0.02)
    raise AssertionError(f"no comparison on {pilot.app.screen}:\n{shown(pilot)}")


async def opened(pilot: Pilot[int], build: Path) -> Keyboard:
    keys = Keyboard(pilot)
    await keys.opened(build)
    return keys


async def test_what_was_changed_stands_beside_what_was_saved(build: Path, tmp_path: Path) -> None:
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, build)
        keys.desk.type("goal.power", "700")
        await keys.press("ctrl+g", "c")
        told = await side_by_side(pilot)
        row = next(line for line in told.splitlines() if line.strip().startswith("Power wanted"))
        assert row.split() == ["Power", "wanted", "700", "hp", "560", "hp"]
        assert "as it stands here" in told and "coupe.toml" in told
        await keys.pilot.press("escape")
        assert isinstance(pilot.app.screen, BuildScreen) and keys.desk.value("goal.power") == "700 hp"


@pytest.mark.parametrize("size", SIZES)
async def test_another_build_is_picked_from_the_folder(
    build: Path, tmp_path: Path, size: tuple[int, int]
) -> None:
    shutil.copy(EXAMPLES / "mild.toml", tmp_path)
    (tmp_path / "broken.toml").write_text("format = 9", encoding="utf-8")
    shutil.copy(EXAMPLES / "hill-climb-six.toml", tmp_path)
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=size) as pilot:
        keys = await opened(pilot, build)
        await keys.press("ctrl+g", "c")
        assert isinstance(pilot.app.screen, FindScreen)
        told = shown(pilot)
        assert "Compare with" in told and "Mild eight" in told and "Hill-climb six" in told
        assert "broken" not in told and "coupe.toml" not in told
        for letter in "mild":
            await pilot.press(letter)
        await pilot.press("enter")
        told = await side_by_side(pilot)
        assert "Mild eight" in told and "Hill-climb coupe" in told
        await pilot.press("escape")
        assert isinstance(pilot.app.screen, BuildScreen)


async def test_a_what_if_stands_beside_what_it_is_tried_against(build: Path, tmp_path: Path) -> None:
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, build)
        await keys.press("ctrl+g", "x")
        await pilot.pause()
        assert isinstance(pilot.app.screen, WhatIfScreen)
        await keys.press(*"700")
        await keys.press("ctrl+g", "c")
        told = await side_by_side(pilot)
        row = next(line for line in told.splitlines() if line.strip().startswith("Power wanted"))
        assert row.split() == ["Power", "wanted", "560", "hp", "700", "hp"]
        assert "unchanged" in told and "what if" in told
        assert "Chosen size" not in told, "the copy keeps its size, but nobody chose one"
        await pilot.press("escape")
        assert isinstance(pilot.app.screen, WhatIfScreen)


async def test_what_cannot_be_compared_is_said(build: Path, tmp_path: Path) -> None:
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, build)
        await keys.press("ctrl+g", "c")
        assert isinstance(pilot.app.screen, BuildScreen)
        assert " ".join(shown(pilot).split()).endswith(ALONE)
    empty = tmp_path / "empty.toml"
    async with FuelwizApp(tmp_path, empty, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, empty)
        await keys.press("ctrl+g", "c")
        assert NEEDS in shown(pilot)


async def test_keys_typed_ahead_reach_the_screen_that_they_are_meant_for(build: Path, tmp_path: Path) -> None:
    """All of them come before the screen that the second one opens."""
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, build)
        await keys.go_to("goal.power")
        for key in ("ctrl+g", "x", *"700"):
            keys.screen.post_message(event_of(key))
        for _ in range(100):
            await pilot.pause(0.02)
            screen = pilot.app.screen
            if isinstance(screen, WhatIfScreen) and screen.desk.value("goal.power") == "700 hp":
                break
        assert isinstance(screen, WhatIfScreen) and screen.desk.value("goal.power") == "700 hp"
        assert screen.origin.desk.value("goal.power") == "560 hp"


async def test_a_key_behind_the_one_that_takes_a_find_closes_nothing_more(
    build: Path, tmp_path: Path
) -> None:
    async with FuelwizApp(tmp_path, build, look=Look()).run_test(size=(80, 24)) as pilot:
        keys = await opened(pilot, build)
        await keys.press("ctrl+p")
        find = pilot.app.screen
        assert isinstance(find, FindScreen)
        for key in ("escape", "f1"):
            find.post_message(event_of(key))
        await pilot.pause(0.1)
        assert keys.screen.mode == "help"
