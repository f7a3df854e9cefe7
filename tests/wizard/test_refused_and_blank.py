"""What is pressed or left out by mistake in a field: nothing is wiped, and what is wanting is named in trade words."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.form.form import Form

from .keyboard import at_build, copy_of, flat


@pytest.mark.parametrize("path", ["engine.cylinders", "goal.power", "pressure.base"])
def test_a_blank_wipes_no_figure(tmp_path: Path, path: str) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    form = Form(desk)
    form.go_to_path(path)
    before = desk.text_in_field(path)
    form.key("space", " ")
    assert desk.text_in_field(path) == before
    form.key("4", "4")
    form.key("space", " ")
    form.key("5", "5")
    assert form.editor.text == "4 5", "behind a figure it is a blank: 16 ft 6 in"


def test_a_name_may_begin_with_anything(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    form = Form(desk)
    form.go_to_path("notes")
    form.key("space", " ")
    assert form.editor.text == " "


async def test_a_suction_hose_without_a_size_says_what_is_needed(tmp_path: Path) -> None:
    async with at_build(copy_of("mild", tmp_path), (60, 20)) as keys:
        await keys.go_to("inlet.line")
        await keys.type("2")
        await keys.press("down")
        assert any("! needed: a size" in line for line in keys.part("form"))
        said = flat(keys.part("form"))
        assert "A suction hose follows no other size" in said and '"' not in said


async def test_a_length_that_is_a_size_by_mistake_is_doubted(tmp_path: Path) -> None:
    async with at_build(copy_of("mild", tmp_path)) as keys:
        await keys.go_to("inlet.line")
        await keys.type("5/16")
        assert "are you sure?" in flat(keys.part("form"))


async def test_a_save_says_which_folder_it_went_to(tmp_path: Path) -> None:
    async with at_build(copy_of("mild", tmp_path), (60, 20)) as keys:
        await keys.press("ctrl+s")
        await keys.until("Saved: mild.toml, in")
        assert str(tmp_path) in "".join(line.strip() for line in keys.part("footer"))


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_the_other_half_of_one_figure_is_no_fault_before_it_is_passed(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(copy_of("goal-alone", tmp_path), size) as keys:
        await keys.go_to("pump.known")
        keys.desk.choose("pump.known", "figure")
        await keys.go_to("pump.figure.flow")
        await keys.type("250 lph")
        shown = flat(keys.part("form"))
        assert "is wanted" not in shown
        assert "66 gal/h" in shown, "the other unit stands beside a flow that has no pressure yet"
        await keys.press("tab")
        assert keys.form.path == "pump.figure.pressure"
        assert "needed" in flat(keys.part("form")) and "!" not in flat(keys.part("form"))
        await keys.press("enter")
        assert keys.form.path == "pump.figure.pressure", "Enter says what is wanting first"
        assert "! Enter the pressure of the flow on the box too." in flat(keys.part("form"))
        await keys.press("ctrl+g", "1", "ctrl+g", "4")
        assert "! a pressure is wanted" in flat(keys.part("form"))


async def test_a_narrow_row_names_what_is_wanted_whole(tmp_path: Path) -> None:
    async with at_build(copy_of("goal-alone", tmp_path), (60, 20)) as keys:
        await keys.go_to("engine.cylinders")
        await keys.type("4.5")
        rows = [line for line in keys.part("form") if "Cylinders" in line]
        assert len(rows) == 1 and "! a whole number" in rows[0] and "…" not in rows[0]


async def test_the_other_unit_is_a_sentence_where_it_has_no_column(tmp_path: Path) -> None:
    async with at_build(copy_of("goal-alone", tmp_path), (60, 20)) as keys:
        await keys.go_to("pressure.base")
        await keys.type("58")
        assert "That is 4 bar. " in flat(keys.part("form"))
