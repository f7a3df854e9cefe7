"""The rows of a bad day of one's own: what is cleared, what is looked for, and what is said of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.wizard.find_screen import FindScreen

from .keyboard import Keyboard, at_build, copy_of, flat

ETHANOL, TEMPERATURE = "stress.case.0.change.fuel.ethanol", "stress.case.0.change.fuel.temperature"


def with_a_day(folder: Path, change: str) -> Path:
    path = copy_of("mild", folder)
    with path.open("a", encoding="utf-8") as file:
        file.write(f'\n[[stress.case]]\nname = "winter"\nchange = {{ {change} }}\n')
    return path


async def into_the_day(keys: Keyboard, path: str) -> None:
    await keys.press("ctrl+g", "9", "enter")
    for _ in range(4):
        if keys.form.path == path:
            return
        await keys.press("down")
    raise AssertionError(f"{path} was never reached on\n{keys.text}")


async def test_a_cleared_answer_keeps_its_row_while_one_is_in_it(tmp_path: Path) -> None:
    build = with_a_day(tmp_path, '"fuel.ethanol" = "85 %", "fuel.temperature" = "-5 degC"')
    async with at_build(build) as keys:
        await into_the_day(keys, ETHANOL)
        await keys.press("ctrl+u")
        assert keys.form.path == ETHANOL
        assert "Type the ethanol content of that day" in flat(keys.part("form"))
        await keys.type("70")
        await keys.press("enter")
        assert list(keys.desk.value("stress.case")[0]["change"].items()) == [
            ("fuel.ethanol", "70 %"),
            ("fuel.temperature", "-5 degC"),
        ]


@pytest.mark.parametrize("way", [("down",), ("escape",), ("f4",), ("f2",)])
async def test_one_that_is_left_empty_goes_with_its_row(tmp_path: Path, way: tuple[str, ...]) -> None:
    build = with_a_day(tmp_path, '"fuel.ethanol" = "85 %", "fuel.temperature" = "-5 degC"')
    async with at_build(build) as keys:
        await into_the_day(keys, ETHANOL)
        await keys.press("ctrl+u", *way)
        assert keys.desk.value("stress.case.0.change") == {"fuel.temperature": "-5 degC"}
        assert keys.desk.refused == {}
        await keys.press("ctrl+z")
        assert keys.desk.value("stress.case.0.change") == {
            "fuel.ethanol": "85 %",
            "fuel.temperature": "-5 degC",
        }


async def test_a_day_on_which_nothing_differs_is_left_out_and_no_key_of_the_file_shows(
    tmp_path: Path,
) -> None:
    build = with_a_day(tmp_path, '"goal.next_power" = "550 hp"')
    async with at_build(build) as keys:
        await into_the_day(keys, "stress.case.0.change.goal.next_power")
        await keys.press("ctrl+u")
        assert "still using power for one day 550 hp on that day" in flat(keys.part("live"))
        await keys.press("down")
        assert "pick what differs that day; the day is left out until then" in flat(keys.part("live"))
        assert "next_power" not in keys.text


async def test_the_list_says_what_differs_as_people_write_it(tmp_path: Path) -> None:
    async with at_build(with_a_day(tmp_path, '"fuel.temperature" = "-5degC"')) as keys:
        await keys.press("ctrl+g", "9")
        assert "fuel temperature -5 °C" in flat(keys.part("form"))


@pytest.mark.parametrize(("typed", "picks"), [("ethanol", ETHANOL), ("fuel temp", TEMPERATURE)])
async def test_words_typed_where_one_is_to_be_picked_look_for_it(
    tmp_path: Path, typed: str, picks: str
) -> None:
    async with at_build(with_a_day(tmp_path, '"pressure.boost" = "10 psi"')) as keys:
        await into_the_day(keys, "stress.case.change")
        await keys.type(typed)
        screen = keys.pilot.app.screen
        assert isinstance(screen, FindScreen) and screen.editor.text == typed
        await keys.press("enter")
        assert keys.form.path == picks


async def test_a_word_that_begins_with_the_letter_that_adds_is_found_all_the_same(tmp_path: Path) -> None:
    async with at_build(with_a_day(tmp_path, '"pressure.boost" = "10 psi"')) as keys:
        await into_the_day(keys, "stress.case.change")
        await keys.type("altitude")
        screen = keys.pilot.app.screen
        assert isinstance(screen, FindScreen) and screen.hits[0].id == "pressure.altitude"
