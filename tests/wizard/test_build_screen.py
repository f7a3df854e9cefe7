"""The screen of one build: what is in sight at four sizes, and what every key does."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from fuelwiz.desk.desk import Desk
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.actions import BUILD, Action
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.form.form_rows import ItemRow
from fuelwiz.wizard.form.plan import CAUTIONS
from fuelwiz.wizard.live.rule import VIEWS
from fuelwiz.wizard.loading import LoadingScreen
from fuelwiz.wizard.look import Look

from .keyboard import at_build, copy_of, event_of, flat

SIZES = [(60, 20), (80, 24), (120, 36), (160, 50)]
TABLE = "pressure psi, flow gal/h\n20, 151\n40, 142\n60, 131\n80, 117\n100, 98\n"
WRONG = {
    "goal.power": ("lots", "7O0", "-20", "0"),
    "goal.reserve": ("-5", "ten"),
    "fuel.temperature": ("hot", "900"),
    "pressure.base": ("3 meters", "-1"),
}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ["hill-climb-six", "no-pump-yet", "goal-alone"])
async def test_all_that_is_in_sight_fits(tmp_path: Path, size: tuple[int, int], name: str) -> None:
    async with at_build(copy_of(name, tmp_path), size) as keys:
        words = keys.desk.result.words
        answers = [flat([text])[:30] for text in words.answer_forms[0]]
        for step in STEPS:
            await keys.press("ctrl+g", step.letter)
            assert keys.form.place.step == step.id
            keys.says_all_within()
            assert any(answer in flat(keys.part("live")) for answer in answers)
            asked = [line for line in keys.part("form") if line.startswith(" ▸ ")]
            assert len(asked) == 1
            row = keys.form.row
            label = row.columns[0] if isinstance(row, ItemRow) else getattr(row, "text", row.question.label)
            assert label[:17] in asked[0]


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36)])
@pytest.mark.parametrize("step", CAUTIONS)
async def test_a_caution_is_said_whole(tmp_path: Path, step: str, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        keys.form.go_to_step(step)
        keys.screen.show_all()
        await keys.settled()
        assert any(caution in flat(keys.part("form")) for caution in CAUTIONS[step])


@pytest.mark.parametrize("size", [SIZES[0], SIZES[-1]])
async def test_the_pointer_is_in_sight_all_the_way_down(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        for step in STEPS:
            await keys.press("ctrl+g", step.letter, "ctrl+g", "m")
            for _ in range(60):
                if keys.form.place.step != step.id:
                    break
                assert sum(line.startswith(" ▸") for line in keys.part("form")) == 1
                await keys.press_soon("down")


async def test_from_new_to_a_saved_file_by_keys_alone(tmp_path: Path) -> None:
    path = tmp_path / "first.toml"
    async with at_build(path) as keys:
        assert keys.form.path == "units"
        await keys.press("enter")
        assert keys.form.path == "goal.power"
        await keys.type("600")
        await keys.until("600 hp on E10")
        await keys.press("ctrl+g", "2", "right")
        await keys.press("ctrl+g", "3")
        await keys.type("18")
        await keys.press("ctrl+g", "4", "right")
        await keys.go_to("feed.length")
        await keys.type("14")
        await keys.press("enter")
        await keys.press("ctrl+s")
        await keys.until("Saved: first.toml")
        assert not keys.desk.dirty
    said = tomllib.loads(path.read_text(encoding="utf-8"))
    assert said["goal"]["power"] == "600 hp"
    assert said["pressure"]["boost"] == "18 psi"
    assert said["feed"]["run"][0]["length"] == "14 ft"


@pytest.mark.parametrize(("path", "texts"), WRONG.items())
async def test_a_wrong_value_is_said_beside_its_field_and_kept(
    tmp_path: Path, path: str, texts: tuple[str, ...]
) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        for text in texts:
            await keys.go_to(path)
            await keys.press("ctrl+u")
            await keys.type(text)
            refused = keys.desk.refused[path]
            assert keys.desk.text_in_field(path).text == text
            row = next(line for line in keys.part("form") if line.startswith(" ▸"))
            assert text in row and "!" in row
            assert refused[:20].lower() in flat(keys.part("form")).lower()
            assert keys.desk.held and "Not updated" in flat(keys.part("live"))
            await keys.press("tab")
            assert keys.form.path != path, "a wrong value must not hold the pointer"
            assert keys.desk.text_in_field(path).text == text
            await keys.press("ctrl+z")
            assert path not in keys.desk.refused


@pytest.mark.parametrize("key", ["backspace", "delete", "ctrl+u", "space"])
async def test_a_question_that_is_emptied_to_be_typed_anew_keeps_the_pointer(
    tmp_path: Path, key: str
) -> None:
    """Without its share of ethanol the fuel is no longer another blend, which alone asks for one."""
    async with at_build(copy_of("full-session", tmp_path)) as keys:
        keys.form.go_to_path("fuel.ethanol")
        warm = keys.desk.text_in_field("fuel.temperature").text
        await keys.press(key)
        await keys.type("65")
        assert keys.form.path == "fuel.ethanol"
        assert keys.desk.text_in_field("fuel.ethanol").text.strip() == "65"
        assert keys.desk.text_in_field("fuel.temperature").text == warm


async def test_a_wrong_value_is_not_saved_but_pointed_at(tmp_path: Path) -> None:
    path = copy_of("hill-climb-six", tmp_path)
    before = path.read_bytes()
    async with at_build(path) as keys:
        await keys.go_to("goal.power")
        await keys.type("lots")
        await keys.press("ctrl+g", "5", "ctrl+s")
        assert keys.form.path == "goal.power"
        assert "Power" in keys.screen.message or "power" in keys.screen.message
        assert path.read_bytes() == before


@pytest.mark.parametrize("key", ["question_mark", "f2"])
async def test_not_sure_takes_the_usual_value_and_says_why(tmp_path: Path, key: str) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("pump.volts")
        assert not keys.desk.text_in_field("pump.volts").assumed
        await keys.press(key)
        assert keys.desk.text_in_field("pump.volts").assumed
        assert keys.form.note and flat([keys.form.note])[:30] in flat(keys.part("form"))


async def test_a_question_mark_can_be_written_into_a_text(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("fitted.pump")
        await keys.type("is it new?")
        assert keys.desk.text_in_field("fitted.pump").text == "is it new?"


async def test_the_help_page_goes_on_taking_keys(tmp_path: Path) -> None:
    async with at_build(tmp_path / "new.toml", (60, 20)) as keys:
        await keys.press("down", "f1")
        for part in ("What it is", "Why asked", "Rule"):
            assert part in keys.text
        await keys.type("640")
        assert keys.desk.plain["goal"]["power"] == "640 hp"
        await keys.until("needs 67 gal/h")
        first = keys.part("help")
        await keys.press("pagedown")
        assert keys.part("help") != first
        await keys.press("tab")
        assert f"help: {keys.form.question.label}" in keys.text
        await keys.press("f1")
        assert not keys.part("help") and keys.part("live")


@pytest.mark.parametrize("size", SIZES)
async def test_every_question_has_its_page_within_the_screen(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        await keys.press("f1")
        for step in STEPS:
            await keys.press("ctrl+g", step.letter, "f1")
            assert keys.screen.mode == "help"
            keys.says_all_within()
            assert keys.form.question.label in flat(keys.part("help"))


async def test_steps_forth_and_back(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.press("ctrl+g", "1")
        gone = []
        for _ in STEPS:
            gone.append(keys.form.place.step)
            await keys.press("f4")
        assert gone == [step.id for step in STEPS]
        assert "last step" in keys.part("footer")[0]
        for step in reversed(gone[:-1]):
            await keys.press("f3")
            assert keys.form.place.step == step
        await keys.press("f3")
        assert keys.form.place.step == gone[0]


@pytest.mark.parametrize("size", SIZES)
async def test_every_view_comes_round(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        seen, pages = [], []
        for _ in VIEWS:
            seen.append(keys.screen.view)
            pages.append(tuple(keys.part("live")))
            keys.says_all_within()
            await keys.press("f5")
        first = VIEWS.index(seen[0])
        assert seen == [*VIEWS[first:], *VIEWS[:first]] and keys.screen.view == seen[0]
        assert len(set(pages)) == len(pages), "each view shows something of its own"


async def test_settling_on_a_size_in_the_table(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        assert keys.desk.plain["feed"]["chosen"] == "-6"
        await keys.press("f6", "down", "enter")
        assert keys.desk.plain["feed"]["chosen"] == "-8"
        assert any("-8" in line and "*" in line for line in keys.part("live"))
        await keys.press("f6", "ctrl+z")
        assert keys.screen.mode == "form"
        assert keys.desk.plain["feed"]["chosen"] == "-6"


async def test_undo_and_redo_go_by_the_question(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("goal.power")
        await keys.type("8")
        await keys.type("20")
        await keys.go_to("pressure.boost")
        await keys.type("25")
        await keys.press("ctrl+z")
        assert keys.form.path == "pressure.boost" and keys.desk.plain["pressure"]["boost"] == "22 psi"
        await keys.press("ctrl+z")
        assert keys.form.path == "goal.power" and keys.desk.plain["goal"]["power"] == "750 hp"
        await keys.press("ctrl+z")
        assert "Nothing to undo" in keys.part("footer")[0]
        await keys.press("ctrl+y", "ctrl+y")
        assert keys.desk.plain["goal"]["power"] == "820 hp"
        assert keys.desk.plain["pressure"]["boost"] == "25 psi"


async def test_save_as_asks_for_a_name_and_does_not_write_over_a_file(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.press("ctrl+g", "a")
        assert "Save as:" in keys.part("footer")[0]
        await keys.press("ctrl+u")
        await keys.type("Other six")
        await keys.press("enter")
        await keys.until("Saved:")
        other = keys.desk.path
        assert other.parent == tmp_path and tomllib.loads(other.read_text())["name"] == "Other six"
        await keys.press("ctrl+g", "a", "ctrl+u")
        before = (tmp_path / "hill-climb-six.toml").read_bytes()
        await keys.type("hill-climb-six")
        await keys.press("enter")
        assert "y overwrites" in keys.screen.prompt.text
        await keys.press("escape")
        assert (tmp_path / "hill-climb-six.toml").read_bytes() == before


async def test_a_build_without_a_file_is_asked_its_name_on_saving(tmp_path: Path) -> None:
    async with at_build(tmp_path / "x.toml") as keys:
        app = keys.pilot.app
        assert isinstance(app, FuelwizApp)
        app.new_build()
        await keys.until("Power wanted")
        await keys.press("down")
        await keys.type("400")
        await keys.press("ctrl+s")
        assert "Save as:" in keys.part("footer")[0]
        await keys.type("Quiet four")
        await keys.press("enter")
        await keys.until("Saved:")
        assert tomllib.loads(keys.desk.path.read_text())["goal"]["power"] == "400 hp"


@pytest.mark.parametrize(
    "action", [a for a in BUILD if a.letter and a.id not in ("builds", "quit")], ids=lambda a: a.id
)
async def test_every_letter_of_the_key_page_does_what_it_says(tmp_path: Path, action: Action) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path)) as keys:
        await keys.go_to("pump.volts")
        await keys.type("13")
        await keys.press("ctrl+g")
        assert keys.screen.mode == "keys"
        before, screen = seen_of(keys.screen), keys.screen
        if action.id == "redo":
            await keys.press("escape", "ctrl+z", "ctrl+g")
            assert keys.desk.plain["pump"]["volts"] == "13.5 V"
        await keys.press(action.letter)
        if action.id == "redo":
            assert keys.desk.plain["pump"]["volts"] == "13 V"
        else:
            assert keys.pilot.app.screen is not screen or screen.mode != "form" or seen_of(screen) != before


def seen_of(screen: BuildScreen) -> tuple[object, ...]:
    """All that an action may change of a build's screen, but for which part has the keys."""
    form, desk = screen.form, screen.desk
    return (
        screen.view,
        form.place,
        form.path,
        screen.message,
        screen.prompt,
        repr(desk.plain),
        screen.saving.kept,
    )


