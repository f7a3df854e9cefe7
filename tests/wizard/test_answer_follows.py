"""An answer of which more is being worked out says so; what is not whole yet does not stand there as if it were."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.live.answer import answer_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .keyboard import copy_of

FOLLOWS = "Being worked out: what to buy first"


def told(desk: Desk, width: int, rows: int) -> str:
    assert desk.result is not None
    lines = answer_lines(desk.result, Area(Look(), width, rows))
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
    while not desk.result.figures.changes:
        desk.fill_in(0.001)
    with_changes = told(desk, width, rows)
    assert FOLLOWS not in with_changes and with_changes.endswith("Being worked out: how sure this is.")
    while not desk.filled_in:
        desk.fill_in(1.0)
    assert "worked out" not in told(desk, width, rows)


@pytest.mark.parametrize("example", ["goal-alone", "no-pump-yet"])
def test_nothing_follows_where_the_answer_rests_on_steps_to_come(tmp_path: Path, example: str) -> None:
    desk = Desk.open(copy_of(example, tmp_path))
    desk.update()
    assert FOLLOWS not in told(desk, 80, 4) and "follow" not in told(desk, 80, 4)
