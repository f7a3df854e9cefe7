"""Every action of the one list is done by the screen that offers it, and no screen does another."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk.desk import Desk
from fuelwiz.wizard.actions import BUILD, LIST
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.build_list.list_screen import BuildListScreen
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look


async def test_a_build_does_every_action_and_no_other(tmp_path: Path) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test():
        actions = BuildScreen(Desk.new(tmp_path)).actions
        done = [*actions.handlers, *actions.directed]
        assert sorted(done) == sorted(action.id for action in BUILD)


async def test_the_list_does_every_action_and_no_other(tmp_path: Path) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test():
        assert isinstance(app.screen, BuildListScreen)
        assert sorted(app.screen.actions.handlers) == sorted(action.id for action in LIST)
