"""Points typed cell by cell."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk, NoSuchField

from .desks import opened, told

POINTS = "pump.curve.0.points"


def cells(desk: Desk, points: str = POINTS) -> list[list[str]]:
    return desk.value(points) or []


def type_points(desk: Desk, *rows: tuple[str, str], points: str = POINTS) -> None:
    for number, row in enumerate(rows):
        for column, raw in enumerate(row):
            desk.type(f"{points}.{number}.{column}", raw)


def test_a_point_is_there_once_both_its_halves_are(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.type(f"{POINTS}.0.0", "20")
    assert cells(desk) == []
    assert desk.text_in_field(f"{POINTS}.0.1").refused == "a flow is wanted"
    assert desk.text_in_field(f"{POINTS}.0.0").text == "20"
    desk.type(f"{POINTS}.0.1", "151")
    assert cells(desk) == [["20 psi", "151 gal/h"]]
    assert desk.refused == {}
    type_points(desk, ("20", "151"), ("3 bar", "540 L/h"))
    assert cells(desk) == [["20 psi", "151 gal/h"], ["3 bar", "540 L/h"]]


def test_flow_may_come_first_and_points_out_of_turn_wait(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "curve")
    desk.type(f"{POINTS}.1.0", "40")
    desk.type(f"{POINTS}.1.1", "142")
    assert cells(desk) == []
    desk.type(f"{POINTS}.0.1", "151")
    assert desk.text_in_field(f"{POINTS}.0.0").refused == "a pressure is wanted"
    desk.type(f"{POINTS}.0.0", "20")
    assert cells(desk) == [["20 psi", "151 gal/h"], ["40 psi", "142 gal/h"]]


def test_a_refused_cell_keeps_its_point_as_it_stood(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    before = desk.result
    desk.type(f"{POINTS}.3.1", "117 x")
    assert desk.text_in_field(f"{POINTS}.3.1").text == "117 x"
    assert desk.text_in_field(f"{POINTS}.3.1").refused == "a flow is wanted"
    assert cells(desk)[3] == ["80 psi", "117 gal/h"]
    assert desk.held == "Not updated: still using flow of this point 117\u00a0gal/h until yours can be read."
    assert desk.result == before


def test_points_out_of_order_hold_the_answer_and_stay(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    before = desk.result
    desk.type(f"{POINTS}.3.0", "50")
    assert desk.text_in_field(f"{POINTS}.3.0").text == "50"
    assert desk.text_in_field(f"{POINTS}.3.0").refused == "must rise from point to point"
    assert desk.refused[f"{POINTS}.3.0"] == "Pressure must rise from point to point: 50 psi after 60 psi."
    assert desk.result == before
    desk.type("goal.power", "700")
    assert desk.result != before
    desk.type(f"{POINTS}.3.0", "85")
    assert desk.refused == {}


def test_a_flow_that_rises_is_refused(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type(f"{POINTS}.3.1", "140")
    assert desk.text_in_field(f"{POINTS}.3.1").refused == "must not rise as pressure rises"
    assert desk.refused == {
        f"{POINTS}.3.1": "Flow must not rise as pressure rises: 140 gal/h after 131 gal/h."
    }


def test_points_out_of_order_are_said_in_the_units_typed(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "curve")
    type_points(desk, ("3 bar", "295 L/h"), ("4", "300"))
    assert desk.refused == {f"{POINTS}.1.1": "Flow must not rise as pressure rises: 300 L/h after 295 L/h."}
    desk.type(f"{POINTS}.1.1", "290")
    desk.type(f"{POINTS}.1.0", "2.5")
    assert desk.refused == {f"{POINTS}.1.0": "Pressure must rise from point to point: 2.5 bar after 3 bar."}


def test_an_emptied_point_goes_and_those_after_it_move_up(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type(f"{POINTS}.4.1", "nine")
    desk.type(f"{POINTS}.1.0", "")
    assert desk.text_in_field(f"{POINTS}.1.0").refused == "a pressure is wanted"
    assert len(cells(desk)) == 5
    desk.type(f"{POINTS}.1.1", "")
    assert [row[0] for row in cells(desk)] == ["20 psi", "60 psi", "80 psi", "100 psi"]
    assert desk.text_in_field(f"{POINTS}.3.1").text == "nine"
    assert desk.undo() == f"{POINTS}.1.1"
    assert len(cells(desk)) == 5


def test_the_last_point_takes_the_pump_with_it(tmp_path: Path) -> None:
    desk = told(tmp_path)
    type_points(desk, ("20", "151"))
    assert "pump" in desk.plain
    desk.type(f"{POINTS}.0.0", "")
    desk.type(f"{POINTS}.0.1", "")
    assert "pump" not in desk.plain
    assert desk.refused == {}


def test_current_and_a_second_voltage_have_cells_too(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    type_points(desk, ("40", "9"), ("80", "15"), points="pump.current")
    assert desk.value("pump.current") == [["40 psi", "9 A"], ["80 psi", "15 A"]]
    number = desk.add("pump.curve")
    assert number == 1
    assert desk.refused
    desk.type("pump.curve.1.voltage", "12")
    type_points(desk, ("20", "120"), ("100", "60"), points="pump.curve.1.points")
    assert desk.refused == {}
    desk.type("pump.curve.1.voltage", "13.5")
    assert desk.text_in_field("pump.curve.1.voltage").refused == "a voltage of its own is wanted"


def test_a_table_replaces_what_was_there(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type(f"{POINTS}.9.0", "half")
    desk.set_points("pump.curve.points", [("20 psi", "100 gal/h")])
    assert cells(desk) == [["20 psi", "100 gal/h"]]
    assert desk.refused == {}


@pytest.mark.parametrize("rows", [[], [("20 psi", "x")], [("20", "100")], [("1 psi", "1 gal/h")] * 201])
def test_a_table_that_cannot_be_read_is_no_table(tmp_path: Path, rows: list[tuple[str, str]]) -> None:
    desk = opened(tmp_path)
    with pytest.raises(NoSuchField):
        desk.set_points("pump.curve.points", rows)
    with pytest.raises(NoSuchField):
        desk.type(f"{POINTS}.200.0", "1")


def test_half_a_point_holds_nothing_up_while_its_table_is_typed(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    desk.choose("pump.known", "curve")
    for path, typed in ((f"{POINTS}.0.0", "30"), (f"{POINTS}.1.0", "6"), (f"{POINTS}.1.0", "60")):
        desk.visit(path)
        desk.type(path, typed)
        assert desk.held is None, path
    assert f"{POINTS}.0.1" in desk.refused, "it is wanted all the same"
    desk.visit("goal.power")
    assert desk.held == "Pump: give the flow of this point; what it belongs to is left out until then."
    desk.visit(f"{POINTS}.0.0")
    desk.type(f"{POINTS}.0.0", "x")
    assert desk.held is not None and "until it can be read" in desk.held


def test_the_one_figure_of_a_pump_is_refused_by_the_name_of_its_question(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "400 hp")
    desk.choose("pump.known", "figure")
    desk.type("pump.figure.flow", "80 psi")
    desk.type("pump.figure.pressure", "40 psi")
    (why,) = desk.refused.values()
    assert "flow on the box wants a flow" in why and "of this point" not in why
