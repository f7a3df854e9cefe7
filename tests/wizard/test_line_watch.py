"""An answer that makes another line the one to fit says so, once its question is left."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.wizard.editor.line_watch import LineWatch, line_to_fit

from .keyboard import at_build, copy_of, flat


def test_the_answer_that_changes_the_line_is_named(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    for path, text in (("goal.power", "250 hp"), ("feed.length", "15 ft"), ("pressure.boost", "15 psi")):
        desk.type(path, text)
    desk.choose("pump.known", "sample")
    watch = LineWatch()
    watch.moved(desk, "goal.power")
    assert desk.result is not None
    before = desk.result.figures.line_to_fit
    watch.moved(desk, "pump.count")
    desk.type("pump.count", "3")
    assert watch.moved(desk, "pump.count") == "", "while it is typed nothing is said"
    after = desk.result.figures.line_to_fit
    assert before is not None and after is not None and before != after
    said = watch.moved(desk, "pump.place").replace("\u00a0", " ")
    assert said == f"With number of pumps 3 the line to fit is {after}; it was {before}."
    assert watch.moved(desk, "goal.driveline_loss") == "", "said once"


def test_a_question_that_holds_what_it_held_is_no_cause(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    for path, text in (("goal.power", "250 hp"), ("feed.length", "15 ft"), ("pressure.boost", "15 psi")):
        desk.type(path, text)
    watch = LineWatch()
    watch.moved(desk, "pressure.boost")
    before = line_to_fit(desk)
    desk.type("goal.power", "900 hp")
    after = line_to_fit(desk)
    assert before != after
    assert watch.moved(desk, "pressure.base") == f"The line to fit is {after} now; it was {before}."


async def test_the_finder_and_an_undo_name_no_question_that_was_only_passed(tmp_path: Path) -> None:
    async with at_build(copy_of("mild", tmp_path)) as keys:
        await keys.go_to("fuel.which")
        before = line_to_fit(keys.desk)
        await keys.press("ctrl+p", *"power wanted", "enter")
        assert keys.form.path == "goal.power"
        await keys.type("9")
        assert "line to fit" not in flat(keys.part("footer"))
        await keys.type("00")
        await keys.press("down")
        after = line_to_fit(keys.desk)
        assert before != after
        said = f"With power 900 hp the line to fit is {after}; it was {before}."
        assert said in flat(keys.part("footer")).replace("\u00a0", " ")
        await keys.press("ctrl+z")
        assert f"Undone: the line to fit is {before}; it was {after}." in flat(keys.part("footer"))
        await keys.press("down")
        assert "line to fit" not in flat(keys.part("footer"))
        await keys.press("ctrl+y")
        assert f"Done again: the line to fit is {after}; it was {before}." in flat(keys.part("footer"))
