"""What is asked before a build takes a key: whose it is, and whether to go on with a draft that was left."""

from __future__ import annotations

import json
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.store.drafts import drafts_of
from fuelwiz.store.sitting import Sitting
from fuelwiz.wizard.actions import BUILD
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.question_screen import NOT_TAKEN, QuestionScreen

from .build_lists import SIZES
from .keyboard import Keyboard, at_build, copy_of, event_of, flat

THERE = Sitting("0123456789abcdef", "ann", "bench-pc", 7, "1", "2026-05-14T14:02:00+00:00")
LEAVES = {"ctrl+q", "ctrl+c", "escape"}
TYPED = ("ctrl+g", "1", *"433")


@pytest.fixture
def build(tmp_path: Path) -> Path:
    return copy_of("hill-climb-six", tmp_path)


def held_elsewhere(build: Path) -> Path:
    """The lock of somebody on another machine."""
    lock = build.with_name(f".{build.name}.lock")
    lock.write_text(json.dumps(THERE.as_plain()), encoding="utf-8")
    return lock


def left_a_draft(build: Path, power: str) -> Path:
    """A draft of somebody who is gone."""
    desk = Desk.open(build)
    desk.update()
    desk.type("goal.power", power)
    place = desk.write_draft()
    assert place is not None
    told = json.loads(place.read_text(encoding="utf-8"))
    place.write_text(json.dumps({**told, "sitting": None}), encoding="utf-8")
    return place


@asynccontextmanager
async def asked(
    build: Path, size: tuple[int, int] = (80, 24), typed: Sequence[str] = ()
) -> AsyncIterator[Keyboard]:
    """The wizard with a build that asks something first, keys having come before it could."""
    app = FuelwizApp(build.parent, look=Look())
    async with app.run_test(size=size) as pilot:
        keys = Keyboard(pilot)
        app.open_build(build, [event_of(key) for key in typed])
        await keys.until_true(lambda: isinstance(app.screen, QuestionScreen))
        await keys.settled()
        yield keys


async def at_the_build(keys: Keyboard) -> None:
    await keys.until_true(lambda: isinstance(keys.pilot.app.screen, BuildScreen) and keys.screen.is_ready)
    await keys.settled()


@pytest.mark.parametrize("size", SIZES)
async def test_the_question_and_all_choices_are_in_sight(build: Path, size: tuple[int, int]) -> None:
    held_elsewhere(build)
    async with asked(build, size) as keys:
        text = flat(keys.lines)
        assert "is open by ann on bench-pc since 2026-05-14" in text
        for words in ("c copy it", "g go on here too", "Esc only look"):
            assert words in text
        await keys.type("43")
        await keys.paste("3 hp")
        assert NOT_TAKEN in flat(keys.lines) and "c copy it" in flat(keys.lines)


async def test_who_only_looks_changes_nothing(build: Path) -> None:
    held_elsewhere(build)
    before = build.read_bytes()
    async with asked(build) as keys:
        await keys.press("escape")
        await at_the_build(keys)
        assert "only looking" in keys.part("top")[0]
        told = keys.desk.plain
        pressed = [key for action in BUILD for key in action.keys if key not in LEAVES]
        for path in ("goal.power", "fuel.which", "engine.induction"):
            await keys.go_to(path)
            for key in (*pressed, *"7a", "space", "left", "right", "backspace", "ctrl+u"):
                await keys.press(key)
                while not isinstance(keys.pilot.app.screen, BuildScreen) or keys.screen.prompt is not None:
                    await keys.press("escape")
                keys.screen.to_mode("form")
            assert keys.desk.plain == told, path
        await keys.go_to("goal.power")
        await keys.press("7")
        assert "You only look: this build is open by ann" in flat(keys.part("footer"))
        await keys.press("ctrl+s")
        assert "You only look" in flat(keys.part("footer"))
        await keys.pilot.pause(0.8)
    assert build.read_bytes() == before and not drafts_of(build)


async def test_under_another_name_it_is_ones_own(build: Path) -> None:
    held_elsewhere(build)
    before = build.read_bytes()
    async with asked(build) as keys:
        await keys.press("escape")
        await at_the_build(keys)
        await keys.press("ctrl+g", "a", "ctrl+u", *"mine", "enter")
        await keys.until("Saved: mine.toml")
        await keys.go_to("goal.power")
        await keys.type("433")
        assert keys.desk.value("goal.power") == "433 hp"
    assert build.read_bytes() == before and build.with_name("mine.toml").exists()


