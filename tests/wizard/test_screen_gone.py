"""What was to follow on a build's screen may come after another screen took its place: then it does nothing."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.build_list.list_screen import BuildListScreen
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look

from .keyboard import at_build, copy_of

BUILD = "hill-climb-coupe"


@pytest.mark.parametrize("way", [("ctrl+g", "b"), ("escape",)])
async def test_an_unchanged_build_is_left_for_the_list(way: Sequence[str], tmp_path: Path) -> None:
    async with at_build(copy_of(BUILD, tmp_path)) as keys:
        left = keys.screen
        for key in way:
            await keys.press_soon(key)
        await keys.until_true(lambda: isinstance(keys.pilot.app.screen, BuildListScreen))
        await keys.pilot.pause(0.5)
        assert not left.is_attached
        assert isinstance(keys.pilot.app, FuelwizApp) and keys.pilot.app.crash is None


async def test_nothing_follows_on_a_screen_whose_parts_are_gone(tmp_path: Path) -> None:
    async with at_build(copy_of(BUILD, tmp_path)) as keys:
        left = keys.screen
        keys.pilot.app.switch_screen(BuildListScreen(tmp_path))
        await keys.until_true(lambda: not left.is_attached)
        assert not left.query("FormView")
        for late in (left._first_answer, left._pauses._finish, left.lay_out, left.show_all):
            late()
        left.say("Saved.")
        assert left.message == "Saved."


async def test_a_screen_may_be_replaced_before_its_first_answer(tmp_path: Path) -> None:
    path = copy_of(BUILD, tmp_path)
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        quick = BuildScreen(Desk.open(path))
        app.switch_screen(quick)
        app.switch_screen(BuildListScreen(tmp_path))
        await pilot.pause(0.5)
        assert isinstance(app.screen, BuildListScreen)
        assert app.crash is None and not quick.is_ready
