"""A size that is highlighted and not chosen: every view that shows figures of it says that it is only looked at."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.wizard.live.rule import (
    BAD_DAYS,
    CEILINGS,
    CHANGES,
    CURVES,
    FINDINGS,
    HOW_SURE,
    LADDER,
    PATH,
    READ,
    SIZES,
)

from .keyboard import at_build, copy_of

WINDOWS = [(80, 24), (60, 20), (120, 36), (160, 50)]


@pytest.mark.parametrize("size", WINDOWS)
async def test_views_say_that_a_size_is_only_looked_at(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        screen = keys.screen
        result = screen.desk.result
        assert result is not None
        judged = result.figures.verdict.size
        for view in (SIZES, PATH, LADDER, CURVES):
            screen.view, screen.highlighted = view, ""
            await keys.press("ctrl+l")
            assert "looked at" not in "\n".join(keys.part("live")), view
            await keys.press("pagedown")
            looked = screen.shown_size
            assert looked != judged
            says = "is chosen" if result.figures.chosen else "judged at"
            rule = keys.part("live")[0]
            assert f"{looked}, looked at; " in rule and says in rule and judged in rule, view


async def test_a_what_if_changes_nothing_by_a_size_that_is_looked_at(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), (80, 24)) as keys:
        await keys.press("ctrl+g", "x")
        keys.screen.view = PATH
        await keys.press("pagedown")
        looked = keys.screen.shown_size
        strip = "\n".join(keys.part("strip"))
        assert f"nothing yet: {looked}, looked at; " in strip
        assert f"now, {looked} looked at" in "\n".join(keys.part("live"))
        await keys.press("pageup")
        assert "looked at" not in "\n".join([*keys.part("strip"), *keys.part("live")])


@pytest.mark.parametrize("view", [CHANGES, CEILINGS, BAD_DAYS, FINDINGS, HOW_SURE])
async def test_a_view_that_is_the_same_for_every_size_names_none(tmp_path: Path, view: str) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), (60, 20)) as keys:
        await keys.press("pagedown")
        looked = keys.screen.shown_size
        assert "looked at" in keys.part("live")[0]
        keys.screen.view = view
        await keys.press("ctrl+l")
        assert "looked at" not in keys.part("live")[0]
        await keys.press("pagedown")
        assert keys.screen.shown_size == looked, "the key turns the page there"
        assert ("the same for every size" in keys.text) == (view not in READ)


async def test_page_down_reads_on_in_a_view_that_is_longer_than_its_room(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), (60, 20)) as keys:
        keys.screen.view = FINDINGS
        await keys.press("ctrl+l")
        first = keys.part("live")
        assert any("more below" in line for line in first)
        await keys.press("pagedown")
        assert keys.part("live") != first
        await keys.press("pageup")
        assert keys.part("live") == first
