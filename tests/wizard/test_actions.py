"""Every action of the one list is done by the screen that offers it, and no screen does another."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk.desk import Desk
from fuelwiz.questions.glossary import glossary
from fuelwiz.wizard.actions import BUILD, LIST, Action
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.build_list.list_screen import BuildListScreen
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.words_screen import WordsScreen


async def test_a_build_does_every_action_and_no_other(tmp_path: Path) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test():
        actions = BuildScreen(Desk.new(tmp_path)).actions
        done = [*actions.handlers, *actions.directed]
        assert sorted(done) == sorted(action.id for action in BUILD)


async def test_the_list_does_every_action_and_no_other(tmp_path: Path) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test():
        assert isinstance(app.screen, BuildListScreen)
        assert sorted(app.screen.actions.handlers) == sorted(action.id for action in LIST)


@pytest.mark.parametrize("actions", [BUILD, LIST])
def test_a_letter_does_one_thing(actions: tuple[Action, ...]) -> None:
    letters = [letter for action in actions for letter in (action.letter, action.also) if letter]
    assert len(set(letters)) == len(letters)


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_the_page_of_words_shows_every_word_and_closes(tmp_path: Path, size: tuple[int, int]) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test(size=size) as pilot:
        app.show_build(Desk.new(tmp_path))
        await pilot.pause()
        await pilot.press("ctrl+g", "g")
        await pilot.pause()
        assert isinstance(app.screen, WordsScreen)
        page = app.screen.query_one("#page")
        seen: set[str] = set()
        for _ in range(20):
            seen |= {page.render_line(y).text.strip() for y in range(page.size.height)}
            await pilot.press("pagedown")
            await pilot.pause()
        missing = [word for word in glossary() if not any(line.startswith(word) for line in seen)]
        assert not missing
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, BuildScreen)


async def test_f1_on_the_list_ends_in_the_words(tmp_path: Path) -> None:
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("f1", *["pagedown"] * 20)
        await pilot.pause()
        page = app.screen.query_one("#list")
        lines = [page.render_line(y).text.strip() for y in range(page.size.height)]
        assert any(line.startswith(list(glossary())[-1]) for line in lines)