@pytest.mark.parametrize("size", SIZES)
async def test_the_key_page_tells_every_action(tmp_path: Path, size: tuple[int, int]) -> None:
    async with at_build(copy_of("hill-climb-six", tmp_path), size) as keys:
        await keys.press("ctrl+g")
        page = keys.part("sheet")
        keys.says_all_within()
        for action in BUILD:
            assert any(action.say in line or action.text[:20] in line for line in page), action.id
            assert not action.letter or any(f" {action.letter}  " in line for line in page), action.id


async def test_leaving_with_changes_asks_first(tmp_path: Path) -> None:
    path = copy_of("hill-climb-six", tmp_path)
    async with at_build(path) as keys:
        await keys.go_to("goal.power")
        await keys.type("800")
        await keys.press("ctrl+q")
        assert "Not saved yet" in keys.part("footer")[0]
        await keys.press("escape")
        assert keys.screen.prompt is None
        await keys.press("ctrl+q", "s")
        assert keys.pilot.app.return_code == 0
    assert tomllib.loads(path.read_text())["goal"]["power"] == "800 hp"


async def test_a_pasted_table_becomes_points(tmp_path: Path) -> None:
    async with at_build(copy_of("no-pump-yet", tmp_path)) as keys:
        await keys.go_to("pump.known")
        await keys.press("f8")
        await keys.paste(TABLE)
        assert "Understood 5 points" in keys.text
        await keys.press("f8")
        points = keys.desk.plain["pump"]["curve"][0]["points"]
        assert points == [
            ["20 psi", "151 gal/h"],
            ["40 psi", "142 gal/h"],
            ["60 psi", "131 gal/h"],
            ["80 psi", "117 gal/h"],
            ["100 psi", "98 gal/h"],
        ]
        assert keys.form.path == "pump.curve.0.points.0.0"


