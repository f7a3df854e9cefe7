"""What if on the screen: a copy to try things on, then and now, kept under its own name or dropped."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.screen import Screen

from fuelwiz.desk.desk import Desk
from fuelwiz.wizard.editor import pauses
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.live.rule import CHANGES
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted
from fuelwiz.wizard.then_and_now import changed_nouns, changed_words, measured, name_to_keep, then_and_now
from fuelwiz.wizard.what_if import WhatIfScreen

from .keyboard import OneBuild

EXAMPLES = Path(__file__).parents[1] / "examples"
MOST_WAITS = 500
SIZES = [(80, 24), (60, 20), (120, 36), (160, 50)]


class Trying(OneBuild):
    """The wizard with one build on its screen, which notes where it would go."""

    def __init__(self, path: Path) -> None:
        super().__init__(path, "goal")
        self.left = ""

    def show_list(self) -> None:
        self.left = "list"

    def leave(self, status: int = 0) -> None:
        self.left = "program"


@pytest.fixture(autouse=True)
def nothing_slow(monkeypatch: pytest.MonkeyPatch) -> None:
    """What takes hundreds of solutions is not looked at here, and comes long after each test has ended."""
    monkeypatch.setattr(pauses, "BREATH_S", 600.0)


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """The invented coupe of the examples: 560 hp on E85."""
    return Path(shutil.copy(EXAMPLES / "hill-climb-coupe.toml", tmp_path / "coupe.toml"))


def lines_of(screen: Screen[Any], name: str) -> list[str]:
    view = screen.query_one(f"#{name}", Painted)
    return [view.render_line(y).text for y in range(view.size.height)]


def left(pilot: Pilot[int]) -> str:
    """Where the program would have gone."""
    app = pilot.app
    assert isinstance(app, Trying)
    return app.left


async def until(pilot: Pilot[int], holds: Callable[[], bool]) -> None:
    for _ in range(MOST_WAITS):
        if holds():
            return
        await pilot.pause(0.01)
    raise AssertionError("never so")


async def opened(pilot: Pilot[int]) -> WhatIfScreen:
    """A what-if with another power typed in."""
    await pilot.pause()
    await pilot.press("ctrl+g", "x")
    await pilot.pause()
    screen = pilot.app.screen
    assert isinstance(screen, WhatIfScreen)
    screen.form.go_to_path("goal.power")
    await pilot.press(*"700")
    await pilot.pause()
    return screen


@pytest.mark.parametrize("size", SIZES)
async def test_then_and_now_stand_at_every_size(build: Path, size: tuple[int, int]) -> None:
    async with Trying(build).run_test(size=size) as pilot:
        screen = await opened(pilot)
        assert screen.desk.value("goal.power") == "700 hp"
        assert screen.origin.desk.value("goal.power") == "560 hp"
        strip = lines_of(screen, "strip")
        assert [len(line) for line in strip] == [size[0]] * 4
        assert (
            strip[0].startswith(" what if") and strip[1].startswith(" then") and strip[2].startswith(" now")
        )
        assert all(word in strip[0] for word in ("works", "wrong", "spare", "goal", "burns"))
        assert size[0] < 80 or all(word in strip[0] for word in ("loss", "feeds"))
        assert size[0] < 120 or "velocity" in strip[0]
        assert strip[3].rstrip() == " changed  power 560 hp → 700 hp"
        for view in screen.query("*"):
            assert not view.display or (view.region.right <= size[0] and view.region.bottom <= size[1])
        live = lines_of(screen, "live")
        assert "[sizes]" in live[0] and live[1].strip() and "Size" in " ".join(live)
        if screen.query_one("#top").display:
            assert lines_of(screen, "top")[0].startswith(" what if: Hill-climb coupe")


async def test_then_is_what_the_build_says_and_now_what_the_copy_says(build: Path) -> None:
    async with Trying(build).run_test(size=(160, 50)) as pilot:
        screen = await opened(pilot)
        pairs = {pair.head: pair for pair in measured(screen.origin.desk, screen.desk)}
        assert (pairs["goal"].then, pairs["goal"].now) == ("560\u00a0hp", "700\u00a0hp")
        then, now = (desk.result.figures for desk in (screen.origin.desk, screen.desk))
        assert now.pick.margin < then.pick.margin and now.pick.velocity_m_s > then.pick.velocity_m_s
        assert pairs["spare"].then != pairs["spare"].now
        assert pairs["works"].then == ("yes" if then.verdict.works else "no")
        assert pairs["works"].now == ("yes" if now.verdict.works else "no")


async def test_the_copy_is_dropped_and_the_file_is_untouched(build: Path) -> None:
    before = build.read_bytes()
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.press("escape")
        assert screen.prompt is not None and screen.is_current
        assert "k keeps it" in lines_of(screen, "footer")[0] and "d drops it" in lines_of(screen, "footer")[0]
        await pilot.press("escape")
        assert screen.prompt is None and screen.is_current
        await pilot.press("escape", "d")
        await pilot.pause()
        origin = pilot.app.screen
        assert origin is screen.origin and origin.desk.value("goal.power") == "560 hp"
        assert not origin.desk.dirty and "Dropped" in lines_of(origin, "footer")[0]
    assert build.read_bytes() == before
    assert [path.name for path in build.parent.iterdir()] == ["coupe.toml"]


async def test_what_is_tried_has_a_draft_until_it_is_dropped(
    build: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pauses, "KEEP_S", 0.01)
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await until(pilot, lambda: "draft kept" in lines_of(screen, "top")[0])
        (draft,) = build.parent.glob(".*.draft")
        kept = Desk.from_draft(draft)
        assert kept.name == "what if: Hill-climb coupe" and kept.value("goal.power") == "700 hp"
        await pilot.press("escape", "d")
        await pilot.pause()
        assert pilot.app.screen is screen.origin and not any(build.parent.glob(".*.draft"))


async def test_a_change_that_is_offered_has_a_draft_before_anything_is_typed(
    build: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pauses, "KEEP_S", 0.01)
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        origin = pilot.app.screen
        assert isinstance(origin, BuildScreen)
        copy = origin.desk.what_if()
        copy.fit({"goal": {"power": "710 hp"}})
        origin.program.show_what_if(origin, copy)
        await until(pilot, lambda: any(build.parent.glob(".*.draft")))
        (draft,) = build.parent.glob(".*.draft")
        assert Desk.from_draft(draft).value("goal.power") == "710 hp"


@pytest.mark.parametrize(("tried", "stays"), [({}, True), ({"goal": {"power": "710 hp"}}, False)])
async def test_a_size_that_is_looked_at_stays_where_nothing_is_tried_yet(
    build: Path, tried: dict[str, Any], stays: bool
) -> None:
    """What is tried may be judged at another size of line, and that one is shown."""
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        origin = pilot.app.screen
        assert isinstance(origin, BuildScreen) and origin.desk.result is not None
        figures = origin.desk.result.figures
        origin.highlighted = next(row.size for row in figures.sizes if row.size != figures.verdict.size)
        copy = origin.desk.what_if()
        copy.fit(tried)
        origin.program.show_what_if(origin, copy)
        await pilot.pause()
        screen = pilot.app.screen
        assert isinstance(screen, WhatIfScreen) and copy.result is not None
        assert screen.shown_size == (origin.highlighted if stays else copy.result.figures.verdict.size)
        assert stays or screen.shown_size != origin.highlighted


async def test_what_was_taken_back_again_leaves_no_draft(
    build: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pauses, "KEEP_S", 0.01)
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await until(pilot, lambda: any(build.parent.glob(".*.draft")))
        monkeypatch.setattr(pauses, "KEEP_S", 600.0)
        await pilot.press("ctrl+z", "ctrl+z", "escape")
        await pilot.pause()
        assert pilot.app.screen is screen.origin and not any(build.parent.glob(".*.draft"))


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_the_copy_is_kept_as_a_build_of_its_own(build: Path, size: tuple[int, int]) -> None:
    before = build.read_bytes()
    async with Trying(build).run_test(size=size) as pilot:
        screen = await opened(pilot)
        await pilot.press("escape", "k")
        assert screen.prompt is not None and screen.prompt.editor.text == "Hill-climb coupe, power 700 hp"
        await pilot.press("enter")
        await pilot.pause()
        assert pilot.app.screen is screen.origin
        assert screen.origin.desk.path == build and not screen.origin.desk.dirty
        says = " ".join(" ".join(lines_of(screen.origin, "footer")).split())
        assert 'Kept as "Hill-climb coupe, power 700 hp".' in says
        assert "You are still in Hill-climb coupe; Ctrl+G b lists both." in says
        await pilot.press("ctrl+g", "b")
        assert left(pilot) == "list"
    assert screen.desk.path is not None
    kept = Desk.open(screen.desk.path)
    assert kept.name == "Hill-climb coupe, power 700 hp" and kept.value("goal.power") == "700 hp"
    assert kept.path.parent == build.parent and kept.path != build
    assert build.read_bytes() == before


@pytest.mark.parametrize("keys", [("escape", "k"), ("ctrl+s",)])
async def test_the_name_of_the_build_itself_is_never_written_over(build: Path, keys: list[str]) -> None:
    before = build.read_bytes()
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.press(*keys, "ctrl+u")
        screen.prompt.editor = type(screen.prompt.editor)()
        await pilot.press(*"coupe", "enter")
        assert screen.prompt is not None and "taken" in screen.prompt.text and not screen.prompt.letters
        await pilot.press(*"2", "enter")
        await pilot.pause()
        assert screen.desk.path.name == "coupe2.toml"
        assert pilot.app.screen is (screen.origin if keys[0] == "escape" else screen)
    assert build.read_bytes() == before


async def test_a_save_that_was_left_does_not_close_the_next_time(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.press("escape", "k", "escape", "ctrl+s", "enter")
        await pilot.pause()
        assert pilot.app.screen is screen and screen.desk.path is not None
        await pilot.press("escape")
        await pilot.pause()
        assert pilot.app.screen is screen.origin


async def test_nothing_changed_goes_back_without_a_question(build: Path) -> None:
    async with Trying(build).run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "x")
        await pilot.pause()
        screen = pilot.app.screen
        assert isinstance(screen, WhatIfScreen)
        assert "nothing yet" in lines_of(screen, "strip")[3]
        await pilot.press("escape")
        await pilot.pause()
        assert pilot.app.screen is screen.origin and left(pilot) == ""


async def test_leaving_the_program_asks_first_and_then_leaves(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.press("ctrl+g", "q")
        assert screen.is_current and left(pilot) == ""
        await pilot.press("d")
        await pilot.pause()
        assert pilot.app.screen is screen.origin and left(pilot) == "program"


async def test_a_what_if_of_a_what_if_is_not_opened(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        await pilot.press("ctrl+g")
        assert not screen.query_one("#strip").display
        await pilot.press("x")
        assert pilot.app.screen is screen and "already" in lines_of(screen, "footer")[0]
        assert screen.query_one("#strip").display


def test_a_build_without_an_answer_shows_dashes(tmp_path: Path) -> None:
    before = Desk.new(tmp_path)
    before.update()
    after = before.what_if()
    assert {(pair.then, pair.now) for pair in measured(before, after)} == {("–", "–")}
    after.type("goal.power", "400")
    power = next(pair for pair in measured(before, after) if pair.head == "goal")
    assert (power.then, power.now) == ("–", "400\u00a0hp")
    assert changed_words(before, after) == ["power – → 400 hp"]


def test_changes_are_shown_whole_and_the_rest_counted_letter_by_letter(tmp_path: Path) -> None:
    before = Desk.new(tmp_path)
    before.type("goal.power", "400")
    after = before.what_if()
    after.choose("pump.known", "sample")
    for path, text in (("pump.name", "[red]x[/red]"), ("pressure.boost", "20 psi"), ("feed.length", "15 ft")):
        after.type(path, text)
    words = changed_words(before, after)
    assert any("[red]x[/red]" in word for word in words)
    for look in (Look(), Look(unicode=False, colors="none")):
        lines = [line.text for line in then_and_now(before, after, Area(look, 60, 4))]
        assert {len(line) for line in lines} == {60}
        *shown, rest = lines[3].removeprefix(" changed  ").rstrip().split("; ")
        assert shown == [look.fold(word) for word in words[: len(shown)]]
        nouns = [look.fold(noun) for noun in changed_nouns(before, after)[len(shown) :]]
        assert rest in (f"{len(words) - len(shown)} more", ", ".join(nouns))
        assert look.unicode or all(line.isascii() for line in lines)


async def test_it_begins_at_the_power(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("ctrl+g", "5", "ctrl+g", "x")
        await pilot.pause()
        screen = pilot.app.screen
        assert isinstance(screen, WhatIfScreen) and screen.form.path == "goal.power"


async def test_it_keeps_the_size_of_line_and_a_kept_copy_chooses_none(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        today = screen.origin.desk.result
        assert today is not None and today.figures.chosen is None
        for power in ("900", "1400"):
            screen.desk.type("goal.power", power)
            assert screen.desk.result is not None
            assert screen.desk.result.figures.verdict.size == today.figures.verdict.size
        assert screen.desk.result.figures.recommended != today.figures.verdict.size
        assert changed_words(screen.origin.desk, screen.desk) == ["power 560 hp → 1400 hp"]
        await pilot.press("escape", "k", "enter")
        await pilot.pause()
    assert screen.desk.path is not None
    kept = Desk.open(screen.desk.path)
    kept.update()
    assert kept.value("feed.chosen") is None and kept.result is not None
    assert screen.desk.result == kept.result or screen.desk.result.figures.chosen is None


async def test_it_says_what_is_still_wrong(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        screen.desk.type("goal.power", "1400")
        screen.show_all()
        wrong = next(pair for pair in measured(screen.origin.desk, screen.desk) if pair.head == "wrong")
        result = screen.desk.result
        assert result is not None and result.figures.verdict.limits
        assert wrong.now == ", ".join(result.figures.verdict.limits)
        assert wrong.now in lines_of(screen, "strip")[2]


async def test_what_was_assumed_stands_as_what_it_was(build: Path) -> None:
    async with Trying(build).run_test(size=(80, 24)) as pilot:
        screen = await opened(pilot)
        screen.desk.type("goal.power", "560 hp")
        screen.desk.type("pump.count", "2")
        assert changed_words(screen.origin.desk, screen.desk) == ["number of pumps 1 → 2"]


@pytest.mark.parametrize("size", SIZES)
async def test_the_curves_are_drawn_in_it_too(build: Path, size: tuple[int, int]) -> None:
    async with Trying(build).run_test(size=size) as pilot:
        screen = await opened(pilot)
        screen.desk.type("goal.power", "560 hp")
        await pilot.press("ctrl+g", "v", "c")
        await pilot.pause()
        told = "\n".join(lines_of(screen, "live"))
        if size == (60, 20):
            assert "F6" in told
            await pilot.press("f6")
            await pilot.pause()
            told = "\n".join(lines_of(screen, "live"))
        assert "◆" in told


async def test_a_what_if_offers_no_other_one(build: Path) -> None:
    async with Trying(build).run_test(size=(120, 40)) as pilot:
        while not isinstance(pilot.app.screen, BuildScreen):
            await pilot.pause(0.01)
        origin = pilot.app.screen
        await pilot.pause()
        origin.view, origin.mode = CHANGES, "table"
        assert "try" in [action.id for action in origin.offered()]
        screen = await opened(pilot)
        screen.view = CHANGES
        screen.to_mode("table")
        assert "try" not in [action.id for action in screen.offered()]


async def test_then_and_now_show_power_in_the_unit_of_the_build(build: Path) -> None:
    before, after = Desk.open(build), Desk.open(build)
    for desk in (before, after):
        desk.update()
        desk.choose("units", "metric_hp")
    (power,) = [pair for pair in measured(before, after) if pair.head == "goal"]
    assert power.then.endswith("hp") and power.now.endswith("hp")


def test_a_proposed_name_says_what_was_changed(build: Path) -> None:
    before = Desk.open(build)
    before.update()
    one = before.what_if()
    one.type("pressure.boost", "1.6 bar")
    assert name_to_keep(before, one) == "Hill-climb coupe, boost 1.6 bar"
    section = before.what_if()
    section.type("pump.count", "2")
    section.type("pump.running_at_idle", "1")
    assert name_to_keep(before, section) == "Hill-climb coupe, another pump"
    both = before.what_if()
    both.type("pump.count", "2")
    both.type("pressure.boost", "1.6 bar")
    assert name_to_keep(before, both) == "Hill-climb coupe what if"


@pytest.mark.parametrize("width", [60, 80])
def test_much_that_is_wrong_is_counted_and_pushes_no_figure_out(build: Path, width: int) -> None:
    before = Desk.open(build)
    before.update()
    after = before.what_if()
    after.type("goal.power", "1500")
    after.type("feed.chosen", "-4")
    assert after.result is not None
    limits = after.result.figures.verdict.limits
    assert len(", ".join(limits)) > 28, "else nothing would have to be counted"
    heads, _then, now, _changed = [line.text for line in then_and_now(before, after, Area(Look(), width, 4))]
    assert f"{limits[0]}" in now and " + " in now
    assert all(word in heads for word in ("spare", "goal", "burns"))
    assert "1500" in now


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("letter", ["l", "c"])
async def test_ladder_and_curves_are_drawn_with_one_size_alone(
    tmp_path: Path, size: tuple[int, int], letter: str
) -> None:
    one = EXAMPLES.joinpath("hill-climb-coupe.toml").read_text(encoding="utf-8")
    path = tmp_path / "one.toml"
    path.write_text(one.replace("[[feed.run]]", '[feed]\nsizes = ["-8"]\n[[feed.run]]', 1), encoding="utf-8")
    async with Trying(path).run_test(size=size) as pilot:
        screen = await opened(pilot)
        assert screen.desk.result is not None
        assert [row.size for row in screen.desk.result.figures.sizes] == ["-8"]
        await pilot.press("ctrl+g", "v", letter)
        await pilot.pause()
        if size == (60, 20) and letter == "c":
            await pilot.press("f6")
            await pilot.pause()
        told = "\n".join(lines_of(screen, "live"))
        assert "could make" in told if letter == "l" else "◆" in told
