"""A file is written at one stroke, or not at all."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from fuelwiz.errors import OutputError
from fuelwiz.files import NotPlain, TooLarge, put_in_place, read_start, read_whole, write_atomically


def test_the_text_is_there_to_the_last_character(tmp_path: Path) -> None:
    path = tmp_path / "new.toml"
    for text in ("a = 1\r\nb = 2", "\ufeffname = 'ü'\n", ""):
        write_atomically(path, text)
        assert path.read_bytes() == text.encode("utf-8")
    assert os.listdir(tmp_path) == ["new.toml"]


def test_permissions_are_kept(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("old")
    path.chmod(0o640)
    write_atomically(path, "new")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_new_file_has_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    (tmp_path / "other").write_text("")
    write_atomically(tmp_path / "new.toml", "x")
    assert (tmp_path / "new.toml").stat().st_mode == (tmp_path / "other").stat().st_mode


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    folder = tmp_path / "real"
    folder.mkdir()
    (folder / "build.toml").write_text("old")
    link = tmp_path / "link.toml"
    link.symlink_to(folder / "build.toml")
    write_atomically(link, "new")
    assert link.is_symlink()
    assert (folder / "build.toml").read_text() == "new"


def test_an_old_file_outlives_a_failure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OutputError, match=r"mine\.toml: cannot be written: no space left on device"):
        write_atomically(path, "new")
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["mine.toml"]


def test_the_text_is_on_the_disk_before_it_takes_the_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    order: list[str] = []
    sync, replace = os.fsync, os.replace

    def noted_sync(handle: int) -> None:
        order.append("sync")
        sync(handle)

    def noted_replace(source: Path, target: Path) -> None:
        order.append("replace")
        assert source.parent == target.parent
        replace(source, target)

    monkeypatch.setattr(os, "fsync", noted_sync)
    monkeypatch.setattr(os, "replace", noted_replace)
    write_atomically(tmp_path / "x.toml", "new")
    assert order[:2] == ["sync", "replace"]


def test_what_cannot_be_written_is_said(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="there is no folder"):
        write_atomically(tmp_path / "none" / "x.toml", "")
    with pytest.raises(OutputError, match="it is a folder"):
        write_atomically(tmp_path, "")
    with pytest.raises(OutputError, match="cannot be written"):
        write_atomically(tmp_path / ("x" * 300), "")
    with pytest.raises(OutputError, match="cannot be written"):
        write_atomically(tmp_path / "half.toml", "\ud800")
    assert os.listdir(tmp_path) == []


def test_a_file_that_may_not_be_written_is_left_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "kept.toml"
    path.write_text("old")
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(OutputError, match="may not be written"):
        write_atomically(path, "new")
    assert path.read_text() == "old"


def test_a_file_is_read_up_to_its_limit(tmp_path: Path) -> None:
    path = tmp_path / "a.toml"
    path.write_bytes(b"12345678")
    assert read_whole(path, 8) == b"12345678"
    assert read_start(path, 3) == b"123"
    with pytest.raises(TooLarge):
        read_whole(path, 7)


def test_only_a_plain_file_is_read(tmp_path: Path) -> None:
    with pytest.raises(IsADirectoryError):
        read_whole(tmp_path, 8)
    with pytest.raises(FileNotFoundError):
        read_whole(tmp_path / "none", 8)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(NotPlain):
        read_whole(tmp_path / "pipe", 8)


def test_what_cannot_be_moved_into_its_place_leaves_nothing(tmp_path: Path) -> None:
    def refused(source: Path, target: Path) -> None:
        raise FileExistsError(str(target))

    path = tmp_path / "mine.toml"
    path.write_text("old")
    with pytest.raises(FileExistsError):
        put_in_place(path, b"new", move=refused)
    assert path.read_text() == "old"
    assert os.listdir(tmp_path) == ["mine.toml"]
