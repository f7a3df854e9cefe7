"""A folder that takes no draft: it is kept in a private place of the user's, said, and found at the next start."""

from __future__ import annotations

import ctypes
import os
import signal
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from terminal.terminal import Terminal, running

from fuelwiz.desk import Desk
from fuelwiz.errors import OutputError
from fuelwiz.store.bin import put_in_bin
from fuelwiz.store.drafts import abandoned_draft, drafts_away
from fuelwiz.store.folder import listing, unsaved
from fuelwiz.store.refuge import made_refuges, refuges

BUILD = 'format = 1\nname = "Locked"\n[goal]\npower = "100 hp"\n'
AS_ANYBODY = """
import ctypes, os, sys
for may_do_all in (1, 2, 3):  # CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH, CAP_FOWNER: see capabilities(7)
    ctypes.CDLL(None).prctl(24, may_do_all, 0, 0, 0)  # PR_CAPBSET_DROP: see prctl(2)
os.execv(sys.executable, [sys.executable, "-m", "fuelwiz", *sys.argv[1:]])
"""
NO_FILE = "import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (0, resource.RLIM_INFINITY))\n"


@pytest.fixture
def build(tmp_path: Path) -> Iterator[Path]:
    """A build in a folder that may be read alone; what it says is written over by nobody."""
    folder = tmp_path / "builds"
    folder.mkdir()
    path = folder / "b.toml"
    path.write_text(BUILD)
    folder.chmod(0o500)
    yield path
    folder.chmod(0o700)


def asked_for_the_end(build: Path, code: str, state: Path, typed: str) -> tuple[int, str]:
    """The wizard told something and asked to end: its status, and what is on the terminal then."""
    command = [sys.executable, "-c", code, str(build)]
    with running(command, build.parent, XDG_STATE_HOME=str(state)) as terminal:
        at_power(terminal)
        terminal.press(*typed)
        terminal.until(f"{typed} ")
        terminal.program.kill(signal.SIGTERM)
        status = terminal.ended()
        while terminal.read(0.2):
            pass
        return status, terminal.text.replace("\n", "")


def at_power(terminal: Terminal) -> None:
    terminal.until("Power wanted")
    terminal.quiet()
    terminal.press("ctrl+g", "1")
    terminal.quiet(0.3)


def drops_what_root_may() -> bool:
    return sys.platform == "linux" and (os.geteuid() != 0 or hasattr(ctypes.CDLL(None), "prctl"))


@pytest.mark.skipif(not drops_what_root_may(), reason="root may write everywhere")
def test_killed_in_a_folder_that_takes_nothing_it_is_offered_at_the_next_start(
    build: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    state = tmp_path / "state"
    status, _ = asked_for_the_end(build, AS_ANYBODY, state, "433")
    assert status == 143
    monkeypatch.setenv("XDG_STATE_HOME", str(state))
    (draft,) = drafts_away(build.parent)
    assert draft.place.parent.stat().st_mode & 0o777 == 0o700 and draft.build == build
    assert [entry.path for entry in unsaved(build.parent)] == [draft.place]
    with running(
        [sys.executable, "-c", AS_ANYBODY, str(build)], build.parent, XDG_STATE_HOME=str(state)
    ) as terminal:
        terminal.until("A draft was left")
        terminal.until("power 100 to 433 hp")
        terminal.press("d")
        terminal.quiet()
        terminal.press("7")
        terminal.until("found there")
        terminal.press("ctrl+q", "x")
        assert terminal.ended() == 0
    assert not drafts_away(build.parent) and build.read_text() == BUILD


def test_where_nothing_can_be_written_the_last_word_says_so(build: Path, tmp_path: Path) -> None:
    status, text = asked_for_the_end(build, NO_FILE + AS_ANYBODY, tmp_path / "state", "433")
    assert status == 143
    assert "could not be kept, here or anywhere else" in text and "permission denied" in text


def test_a_draft_comes_home_once_its_folder_takes_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    folder = tmp_path / "builds"
    folder.write_text("in the way")
    desk = Desk.new(folder)
    desk.update()
    desk.type("goal.power", "433")
    away = desk.write_draft()
    assert away is not None and away.parent == tmp_path / "state" / "fuelwiz" / "drafts"
    with pytest.raises(OutputError, match="could not be kept beside its build"):
        put_in_bin(away)
    folder.unlink()
    home = desk.write_draft()
    assert home is not None and home.parent == folder and not away.exists()
    assert Desk.from_draft(home).value("goal.power") == "433 hp"


def test_of_two_places_the_draft_that_was_kept_last_is_offered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "file"))
    (tmp_path / "file").write_text("no folder")
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    (refuge,) = made_refuges()
    desk = Desk.open(path)
    desk.update()
    desk.type("goal.power", "433")
    beside = desk.write_draft()
    assert beside is not None
    (refuge / ".unnamed-1.draft").write_text(beside.read_text().replace("433", "434"))
    os.utime(beside, (1, 1))
    assert abandoned_draft(path) == refuge / ".unnamed-1.draft"
    (refuge / ".unnamed-1.draft").write_text(
        (refuge / ".unnamed-1.draft").read_text().replace('"name": "Locked"', '"notes": ""')
    )
    assert [entry.name for entry in unsaved(tmp_path)] == ["b"]
    found = Desk.from_draft(refuge / ".unnamed-1.draft")
    assert found.path == path and found.value("goal.power") == "434 hp"


def test_what_a_killed_write_left_there_is_taken_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    refuge = next(made_refuges())
    left = refuge / "..unnamed-1.draft.0123abcd.tmp"
    left.write_text("half a dra")
    os.utime(left, (1, 1))
    listing(tmp_path)
    assert not left.exists()


@pytest.mark.parametrize("planted", ["open to others", "link", "file"])
def test_a_place_that_others_could_have_made_is_no_refuge(
    planted: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "in the way").write_text("")
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "in the way"))
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    place = tmp_path / f"fuelwiz-{os.geteuid()}"
    if planted == "file":
        place.write_text("")
    elif planted == "link":
        (tmp_path / "theirs").mkdir(mode=0o700)
        place.symlink_to(tmp_path / "theirs")
    else:
        place.mkdir()
        place.chmod(0o755)
    assert not list(refuges()) and not list(made_refuges())
