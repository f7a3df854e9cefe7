"""A value far from usual is doubted in the footer too, once its question is left."""

from __future__ import annotations

from pathlib import Path

import pytest

from .keyboard import at_build, copy_of, flat


@pytest.mark.parametrize("way", ["enter", "down", "f4"])
async def test_the_doubt_is_said_as_the_pointer_leaves(tmp_path: Path, way: str) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("pressure.boost")
        await keys.type("4 bar")
        await keys.press(way)
        assert "Boost, 4 bar is 58 psi: are you sure? Usual: 0 without" in flat(keys.part("footer"))
        await keys.press("down")
        assert "are you sure" not in flat(keys.part("footer"))


async def test_a_usual_value_and_one_that_is_only_passed_by_say_nothing(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("pressure.boost")
        await keys.type("20")
        await keys.press("enter")
        assert "are you sure" not in flat(keys.part("footer"))
        await keys.press("up")
        await keys.type("4 bar")
        await keys.press("enter", "up", "enter")
        assert "are you sure" not in flat(keys.part("footer"))


@pytest.mark.parametrize(("step", "adds"), [("9", "stress.case"), ("0", "bench")])
async def test_a_list_that_was_added_to_is_left_without_a_word(tmp_path: Path, step: str, adds: str) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.down_to(step, adds)
        await keys.press("a", "enter", "escape", "f3")
        assert len(keys.desk.value(adds)) == 1 and "are you sure" not in keys.text


async def test_a_line_of_no_length_is_doubted(tmp_path: Path) -> None:
    async with at_build(copy_of("goal-alone", tmp_path)) as keys:
        await keys.go_to("feed.length")
        await keys.type("0")
        assert "0 ft: are you sure? Usual: 10 to 18 ft from a rear tank." in flat(keys.part("form"))
