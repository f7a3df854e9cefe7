"""An answer that makes another line the one to fit says so, once its question is left."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.wizard.editor.line_watch import LineWatch


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