async def test_once_its_owner_has_left_it_as_it_was_it_may_be_changed(build: Path) -> None:
    lock = held_elsewhere(build)
    async with asked(build) as keys:
        await keys.press("escape")
        await at_the_build(keys)
        await keys.go_to("goal.power")
        await keys.press("7")
        assert keys.desk.value("goal.power") == "750 hp"
        lock.unlink()
        await keys.type("433")
        assert keys.desk.value("goal.power") == "433 hp" and lock.exists()


async def test_what_its_owner_has_saved_since_is_not_changed_from_the_old(build: Path) -> None:
    lock = held_elsewhere(build)
    async with asked(build) as keys:
        await keys.press("escape")
        await at_the_build(keys)
        lock.unlink()
        build.write_text(build.read_text(encoding="utf-8").replace("750 hp", "760 hp"), encoding="utf-8")
        await keys.go_to("goal.power")
        await keys.press("7")
        assert "saved elsewhere since" in flat(keys.part("footer"))
        assert keys.desk.value("goal.power") == "750 hp"


async def test_a_draft_says_what_it_changes_and_takes_what_was_typed_before_it_was_offered(
    build: Path,
) -> None:
    left_a_draft(build, "640")
    async with asked(build, (60, 20), typed=TYPED) as keys:
        text = flat(keys.lines)
        assert "power 750 to 640 hp" in text and "d open the draft" in text and "x put the draft" in text
        assert "Esc stay with the saved build" in text
        question = keys.pilot.app.screen
        for key in ("d", "7"):
            question.post_message(event_of(key))  # the answer, and a key right behind it
        await at_the_build(keys)
        await keys.until_true(lambda: keys.desk.value("goal.power") == "4337 hp")
        assert keys.desk.undo() is not None and keys.desk.value("goal.power") == "640 hp"


async def test_a_draft_says_that_a_table_stands_in_it(build: Path) -> None:
    place = left_a_draft(build, "640")
    told = json.loads(place.read_text(encoding="utf-8"))
    place.write_text(
        json.dumps({**told, "plain": Desk.open(build).plain, "table": ["pump.known", "40 psi, 6"]}),
        encoding="utf-8",
    )
    async with asked(build) as keys:
        text = flat(keys.lines)
        assert "A table of points stands on its page" in text and "It says" not in text


async def test_a_draft_that_is_damaged_before_it_is_taken_is_refused_in_a_sentence(build: Path) -> None:
    place = left_a_draft(build, "640")
    async with asked(build) as keys:
        place.write_text("not a draft any more", encoding="utf-8")
        await keys.press("d")
        await at_the_build(keys)
        assert "draft" in flat(keys.part("footer")) and keys.desk.value("goal.power") == "750 hp"


async def test_staying_with_the_saved_build_keeps_the_draft_and_takes_what_was_typed(build: Path) -> None:
    place = left_a_draft(build, "640")
    async with asked(build, typed=TYPED) as keys:
        await keys.type("zq")
        assert NOT_TAKEN in flat(keys.lines)
        await keys.press("down", "down", "enter")
        await at_the_build(keys)
        await keys.until_true(lambda: keys.desk.value("goal.power") == "433 hp")
        assert "640 hp" in place.read_text(encoding="utf-8")


async def test_a_draft_that_goes_to_the_bin_is_there(build: Path) -> None:
    place = left_a_draft(build, "640")
    async with asked(build) as keys:
        await keys.press("x")
        await at_the_build(keys)
        assert "bin" in flat(keys.part("footer"))
        assert not place.exists() and list((build.parent / ".bin").rglob(f"*{place.name}"))


async def test_keys_that_came_early_are_taken_before_those_that_wait_already(
    build: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    app, update, wait = FuelwizApp(build.parent, look=Look()), Desk.update, list("pump data")

    def slow_update(desk: Desk) -> None:
        update(desk)
        while wait:
            app.screen.post_message(event_of(wait.pop(0)))

    async with app.run_test(size=(80, 24)) as pilot:
        keys = Keyboard(pilot)
        monkeypatch.setattr(Desk, "update", slow_update)
        app.open_build(build, [event_of("ctrl+p")])
        await keys.until("Find  [pump data")


async def test_a_window_that_is_too_small_to_ask_in_is_left_with_the_draft_kept(build: Path) -> None:
    async with at_build(build) as keys:
        await keys.go_to("goal.power")
        await keys.press_soon("4")
        await keys.press_soon("3")
        await keys.pilot.resize_terminal(30, 10)
        await keys.press("ctrl+q")
        assert keys.pilot.app.return_code == 0
        (draft,) = drafts_of(build)
        assert Desk.from_draft(draft.place).text_in_field("goal.power").text == "43"
