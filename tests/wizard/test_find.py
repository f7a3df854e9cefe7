"""The finder: questions by their words, behind *more* too, and actions; painted as the rest is."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.wizard.actions import BUILD
from fuelwiz.wizard.find_screen import FindScreen
from fuelwiz.wizard.form.finding import answers_found, found, questions_of
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, at_build, copy_of, flat

NAME = "hill-climb-six"


async def _typed(keys: Keyboard, text: str) -> FindScreen:
    await keys.press("ctrl+p")
    screen = keys.pilot.app.screen
    assert isinstance(screen, FindScreen)
    await keys.press(*text)
    return screen


@pytest.mark.parametrize("opening", [("ctrl+p",), ("ctrl+g", "k"), ("ctrl+g", "f")])
async def test_it_opens_by_every_key_that_is_promised(tmp_path: Path, opening: tuple[str, ...]) -> None:
    async with at_build(copy_of(NAME, tmp_path), (80, 24)) as keys:
        await keys.press(*opening)
        assert isinstance(keys.pilot.app.screen, FindScreen)


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
@pytest.mark.parametrize(
    ("words", "said", "key"),
    [
        ("liters", "whatever its size", "goal.power"),
        ("displacement", "whatever its size", "goal.power"),
        ("engine size", "whatever its size", "goal.power"),
        ("fuse", "follows from what the pump draws", "wiring.wire"),
        ("horsepower", "as it was measured", "goal.power_at"),
        ("swirl pot", "Called a surge pot", "surge.have"),
        ("nylon", "inside diameter as its size", "feed.run"),
    ],
)
async def test_what_is_not_asked_says_why_and_leads_to_what_is(
    tmp_path: Path, words: str, said: str, key: str, size: tuple[int, int]
) -> None:
    async with at_build(copy_of(NAME, tmp_path), size) as keys:
        await _typed(keys, words)
        assert said in flat(keys.lines)
        await keys.press("enter")
        assert keys.form.path == key


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("amps", "pump.current"),
        ("current", "pump.current"),
        ("altitude", "pressure.altitude"),
        ("reid", "fuel.reid_pressure"),
        ("wanted power", "goal.power"),
        ("redline", "engine.rpm"),
        ("rev limit", "engine.rpm"),
        ("tank size", "tank.volume"),
    ],
)
async def test_a_question_is_found_by_its_words_and_gone_to(tmp_path: Path, words: str, key: str) -> None:
    async with at_build(copy_of(NAME, tmp_path), (80, 24)) as keys:
        screen = await _typed(keys, words)
        at = next(i for i, hit in enumerate(screen.hits) if hit.id == key)
        assert at < 3, [hit.id for hit in screen.hits]
        await keys.press(*["down"] * at, "enter")
        assert keys.form.question.key == key


async def test_an_action_is_found_and_done(tmp_path: Path) -> None:
    async with at_build(copy_of(NAME, tmp_path), (80, 24)) as keys:
        await _typed(keys, "all keys")
        await keys.press("escape")
        left = keys.screen.mode
        screen = await _typed(keys, "size table")
        assert screen.hits[0].id == "table"
        await keys.press("enter")
        assert (left, keys.screen.mode) == ("form", "table")


async def test_what_is_not_there_is_said_and_enter_does_nothing(tmp_path: Path) -> None:
    async with at_build(copy_of(NAME, tmp_path), (80, 24)) as keys:
        before = keys.form.path
        screen = await _typed(keys, "qqqq")
        assert not screen.hits
        await keys.press("enter", "escape")
        assert keys.form.path == before


def test_every_question_asked_is_found_by_its_label_and_its_key(tmp_path: Path) -> None:
    desk = Desk.open(copy_of(NAME, tmp_path))
    desk.update()
    findable = questions_of(desk)
    assert len(findable) > 40
    for one in findable:
        assert one in found(findable, one.text)
        assert one in found(findable, one.id)


@pytest.mark.parametrize("look", [Look(unicode=False, colors="none"), Look(colors="16")])
async def test_it_is_drawn_as_the_rest_is(tmp_path: Path, look: Look) -> None:
    async with at_build(copy_of(NAME, tmp_path), (60, 20), look=look) as keys:
        screen = await _typed(keys, "p")
        for y in range(20):
            strip = screen.query_one("#find").render_line(y)
            assert strip.cell_length == 60
            for text, style, _ in strip:
                assert look.unicode or text.isascii()
                assert style is None or (style.color is None and style.bgcolor is None)


def test_no_action_stands_in_the_finder_that_is_not_one() -> None:
    from fuelwiz.wizard.editor.build_actions import NOT_FOUND

    assert set(NOT_FOUND) <= {action.id for action in BUILD}


def test_the_fuel_comes_before_how_far_its_ethanol_may_be_off(tmp_path: Path) -> None:
    desk = Desk.open(copy_of(NAME, tmp_path))
    desk.update()
    hits = [hit.id for hit in found(questions_of(desk), "ethanol")]
    assert hits[0].startswith("fuel."), hits
    assert "tolerance.ethanol" in hits
    first = next(at for at, key in enumerate(hits) if key.startswith("tolerance."))
    assert all(key.startswith("tolerance.") for key in hits[first:])


@pytest.mark.parametrize("words", ["inj", "injector"])
def test_what_is_asked_at_once_comes_before_what_is_asked_under_more(tmp_path: Path, words: str) -> None:
    desk = Desk.new(tmp_path)
    desk.type("goal.power", "410 hp")
    hits = found(questions_of(desk), words)
    assert hits[0].id == "injectors.rated_flow"


@pytest.mark.parametrize("word", ["shop", "list", "buy"])
def test_what_to_buy_is_found_by_what_people_call_it(word: str) -> None:
    assert "fitted.has" in {one.id for one in found(answers_found(), word)}
