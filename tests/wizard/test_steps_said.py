"""What is said of the steps before one is in them is so."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.questions.catalogue import STEPS
from fuelwiz.store.build_file import read_build_file
from fuelwiz.wizard.build_list.first_time import CHOICES
from fuelwiz.wizard.build_list.judged import judge
from fuelwiz.wizard.build_list.summary import NEW
from fuelwiz.wizard.chrome import FIRST_STEPS, number_word

from .keyboard import at_build, copy_of, flat

AFTER = f"an answer after {number_word(FIRST_STEPS)} steps"


def test_a_new_build_says_how_many_steps_lead_to_an_answer() -> None:
    says = {name: text for name, _, text in CHOICES}
    assert AFTER in says["new"][0] and AFTER in NEW[0]


def test_the_further_steps_are_counted() -> None:
    assert f"{number_word(len(STEPS) - FIRST_STEPS)} more if you like" in NEW[0]


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
async def test_the_page_of_keys_says_what_the_marks_of_the_steps_mean(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    async with at_build(copy_of("mild", tmp_path), size) as keys:
        await keys.press("ctrl+g")
        said = "Steps: ✓ answered, · some assumed or empty, ! to put right"
        assert said in flat(keys.part("sheet"))


def test_a_list_names_the_steps_that_have_no_answer(tmp_path: Path) -> None:
    path = copy_of("mild", tmp_path)
    before = judge(read_build_file(path)).steps_open
    with path.open("a", encoding="utf-8") as file:
        file.write('\n[wiring]\nsupply = "14 V"\n')
    assert "Wiring" in before and "Measured" in before and "Goal" not in before
    assert judge(read_build_file(path)).steps_open == tuple(name for name in before if name != "Wiring")
