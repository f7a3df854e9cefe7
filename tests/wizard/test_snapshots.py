"""Pictures of the build's screen and its views; a change of one is looked at before it is kept."""

from __future__ import annotations

import math
from datetime import datetime, tzinfo
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

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
    "more": ("ctrl+g", "4", "ctrl+g", "m", "down", "down", "down"),
    "summary": ("ctrl+g", "e"),
    "what-if": ("ctrl+g", "x", *"900"),
}
FOUR_SIZES = [(60, 20), (80, 24), (120, 36), (160, 50)]
EVERY_SIZE = {"pressure-wrong", "pump-curve", "more", "summary", "what-if"}
"""What is looked at in every size; the rest in the two that most terminals have."""
TAKEN = [
    (scene, size)
    for scene in SCENES
    for size in FOUR_SIZES
    if scene in EVERY_SIZE or size in ((80, 24), (120, 36))
]


class Noon(datetime):
    """A clock that stands at noon."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> Noon:
        return cls(2025, 5, 1, 12, 0, tzinfo=tz)


VIEWS = {
    "path": ("full-session", ("ctrl+g", "v", "p")),
    "path-with-gaps": ("no-pump-yet", ("ctrl+g", "v", "p")),
    "changes": ("hill-climb-six", ("ctrl+g", "v", "w", "f6", "down")),
    "how-sure": ("twins", ("ctrl+g", "v", "o")),
}


@pytest.mark.parametrize("size", FOUR_SIZES, ids=lambda at: f"{at[0]}x{at[1]}")
@pytest.mark.parametrize("view", VIEWS)
def test_the_view_looks_as_it_did(
    snap_compare: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, view: str, size: tuple[int, int]
) -> None:
    monkeypatch.setattr(save_dialog, "datetime", Noon)
    name, pressed = VIEWS[view]
    path = copy_of(name, tmp_path)

    async def to_the_scene(pilot: Pilot[int]) -> None:
        keys = Keyboard(pilot)
        await keys.opened(path)
        await keys.until_true(lambda: keys.desk.filled_in)
        await keys.press(*pressed)
        keys.screen.show_all()
        await keys.settled()

    assert snap_compare(FuelwizApp(tmp_path, path, look=Look()), terminal_size=size, run_before=to_the_scene)


@pytest.mark.parametrize(
    ("scene", "size"), TAKEN, ids=[f"{scene}-{size[0]}x{size[1]}" for scene, size in TAKEN]
)
def test_the_screen_looks_as_it_did(
    snap_compare: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, scene: str, size: tuple[int, int]
) -> None:
    monkeypatch.setattr(save_dialog, "datetime", Noon)
    path = copy_of("hill-climb-six", tmp_path)

    async def to_the_scene(pilot: Pilot[int]) -> None:
        keys = Keyboard(pilot)
        await keys.opened(path)
        for key in SCENES[scene]:
            await keys.press(key)  # each drawn before the next: what has scrolled goes by what was in sight
        keys.screen.keep()
        keys.desk.fill_in(math.inf)
        keys.screen.show_all()
        await keys.settled()

    assert snap_compare(FuelwizApp(tmp_path, path, look=Look()), terminal_size=size, run_before=to_the_scene)
