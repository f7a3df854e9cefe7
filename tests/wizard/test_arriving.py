"""A build that is opened again: it stands at the answer that cures what is wrong, and says why"""

from __future__ import annotations

from pathlib import Path

import pytest
from advice.builds import changed, plain
from advice.scenarios import LIMITS

from fuelwiz.desk import Desk
from fuelwiz.document.merge import merge
from fuelwiz.sizing.vocabulary import Limit
from fuelwiz.wizard.form.form import Form

from .keyboard import at_build, copy_of, flat

ANSWERS: dict[Limit, tuple[str, str]] = {
    "velocity": ("feed.chosen", "the feed line is too small"),
    "delivery": ("feed.chosen", "the feed line is too small for all the pump delivers"),
    "sag": ("feed.chosen", "rail pressure drops too far"),
    "pump": ("feed.chosen", "the pump is too small through this line"),
    "relief": ("pump.relief", "the pump's relief valve opens too early"),
    "kept run": ("feed.run.1.bore", "one run of the feed line is too small"),
    "injector pressure": (
        "pressure.base",
        "no pressure is left across the injectors",
    ),
    "injectors": ("injectors.rated_flow", "the injectors are too small"),
    "return": (
        "return_line.regulator.have",
        "the regulator is too small for the return flow",
    ),
    "lift": ("surge.lift_flow", "the lift pump is too small"),
    "rating": (
        "feed.filter.0.pressure_rating",
        "dead-head pressure is above a part's rating",
    ),
    "fuse": ("wiring.wire", "the wiring is too small for its current"),
    "inlet": ("inlet.size", "the suction line is too small"),
    "vapour": (
        "fuel.temperature",
        "the fuel is too close to boiling at the pump inlet",
    ),
}


def made(folder: Path, limit: Limit) -> Path:
    """The file of a build with that limit."""
    name, changes = LIMITS[limit]
    path = folder / "build.toml"
    path.write_text(merge("", changed(plain(name), changes)), encoding="utf-8")
    return path


@pytest.mark.parametrize("limit", LIMITS)
def test_the_answer_that_cures_a_limit_is_asked_and_can_be_gone_to(tmp_path: Path, limit: Limit) -> None:
    desk = Desk.open(made(tmp_path, limit))
    desk.update()
    path, why = ANSWERS[limit]
    assert (path, why) in [(look.path, look.why) for look in desk.to_look_at()]
    form = Form(desk)
    form.go_to_path(path)
    assert form.path == path


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        ("injectors", "Opened at Injectors: the injectors are too small."),
        ("return", "Opened at Inlet & return: the regulator is too small for the return flow."),
        ("velocity", "Opened at Lines: the feed line is too small."),
    ],
)
async def test_a_build_opens_at_the_answer_that_cures_it_and_says_why(
    tmp_path: Path, limit: Limit, said: str
) -> None:
    async with at_build(made(tmp_path, limit), (60, 20)) as keys:
        assert keys.form.path == ANSWERS[limit][0]
        assert said in flat(keys.part("footer"))
        await keys.press("down")
        assert "Opened" not in keys.text


async def test_of_several_things_that_stop_it_a_build_opens_at_the_one_that_its_answer_names(
    tmp_path: Path,
) -> None:
    """A larger line does not help where the injectors are the limit, though the lines are asked for first."""
    path = tmp_path / "build.toml"
    changes = {**LIMITS["velocity"][1], **LIMITS["injectors"][1]}
    path.write_text(merge("", changed(plain(LIMITS["injectors"][0]), changes)), encoding="utf-8")
    async with at_build(path) as keys:
        steps = [look.step for look in keys.desk.to_look_at()]
        assert steps[0] == "lines" and "injectors" in steps
        assert "the injectors are the limit" in flat(keys.lines)
        assert keys.form.path == "injectors.rated_flow"
        assert "Opened at Injectors: the injectors are too small." in flat(keys.part("footer"))


async def test_a_build_that_lacks_a_step_says_which(tmp_path: Path) -> None:
    async with at_build(copy_of("goal-alone", tmp_path)) as keys:
        assert "Opened at Fuel: the first step without an answer." in flat(keys.part("footer"))


async def test_a_sound_build_begins_at_its_start_and_says_nothing(tmp_path: Path) -> None:
    async with at_build(copy_of("full-session", tmp_path)) as keys:
        assert keys.form.path == "goal.power"
        assert "Opened" not in keys.text


async def test_a_run_with_something_to_put_right_is_marked_and_opens_there(tmp_path: Path) -> None:
    async with at_build(made(tmp_path, "kept run")) as keys:
        assert keys.form.path == "feed.run.1.bore"
        await keys.press("escape")
        marked = [line for line in keys.part("form") if "! old hard line" in line]
        assert len(marked) == 1 and not any("! tank to" in line for line in keys.part("form"))
        assert "The pump is too small through this line. Enter goes there." in flat(keys.part("form"))
        await keys.press("enter")
        assert keys.form.path == "feed.run.1.bore"


async def test_a_refused_value_inside_a_run_marks_its_row_and_a_save_goes_there(tmp_path: Path) -> None:
    async with at_build(copy_of("full-session", tmp_path)) as keys:
        await keys.go_to("return_line.run")
        await keys.press("enter", "down", "down")
        assert keys.form.path == "return_line.run.0.length"
        await keys.type("3 psi")
        await keys.press("escape")
        assert any("! regulator to tank" in line for line in keys.part("form"))
        await keys.press("ctrl+g", "2", "ctrl+s")
        assert keys.form.path == "return.length", "the question at hand for the same length"
        assert "a length is wanted" in keys.text


async def test_an_undo_inside_a_run_goes_back_into_it(tmp_path: Path) -> None:
    async with at_build(copy_of("twins", tmp_path)) as keys:
        keys.form.go_to_path("feed.run.0.rise")
        assert keys.form.place.in_entry
        await keys.type("2")
        await keys.press("ctrl+g", "2", "ctrl+z")
        assert keys.form.path == "feed.run.0.rise"
