"""The folder of builds: which it is, what is in it, and what copy and rename make of a file."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tomllib
from pathlib import Path

import platformdirs
import pytest

from fuelwiz.errors import OutputError, SessionError
from fuelwiz.store.build_file import DAMAGED
from fuelwiz.store.folder import copy, entries, file_name, rename, unsaved
from fuelwiz.store.place import sessions_folder

BUILD = '# by hand\nformat = 1\nname = "Hill-climb six"\n\n[goal]\npower = "750 hp"\n'


def build(folder: Path, name: str, text: str = BUILD, changed: int = 1_700_000_000) -> Path:
    """A file of the folder, last changed at that time in seconds."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    os.utime(path, (changed, changed))
    return path


def test_the_folder_asked_for_comes_first_then_the_environment(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "saved_sessions").mkdir()
    environ = {"FUELWIZ_SESSIONS": "elsewhere"}
    assert sessions_folder(Path("asked"), environ) == Path("asked")
    assert sessions_folder(None, environ) == Path("elsewhere")
    assert sessions_folder(None, {"FUELWIZ_SESSIONS": " "}) == Path("saved_sessions")


def test_without_a_folder_at_hand_it_is_the_users(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    found = sessions_folder(None, {})
    assert found.is_relative_to(platformdirs.user_data_path("fuelwiz", appauthor=False))


def test_a_user_without_a_home_keeps_builds_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def homeless(*_: object, **__: object) -> Path:
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(platformdirs, "user_data_path", homeless)
    assert sessions_folder(None, {}) == Path("saved_sessions")


def test_the_last_changed_is_on_top(tmp_path: Path) -> None:
    build(tmp_path, "old.toml", changed=1_600_000_000)
    build(tmp_path, "new.toml", changed=1_700_000_000)
    build(tmp_path, "also-new.toml", changed=1_700_000_000)
    build(tmp_path, ".new.toml.draft")
    build(tmp_path, ".hidden.toml")
    build(tmp_path, "notes.txt")
    assert [one.path.name for one in entries(tmp_path)] == ["also-new.toml", "new.toml", "old.toml"]


def test_a_folder_that_is_not_there_is_empty_and_a_file_is_none(tmp_path: Path) -> None:
    assert entries(tmp_path / "nowhere") == []
    with pytest.raises(SessionError, match="is a file, not a folder of builds"):
        entries(build(tmp_path, "one.toml"))


def test_an_entry_tells_what_the_file_says(tmp_path: Path) -> None:
    text = BUILD.replace("750 hp", "559.5 kW") + (
        'power_at = "crank"\n[fuel]\nethanol = "85 %"\n[feed]\nchosen = "-8"\n'
        '[record]\ninputs = "9f86"\nsaved = "2026-05-14"\nworks = true\n'
        'margin = "17 %"\nanswer = "-8 fits."\n'
    )
    build(tmp_path, "six.toml", text)
    (entry,) = entries(tmp_path)
    assert (entry.name, entry.goal, entry.fuel, entry.chosen) == (
        "Hill-climb six",
        ("560", "kW"),
        "E85",
        "-8",
    )
    assert entry.fault is None and not entry.has_draft
    record = entry.record
    assert record is not None
    assert (record.works, record.margin, record.answer, record.saved) == (
        True,
        "17 %",
        "-8 fits.",
        "2026-05-14",
    )


@pytest.mark.parametrize(
    ("fuel", "shown"),
    [
        ("", "E10"),
        ('ethanol = "0 %"', "gasoline"),
        ('ethanol = "12.5 %"', "E12.5"),
        ('kind = "methanol"', "methanol"),
        ('kind = "own"', "own fuel"),
        ("ethanol = 85", None),
        ('kind = "beer"', None),
    ],
)
def test_the_fuel_by_its_name(tmp_path: Path, fuel: str, shown: str | None) -> None:
    build(tmp_path, "one.toml", f"{BUILD}[fuel]\n{fuel}\n")
    assert entries(tmp_path)[0].fuel == shown


def test_a_build_without_a_name_is_called_as_its_file(tmp_path: Path) -> None:
    build(tmp_path, "slalom-kit.toml", 'format = 1\n[goal]\npower = "320 hp"\n')
    assert entries(tmp_path)[0].name == "slalom-kit"


def draft_with(**plain: object) -> str:
    """The text of a draft that says what the sample build says, or something else."""
    return json.dumps({"draft": 1, "plain": {**tomllib.loads(BUILD), **plain}})


@pytest.mark.parametrize("kept", [1_600_000_000, 1_700_000_000, 1_700_000_060])
def test_a_draft_counts_by_what_it_says_whatever_the_clock_says(tmp_path: Path, kept: int) -> None:
    for name in ("one", "two", "three"):
        build(tmp_path, f"{name}.toml", changed=1_700_000_000)
    build(tmp_path, ".one.toml.draft", draft_with(notes="other"), changed=kept)
    build(tmp_path, ".two.toml.draft", draft_with(), changed=kept)
    build(tmp_path, ".three.toml.0a1b2c3d.draft", draft_with(notes="other"), changed=kept)
    assert {one.path.name: one.has_draft for one in entries(tmp_path)} == {
        "one.toml": True,
        "two.toml": False,
        "three.toml": True,
    }


def test_drafts_of_builds_without_a_file_are_told_apart(tmp_path: Path) -> None:
    build(tmp_path, "one.toml")
    build(tmp_path, ".one.toml.draft", '{"plain": {}}')
    build(tmp_path, ".never-saved.toml.draft", '{"plain": {"format": 1}}', changed=1_700_000_000)
    kept = '{"draft": 1, "plain": {"format": 1, "name": "Kit car", "goal": {"power": "320 hp"}}}'
    build(tmp_path, ".unnamed-2.draft", kept, changed=1_700_000_060)
    build(tmp_path, ".unnamed-1.draft", '{"plain": {}}', changed=1_700_000_120)
    for number, text in enumerate(("", "[1]", '{"plain": 3}', "[" * 100_000)):
        build(tmp_path, f".broken-{number}.draft", text)
    found = unsaved(tmp_path)
    assert [(one.name, one.goal, one.is_draft) for one in found if not one.fault] == [
        ("Unnamed build", None, True),
        ("Kit car", ("320", "hp"), True),
        ("never-saved", None, True),
    ]
    assert {one.path.name: one.fault for one in found if one.fault} == {
        f".broken-{number}.draft": DAMAGED for number in range(4)
    }
    assert [one.name for one in entries(tmp_path)] == ["Hill-climb six"]


def test_the_list_loads_nothing_that_calculates() -> None:
    code = "import sys, fuelwiz.store.folder; print(*sorted({name.split('.')[0] for name in sys.modules}))"
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert not {"pydantic", "pint", "fluids", "numpy", "tomlkit", "textual", "rich"} & set(loaded.split())


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("Hill-climb six", "hill-climb-six.toml"),
        ("Strip sedan, twins", "strip-sedan-twins.toml"),
        ("../../etc/passwd", "etc-passwd.toml"),
        ("..", "build.toml"),
        ("CON", "build-con.toml"),
        ("Größe 2", "größe-2.toml"),
        ("a\x00b\x1b[2J", "ab-2j.toml"),
        ("x" * 200, "x" * 60 + ".toml"),
    ],
)
def test_a_name_makes_a_file_name_that_stays_in_the_folder(name: str, file: str) -> None:
    assert file_name(name) == file


