"""Which questions a step asks, as the answers before them decide."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.plan import asked_in_step

OF_THE_RETURN = {"return.fitted", "return.length", "return.hose", "return_line.regulator.have"}


@pytest.mark.parametrize(
    ("regulator", "asked"), [("rail", OF_THE_RETURN), ("tank", {"return.length"}), ("none", set())]
)
def test_a_return_is_asked_for_where_there_is_one(tmp_path: Path, regulator: str, asked: set[str]) -> None:
    """A regulator at the tank mostly lets fuel straight back into it: there its length alone is asked."""
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    desk.choose("pressure.regulator", regulator)
    assert _asked_of_the_return(desk) == asked


def test_a_return_near_the_tank_is_asked_for_in_full_once_it_has_a_length(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    desk.choose("pressure.regulator", "tank")
    desk.type("return.length", "2 ft")
    assert _asked_of_the_return(desk) == OF_THE_RETURN


def _asked_of_the_return(desk: Desk) -> set[str]:
    return {question.key for question in asked_in_step(desk, "inlet", desk.system)} & OF_THE_RETURN


def test_a_return_told_with_the_regulator_at_the_tank_is_judged(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    desk.choose("pump.known", "sample")
    desk.choose("pressure.regulator", "tank")
    desk.type("feed.length", "15")
    desk.update()
    assert desk.result is not None and desk.result.figures.return_line is None
    form = Form(desk)
    form.go_to_path("return.length")
    assert form.path == "return.length"
    form.key("4", "4")
    desk.update()
    assert desk.result is not None and desk.result.figures.return_line is not None


def test_a_new_run_is_of_the_kind_of_the_one_before_it(tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    desk.choose("feed.hose", "rubber")
    form = Form(desk)
    form.go_to_question("feed.run")
    while getattr(form.row, "act", "") != "add":
        form.move_row(1)
    form.key("a", "a")
    assert form.place.in_entry
    runs = desk.plain["feed"]["run"]
    assert runs[-1] == {"hose": "rubber"} and len(runs) == 2
