"""The log of a run in its step: read with one key, told in rows, and read again once the build has changed."""

from __future__ import annotations

from pathlib import Path

from measured.cars import Car, Logger, plain, write_log

from fuelwiz.desk import Desk
from fuelwiz.document.merge import merge
from fuelwiz.wizard.form.form_rows import FoundRow

from .keyboard import Keyboard, at_build, flat


def logged_car(folder: Path, car: Car) -> Path:
    """A build as its sheets have it, and the log of a car that is not so."""
    path = folder / "car.toml"
    path.write_text(merge("format = 1\n", {**plain(Car()), "log": {"file": "pull.csv"}}), encoding="utf-8")
    write_log(folder / "pull.csv", car, Logger())
    return path


async def to_path(keys: Keyboard, path: str) -> None:
    await keys.press("ctrl+g", "0")
    for _ in range(40):
        if keys.form.path == path:
            return
        await keys.press("down")
    raise AssertionError(f"{path} was never reached on\n{keys.text}")


def texts(keys: Keyboard) -> list[str]:
    return [flat([row.text]) for row in keys.form.pointer.rows if isinstance(row, FoundRow)]


async def test_a_log_is_read_with_one_key_and_its_proposals_are_taken(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (80, 24)) as keys:
        await to_path(keys, "log.file")
        assert "F8 reads it" in texts(keys)
        await keys.press("f8")
        await keys.until_true(lambda: keys.desk.log_read is not None)
        said = texts(keys)
        assert any(
            text.startswith("The pump sends 60 ") or text.startswith("The pump sends 59 ") for text in said
        )
        assert "rail is Fuel pressure (psi), guessed" in said
        keys.says_all_within()

        first = keys.desk.log_read
        await to_path(keys, "measured.pump.health")
        await keys.press("y")
        await keys.until_true(lambda: keys.desk.log_read is not first)
        assert keys.desk.value("pump.health") is not None
        await keys.until_true(lambda: any(text.startswith("The pump sends 100 ") for text in texts(keys)))


async def test_columns_that_were_guessed_are_taken_as_ones_own(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car()), (80, 24)) as keys:
        await to_path(keys, "log.file")
        await keys.press("f8")
        await keys.until_true(lambda: keys.desk.log_read is not None)
        first = keys.desk.log_read
        await to_path(keys, "measured.log.columns")
        await keys.press("y")
        await keys.until_true(lambda: keys.desk.log_read not in (None, first))
        assert keys.desk.value("log.columns.rail") == "Fuel pressure (psi)"
        assert "rail is Fuel pressure (psi)" in texts(keys)
        assert not any("guessed" in text for text in texts(keys))
        await keys.press("ctrl+s")
        await keys.until_true(lambda: not keys.desk.dirty)
        again = Desk.open(tmp_path / "car.toml")
        assert again.value("log.columns") == keys.desk.value("log.columns")
        await keys.press("ctrl+z")
        assert keys.desk.value("log.columns") is None


async def test_what_a_log_showed_of_another_build_is_not_told(tmp_path: Path) -> None:
    async with at_build(logged_car(tmp_path, Car(factor=0.6)), (60, 20)) as keys:
        await to_path(keys, "log.file")
        await keys.press("f8")
        await keys.until_true(lambda: keys.desk.log_read is not None)
        keys.desk.type("goal.power", "520 hp")
        keys.form.rebuild()
        assert "F8 reads it again: the build was changed since" in texts(keys)
        assert not any(text.startswith("The pump sends") for text in texts(keys))


async def test_a_log_that_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    path = logged_car(tmp_path, Car())
    (tmp_path / "pull.csv").unlink()
    async with at_build(path, (80, 24)) as keys:
        await to_path(keys, "log.file")
        await keys.press("f8")
        await keys.until_true(lambda: "there is no such file" in flat(keys.lines))
        assert keys.desk.log_read is None
