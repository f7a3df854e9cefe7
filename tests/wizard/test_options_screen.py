"""Parts that do the job, on the screen: found as one looks, explained, tried as a what-if, stopped by Esc."""

from __future__ import annotations

import shutil
import tomllib
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.screen import Screen

from fuelwiz.advice.parts_file_words import BEGINNING
from fuelwiz.desk.desk import Desk
from fuelwiz.options.parts_check import validate_parts
from fuelwiz.options.search import Search
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.no_parts_screen import NoPartsScreen
from fuelwiz.wizard.options_screen import OptionsScreen
from fuelwiz.wizard.painted import Painted
from fuelwiz.wizard.what_if import WhatIfScreen

from .keyboard import OneBuild

SAMPLES = Path(__file__).parents[2] / "saved_sessions"
SIZES = [(80, 24), (60, 20), (120, 36), (160, 50)]
MOST_WAITS = 400


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """A sample build with a parts file beside it."""
    shutil.copytree(SAMPLES / "parts", tmp_path / "parts")
    return Path(shutil.copy(SAMPLES / "gravel-four.toml", tmp_path / "four.toml"))


def text_of(screen: Screen[Any]) -> str:
    return "\n".join(
        view.render_line(y).text
        for view in screen.query(Painted)
        if view.display
        for y in range(view.size.height)
    )


async def opened(pilot: Pilot[int]) -> OptionsScreen:
    await pilot.pause()
    await pilot.press("ctrl+g", "o")
    await pilot.pause()
    screen = pilot.app.screen
    assert isinstance(screen, OptionsScreen)
    return screen


async def searched(pilot: Pilot[int], screen: OptionsScreen) -> None:
    for _ in range(MOST_WAITS):
        await pilot.pause(0.02)
        if screen.progress is not None and not screen.searching:
            return
    raise AssertionError("the search did not end")


@pytest.mark.parametrize("size", SIZES)
async def test_the_sets_and_why_stand_at_every_size(build: Path, size: tuple[int, int]) -> None:
    async with OneBuild(build, "pump").run_test(size=size) as pilot:
        screen = await opened(pilot)
        await searched(pilot, screen)
        shown = text_of(screen)
        assert "Parts that do the job" in shown and "sets do the job today" in shown
        assert "1: cheapest, keeps the pump" in shown
        assert all(len(line) <= size[0] for line in shown.splitlines())
        await pilot.press(*["pagedown"] * 6)
        assert "the pump may not carry E70" in text_of(screen)


async def test_another_row_is_explained(build: Path) -> None:
    async with OneBuild(build, "pump").run_test(size=(120, 50)) as pilot:
        screen = await opened(pilot)
        await searched(pilot, screen)
        await pilot.press("down")
        assert "2: " in text_of(screen) and "1: cheapest" not in text_of(screen)
        await pilot.press("up", "up")
        assert "1: cheapest" in text_of(screen)


async def test_more_is_asked_by_a_letter(build: Path) -> None:
    async with OneBuild(build, "pump").run_test(size=(120, 50)) as pilot:
        screen = await opened(pilot)
        await searched(pilot, screen)
        today = screen.progress.found.works
        await pilot.press("n", "b")
        await searched(pilot, screen)
        assert "do the job today, at the next goal and on every bad day" in text_of(screen)
        assert 0 < screen.progress.found.works < today


async def test_enter_opens_a_set_as_a_what_if_with_its_figures(build: Path) -> None:
    async with OneBuild(build, "pump").run_test(size=(120, 50)) as pilot:
        screen = await opened(pilot)
        await searched(pilot, screen)
        at = next(i for i, shown in enumerate(screen.shown) if shown.row.pump.startswith("sample pump T"))
        await pilot.press(*["down"] * at)
        wanted = screen.shown[at].row
        await pilot.press("enter")
        await pilot.pause()
        trying = pilot.app.screen
        assert isinstance(trying, WhatIfScreen)
        figures = trying.desk.result.figures
        row = figures.row(figures.verdict.size)
        assert figures.verdict.works and figures.verdict.size == wanted.size
        assert row.least.margin == pytest.approx(wanted.margin)
        assert (
            trying.desk.value("pump.name") == wanted.pump and trying.desk.value("pump.count") == wanted.count
        )
        assert trying.origin.desk.value("pump.name") != wanted.pump
        await pilot.press("ctrl+s", *"tried", "enter")
        await pilot.pause()
        kept = [path.name for path in build.parent.glob("*.toml") if path != build]
        assert len(kept) == 1
        assert Desk.open(build.parent / kept[0]).value("pump.name") == wanted.pump
        assert "sample pump T" not in build.read_text(encoding="utf-8")


