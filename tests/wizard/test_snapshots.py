"""Pictures of the build's screen at two sizes; a change of one is looked at before it is kept."""

from __future__ import annotations

from datetime import datetime

import pytest

from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor import save_dialog
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, copy_of

SCENES = {
    "goal": ("ctrl+g", "1"),
    "pressure-wrong": ("ctrl+g", "3", *"2o"),
    "pump-curve": ("ctrl+g", "4", "down", "down"),
    "lines": ("ctrl+g", "5"),
    "help": ("ctrl+g", "1", "f1"),
    "all-keys": ("ctrl+g", "1", "ctrl+g"),
}


class Noon(datetime):
    """A clock that stands at noon."""

    @classmethod
    def now(cls, tz=None):
        return cls(2025, 5, 1, 12, 0, tzinfo=tz)


@pytest.mark.parametrize("size", [(80, 24), (120, 36)], ids=["80x24", "120x36"])
@pytest.mark.parametrize("scene", SCENES)
def test_the_screen_looks_as_it_did(snap_compare, tmp_path, monkeypatch, scene, size):
    monkeypatch.setattr(save_dialog, "datetime", Noon)
    path = copy_of("hill-climb-six", tmp_path)

    async def told(pilot):
        keys = Keyboard(pilot)
        await keys.opened(path)
        await keys.press(*SCENES[scene])
        keys.screen.keep()
        keys.desk.finish()
        keys.screen.show_all()
        await keys.settled()

    assert snap_compare(FuelwizApp(tmp_path, path, look=Look()), terminal_size=size, run_before=told)
