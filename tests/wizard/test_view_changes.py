"""What one change buys: a line each, what the highlighted one does, and Enter, which tries it as a what-if."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from advice.builds import spaced

from fuelwiz.advice.sections.changes import change_rows
from fuelwiz.advice.subject import Subject
from fuelwiz.desk import Desk
from fuelwiz.desk.making import make_change
from fuelwiz.sizing.vocabulary import CHANGES, Change
from fuelwiz.wizard.live.changes import change_lines, offered_changes
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.what_if import WhatIfScreen

from .keyboard import at_build, copy_of
from .results import LOOKS, filled_result, text, unfilled_result
from .results import NAMES as EXAMPLE_NAMES

NAMES = ("hill-climb-six", "twins", "full-session", "street-turbo")
SIZES = [(80, 24), (60, 20), (120, 36), (160, 50)]


def drawn(name: str, at: int = 0, *, width: int = 80, rows: int = 20, focused: bool = False) -> list[str]:
    return text(change_lines(filled_result(name), at, Area(Look(), width, rows), focused))


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
@pytest.mark.parametrize("name", NAMES)
def test_it_keeps_to_its_place(name: str, look: Look) -> None:
    result = filled_result(name)
    for at in (0, len(offered_changes(result)) - 1, 99):
        for width in (59, 60, 75, 80, 109):
            for rows in (1, 2, 5, 9, 20):
                lines = change_lines(result, at, Area(look, width, rows))
                assert len(lines) <= rows and all(line.cell_length == width for line in lines)
                assert look.unicode or all(line.text.isascii() for line in lines)


def test_every_change_has_its_line_with_power_and_margin() -> None:
    figures = filled_result("hill-climb-six").figures
    lines = "\n".join(drawn("hill-climb-six"))
    for change in figures.changes:
        power = round(change.max_power_W / 745.69987)  # 1 hp is 745.69987 W (NIST SP 811)
        assert re.search(rf" {power} +\d+(\.\d+)? ", lines), change


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("width", [59, 60, 80])
@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_no_change_is_cut_nor_runs_into_its_power(name: str, width: int, units: str) -> None:
    result = filled_result(name, units)
    lines = text(change_lines(result, 0, Area(Look(), width, 30)))
    for row in change_rows(Subject(result.session, result.figures)):
        forms = {spaced(form) for form in (row.what, row.short, row.short.partition(",")[0])}
        line_of_it = re.compile(f"(?:{'|'.join(map(re.escape, forms))})  +(?:{row.power or '–'})  ")
        assert any(line_of_it.match(line[3:]) for line in lines), (row.what, lines)


@pytest.mark.parametrize("name", NAMES)
def test_what_helps_comes_first(name: str) -> None:
    result = filled_result(name)
    rows = change_rows(Subject(result.session, result.figures))
    helps = [row.helps for row in rows]
    assert helps == sorted(helps, reverse=True)
    cures = {one.change for one in result.figures.changes if len(one.cures) > len(one.brings)}
    assert cures <= {row.change for row in rows if row.helps}
    brings = {one.change for one in result.figures.changes if len(one.cures) < len(one.brings)}
    assert not brings & {row.change for row in rows if row.helps}
    lines = drawn(name, rows=30)
    assert any("Hardly helps" in line for line in lines) == (False in helps)


@pytest.mark.parametrize("width", [59, 60, 80])
@pytest.mark.parametrize("rows", [5, 9, 12])
def test_the_highlighted_change_is_in_sight_and_says_what_it_does(width: int, rows: int) -> None:
    result = filled_result("twins")
    for at in range(len(offered_changes(result))):
        lines = drawn("twins", at, width=width, rows=rows, focused=True)
        assert sum(line.startswith(" ▸ ") for line in lines) == 1
        assert any(line.startswith(("   what ", "   power ")) for line in lines)


def test_it_says_what_goes_and_what_comes() -> None:
    offered = offered_changes(filled_result("hill-climb-six"))
    second_pump = "\n".join(drawn("hill-climb-six", offered.index("pump")))
    assert "cures   the pump is too small" in second_pump
    assert "brings  the feed line is too small" in second_pump


def test_it_says_what_it_waits_for() -> None:
    for name, told in (
        ("goal-alone", "a feed line and a pump"),
        ("no-pump-yet", "a pump"),
        ("mild", "worked out"),
    ):
        lines = text(change_lines(unfilled_result(name), 0, Area(Look(), 80, 9)))
        assert told in lines[0]


def test_each_change_is_typed_as_it_was_solved(tmp_path: Path) -> None:
    """What a change made on the desk comes to is what the list of changes says of it."""
    tried: set[Change] = set()
    for name in NAMES:
        desk = Desk.open(copy_of(name, tmp_path))
        desk.update()
        desk.fill_in(1e9)
        assert desk.result is not None
        for one in desk.result.figures.changes:
            scratch = desk.what_if()
            make_change(scratch, one.change, desk.result.figures)
            assert not scratch.refused and scratch.result is not None
            least = scratch.result.figures.pick.least
            assert least is not None
            if one.change not in ("pump", "return", "regulator"):  # those pick the return anew on the desk
                assert least.margin == pytest.approx(one.margin, abs=1e-6), (name, one.change)
                assert scratch.result.figures.verdict.works is one.works, (name, one.change)
            tried.add(one.change)
    assert tried >= {"feed", "regulator", "return", "wire", "higher base", "pump", "filters", "cooler"}
    assert tried <= set(CHANGES)


@pytest.mark.parametrize("size", SIZES)
async def test_enter_tries_the_highlighted_change(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        await keys.until_true(lambda: keys.desk.filled_in)
        await keys.press("ctrl+g", "v", "w", "f6", "down")
        result = keys.desk.result
        assert result is not None
        assert keys.screen.live.highlighted_change == offered_changes(result)[1]
        keys.says_all_within()
        await keys.press("enter")
        screen = keys.screen
        assert isinstance(screen, WhatIfScreen) and screen.desk.dirty
        assert screen.origin.desk.dirty is False
        keys.says_all_within()


async def test_up_and_down_stop_at_the_ends(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.until_true(lambda: keys.desk.filled_in)
        await keys.press("ctrl+g", "v", "w", "f6", *["down"] * 20)
        result = keys.desk.result
        assert result is not None
        assert keys.screen.live.highlighted_change == offered_changes(result)[-1]
        await keys.press(*["up"] * 30)
        assert keys.screen.live.highlighted_change == offered_changes(result)[0]


async def test_it_fills_in_while_nothing_is_pressed_and_a_key_drops_it(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.press("ctrl+g", "v", "w")
        await keys.until("One change")
        await keys.press("ctrl+g", "1", "down", *"600")
        assert not keys.desk.filled_in
        await keys.until("Being worked out")
        await keys.until("One change")


def test_changes_that_have_no_room_are_counted() -> None:
    count = len(offered_changes(filled_result("hill-climb-six")))
    assert f"One change, of {count} " in drawn("hill-climb-six", rows=6)[0]
    assert f"of {count}" not in drawn("hill-climb-six", rows=30)[0]
