"""Keys that are easily pressed by mistake: each does what is seen, or says why it does nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.live.rule import FINDINGS

from .keyboard import at_build, copy_of, flat


def begun(folder: Path) -> Desk:
    desk = Desk.new(folder)
    desk.type("goal.power", "410 hp")
    return desk


def at_fuel(folder: Path) -> Form:
    form = Form(begun(folder))
    form.go_to_path("fuel.which")
    return form


def press(form: Form, text: str) -> None:
    for sign in text:
        form.key("space" if sign == " " else sign, sign)


def test_figures_that_are_no_answer_choose_nothing_and_say_so(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    desk = form.desk
    before = desk.text_in_field("fuel.which")
    for number, figure in enumerate("1385"):
        form.key(figure, figure)
        assert desk.text_in_field("fuel.which") == before and before.assumed
        assert form.note.startswith(f'"{"1385"[: number + 1]}" is none of the answers')
    form.key("enter", None)
    assert form.path == "fuel.which", "what is refused is not passed by unseen"
    form.key("right", None)
    assert not desk.text_in_field("fuel.which").assumed
    assert not form.note.startswith('"')


@pytest.mark.parametrize(
    ("typed", "answer", "ethanol"),
    [
        ("E70", "blend", "70 %"),
        ("e 62.5", "blend", "62.5 %"),
        ("70 %", "blend", "70 %"),
        ("E85", "85 %", "85 %"),
        ("E10", "10 %", "10 %"),
        ("E0", "0 %", "0 %"),
        ("E100", "blend", "100 %"),
    ],
)
def test_a_blend_is_typed_by_its_name(tmp_path: Path, typed: str, answer: str, ethanol: str) -> None:
    form = at_fuel(tmp_path)
    press(form, typed)
    assert form.desk.text_in_field("fuel.which").text == answer
    assert form.desk.value("fuel.ethanol") == ethanol
    assert not form.unfit
    form.key("enter", None)
    assert form.path != "fuel.which"
    assert form.desk.undo() == "fuel.which"
    assert form.desk.value("fuel.ethanol") is None, "the blends on the way to it leave no trace"


def test_a_text_that_fits_no_answer_leaves_the_one_that_stood(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    press(form, "E70")
    form.focus_on(form.pointer.at)
    for wrong in ("E700", "metx", "E85%%", "zqylol"):
        press(form, wrong)
        assert form.unfit == wrong and f'"{wrong}" is none of the answers' in form.note
        assert form.desk.value("fuel.ethanol") == "70 %", wrong
        for _ in wrong:
            form.key("backspace", None)
        assert not form.unfit and not form.note
        assert form.desk.value("fuel.ethanol") == "70 %", "nothing is typed any more"


def test_an_answer_that_arrows_chose_stands_when_a_text_fits_none(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    form.key("right", None)
    assert form.desk.value("fuel.ethanol") == "30 %"
    press(form, "E9x")
    assert form.desk.value("fuel.ethanol") == "30 %"


def test_more_letters_tell_an_answer_from_another(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    press(form, "gasoline, no")
    assert form.desk.value("fuel.ethanol") == "0 %"
    form.focus_on(form.pointer.at)
    press(form, "me")
    assert form.desk.value("fuel.kind") == "methanol"


def test_a_letter_again_goes_to_the_next_answer_that_it_begins(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    seen = []
    for _ in range(3):
        press(form, "e")
        seen.append(form.desk.text_in_field("fuel.which").text)
    assert seen[:2] == ["30 %", "85 %"] and len(set(seen)) == 3


def test_a_pasted_fuel_is_taken_like_a_typed_one(tmp_path: Path) -> None:
    form = at_fuel(tmp_path)
    assert form.paste("E70\n") == "edited"
    assert form.desk.value("fuel.ethanol") == "70 %"


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_what_fits_no_answer_is_said_beside_it(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("twins", tmp_path), size) as keys:
        keys.form.go_to_path("fuel.which")
        stood = keys.desk.text_in_field("fuel.which")
        await keys.type("1150")
        row = next(line for line in keys.part("form") if " Fuel " in line)
        assert "! no answer: 1150" in row
        assert '"1150" is none of the answers' in flat(keys.part("form"))
        assert keys.desk.text_in_field("fuel.which") == stood


async def test_pages_of_a_view_that_is_read_leave_the_size_alone(tmp_path: Path) -> None:
    async with at_build(copy_of("twins", tmp_path), (60, 20)) as keys:
        await keys.press("ctrl+g", "v", "f", "f6")
        assert keys.screen.view == FINDINGS
        size, first = keys.screen.shown_size, keys.part("live")
        await keys.press("pagedown")
        assert keys.screen.shown_size == size
        paged = keys.part("live")
        assert paged != first
        await keys.press("pageup")
        assert keys.part("live") == first and keys.screen.shown_size == size
        await keys.press("escape")
        first = keys.part("live")
        await keys.press("pagedown")
        assert keys.part("live") != first and keys.screen.shown_size == size, "at the questions too"
        await keys.press("ctrl+g", "v", "p", "pagedown")
        assert keys.screen.shown_size != size, "where figures of a size are shown they highlight another"


async def test_a_new_name_replaces_the_one_that_is_shown(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.press("ctrl+g", "a")
        assert keys.screen.prompt is not None and keys.screen.prompt.editor.text
        await keys.type("Other six")
        assert keys.screen.prompt.editor.text == "Other six"
        await keys.press("escape", "ctrl+g", "a")
        shown = keys.screen.prompt.editor.text
        await keys.press("end")
        await keys.type(" b")
        assert keys.screen.prompt.editor.text == f"{shown} b"


async def test_a_wire_without_its_supply_says_what_is_needed_and_what_would_do(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), (60, 20)) as keys:
        for path in list(keys.desk.plain.get("wiring", {})):
            keys.desk.type(f"wiring.{path}", "")
        assert "wiring" not in keys.desk.plain
        await keys.go_to("wiring.length")
        await keys.type("14")
        assert "! needed: a voltage" in flat(keys.part("form"))
        assert "Wiring: give the supply voltage" in flat(keys.part("live"))
        await keys.go_to("wiring.supply")
        await keys.press("question_mark")
        assert "try 13.8 V; arrows pick it." in flat(keys.part("form"))
        await keys.press("right")
        assert keys.desk.plain["wiring"]["supply"] == "13.8 V" and not keys.desk.refused


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
async def test_page_down_turns_the_list_of_what_to_buy_where_it_is_longer_than_its_room(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(copy_of("full-session", tmp_path), size) as keys:
        await keys.until_true(lambda: keys.desk.filled_in)
        await keys.press("ctrl+g", "e")
        shown, chosen = keys.part("live"), keys.screen.shown_size
        assert any("more below: PgDn" in line for line in shown)
        await keys.press(*["pagedown"] * 9)
        assert any("On the car already" in line for line in keys.part("live"))
        assert keys.screen.shown_size == chosen
        await keys.press(*["pageup"] * 9)
        assert keys.part("live") == shown
        await keys.press("ctrl+g", "1", "pagedown")
        assert keys.screen.shown_size != chosen
