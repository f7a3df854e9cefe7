"""What stands on the page for a table of points is kept like any other answer, until it is used or given up."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.store.drafts import drafts_of, pending_drafts
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, at_build, copy_of

TABLE = "40 psi\t60 gal/h\n60 psi\t55 gal/h"


@pytest.fixture
def build(tmp_path: Path) -> Path:
    return copy_of("hill-climb-six", tmp_path)


async def on_the_page(keys: Keyboard, path: str) -> None:
    await keys.go_to(path)
    await keys.press("f8")
    assert keys.screen.mode == "points"


@pytest.mark.parametrize("path", ["pump.known", "pump.curve.0.points.0.0", "pull.0.power"])
async def test_what_is_typed_there_is_in_the_draft_and_stands_there_again(build: Path, path: str) -> None:
    async with at_build(build) as keys:
        await on_the_page(keys, path)
        await keys.type("40 psi, 6")
        await keys.until_true(lambda: bool(pending_drafts(build)))
        opened_at = keys.screen.points_view.path
    (draft,) = drafts_of(build)
    app = FuelwizApp(build.parent, look=Look())
    async with app.run_test(size=(80, 24)) as pilot:
        app.show_build(Desk.from_draft(draft.place))
        again = Keyboard(pilot)
        await again.opened(build)
        assert again.screen.mode == "points" and again.screen.points_view.text == "40 psi, 6"
        assert again.screen.points_view.path == opened_at
        await again.type("0 gal/h")
        assert "40 psi, 60 gal/h" in again.text


async def test_a_paste_is_kept_tabs_and_all_and_goes_once_it_is_used(build: Path) -> None:
    async with at_build(build) as keys:
        await on_the_page(keys, "pump.known")
        await keys.paste(TABLE)
        await keys.until_true(lambda: bool(pending_drafts(build)))
        (draft,) = drafts_of(build)
        assert Desk.from_draft(draft.place).table[1] == TABLE
        await keys.press("f8")
        assert keys.screen.mode == "form" and keys.desk.table == ("", "")
        points = [["40 psi", "60 gal/h"], ["60 psi", "55 gal/h"]]
        assert keys.desk.plain["pump"]["curve"][0]["points"] == points


async def test_what_is_left_there_is_no_change_but_stands_there_when_one_comes_back(build: Path) -> None:
    async with at_build(build) as keys:
        await on_the_page(keys, "pump.known")
        await keys.type("40 psi, 6")
        await keys.until_true(lambda: bool(pending_drafts(build)))
        await keys.press("escape")
        assert not keys.desk.dirty
        await keys.until_true(lambda: not drafts_of(build))
        await keys.press("f8")
        assert keys.screen.points_view.text == "40 psi, 6"
        await keys.press("ctrl+u")
        assert keys.screen.points_view.text == "" and not keys.desk.dirty


@pytest.mark.parametrize(
    "table", [["nowhere", "4"], ["feed", "4"], [1, "4"], ["pump.known"], "4", ["pump.known", "\ud8004"], None]
)
def test_a_draft_may_say_anything_of_it(build: Path, table: object) -> None:
    place = build.with_name(f".{build.name}.draft")
    place.write_text(json.dumps({"draft": 1, "plain": {"format": 1}, "table": table}), encoding="utf-8")
    path, text = Desk.from_draft(place).table
    assert path in ("", "pump.known") and text in ("", "4")


async def test_the_page_opens_from_any_question_about_the_pump(build: Path) -> None:
    async with at_build(build) as keys:
        await on_the_page(keys, "pump.count")
        await keys.press("escape")
        await keys.paste(TABLE)
        assert keys.screen.mode == "points" and keys.screen.points_view.text == TABLE
        assert keys.desk.text_in_field("pump.count").text == "1"
        await keys.press("f8")
        points = [["40 psi", "60 gal/h"], ["60 psi", "55 gal/h"]]
        assert keys.desk.plain["pump"]["curve"][0]["points"] == points


async def test_a_name_of_a_pump_takes_words_with_figures(build: Path) -> None:
    async with at_build(build) as keys:
        await keys.go_to("pump.name")
        await keys.paste("red, 340 L/h at 3 bar and 12 V")
        assert keys.screen.mode == "form"
        assert "340 L/h" in keys.desk.text_in_field("pump.name").text
