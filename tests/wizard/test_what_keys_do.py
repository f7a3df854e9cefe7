"""Keys that are easily pressed by mistake: each does what is seen, or says why it does nothing."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.live.rule import FINDINGS

from .keyboard import at_build, copy_of, flat


def begun(folder: Path) -> Desk:
    desk = Desk.new(folder)
    desk.type("goal.power", "410 hp")
    return desk


def test_figures_choose_nothing_and_say_so(tmp_path: Path) -> None:
    desk = begun(tmp_path)
    form = Form(desk)
    form.go_to_path("fuel.which")
    before = desk.text_in_field("fuel.which")
    for figure in "1385":
        form.key(figure, figure)
        assert desk.text_in_field("fuel.which") == before and before.assumed
        assert form.note == "Left and Right choose; typed figures do nothing here."
    form.key("right", None)
    assert not desk.text_in_field("fuel.which").assumed
    assert "figures" not in form.note


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
        await keys.press("escape", "pagedown")
        assert keys.screen.shown_size != size, "at the questions they highlight a size"


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
