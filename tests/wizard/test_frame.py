"""What stands around the questions: the facts of the build in the top line."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk.desk import Desk
from fuelwiz.wizard.editor.frame import headline


@pytest.mark.parametrize(
    ("answers", "facts"),
    [
        ({"goal.power": "750 hp", "fuel.ethanol": "85 %", "engine.induction": "turbo"}, "750 hp, E85, turbo"),
        ({"goal.power": "300 kW", "fuel.kind": "methanol"}, "300 kW, methanol, turbo"),
        ({"fuel.kind": "own"}, "own fuel, turbo"),
        ({}, "E10, turbo"),
    ],
)
def test_the_top_line_names_power_fuel_and_induction(
    tmp_path: Path, answers: dict[str, str], facts: str
) -> None:
    desk = Desk.new(tmp_path)
    for path, text in answers.items():
        desk.type(path, text)
    assert headline(desk, "").facts.replace("\N{NO-BREAK SPACE}", " ") == facts
