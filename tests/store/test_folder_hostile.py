"""Files from anybody: each is a row that says in words what is wrong, and none stops the list."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fuelwiz.errors import OutputError
from fuelwiz.store.build_file import BuildFile
from fuelwiz.store.folder import copy, entries, rename

on_posix = pytest.mark.skipif(sys.platform == "win32", reason="names and pipes of POSIX")


def only(folder: Path) -> BuildFile:
    """The one entry of a folder."""
    (entry,) = entries(folder)
    return entry


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "is empty"),
        (b'format = 1\nname = "no end\n', "line 2: is not TOML: a text has no closing quotes"),
        (b"\xff\xfe", "is not text in UTF-8"),
        (b"format = 1\n" + b"#" * 65_536, "larger than 64 KiB"),
        (b"a = " + b"[" * 9 + b"]" * 9, "nested"),
        (b"format = 1\na = " + b"[" * 60_000, "nested"),
        (b".".join([b"a"] * 20_000) + b" = 1\n", "nested"),
        (b'format = 2\n[goal]\npower = "1 hp"\n', "line 1: `format`"),
    ],
)
def test_a_file_that_cannot_be_read_says_why(tmp_path: Path, content: bytes, words: str) -> None:
    (tmp_path / "winter-project.toml").write_bytes(content)
    entry = only(tmp_path)
    assert entry.fault is not None and words in entry.fault
    assert entry.name == "winter-project.toml" and entry.plain == {}


def test_what_is_no_file_is_a_row_in_words(tmp_path: Path) -> None:
    (tmp_path / "folder.toml").mkdir()
    assert only(tmp_path).fault == "is a folder, not a session file"
    with pytest.raises(OutputError):
        copy(tmp_path / "folder.toml")


@on_posix
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    assert only(tmp_path).fault == "is not a plain file"
    with pytest.raises(OutputError, match="not a plain file"):
        copy(tmp_path / "pipe.toml")


@on_posix
def test_links_are_read_but_not_renamed(tmp_path: Path) -> None:
    folder = tmp_path / "builds"
    folder.mkdir()
    outside = tmp_path / "real.toml"
    outside.write_text('format = 1\nname = "Real"\n[goal]\npower = "100 hp"\n')
    (folder / "link.toml").symlink_to(outside)
    assert only(folder).name == "Real"
    with pytest.raises(OutputError, match="is a link"):
        rename(folder / "link.toml", "Mine")
    outside.unlink()
    assert only(folder).fault == "is a link to a file that is not there"


@on_posix
def test_a_link_to_itself_is_a_row(tmp_path: Path) -> None:
    (tmp_path / "round.toml").symlink_to(tmp_path / "round.toml")
    assert only(tmp_path).fault is not None


@on_posix
@pytest.mark.parametrize(
    "name", [b"\x1b]0;owned\x07.toml", b"a\nb.toml", b"\xff\xfe.toml", "\u202egnp.toml".encode()]
)
def test_names_are_safe_to_show(tmp_path: Path, name: bytes) -> None:
    path = os.fsencode(tmp_path) + b"/" + name
    with open(path, "wb") as file:
        file.write(b'format = 1\n[goal]\npower = "100 hp"\n')
    entry = only(tmp_path)
    shown = entry.name + entry.file_name
    assert shown.isprintable() and entry.fault is None
    assert "\u202e" not in shown
    shown.encode("utf-8")


def test_texts_of_the_file_are_safe_to_show(tmp_path: Path) -> None:
    text = (
        'format = 1\nname = "a\\u001b[2Jb\\u009b"\n'
        '[feed]\nchosen = "\\u001b]0;x\\u0007"\n[record]\nanswer = "\\u001bc"\n'
    )
    (tmp_path / "one.toml").write_text(text)
    entry = only(tmp_path)
    assert entry.name == "a[2Jb" and entry.chosen == "]0;x"
    assert entry.record is not None and entry.record.answer == "c"


def test_values_of_any_type_are_taken_calmly(tmp_path: Path) -> None:
    texts = (
        "name = 3",
        "goal = 4",
        "[goal]\npower = [1]",
        "[fuel]\nkind = {}",
        "[feed]\nchosen = true",
        "record = 1",
    )
    for number, text in enumerate(texts):
        (tmp_path / f"{number}.toml").write_text(f"format = 1\n{text}\n")
    for entry in entries(tmp_path):
        assert (entry.goal, entry.chosen, entry.record) == (None, None, None)
        assert entry.name == entry.path.stem


def test_a_folder_that_may_not_be_written_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "six.toml"
    path.write_text('format = 1\nname = "Six"\n[goal]\npower = "100 hp"\n')

    def refuse(*_: object, **__: object) -> int:
        raise PermissionError(13, "Permission denied")

    real = os.open
    monkeypatch.setattr(
        os, "open", lambda at, flags, *rest: (refuse if flags & os.O_CREAT else real)(at, flags, *rest)
    )
    for act in (copy, lambda at: rename(at, "Seven")):
        with pytest.raises(OutputError, match="permission denied"):
            act(path)
    assert [one.name for one in tmp_path.iterdir()] == ["six.toml"]


def test_without_hard_links_a_file_still_moves(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", refuse)
    path, other = tmp_path / "six.toml", tmp_path / "wagon.toml"
    path.write_text('format = 1\n[goal]\npower = "100 hp"\n')
    other.write_text("other")
    with pytest.raises(OutputError, match="already"):
        rename(path, "wagon")
    assert rename(path, "Seven").name == "seven.toml" and not path.exists()
    assert other.read_text() == "other"


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.binary(max_size=300))
def test_no_content_stops_the_list(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "any.toml").write_bytes(content)
    entry = only(tmp_path)
    shown = [entry.name, entry.fault or "", entry.fuel or "", entry.chosen or ""]
    assert all(text.isprintable() for text in shown)
