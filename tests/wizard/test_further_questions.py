"""Further questions, opened on the way through a step with Enter: one key leads past all of them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.actions import BUILD, Action
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import CellsRow, DoRow, HeadRow
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.own_keys import KeyTable

from .keyboard import Keyboard, at_build, copy_of, flat

SIZES = [(60, 20), (80, 24), (120, 36)]
WAY_OUT = "None of these must be answered: F4 goes to the next step."


async def through_to_more(keys: Keyboard) -> None:
    keys.form.go_to_step("goal")
    for _ in range(20):
        if getattr(keys.form.row, "act", "") == "more":
            return
        await keys.press("enter")
    raise AssertionError("Enter passed what leads to the further questions")


@pytest.mark.parametrize("size", SIZES, ids=lambda at: f"{at[0]}x{at[1]}")
async def test_whoever_goes_through_with_enter_is_told_how_to_go_on(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(copy_of("hill-climb-coupe", tmp_path), size) as keys:
        await through_to_more(keys)
        assert "Enter shows them, Down goes on. None must be answered." in flat(keys.part("form"))
        await keys.press("enter")
        assert keys.form.path == "goal.reserve" and WAY_OUT in flat(keys.part("footer"))
        await keys.press("enter")
        assert WAY_OUT not in flat(keys.part("footer"))
        assert flat(keys.part("footer")).startswith("Enter next, stays assumed F4 step ")
        await keys.press("f4")
        assert keys.form.place.step == "fuel"
        assert not re.match("Enter next(, stays assumed)? F4 step ", flat(keys.part("footer")))


async def test_behind_ctrl_g_it_is_told_too_and_not_where_they_are_hidden_again(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-coupe", tmp_path)) as keys:
        await keys.press("ctrl+g", "1", "ctrl+g", "m")
        assert WAY_OUT in flat(keys.part("footer"))
        await keys.press("ctrl+g", "m")
        assert "must be answered: F4" not in flat(keys.part("footer"))
        assert not keys.form.place.more


async def test_it_names_the_key_that_goes_there(tmp_path: Path) -> None:
    path = copy_of("hill-climb-coupe", tmp_path)
    moved = tuple(
        Action(one.id, ("f12",), one.letter, one.say, one.text) if one.id == "next_step" else one
        for one in BUILD
    )
    app = FuelwizApp(tmp_path, path, look=Look(), keys=KeyTable(build=moved))
    async with app.run_test(size=(80, 24)) as pilot:
        keys = Keyboard(pilot)
        await keys.opened(path)
        await keys.press("ctrl+g", "1", "ctrl+g", "m")
        assert WAY_OUT.replace("F4", "F12") in flat(keys.part("footer"))


def test_the_columns_of_a_log_are_named_in_one_word(tmp_path: Path) -> None:
    form = Form(Desk.open(copy_of("full-session", tmp_path)), "measured")
    form.go_to_step("measured")
    (more,) = [row for row in form.pointer.rows if isinstance(row, DoRow) and row.act == "more"]
    assert more.text.endswith("the columns of a pull's log") and "column:" not in more.text


def test_the_table_of_a_pull_is_told_from_the_questions_of_the_goal(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    form = Form(desk)
    form.go_to_question("pull")
    head = form.pointer.rows[form.pointer.at - 1]
    assert isinstance(head, HeadRow) and head.columns[0] == "Points of a pull"
    assert isinstance(form.row, CellsRow) and form.row.label == "Power"
