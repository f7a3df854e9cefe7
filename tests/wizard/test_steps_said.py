"""What is said of the steps before one is in them is so."""

from __future__ import annotations

from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.build_list.first_time import CHOICES
from fuelwiz.wizard.build_list.summary import NEW
from fuelwiz.wizard.chrome import FIRST_STEPS, number_word

AFTER = f"an answer after {number_word(FIRST_STEPS)} steps"


def test_a_new_build_says_how_many_steps_lead_to_an_answer() -> None:
    says = {name: text for name, _, text in CHOICES}
    assert AFTER in says["new"] and AFTER in NEW[0]


def test_the_further_steps_are_counted() -> None:
    assert f"{number_word(len(STEPS) - FIRST_STEPS)} more if you like" in NEW[0]
