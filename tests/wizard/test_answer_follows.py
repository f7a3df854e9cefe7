"""An answer of which more is being worked out says so; what is not whole yet does not stand there as if it were."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.desk import Desk
from fuelwiz.wizard.live.answer import answer_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .keyboard import copy_of

FOLLOWS = "Being worked out: what to buy first"


def told(desk: Desk, width: int, rows: int) -> str:
    assert desk.result is not None
    return shown(desk.result, width, rows)


def shown(found: Result, width: int, rows: int) -> str:
    lines = answer_lines(found, Area(Look(), width, rows))
    assert len(lines) == rows
    return " ".join(" ".join(line.text for line in lines).split())


@pytest.mark.parametrize(("width", "rows"), [(60, 3), (80, 4), (59, 4)])
def test_what_is_still_to_come_is_said_until_it_is_there(tmp_path: Path, width: int, rows: int) -> None:
    desk = Desk.open(copy_of("hill-climb-six", tmp_path))
    desk.update()
    first = told(desk, width, rows)
    assert "bad days follow" in first and first.endswith("this is.") and FOLLOWS in first
    desk.finish()
    assert desk.result is not None
    with_bad_days = told(desk, width, rows)
    assert "on low volts" in with_bad_days and "follow" not in with_bad_days and FOLLOWS in with_bad_days
    while not desk.filled_in:
        desk.fill_in(1.0)
    assert "worked out" not in told(desk, width, rows)
    assert desk.session is not None
    with_changes = result(desk.session, replace(desk.result.figures, spread=None))
    said = shown(with_changes, width, rows)
    assert "Buy first" in said or rows == 3
    assert said.endswith("Being worked out: how sure this is.")


@pytest.mark.parametrize("example", ["goal-alone", "no-pump-yet"])
def test_nothing_follows_where_the_answer_rests_on_steps_to_come(tmp_path: Path, example: str) -> None:
    desk = Desk.open(copy_of(example, tmp_path))
    desk.update()
    assert FOLLOWS not in told(desk, 80, 4) and "follow" not in told(desk, 80, 4)