def test_a_copy_stands_beside_under_a_name_of_its_own(tmp_path: Path) -> None:
    path = build(tmp_path, "six.toml")
    first, second = copy(path), copy(path)
    assert (first.name, second.name) == ("six-copy.toml", "six-copy-2.toml")
    assert path.read_text() == BUILD
    assert first.read_text() == BUILD.replace('"Hill-climb six"', '"Hill-climb six, copy"')


def test_a_broken_file_is_copied_as_it_stands(tmp_path: Path) -> None:
    path = build(tmp_path, "broken.toml", "format = = 1\n")
    assert copy(path).read_bytes() == b"format = = 1\n"


def test_rename_changes_the_name_and_the_file_and_nothing_else(tmp_path: Path) -> None:
    path = build(tmp_path, "six.toml", changed=1_600_000_000)
    path.chmod(0o640)
    build(tmp_path, ".six.toml.draft", "raw")
    new = rename(path, "  Six, on E85 ")
    assert new == tmp_path / "six-on-e85.toml"
    assert new.read_text() == BUILD.replace('"Hill-climb six"', '"Six, on E85"')
    assert (new.stat().st_mtime, new.stat().st_mode & 0o777) == (1_600_000_000, 0o640)
    assert (tmp_path / ".six-on-e85.toml.draft").read_text() == "raw"
    assert sorted(one.name for one in tmp_path.iterdir()) == [".six-on-e85.toml.draft", "six-on-e85.toml"]


def test_rename_to_the_same_file_changes_the_name_in_it(tmp_path: Path) -> None:
    path = build(tmp_path, "six.toml")
    assert rename(path, "SIX") == path
    assert tomllib.loads(path.read_text())["name"] == "SIX"


def test_rename_overwrites_nothing(tmp_path: Path) -> None:
    path, other = build(tmp_path, "six.toml"), build(tmp_path, "wagon.toml", "other")
    with pytest.raises(OutputError, match="already"):
        rename(path, "Wagon")
    assert (path.read_text(), other.read_text()) == (BUILD, "other")
    assert sorted(one.name for one in tmp_path.iterdir()) == ["six.toml", "wagon.toml"]


@pytest.mark.parametrize("name", ["", "  ", "\x1b\x07", "x" * 201])
def test_a_name_that_none_can_be_is_refused(tmp_path: Path, name: str) -> None:
    path = build(tmp_path, "six.toml")
    with pytest.raises(OutputError):
        rename(path, name)
    assert path.read_text() == BUILD
