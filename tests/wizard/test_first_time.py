"""An empty folder at every width: each choice says what it is in whole words, the folder by its name where it fits."""

from __future__ import annotations

import pytest

from fuelwiz.wizard.build_list.first_time import CHOICES, first_time_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, text

FOLDER = "data/fuelwiz/saved_sessions"


@pytest.mark.parametrize("width", [60, 80, 160])
@pytest.mark.parametrize("look", [LOOKS["256 dark"], LOOKS["ascii"]], ids=["unicode", "ascii"])
def test_what_a_choice_is_is_never_cut(width: int, look: Look) -> None:
    for at, (_, called, says) in enumerate(CHOICES):
        area = Area(look, width, 20)
        (line,) = [line for line in text(first_time_lines(at, FOLDER, area)) if called in line]
        forms = [form.format(folder=FOLDER) for form in says]
        assert line.rpartition("  ")[2] in forms
        if width == 160:
            assert line.endswith(forms[0])
