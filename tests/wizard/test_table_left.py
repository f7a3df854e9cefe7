"""From the table of sizes, which takes the room of the questions, a key about a question brings them back."""

from __future__ import annotations

from pathlib import Path

import pytest

from .keyboard import Keyboard, at_build, copy_of


def shown(keys: Keyboard) -> tuple[str, bool]:
    """What has the keys, and whether the questions are folded away."""
    return keys.screen.mode, len(keys.part("form")) == 1


@pytest.mark.parametrize("key", ["f4", "f3", "tab", "shift+tab", "f2"])
async def test_a_key_about_a_question_shows_it(tmp_path: Path, key: str) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("pressure.base")
        before = keys.form.place.step
        await keys.press("f6")
        assert shown(keys) == ("table", True)
        await keys.press(key)
        assert shown(keys) == ("form", False)
        assert (keys.form.place.step != before) == (key in ("f3", "f4"))


async def test_the_table_keeps_its_own_keys(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.press("f6", "down", "pagedown", "f5")
        assert keys.screen.mode == "table"
