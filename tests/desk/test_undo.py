"""Undo and redo: one visit to a question at a time, across steps and past a save."""

from __future__ import annotations

from pathlib import Path

from .desks import empty, opened, told


def test_a_visit_is_taken_back_whole(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    desk.visit("goal.power")
    for raw in ("7", "75", "750"):
        desk.type("goal.power", raw)
    desk.visit("pressure.boost")
    for raw in ("2", "22", "22 g"):
        desk.type("pressure.boost", raw)
    assert desk.undo() == "pressure.boost"
    assert desk.text_in_field("pressure.boost").assumed
    assert desk.refused == {}
    assert desk.undo() == "goal.power"
    assert desk.text_in_field("goal.power").text == ""
    assert desk.result is None
    assert desk.undo() is None
    assert desk.redo() == "goal.power"
    assert desk.value("goal.power") == "750 hp"
    assert desk.redo() == "pressure.boost"
    assert desk.text_in_field("pressure.boost").text == "22 g"
    assert desk.redo() is None


def test_two_visits_to_one_question_are_two_steps_back(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    for raw in ("500", "600"):
        desk.visit("goal.power")
        desk.type("goal.power", raw)
    assert desk.undo() == "goal.power"
    assert desk.value("goal.power") == "500 hp"


def test_a_visit_that_changes_nothing_is_passed_over(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.visit("pressure.boost")
    desk.visit("engine.cylinders")
    desk.type("engine.cylinders", "6")
    desk.type("engine.cylinders", "")
    desk.visit("goal.reserve")
    assert desk.undo() == "goal.power"


def test_a_change_after_undo_ends_what_could_be_redone(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="22")
    desk.undo()
    desk.type("pressure.base", "50")
    assert desk.redo() is None


def test_the_cells_of_a_table_are_one_visit_where_the_table_is_visited(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.visit("pump.curve.0.points")
    for number, (pressure, flow) in enumerate([("20", "151"), ("40", "142")]):
        desk.type(f"pump.curve.0.points.{number}.0", pressure)
        desk.type(f"pump.curve.0.points.{number}.1", flow)
    assert desk.undo() == "pump.curve.0.points"
    assert "pump" not in desk.plain


def test_undo_goes_past_a_save(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.visit("goal.power")
    desk.type("goal.power", "700")
    desk.save()
    assert not desk.dirty
    assert desk.undo() == "goal.power"
    assert desk.value("goal.power") == "750 hp"
    assert desk.dirty
    desk.redo()
    assert not desk.dirty


def test_what_not_sure_took_out_comes_back(tmp_path: Path) -> None:
    desk = told(tmp_path, pressure__boost="22")
    desk.visit("pressure.boost")
    desk.unsure("pressure.boost")
    assert desk.text_in_field("pressure.boost").assumed
    assert desk.undo() == "pressure.boost"
    assert desk.value("pressure.boost") == "22 psi"


def test_a_picked_answer_and_a_removed_run_come_back(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    before = desk.plain
    desk.choose("pump.known", "none")
    desk.remove("feed.run", 0)
    desk.move("feed.run", 0, 0)
    desk.undo()
    desk.undo()
    assert desk.plain == before
