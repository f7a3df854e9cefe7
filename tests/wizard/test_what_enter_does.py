"""The footer says what Enter does with what is assumed: a number stays so, an answer to pick becomes one's own."""

from __future__ import annotations

from pathlib import Path

import pytest

from .keyboard import at_build, copy_of, flat


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
@pytest.mark.parametrize(
    ("path", "says", "is_still_assumed"),
    [
        ("engine.cylinders", "Enter next, stays assumed Ctrl+G y mine", True),
        ("goal.power_at", "Enter yes, next", False),
        ("goal.power", "Enter next ", False),
    ],
)
async def test_enter_does_what_the_footer_says(
    tmp_path: Path, size: tuple[int, int], path: str, says: str, is_still_assumed: bool
) -> None:
    async with at_build(copy_of("goal-alone", tmp_path), size) as keys:
        await keys.go_to(path)
        assert flat(keys.part("footer")).startswith(says)
        await keys.press("enter")
        assert keys.desk.text_in_field(path).assumed == is_still_assumed
        await keys.press("up")
        if path == "engine.cylinders":
            await keys.press("ctrl+g", "y")
            assert not keys.desk.text_in_field(path).assumed
        await keys.press("f5")  # what was said of the key before is gone
        assert flat(keys.part("footer")).startswith("Enter next ")
