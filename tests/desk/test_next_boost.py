"""What is taken for the boost of the next goal, in figures, where none is given."""

from __future__ import annotations

from pathlib import Path

import pytest

from .desks import told

# worked by hand: absolute boost in the ratio of the powers, (15 + 14.696) x 600 / 300 - 14.696 = 44.7 psi
GROWN = "44.7"


@pytest.mark.parametrize(
    ("answers", "taken"),
    [
        ({"engine__induction": "turbo", "pressure__boost": "15 psi"}, GROWN),
        ({"engine__induction": "none"}, "0"),
        ({"engine__induction": "turbo", "pressure__boost": "15 psi", "goal__next_induction": "none"}, "0"),
    ],
)
def test_the_boost_that_is_taken_for_the_next_goal_stands_in_its_row(
    tmp_path: Path, answers: dict[str, str], taken: str
) -> None:
    desk = told(tmp_path, goal__power="300 hp", goal__next_power="600 hp", **answers)
    field = desk.text_in_field("goal.next_boost")
    assert (field.text, field.unit, field.assumed) == (taken, "psi", True)
    desk.type("goal.next_boost", "20")
    assert not desk.text_in_field("goal.next_boost").assumed


@pytest.mark.parametrize(("boost", "taken"), [("8 psi", "supercharger"), ("", "none")])
def test_the_induction_that_is_taken_for_the_next_goal_stands_in_its_row(
    tmp_path: Path, boost: str, taken: str
) -> None:
    desk = told(tmp_path, engine__induction="none", goal__next_power="900 hp", goal__next_boost=boost)
    field = desk.text_in_field("goal.next_induction")
    assert (field.text, field.assumed) == (taken, True)