async def test_escape_stops_the_search_then_goes_back(build: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    steps = Search.verdicts

    def endless(self: Search) -> Any:
        while True:
            yield from list(steps(self))[:1]

    monkeypatch.setattr(Search, "verdicts", endless)
    monkeypatch.setattr(Search, "sets", 10**6)
    async with OneBuild(build, "pump").run_test(size=(120, 50)) as pilot:
        screen = await opened(pilot)
        while not screen.progress or not screen.progress.found.works:
            await pilot.pause(0.02)
        assert screen.searching and "Esc stops" in text_of(screen)
        await pilot.press("escape")
        await pilot.pause()
        assert not screen.searching and "Stopped: " in text_of(screen)
        assert screen.shown
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(pilot.app.screen, BuildScreen)


async def test_a_file_that_cannot_be_read_says_why(build: Path) -> None:
    (build.parent / "parts" / "sample-parts.toml").write_text('format = 1\nkind = "part"\n', encoding="utf-8")
    async with OneBuild(build, "pump").run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.pause()
        assert "`kind` wants" in " ".join(text_of(screen).split())
        await pilot.press("enter", "down", "escape")
        await pilot.pause()
        assert isinstance(pilot.app.screen, BuildScreen)


@pytest.mark.parametrize("size", SIZES)
async def test_without_a_file_it_says_how_to_make_one_and_where(build: Path, size: tuple[int, int]) -> None:
    parts = build.parent / "parts"
    sample = Path(shutil.move(parts / "sample-parts.toml", build.parent / "shop.txt"))
    async with OneBuild(build, "pump").run_test(size=size) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "o")
        await pilot.pause()
        assert isinstance(pilot.app.screen, NoPartsScreen)
        read = text_of(pilot.app.screen)
        assert all(len(line) <= size[0] for line in read.splitlines())
        await pilot.press(*["pagedown"] * 4)
        whole = "".join((read + text_of(pilot.app.screen)).split())
        assert "".join(str(parts).split()) in whole
        assert all("".join(line.split()) in whole for line in BEGINNING.splitlines())
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, NoPartsScreen)
        shutil.move(sample, parts / "shop.toml")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, OptionsScreen)


def test_what_it_shows_is_a_parts_file() -> None:
    parts = validate_parts(tomllib.loads(BEGINNING))
    assert parts.pump[0].price == 140 and parts.hose[0].end == 32


async def test_a_file_elsewhere_is_asked_for_by_its_name(build: Path) -> None:
    shutil.move(build.parent / "parts" / "sample-parts.toml", build.parent / "shop.toml")
    async with OneBuild(build, "pump").run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "o")
        await pilot.pause()
        await pilot.press("f")
        await pilot.pause()
        assert isinstance(pilot.app.screen, BuildScreen)
        assert "Parts file:" in text_of(pilot.app.screen)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, OptionsScreen)


async def test_of_several_files_one_is_asked_for(build: Path) -> None:
    parts = build.parent / "parts"
    shutil.copy(parts / "sample-parts.toml", parts / "shop.toml")
    async with OneBuild(build, "pump").run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "o")
        await pilot.pause()
        assert "Parts file (of 2): [parts/sample-parts.toml" in text_of(pilot.app.screen)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, OptionsScreen)


async def test_the_row_is_pointed_at_and_its_day_said_whole(build: Path) -> None:
    async with OneBuild(build, "pump").run_test(size=(60, 20)) as pilot:
        screen = await opened(pilot)
        await searched(pilot, screen)
        shown = text_of(screen)
        assert [line[:5] for line in shown.splitlines() if line.startswith(" ▸")] == [" ▸ 1 "]
        assert "pump       sample pump R, in the tank (invented)" in shown
        assert "tightest   1 %, combined bad day" in shown.replace("\u00a0", " ")


async def test_without_a_feed_line_it_says_what_is_needed(tmp_path: Path) -> None:
    path = tmp_path / "bare.toml"
    path.write_text('format = 1\n[goal]\npower = "400 hp"\n', encoding="utf-8")
    async with OneBuild(path, "pump").run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "o")
        await pilot.pause()
        assert "needs a power and a feed line first" in " ".join(text_of(pilot.app.screen).split())
