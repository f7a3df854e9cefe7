"""A bad day of one's own under the keys: a letter adds, Enter goes on, and a list gives what differs."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.wizard.find_screen import FindScreen

from .keyboard import at_build, copy_of, flat


async def test_a_day_is_told_with_a_letter_and_words_of_a_question(tmp_path: Path) -> None:
    async with at_build(copy_of("mild", tmp_path), (60, 20)) as keys:
        await keys.press("ctrl+g", "9", "enter")
        assert keys.desk.value("stress.case") is None, "Enter goes on"
        await keys.press("up", "a")
        await keys.type("winter")
        await keys.press("enter")
        assert "Pick an answer that differs that day." in flat(keys.part("form"))
        await keys.press("enter")
        assert isinstance(keys.pilot.app.screen, FindScreen)
        await keys.press(*"ethanol", "enter")
        await keys.type("70")
        await keys.press("enter")
        assert keys.desk.value("stress.case") == [{"name": "winter", "change": {"fuel.ethanol": "70 %"}}]
        row = keys.form.row
        await keys.press("enter")
        assert keys.form.row is not row and not isinstance(keys.pilot.app.screen, FindScreen), "Enter goes on"
        await keys.press("up", "a")
        assert isinstance(keys.pilot.app.screen, FindScreen), "a letter adds"
