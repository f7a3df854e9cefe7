"""A refused text holds the answer up only while its question is asked."""

from __future__ import annotations

from pathlib import Path

import pytest

from .desks import told


@pytest.mark.parametrize("line", ["feed", "return"])
def test_a_count_of_hoses_refused_holds_no_hard_pipe_up(line: str, tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pressure.regulator", "rail")
    desk.type(f"{line}.length", "15")
    desk.type(f"{line}.hoses", "1")
    desk.type(f"{line}.bends", "2")
    desk.visit(f"{line}.hoses")
    desk.type(f"{line}.hoses", "0")
    assert desk.text_in_field(f"{line}.hoses").refused == "2 bent ends need 1 or more"
    assert desk.held is not None
    desk.visit(f"{line}.hose")
    desk.choose(f"{line}.hose", "tube")
    assert desk.held is None
    assert dict(desk.refused) == {}
    desk.choose(f"{line}.hose", "ptfe")
    assert desk.text_in_field(f"{line}.hoses").text == "0"
    assert f"{line}.hoses" in desk.refused


def test_a_text_not_asked_is_not_taken_meanwhile(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.type("feed.length", "15")
    desk.type("feed.hoses", "1")
    desk.type("feed.bends", "2")
    desk.visit("feed.hoses")
    desk.type("feed.hoses", "0")
    desk.visit("feed.hose")
    desk.choose("feed.hose", "tube")
    desk.visit("feed.bends")
    desk.type("feed.bends", "0")
    assert "straight" not in desk.value("feed.run.0.fittings")


@pytest.mark.parametrize("question", ["pump.figure.flow", "pump.figure.pressure"])
def test_a_text_refused_for_a_pump_known_at_one_point_is_held_once_another_question_has_the_keys(
    question: str, tmp_path: Path
) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "figure")
    desk.type("pump.figure.flow", "80 gal/h")
    desk.type("pump.figure.pressure", "58 psi")
    desk.visit(question)
    desk.type(question, "abc")
    desk.visit("goal.power")
    desk.update()
    assert desk.held is not None
    assert [str(refusal).split(".")[0] for refusal in desk.refused.values()] == ['"abc" is not a number']
    desk.choose("pump.known", "none")
    assert desk.held is None


def test_a_text_refused_in_the_first_point_of_a_table_is_held_too(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "curve")
    desk.set_points("pump.curve.points", [("40 psi", "97 gal/h"), ("60 psi", "84 gal/h")])
    desk.visit("pump.curve.0.points.0.0")
    desk.type("pump.curve.0.points.0.0", "abc")
    desk.visit("goal.power")
    desk.update()
    assert desk.held is not None
