"""A new build is said to open in the frame of its key, and that key pressed again does no harm."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.events import Key

from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.build_list.list_screen import OPENING, BuildListScreen
from fuelwiz.wizard.early_keys import EarlyKeys
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, event_of


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
@pytest.mark.parametrize("key", ["n", "enter"])
async def test_it_says_so_at_once_and_opens_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, key: str, size: tuple[int, int]
) -> None:
    opened: list[str] = []
    painted: list[str] = []
    app = FuelwizApp(tmp_path, None, look=Look())
    new_build = app.new_build

    def seen(keys: list[Key], opened_by: str) -> None:
        painted.append("\n".join(strip.text for strip in app.screen._compositor.render_strips()))
        opened.append(opened_by)
        new_build(keys, opened_by)

    monkeypatch.setattr(app, "new_build", seen)
    async with app.run_test(size=size) as pilot:
        keys = Keyboard(pilot)
        screen = app.screen
        assert isinstance(screen, BuildListScreen)
        await pilot.pause()
        screen.page.choice = 1
        for pressed in (key, key, key, "m", "e"):
            screen.post_message(event_of(pressed))
        await keys.until("Power wanted")
        await keys.settled()
        assert isinstance(app.screen, BuildScreen) and len(app.screen_stack) == 2
        assert opened == [key] and OPENING in painted[0]
        assert keys.form.path == "units" and not keys.form.unfit
        assert keys.desk.system == "metric" and OPENING not in keys.text


def test_the_key_that_opened_a_build_means_it_once() -> None:
    early = EarlyKeys(opened_by="n")
    assert all(early.hold(event_of(key)) for key in "nn4n")
    assert [event.character for event in early.taken() if isinstance(event, Key)] == ["4", "n"]
    assert not early.hold(event_of("n"))
