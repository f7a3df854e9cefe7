"""Links, pipes, devices, folders and giants in every place that is read or written: never followed or waited for."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from types import FrameType

import pytest

from fuelwiz.cli import main
from fuelwiz.desk import Desk
from fuelwiz.desk.points.points_file import points_typed
from fuelwiz.errors import FuelwizError
from fuelwiz.store.bin import bring_back, put_in_bin
from fuelwiz.store.drafts import abandoned_draft
from fuelwiz.store.folder import entries, listing, unsaved
from fuelwiz.store.history import last_change
from fuelwiz.wizard.loading import plain_of

BUILD = 'format = 1\nname = "Planted"\n[goal]\npower = "100 hp"\n'
PLACES = (
    ".b.toml.draft",
    ".unnamed-1.draft",
    ".b.toml.lock",
    ".history/b.toml",
    ".bin/x/b.toml",
    "c.toml",
    "t.csv",
)


def _giant(place: Path) -> None:
    with place.open("wb") as file:
        file.truncate(4 << 30)


PLANTED: dict[str, Callable[[Path, Path], object]] = {
    "link": lambda place, mine: place.symlink_to(mine),
    "pipe": lambda place, _mine: os.mkfifo(place),
    "device": lambda place, _mine: place.symlink_to("/dev/zero"),
    "folder": lambda place, _mine: place.mkdir(),
    "giant": lambda place, _mine: _giant(place),
}


@pytest.fixture(autouse=True)
def ends_in_time() -> Iterator[None]:
    """A place that is waited for fails the test in place of stopping it."""

    def too_long(_number: int, _frame: FrameType | None) -> None:
        raise AssertionError("waited for what was planted")

    before = signal.signal(signal.SIGALRM, too_long)
    signal.alarm(10)
    yield
    signal.alarm(0)
    signal.signal(signal.SIGALRM, before)


@pytest.mark.parametrize("what", PLANTED)
@pytest.mark.parametrize("name", PLACES)
def test_nothing_planted_is_followed_waited_for_or_written_over(tmp_path: Path, what: str, name: str) -> None:
    mine = tmp_path / "elsewhere" / "precious.txt"
    mine.parent.mkdir()
    mine.write_text("precious")
    folder = tmp_path / "builds"
    folder.mkdir()
    path = folder / "b.toml"
    path.write_text(BUILD)
    place = folder / name
    place.parent.mkdir(parents=True, exist_ok=True)
    PLANTED[what](place, mine)

    listing(folder), entries(folder), unsaved(folder), last_change(path), abandoned_draft(path)
    plain_of(place)
    points_typed(name, folder, ("psi", "gal/h"))
    with suppress(FuelwizError):
        Desk.from_draft(place)
    desk = Desk.open(path)
    desk.storage.hold()
    desk.update()
    desk.type("goal.power", "300")
    assert desk.write_draft() is not None
    desk.save()
    desk.storage.release()
    assert 'power = "300 hp"' in path.read_text()
    with suppress(FuelwizError):
        put_in_bin(path)
    with suppress(FuelwizError):
        bring_back(folder)
    assert mine.read_text() == "precious"


@pytest.mark.parametrize("what", ["pipe", "device", "folder", "giant"])
@pytest.mark.parametrize(
    "command", [["log"], ["options", "--parts"], ["report", "--parts"], ["compare"], ["check"]]
)
def test_what_is_no_plain_file_is_refused_by_every_command(
    tmp_path: Path, what: str, command: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    build, place = tmp_path / "b.toml", tmp_path / "planted.toml"
    build.write_text(BUILD)
    PLANTED[what](place, build)
    name, *flag = command
    assert main([name, str(build), *flag, str(place)]) == 2
    said = capsys.readouterr().err
    assert "planted.toml" in said and "went wrong in the program itself" not in said


def test_a_private_build_has_a_private_draft_and_a_private_past(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    path.chmod(0o600)
    desk = Desk.open(path)
    desk.update()
    desk.type("goal.power", "300")
    place = desk.write_draft()
    assert place is not None and place.stat().st_mode & 0o777 == 0o600
    desk.save()
    past = tmp_path / ".history" / "b.toml"
    assert past.stat().st_mode & 0o777 == path.stat().st_mode & 0o777 == 0o600


@pytest.mark.skipif(os.geteuid() != 0, reason="only root gives files to others")
def test_owner_and_group_survive_a_save(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    os.chown(path, 1234, 1001)
    path.chmod(0o660)
    desk = Desk.open(path)
    desk.update()
    desk.type("goal.power", "300")
    desk.save()
    status = path.stat()
    assert (status.st_uid, status.st_gid, status.st_mode & 0o777) == (1234, 1001, 0o660)


def test_a_save_that_changes_owner_or_group_says_so_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    monkeypatch.setattr(os, "geteuid", lambda: 4321)
    monkeypatch.setattr(os, "getegid", lambda: 4321)
    monkeypatch.setattr(os, "getgroups", list)
    desk = Desk.open(path)
    desk.update()
    desk.type("goal.power", "300")
    with pytest.raises(FuelwizError, match="changes its owner and group"):
        desk.save()
    desk.save(overwrite=True)