async def test_a_table_is_read_from_a_file_by_its_name(tmp_path: Path) -> None:
    (tmp_path / "pump.csv").write_text("pressure (bar),flow (L/h)\n1,500\n3,450\n5,390\n", encoding="utf-8")
    async with at_build(copy_of("no-pump-yet", tmp_path)) as keys:
        await keys.go_to("pump.known")
        await keys.press("f8")
        await keys.type("pump.csv")
        await keys.press("f8")
        assert keys.desk.plain["pump"]["curve"][0]["points"] == [
            ["1 bar", "500 L/h"],
            ["3 bar", "450 L/h"],
            ["5 bar", "390 L/h"],
        ]


async def test_keys_that_come_before_the_first_answer_wait_for_it(tmp_path: Path) -> None:
    """The first answer chooses the question to begin with: what is typed goes there, and none of it is lost."""
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test() as pilot:
        screen = BuildScreen(Desk.new(tmp_path))
        app.push_screen(screen)
        for key in ("down", *"750"):
            screen.on_key(event_of(key))
        assert not screen.is_ready
        for _ in range(200):
            await pilot.pause(0.01)
            if screen.is_ready:
                break
        await pilot.pause()
        assert screen.desk.value("goal.power") == "750 hp" and screen.form.path == "goal.power"


async def test_keys_pressed_while_the_build_is_loaded_reach_it(tmp_path: Path) -> None:
    path = copy_of("goal-alone", tmp_path)
    app = FuelwizApp(tmp_path, look=Look())
    async with app.run_test() as pilot:
        app.open_build(path)
        assert isinstance(app.screen, LoadingScreen)
        for key in ("ctrl+g", "3", "9"):
            app.screen.on_key(event_of(key))
        for _ in range(200):
            await pilot.pause(0.01)
            if isinstance(app.screen, BuildScreen) and app.screen.is_ready:
                break
        await pilot.pause()
        assert isinstance(app.screen, BuildScreen)
        assert app.screen.form.path == "pressure.boost" and app.screen.form.editor.text == "9"
