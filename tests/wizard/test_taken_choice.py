"""A choice that nobody made shows what is taken for it, ticked."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.questions.catalogue import catalogue
from fuelwiz.wizard.editor.row_painter import row_strip
from fuelwiz.wizard.form.form_rows import ChoiceRow
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area


@pytest.mark.parametrize(("path", "taken"), [("goal.next_induction", "turbo"), ("feed.hose", "PTFE")])
def test_what_is_taken_is_ticked(path: str, taken: str, tmp_path: Path) -> None:
    desk = Desk.new(tmp_path)
    desk.update()
    desk.type("goal.power", "500 hp")
    desk.choose("engine.induction", "turbo")
    line = row_strip(ChoiceRow(catalogue()[path], path), desk, Area(Look(), 120, 1), None).text
    assert f"(•) {taken}" in line or f"< {taken}" in line, line
    assert "assumed" in line
