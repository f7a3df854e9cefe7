"""Builds side by side on the screen: nothing is lost sideways, what differs is told, and Esc goes back."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from textual.app import App
from textual.pilot import Pilot
from textual.screen import Screen

from fuelwiz.wizard.compare_screen import CompareScreen, judged
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.painted import Painted

EXAMPLES = Path(__file__).parents[1] / "examples"
SIX, COUPE, MILD = (EXAMPLES / f"{name}.toml" for name in ("hill-climb-six", "hill-climb-coupe", "mild"))
SIZES = [(80, 24), (60, 20), (120, 36), (160, 50)]


class Comparing(App[None]):
    """An app that opens the comparison over an empty screen."""

    ENABLE_COMMAND_PALETTE = False

    def __init__(self, builds: Sequence[Any], look: Look | None = None) -> None:
        self.look = look or Look()
        self.builds = builds
        super().__init__(ansi_color=True)

    CSS = Path(__file__).parents[2].joinpath("fuelwiz", "wizard", "wizard.tcss").read_text()

    def on_mount(self) -> None:
        self.push_screen(CompareScreen(self.builds))


def lines_of(screen: Screen[Any], name: str = "page") -> list[str]:
    view = screen.query_one(f"#{name}", Painted)
    return [view.render_line(y).text for y in range(view.size.height)]


def comparison(pilot: Pilot[None]) -> CompareScreen:
    screen = pilot.app.screen
    assert isinstance(screen, CompareScreen)
    return screen


async def all_lines(pilot: Pilot[None]) -> list[str]:
    """Every line there is, read by scrolling down line by line."""
    screen = comparison(pilot)
    await pilot.press("home")
    read = lines_of(screen)
    while True:
        before = screen.scrolled
        await pilot.press("down")
        if screen.scrolled == before:
            return read
        read.append(lines_of(screen)[-1])


def row_of(lines: list[str], label: str) -> str:
    return next(line for line in lines if line.strip().startswith(label))


@pytest.mark.parametrize("size", SIZES)
async def test_nothing_is_wider_than_the_screen_and_nothing_is_missing(size: tuple[int, int]) -> None:
    async with Comparing([SIX, COUPE]).run_test(size=size) as pilot:
        await pilot.pause()
        lines = await all_lines(pilot)
        assert {len(line) for line in lines} == {size[0]}
        told = " ".join(" ".join(lines).split())
        assert "Different inputs" in told and "Results" in told
        power = row_of(lines, "Power wanted")
        assert "750 hp" in power and "560 hp" in power  # as the two files say
        assert "(better)" in row_of(lines, "spare  ")
        assert "better in" in told
        for view in pilot.app.screen.query("*"):
            assert view.region.right <= size[0] and view.region.bottom <= size[1]


@pytest.mark.parametrize("size", SIZES, ids=lambda at: f"{at[0]}x{at[1]}")
def test_builds_side_by_side_look_as_they_did(snap_compare: Any, size: tuple[int, int]) -> None:
    """A picture at each size; a change of one is looked at before it is kept."""
    assert snap_compare(Comparing([SIX, COUPE]), terminal_size=size)


@pytest.mark.parametrize(("width", "fit"), [(60, 2), (80, 2), (120, 4), (160, 6)])
async def test_it_says_how_many_fit(width: int, fit: int) -> None:
    """A label of 22 columns and 20 for each build, two at least: the design's own figures."""
    async with Comparing([SIX, COUPE]).run_test(size=(width, 24)) as pilot:
        await pilot.pause()
        assert comparison(pilot).fit == fit
        assert f"{fit} fit at this width" in lines_of(pilot.app.screen, "top")[0]


async def test_the_third_follows_beside_the_first_where_two_fit() -> None:
    async with Comparing([SIX, COUPE, MILD]).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        lines = await all_lines(pilot)
        heads = [line for line in lines if line.strip().startswith("Question ")]
        assert len(heads) == 2
        assert all("Hill-climb six" in head for head in heads)
        assert "Hill-climb coupe" in heads[0] and "Hill-climb coupe" not in heads[1]


async def test_arrows_and_pages_scroll_and_stop_at_the_ends() -> None:
    async with Comparing([SIX, COUPE]).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        screen = comparison(pilot)
        first = lines_of(screen)
        await pilot.press("up")
        assert screen.scrolled == 0
        await pilot.press("down")
        assert lines_of(screen)[0] == first[1]
        await pilot.press("pagedown")
        assert screen.scrolled == 1 + 21
        await pilot.press("end")
        last = screen.scrolled
        await pilot.press("pagedown")
        assert screen.scrolled == last
        assert "hold 2 builds" in " ".join(lines_of(screen))
        await pilot.press("pageup", "home")
        assert lines_of(screen) == first


async def test_a_window_that_is_large_for_a_while_does_not_lose_the_place() -> None:
    async with Comparing([SIX, COUPE]).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("pagedown")
        page = lines_of(comparison(pilot))
        for size in ((80, 200), (120, 36), (60, 20), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
        back = lines_of(comparison(pilot))
        assert abs(back.index(page[10]) - 10) <= 2


async def test_differences_are_told_in_the_words_of_the_questions() -> None:
    async with Comparing([SIX, COUPE]).run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        lines = [line.strip() for line in await all_lines(pilot)]
        assert any(line.startswith("Power wanted ") for line in lines)
        assert any(line.startswith("Run 1: length ") for line in lines)
        assert not any(re.match(r"(goal|pressure|pump|feed)\.", line) for line in lines)


async def test_escape_goes_back_and_other_keys_do_nothing() -> None:
    async with Comparing([SIX, COUPE]).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        screen = comparison(pilot)
        before = lines_of(screen)
        await pilot.press("x", "tab", "enter")
        assert pilot.app.screen is screen and lines_of(screen) == before
        await pilot.press("escape")
        assert not isinstance(pilot.app.screen, CompareScreen)


async def test_a_file_that_cannot_be_read_is_named_and_the_others_stand(tmp_path: Path) -> None:
    broken = tmp_path / "broken.toml"
    broken.write_text('format = 1\n[goal]\npower = "[red]lots[/red]"\n')
    async with Comparing([SIX, broken, COUPE]).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        screen = comparison(pilot)
        told = "".join("".join(await all_lines(pilot)).split())
        assert "broken.toml" in told and "[red]lots[/red]" in told
        assert [build.file for build in screen.results] == [SIX.name, COUPE.name]


async def test_one_build_alone_says_what_is_wanting(tmp_path: Path) -> None:
    async with Comparing([SIX, tmp_path / "gone.toml"]).run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        told = " ".join(lines_of(pilot.app.screen))
        assert "gone.toml" in told and "two builds" in told


async def test_names_are_shown_letter_by_letter(tmp_path: Path) -> None:
    named = tmp_path / "named.toml"
    named.write_text(MILD.read_text().replace('name = "', 'name = "[b]A[/b] ', 1))
    async with Comparing([named, COUPE]).run_test(size=(160, 50)) as pilot:
        await pilot.pause()
        assert "[b]A[/b]" in " ".join(lines_of(pilot.app.screen))


async def test_ready_builds_are_taken_as_they_are_and_plain_terminals_get_plain_signs() -> None:
    builds = [judged(SIX), judged(COUPE)]
    async with Comparing(builds, Look(unicode=False, colors="none")).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert comparison(pilot).results == builds
        assert all(line.isascii() for line in await all_lines(pilot))
