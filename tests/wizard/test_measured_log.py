"""The log of a run in its step: chosen, read beside the keys, told in rows and a picture, its columns owned."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from measured.cars import Car, Logger, plain, write_log

from fuelwiz.desk import Desk
from fuelwiz.document.merge import merge
from fuelwiz.measured.figures import LogFigures, LoggedRun
from fuelwiz.measured.log import run
from fuelwiz.measured.log.table import MOST_BYTES
from fuelwiz.wizard.find_screen import FindScreen
from fuelwiz.wizard.form.form_rows import FoundRow
from fuelwiz.wizard.live.rule import LOG
from fuelwiz.wizard.look import Look

from .keyboard import Keyboard, at_build, flat


def logged_car(folder: Path, car: Car) -> Path:
    """A build as its sheets have it, and the log of a car that is not so."""
    path = folder / "car.toml"
    path.write_text(merge("format = 1\n", {**plain(Car()), "log": {"file": "pull.csv"}}), encoding="utf-8")
    write_log(folder / "pull.csv", car, Logger())
    return path


def log_of(keys: Keyboard) -> LoggedRun | None:
    """What the log shows of the build as it is."""
    return None if keys.desk.result is None else keys.desk.result.log


async def read_it(keys: Keyboard) -> LogFigures:
    """Have the log read that the build names, by keys."""
    await keys.down_to("0", "log.file")
    await keys.press("f8")
    await keys.until_true(lambda: log_of(keys) is not None)
    found = log_of(keys)
    assert found is not None and found.figures is not None
    return found.figures


def texts(keys: Keyboard) -> list[str]:
    return [flat([row.text]) for row in keys.form.pointer.rows if isinstance(row, FoundRow)]


async def test_a_log_is_read_with_one_key_and_its_proposals_are_taken(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (80, 24)) as keys:
        await keys.down_to("0", "log.file")
        assert "F8 reads it" in texts(keys)
        await read_it(keys)
        said = texts(keys)
        assert any(
            text.startswith("The pump sends 60 ") or text.startswith("The pump sends 59 ") for text in said
        )
        assert any(text.startswith("Log pull.csv of ") for text in said)
        keys.says_all_within()

        first = log_of(keys)
        await keys.down_to("0", "measured.pump.health")
        await keys.press("y")
        await keys.until_true(lambda: log_of(keys) not in (None, first))
        assert keys.desk.value("pump.health") is not None
        assert any(text.startswith("The pump sends 100 ") for text in texts(keys))
        assert keys.form.path == "measured.log.pump"  # where the log is told anew
        await keys.press("ctrl+z")
        assert keys.desk.value("pump.health") is None
        assert log_of(keys) is first  # nothing is read again on the way back
        assert keys.form.path == "measured.pump.health"


async def test_points_of_a_pull_are_taken_from_the_bins(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (80, 24)) as keys:
        await read_it(keys)
        await keys.down_to("0", "measured.pull")
        assert "y takes 6 points of full power" in texts(keys)
        await keys.press("y")
        points = keys.desk.value("pull")
        assert len(points) == 6 and all(set(point) == {"rpm", "power", "boost"} for point in points)
        assert keys.desk.result is not None and len(keys.desk.result.figures.pull) == 6
        await keys.press("ctrl+z")
        assert keys.desk.value("pull") is None


async def test_columns_are_owned_one_by_one(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car()), (80, 24)) as keys:
        figures = await read_it(keys)
        for key, head in (("rail", "Fuel pressure (psi)"), ("duty", "Injector duty (%)")):
            field = keys.desk.text_in_field(f"log.columns.{key}")
            assert (field.text, field.assumed) == (head, True)
        await keys.down_to("0", "log.columns.rail")
        assert "Fuel pressure (psi)" in keys.text and "assumed" in keys.text
        await keys.press("enter")
        assert keys.desk.value("log.columns") == {"rail": "Fuel pressure (psi)"}
        assert keys.form.path == "log.columns.manifold"
        shown = log_of(keys)
        assert (
            shown is not None and shown.figures is not None
        )  # the same columns show the same: nothing is read again
        assert [one.key for one in shown.figures.columns if not one.guessed] == ["rail"]
        assert shown.figures.bins is figures.bins
        await keys.press("down")
        assert keys.desk.value("log.columns") == {"rail": "Fuel pressure (psi)"}  # an arrow owns nothing
        await keys.press("ctrl+z")
        assert keys.desk.value("log.columns") is None
        await keys.press("ctrl+y", "ctrl+s")
        await keys.until_true(lambda: not keys.desk.dirty)
        again = Desk.open(tmp_path / "car.toml")
        assert again.value("log.columns") == {"rail": "Fuel pressure (psi)"}


async def test_another_head_or_none_is_picked_with_the_arrows(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car()), (80, 24)) as keys:
        await read_it(keys)
        await keys.down_to("0", "log.columns.battery")
        await keys.press("left")
        assert keys.desk.value("log.columns.battery") == "Pump volts (V)"
        assert "F8 reads it again: the build was changed since" in texts(keys)
        await keys.press("left")
        assert keys.desk.value("log.columns.battery") == "none"
        assert "not in the log" in keys.text
        await keys.press("f8")
        await keys.until_true(lambda: log_of(keys) is not None)
        shown = log_of(keys)
        assert shown is not None and shown.figures is not None
        assert "battery" not in {one.key for one in shown.figures.columns}
        keys.says_all_within()


async def test_heads_without_units_are_offered_with_one_and_listed_by_f8(tmp_path: Path) -> None:
    path = logged_car(tmp_path, Car(factor=0.6))
    log = tmp_path / "pull.csv"
    log.write_text(log.read_text(encoding="utf-8").replace("Fuel pressure (psi)", "FP1"), encoding="utf-8")
    async with at_build(path, (80, 24)) as keys:
        await keys.down_to("0", "log.file")
        await keys.press("f8")
        await keys.until_true(lambda: log_of(keys) is not None)
        assert any("`rail`" in text for text in texts(keys))
        await keys.down_to("0", "log.columns.rail")
        await keys.press("f8")
        screen = keys.pilot.app.screen
        assert isinstance(screen, FindScreen)
        assert [hit.text for hit in screen.hits] == ["FP1, taken as psi", "MAP (kPa)", "not in the log"]
        await keys.press("enter")
        assert keys.desk.value("log.columns.rail") == ["FP1", "psi"]
        assert keys.desk.text_in_field("log.columns.rail").text == "FP1, psi"
        await keys.press("f8")
        await keys.until_true(lambda: (shown := log_of(keys)) is not None and shown.figures is not None)
        assert any(text.startswith("The pump sends ") for text in texts(keys))


async def test_what_a_log_showed_of_another_build_is_not_told(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (60, 20)) as keys:
        await read_it(keys)
        keys.desk.type("fitted.line", "new in May")
        assert log_of(keys) is not None  # changes no figure
        keys.desk.type("goal.power", "520 hp")
        keys.form.rebuild()
        assert log_of(keys) is None
        assert "F8 reads it again: the build was changed since" in texts(keys)
        assert not any(text.startswith("The pump sends") for text in texts(keys))
        keys.desk.undo()
        assert log_of(keys) is not None


async def test_a_log_that_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    path = logged_car(tmp_path, Car())
    (tmp_path / "pull.csv").unlink()
    async with at_build(path, (80, 24)) as keys:
        await keys.down_to("0", "log.file")
        await keys.press("f8")
        await keys.until_true(lambda: "there is no such file" in flat(keys.lines))
        assert "The log is not used. pull.csv: there is no such file." in texts(keys)
        assert keys.screen.view != LOG


def unnamed_car(folder: Path, car: Car) -> Path:
    """The same build and log; the build does not name it."""
    path = logged_car(folder, car)
    path.write_text(merge("format = 1\n", plain(Car())), encoding="utf-8")
    return path


async def listed(keys: Keyboard) -> FindScreen:
    """The list of logs that are at hand."""
    await keys.down_to("0", "log.file")
    await keys.press("f8")
    await keys.until_true(lambda: isinstance(keys.pilot.app.screen, FindScreen))
    screen = keys.pilot.app.screen
    assert isinstance(screen, FindScreen)
    return screen


async def test_logs_at_hand_are_listed_and_one_is_chosen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = unnamed_car(tmp_path, Car(factor=0.6))
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    write_log(here / "dyno.CSV", Car(), Logger(hz=10))
    (tmp_path / "notes.txt").write_text("none", encoding="utf-8")
    (tmp_path / "link.csv").symlink_to(tmp_path / "pull.csv")
    (tmp_path / ".hidden.csv").write_text("none", encoding="utf-8")
    (tmp_path / "folder.csv").mkdir()
    os.mkfifo(tmp_path / "pipe.csv")
    with (tmp_path / "giant.csv").open("wb") as file:
        file.truncate(MOST_BYTES + 1)
    for number, name in enumerate(("pull.csv", "giant.csv", "here/dyno.CSV")):
        os.utime(tmp_path / name, (1778760000 - number, 1778760000 - number))
    async with at_build(path, (80, 24)) as keys:
        screen = await listed(keys)
        assert [hit.text for hit in screen.hits] == ["pull.csv", "giant.csv", "here/dyno.CSV"]
        assert "too large  2026-05-14" in keys.text and " kB  2026-05-14" in keys.text
        await keys.press("escape")
        assert keys.desk.value("log.file") is None
        await listed(keys)
        await keys.press("enter")
        await keys.until_true(lambda: log_of(keys) is not None)
        assert keys.desk.value("log.file") == "pull.csv"
        assert keys.screen.view == LOG
        await keys.press("ctrl+z")
        assert keys.desk.value("log.file") is None


@pytest.mark.parametrize("outside", [True, False])
async def test_a_path_is_pasted_in_place_of_one_of_the_list(outside: bool, tmp_path: Path) -> None:
    builds = tmp_path / "builds"
    builds.mkdir()
    path = unnamed_car(builds, Car())
    log = write_log((tmp_path if outside else builds) / "far off.csv", Car(), Logger(hz=10))
    async with at_build(path, (80, 24)) as keys:
        await listed(keys)
        await keys.paste(f"{log}\n")
        await keys.press("enter")
        await keys.until_true(lambda: log_of(keys) is not None)
        assert keys.desk.value("log.file") == (str(log) if outside else "far off.csv")
        shown = log_of(keys)
        assert shown is not None and shown.figures is not None


@pytest.mark.parametrize("make", [os.mkfifo, lambda path: path.mkdir()], ids=["pipe", "folder"])
async def test_what_is_no_plain_file_is_refused_in_words(
    make: Callable[[Path], None], tmp_path: Path
) -> None:
    path = unnamed_car(tmp_path, Car())
    odd = tmp_path / "odd.csv"
    make(odd)
    async with at_build(path, (80, 24)) as keys:
        await listed(keys)
        await keys.paste(str(odd))
        await keys.press("enter")
        await keys.until_true(lambda: log_of(keys) is not None)
        assert any(text.startswith("The log is not used. odd.csv: is ") for text in texts(keys))


@pytest.mark.parametrize(
    "look", [Look(), Look(unicode=False), Look(colors="16"), Look(colors="none")], ids=str
)
@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 36), (160, 50)])
async def test_the_picture_of_a_log_on_every_screen(
    size: tuple[int, int], look: Look, tmp_path: Path
) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), size, look) as keys:
        figures = await read_it(keys)
        assert keys.screen.view == LOG
        live = flat(keys.part("live"))
        assert "Pressure sags from " in live and "measured" in live and "wanted" in live
        mark = "◆" if look.unicode else "X"
        low = sum(one.sags for one in figures.bins)
        assert low and 2 <= live.count(mark) <= 2 * low + 2
        assert (any("\u2800" < sign < "\u28ff" for sign in live)) == look.unicode
        keys.says_all_within()
        await keys.press("f6", *["pagedown"] * 8)
        read = flat(keys.part("live"))
        assert "sags" in read and "The pump sends" in read
        keys.says_all_within()


async def test_the_view_of_a_log_is_there_where_a_log_is_named(tmp_path: Path) -> None:
    async with at_build(unnamed_car(tmp_path, Car()), (80, 24)) as keys:
        await keys.press("ctrl+g", "v")
        assert "g log" not in keys.lines[-1]
        await keys.press("escape")
    async with at_build(logged_car(tmp_path, Car()), (120, 36)) as keys:
        await keys.press("ctrl+g", "v")
        await keys.until("g log")
        await keys.press("g")
        assert keys.screen.view == LOG
        assert "F8 in Measured" in flat(keys.part("live"))
        await keys.press("f5")
        assert keys.screen.view != LOG


async def test_the_page_of_keys_says_what_f8_and_the_letters_do_here(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car()), (120, 36)) as keys:
        await keys.press("ctrl+g")
        page = flat(keys.part("sheet"))
        assert "F8 paste a pump's table or a CSV file" in page
        assert "views; Ctrl+G v: p s w o b l c e f g" in page
        await keys.press("escape")
        await keys.down_to("0", "log.file")
        await keys.press("ctrl+g")
        assert "F8 read the log that is named" in flat(keys.part("sheet"))
        await keys.press("escape")
        await read_it(keys)
        await keys.press("ctrl+g")
        assert "F8 choose a log, or paste its path" in flat(keys.part("sheet"))
    (tmp_path / "other").mkdir()
    async with at_build(unnamed_car(tmp_path / "other", Car()), (80, 24)) as keys:
        await keys.down_to("0", "log.file")
        await keys.press("ctrl+g")
        assert "F8 choose a file" in flat(keys.part("sheet"))


async def test_a_long_log_is_read_beside_the_keys_and_esc_stops_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    goes_on, is_reading = threading.Event(), threading.Event()
    calls = []
    as_it_is = run.read_log

    def slow(path: Path, session: object, figures: object, watch: Callable[[float], None]) -> LogFigures:
        calls.append(path)
        watch(0.4)
        is_reading.set()
        goes_on.wait(20)
        return as_it_is(path, session, figures, watch)  # type: ignore[arg-type]

    monkeypatch.setattr("fuelwiz.measured.log.of_build.read_log", slow)
    async with at_build(logged_car(tmp_path, Car()), (80, 24)) as keys:
        await keys.down_to("0", "log.file")
        await keys.press("f8")
        await keys.until("Reading the log: 40 %. Esc stops it.")
        assert is_reading.is_set()
        await keys.press("down", "up")  # the keys go on
        assert keys.form.path == "log.file"
        await keys.press("f8")
        assert len(calls) == 1
        await keys.press("escape")
        await keys.until("The log is not read.")
        goes_on.set()
        await keys.until_true(lambda: not any(one.name == "disk" for one in threading.enumerate()))
        await keys.settled()
        assert log_of(keys) is None and keys.screen.view != LOG
        await keys.press("f8")
        await keys.until_true(lambda: log_of(keys) is not None)
        await keys.press("down", "down", "up", "x")
        assert len(calls) == 2  # no key reads it again


async def test_a_report_from_the_wizard_has_the_log_though_nobody_read_it(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (80, 24)) as keys:
        await keys.press("f7", "ctrl+u")
        await keys.type("sheet.html")
        await keys.press("enter")
        await keys.until_true((tmp_path / "sheet.html").exists)
        page = (tmp_path / "sheet.html").read_text(encoding="utf-8")
        assert '<title id="log-title">Log of a run</title>' in page
        assert "Log pull.csv of " in page
