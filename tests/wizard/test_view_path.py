"""The fuel's way down the page: a part a line, what limits, what is assumed, what is open; then and now in a what-if."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from advice.builds import spaced

from fuelwiz.advice.sections.path import path_lines
from fuelwiz.advice.subject import Subject
from fuelwiz.desk import Desk
from fuelwiz.desk.plots import Ways
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.live.path import both_ways, way_lines
from fuelwiz.wizard.live.rule import LETTERS, PATH, SIZES
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .keyboard import Keyboard, at_build, copy_of, flat
from .results import LOOKS, NAMES, filled_result, text

AT = [(80, 24), (60, 20), (120, 36), (160, 50)]


def drawn(name: str, size: str = "", *, width: int = 80, rows: int = 30, whole: bool = False) -> list[str]:
    result = filled_result(name)
    size = size or result.figures.verdict.size
    return text(way_lines(result, size, Ways()(result, size), Area(Look(), width, rows), whole=whole))


@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
def test_it_keeps_to_its_width(look: Look) -> None:
    for name in NAMES:
        result = filled_result(name)
        size = result.figures.verdict.size
        parts = Ways()(result, size)
        for width in (59, 60, 75, 80, 109):
            area = Area(look, width, 9)
            for lines in (
                way_lines(result, size, parts, area),
                way_lines(result, size, parts, area, whole=True),
                both_ways((result, parts), (result, parts), size, area),
            ):
                assert all(line.cell_length == width for line in lines)
                assert look.unicode or all(line.text.isascii() for line in lines)


def test_the_parts_stand_in_the_order_of_the_flow() -> None:
    lines = drawn("full-session")
    names = ["tank", "strainer", "pump", "filter", "rail", "injectors", "regulator"]
    at = [
        next(i for i, line in enumerate(lines) if line[3:].lstrip("│├ ").startswith(name)) for name in names
    ]
    assert at == sorted(at)
    assert lines[0].strip().startswith(("? tank", "tank")) and lines[-1].strip() == "surge pot"


def test_what_limits_is_marked_what_is_assumed_says_so_and_a_gap_names_its_question() -> None:
    (home,) = [line for line in drawn("twins") if "at idle" in line and "✗" in line]
    assert home.startswith(" ✗  │ ") and home.count("✗") == 2
    assert "regulator" in home and "assumed: " in home, "it makes most of the back pressure"
    (regulator,) = [line for line in drawn("hill-climb-coupe") if "regulator" in line]
    assert regulator.startswith(" ?  │ ") and "assumed: " in regulator
    open_ = [line for line in drawn("goal-alone") if line.startswith(" · ")]
    assert [line for line in open_ if "feed line" in line] and [
        line for line in open_ if "pump inlet" in line
    ]


def test_it_is_the_way_of_the_size_that_is_asked_for() -> None:
    small, large = drawn("hill-climb-six", "-6"), drawn("hill-climb-six", "-10")
    assert any("-6 PTFE" in line and "7.4 ft/s" in line for line in small)
    assert any("-10 PTFE" in line and "2.9 ft/s" in line for line in large)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width", [60, 80])
def test_what_says_nothing_new_is_folded_where_rows_lack(name: str, width: int) -> None:
    parts = drawn(name, width=200)
    rows = len(parts) - 2
    folded = drawn(name, width=width, rows=rows)
    told = Counter(line[:12] for line in parts if line[1] in "✗?·")
    assert told <= Counter(line[:12] for line in folded)
    hidden = [int(line.split()[1]) for line in folded if "… " in line and line.endswith(" more: F6")]
    assert len(folded) == len(parts) - sum(hidden) + len(hidden)
    if len(parts) - told.total() > 4:
        assert len(folded) <= rows and sum(hidden) >= 2


@pytest.mark.parametrize("units", ["us", "metric"])
@pytest.mark.parametrize("look", [LOOKS["256 dark"], LOOKS["ascii"]], ids=["unicode", "ascii"])
def test_on_a_narrow_screen_words_stay_whole_and_ends_are_counted(look: Look, units: str) -> None:
    for name in NAMES:
        result = filled_result(name, units)
        size, parts = result.figures.verdict.size, Ways()(result, result.figures.verdict.size)
        subject = Subject(result.session, result.figures)
        way = path_lines(subject, subject.pick, parts)
        given = " | ".join(look.fold(spaced(part.given)) for part in way)
        for line in text(way_lines(result, size, parts, Area(look, 60, 9))):
            shown, more, _ = line.partition(look.fold("…"))
            if more and not line.endswith(": F6"):
                kept = re.split(r"assumed: |  +", shown.rstrip())[-1]
                assert re.search(rf"(^| ){re.escape(kept)}[, ]", given), line
        runs = [part.short for part in way if part.short and not part.gap]
        assert all(re.fullmatch(r"[\d.]+\s(ft|m)(, \d side by side)?(, \d+ ends?)?", run) for run in runs)


def test_it_is_whole_without_the_focus_where_it_fits() -> None:
    assert drawn("twins", width=60) == drawn("twins", width=60, whole=True)
    assert len(drawn("twins", width=60)) > len(drawn("twins", width=200))


def test_a_long_name_moves_what_was_given_and_loses_nothing() -> None:
    lines = drawn("pipe", width=60, rows=9)
    assert any("0.236 in hard pipe  1 ft" in line for line in lines)
    assert any("regulator   3.6 psi at 66 gal/h" in line for line in lines)


def test_in_the_focus_nothing_is_cut() -> None:
    assert any("…" in line for line in drawn("twins", width=60, rows=9))
    lines = drawn("twins", width=60, whole=True)
    assert not any("…" in line for line in lines)
    given = " ".join(line[17:].split("  ")[0] for line in lines)
    assert "assumed: 6 psi at 100 gal/h" in given


def test_then_and_now_mark_what_differs(tmp_path: Path) -> None:
    desk = Desk.open(copy_of("hill-climb-six", tmp_path))
    desk.update()
    scratch = desk.what_if()
    scratch.type("pressure.boost", "10 psi")
    then, now = desk.result, scratch.result
    assert then is not None and now is not None
    ways = ((then, then.figures.path), (now, now.figures.path))
    lines = text(both_ways(*ways, now.figures.verdict.size, Area(Look(), 80, 30)))
    rail = next(line for line in lines if "rail" in line)
    assert "65.5 psi" in rail[:40] and "▸ 53.5 psi" in rail[40:]  # 43.5 psi of base and 22 or 10 of boost
    tank = next(line for line in lines if "tank" in line)
    assert "▸" not in tank and tank[:40].split() == tank[40:].split()


@pytest.mark.parametrize("size", AT)
async def test_every_view_comes_by_its_letter(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("full-session", tmp_path), size) as keys:
        assert keys.screen.view == SIZES
        for letter, view in LETTERS.items():
            await keys.press("ctrl+g", "v", letter)
            assert keys.screen.view == view
            await keys.until(f"[{view}]")
            keys.says_all_within()
        await keys.press("ctrl+g", "v")
        offered = [line.strip().rstrip(",") for line in keys.part("footer")]
        assert ", ".join(offered) == ", ".join(f"{letter} {view}" for letter, view in LETTERS.items())
        await keys.press("escape")
        assert keys.screen.prompt is None


@pytest.mark.parametrize("named", [False, True], ids=["without a name", "at a path that has no file yet"])
async def test_a_new_build_begins_with_the_path(tmp_path: Path, named: bool) -> None:
    desk = Desk.open(tmp_path / "new.toml") if named else Desk.new(tmp_path)
    assert await _first_view(desk) == PATH


async def test_a_build_with_a_file_begins_with_the_sizes(tmp_path: Path) -> None:
    assert await _first_view(Desk.open(copy_of("full-session", tmp_path))) == SIZES


async def _first_view(desk: Desk) -> str:
    app = FuelwizApp(desk.folder, None, look=Look())
    async with app.run_test(size=(80, 24)) as pilot:
        app.push_screen(BuildScreen(desk))
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, BuildScreen)
        return screen.view


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_the_wires_of_a_new_build_show_by_themselves_until_a_view_is_picked(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    example = Desk.open(copy_of("full-session", tmp_path)).plain
    pump = {key: value for key, value in example["pump"].items() if key != "current"}
    desk = Desk.new(tmp_path)
    desk.fit({**{key: example[key] for key in ("goal", "fuel", "feed", "wiring")}, "pump": pump})
    wiring = next(step.letter for step in STEPS if step.id == "wiring")
    app = FuelwizApp(tmp_path, None, look=Look())
    async with app.run_test(size=size) as pilot:
        app.push_screen(BuildScreen(desk))
        keys = Keyboard(pilot)
        await keys.settled()
        await keys.press("ctrl+g", wiring)
        assert keys.screen.view == SIZES
        assert "The fuse follows from the current that the pump draws, which is not given yet." in flat(
            keys.lines
        )
        desk.type("pump.amps.0", "9 A")
        await keys.press("down", "up")
        assert "Fuse, A" in keys.text and "Good for, A" in keys.text
        await keys.press("ctrl+g", "v", "p")
        assert keys.screen.view == PATH
