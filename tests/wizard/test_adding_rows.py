"""Every row that adds to a list: an entry is added, left, taken back and made again, and nothing ends the wizard."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterator
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.session import list_key_paths
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.form.form_rows import ADDS, DoRow
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, at_build, copy_of, flat

BUILDS = ("new", "goal-alone", "full-session")
COLUMNS_OF_POINTS = {"pull"}
"""Lists whose entries stand in columns of the form: an empty column is always there, so no row adds one."""


@asynccontextmanager
async def at_new_build(folder: Path) -> AsyncIterator[Keyboard]:
    """A build that was never saved, with nothing answered."""
    app = FuelwizApp(folder, None, look=Look())
    async with app.run_test(size=(60, 20)) as pilot:
        keys = Keyboard(pilot)
        await pilot.pause()
        app.push_screen(BuildScreen(Desk.new(folder)))
        await keys.until("Power wanted")
        await keys.settled()
        yield keys


def build(kind: str, folder: Path) -> AbstractAsyncContextManager[Keyboard]:
    return at_new_build(folder) if kind == "new" else at_build(copy_of(kind, folder))


def with_a_curve(keys: Keyboard) -> None:
    """A pump known by its points: a further voltage is asked for beside the first one alone."""
    keys.desk.choose("pump.known", "curve")
    for number, (pressure, flow) in enumerate((("40 psi", "90 gal/h"), ("80 psi", "70 gal/h"))):
        keys.desk.type(f"pump.curve.0.points.{number}.0", pressure)
        keys.desk.type(f"pump.curve.0.points.{number}.1", flow)


def adding_rows(keys: Keyboard) -> Iterator[tuple[str, str]]:
    """Each row that adds: its step and the list; all further questions show from then on."""
    for step in STEPS:
        keys.form.go_to_step(step.id)
        keys.form.toggle_more()
        for row in keys.form.pointer.rows:
            if isinstance(row, DoRow) and row.act == "add":
                yield step.id, row.list_path


def count(keys: Keyboard, path: str) -> int:
    return len(value_at(keys.desk.plain, value_path(path)) or ())


async def at_row(keys: Keyboard, step: str, path: str) -> None:
    """On the row that adds to a list; a key that does nothing there tells the screen that the pointer came."""
    keys.form.go_to_step(step)
    rows = enumerate(keys.form.pointer.rows)
    keys.form.focus_on(
        next(at for at, row in rows if isinstance(row, DoRow) and row.act == "add" and row.list_path == path)
    )
    await keys.press("left")


@pytest.mark.parametrize("kind", BUILDS)
async def test_an_entry_is_added_left_taken_back_and_made_again(tmp_path: Path, kind: str) -> None:
    async with build(kind, tmp_path) as keys:
        with_a_curve(keys)
        rows = list(adding_rows(keys))
        assert {path for _, path in rows} | COLUMNS_OF_POINTS == {
            ".".join(map(str, path)) for path in list_key_paths()
        }
        for step, path in rows:
            before = count(keys, path)
            await at_row(keys, step, path)
            await keys.press(ADDS)
            assert keys.form.place.in_entry and count(keys, path) == before + 1, path
            await keys.press("ctrl+z")
            assert not keys.form.place.in_entry and count(keys, path) == before, path
            await keys.press("ctrl+y")
            assert count(keys, path) == before + 1, path
            await keys.press("escape", "down", "up", "f3", "ctrl+z", "f4", "f3", "ctrl+y")
            assert count(keys, path) == before + 1, path
            await at_row(keys, step, path)
            await keys.press("enter", "tab", "enter", "escape", "f3", "f4", "ctrl+z", "ctrl+z", "f4")
            assert keys.screen.is_current and "are you sure" not in flat(keys.part("footer")), path


async def test_a_full_list_says_so(tmp_path: Path) -> None:
    async with at_new_build(tmp_path) as keys:
        with_a_curve(keys)
        for step, path in list(adding_rows(keys)):
            most = list_key_paths()[value_path(path)].most
            while count(keys, path) < most:
                keys.desk.add(path)
            await at_row(keys, step, path)
            await keys.press(ADDS)
            assert count(keys, path) == most and not keys.form.place.in_entry, path
            assert f"The list is full: {most} are the most." in flat(keys.lines), path
