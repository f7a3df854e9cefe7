"""Any keys in any order: the screen never fails, loses nothing that was typed, and agrees with its file."""

from __future__ import annotations

import math
import os
import random
import secrets
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.form.form_rows import cells_of

from .keyboard import Keyboard, at_build, copy_of

WALKS = int(os.environ.get("FUELWIZ_WALKS", "60"))
SEED = os.environ.get("FUELWIZ_SEED") or str(secrets.randbelow(10**9))
SIZES = [(60, 20), (80, 24), (120, 36), (160, 50)]
MOST_KEYS = 12
KEYS = (
    *(["tab", "enter", "down"] * 3),
    *("up", "shift+tab", "left", "right", "space", "backspace", "delete", "home", "end"),
    *("f1", "f2", "f3", "f4", "f5", "f6", "f7", "f8", "f9", "f12", "pageup", "pagedown", "escape"),
    *("ctrl+a", "ctrl+d", "ctrl+e", "ctrl+g", "ctrl+k", "ctrl+s", "ctrl+u", "ctrl+w", "ctrl+y", "ctrl+z"),
)
TEXTS = (
    "600",
    "0",
    "-1",
    "1e9",
    "15 %",
    "20 psi",
    "3 bar",
    "hot",
    "?",
    "[b]x",
    "é漢字",
    "14 ft",
    "-8",
    "3,5",
    "4x",
    "900cc/min",
    "12 AWG",
    "  ",
    "m",
    "d",
    "1",
    "s",
)
STARTS = ("hill-climb-six", "no-pump-yet", "goal-alone", "full-session", "twins")
LEAVES = "bqxkgc"  # behind Ctrl+G these leave the screen, and so do y, s, d in the question that Esc asks


def some_keys(chance: random.Random) -> list[str]:
    """A dozen keys and signs, in texts, of the kind that people press."""
    pressed: list[str] = []
    while len(pressed) < MOST_KEYS:
        pressed += [chance.choice(KEYS)] if chance.random() < 0.7 else list(chance.choice(TEXTS))
    return pressed


@contextmanager
def repeatable(number: int, pressed: list[str]) -> Iterator[None]:
    """A failure says which keys made it, and how to press them again."""
    try:
        yield
    except Exception as error:
        error.add_note(f"FUELWIZ_SEED={SEED}, walk {number}, after {pressed}")
        raise


async def press_one(keys: Keyboard, key: str) -> None:
    """One key, except where it would leave the build; what is typed must stand where it was typed."""
    screen, form = keys.screen, keys.form
    if (screen.mode == "keys" and key in LEAVES) or (
        screen.prompt and screen.prompt.letters and key in "skxy"
    ):
        key = "escape"
    if key == "f8" and form.question.key.startswith("log."):
        return  # the logs that are at hand are listed on a screen of their own
    if key == "escape" and screen.prompt is None and screen.mode == "form" and not form.place.in_entry:
        return
    typing = screen.mode in ("form", "help") and screen.prompt is None and len(key) == 1
    at, before, was_in_entry = form.path, form.editor, form.place.in_entry
    await keys.press_soon(key)
    if typing and key == "a" and form.place.in_entry and not was_in_entry:
        return  # on the row that adds to a list the letter added one, and the pointer is in it
    if typing and cells_of(form.row) and key != "?":
        assert form.path == at, f"{key!r} moved the pointer from {at} to {form.path}"
        wipes = key == " " and (before.selected or not before.text) and not form.asks_text()
        assert form.editor == (before if wipes else before.insert(key))
        if form.editor.text.strip():  # blanks alone are nothing told: the usual value stands there
            typed = form.editor.text.strip()
            # A bare figure for a dash size is written with its dash.
            assert form.desk.text_in_field(at).text.strip() in (typed, f"-{typed}")


async def reopened_alike(keys: Keyboard) -> None:
    """What is saved and opened again is the same build with the same answer, unless a save is refused."""
    desk = keys.desk
    try:
        saved = desk.save(overwrite=True)
    except SaveRefused as refused:
        assert desk.refused or desk.result is None, refused
        return
    again = Desk.open(saved.path)
    again.update()
    again.finish()
    assert again.plain == desk.plain
    if again.result.figures != desk.result.figures:  # a report, or a pause, had the slow parts worked out too
        for one in (again, desk):
            one.fill_in(math.inf)
    assert again.result.figures == desk.result.figures
    assert again.result.words == desk.result.words


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_any_keys_in_any_order(tmp_path: Path, size: tuple[int, int]) -> None:
    """Other walks each time, in one program; `FUELWIZ_SEED` repeats those that failed, `FUELWIZ_WALKS` takes more."""
    async with at_build(tmp_path / "first.toml", size) as keys:
        app = keys.pilot.app
        assert isinstance(app, FuelwizApp)
        for number in range(SIZES.index(size), WALKS, len(SIZES)):
            folder = tmp_path / str(number)
            folder.mkdir()
            chance = random.Random(f"{SEED} {number}")
            path = copy_of(chance.choice(STARTS), folder)
            app.open_build(path)
            await keys.opened(path)
            pressed = some_keys(chance)
            for count, key in enumerate(pressed, 1):
                with repeatable(number, pressed[:count]):
                    await press_one(keys, key)
            with repeatable(number, pressed):
                await keys.settled()
                keys.says_all_within()
                await reopened_alike(keys)
