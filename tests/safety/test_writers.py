"""Several programs on one build: no save goes over what was not read, and each one's draft is its own."""

from __future__ import annotations

import json
import multiprocessing
import os
import signal
import time
from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path

from fuelwiz.desk import Desk, SaveRefused
from fuelwiz.document.file import read
from fuelwiz.errors import FuelwizError
from fuelwiz.store.drafts import drafts_of
from fuelwiz.store.lock import Lock, owner_of, take
from fuelwiz.store.sitting import Sitting

from .amount import amount

BUILD = 'format = 1\nname = "Shared"\n[goal]\npower = "100 hp"\n'
FORK = multiprocessing.get_context("fork")


def _saves(path: Path, writer: int, tries: int, said: Connection) -> None:
    """Opens, changes and saves, again and again; tells from which power it came and which it wrote."""
    done = []
    for number in range(tries):
        desk = Desk.open(path)
        desk.storage.goes_on_beside = True
        desk.update()
        before = desk.value("goal.power")
        desk.type("goal.power", str(200 + writer * 1000 + number))
        with suppress(SaveRefused):
            desk.save()
            done.append((before, desk.value("goal.power")))
    said.send(done)


def test_ten_writers_never_go_over_what_they_have_not_read(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    pipes = [FORK.Pipe(duplex=False) for _ in range(10)]
    tries = amount(100)
    writers = [
        FORK.Process(target=_saves, args=(path, number, tries, theirs))
        for number, (_, theirs) in enumerate(pipes)
    ]
    for writer in writers:
        writer.start()
    done = [save for mine, _ in pipes for save in mine.recv()]
    for writer in writers:
        writer.join()
        assert writer.exitcode == 0
    followed = [before for before, _ in done]
    assert len(followed) == len(set(followed)), "two saves came from one and the same file"
    assert read(path).plain["goal"]["power"] in {now for _, now in done}
    assert not [one.name for one in tmp_path.iterdir() if one.name.endswith((".tmp", ".draft"))]


def _sits(path: Path, power: str, said: Connection) -> None:
    """Opens a build, changes it, keeps a draft, and sits there."""
    desk = Desk.open(path)
    desk.storage.hold()
    desk.update()
    desk.type("goal.power", power)
    desk.write_draft()
    said.send("kept")
    time.sleep(60)


def test_two_on_one_file_keep_a_draft_each_and_a_dead_owner_is_no_owner(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    mine, theirs = FORK.Pipe(duplex=False)
    other = FORK.Process(target=_sits, args=(path, "301", theirs))
    other.start()
    try:
        assert mine.recv() == "kept"
        owner = owner_of(path)
        assert owner is not None and owner.process == other.pid and "since" in owner.words
        desk = Desk.open(path)
        assert desk.storage.hold() == owner
        desk.update()
        desk.type("goal.power", "302")
        desk.write_draft()
        with_both = {draft.plain["plain"]["goal"]["power"] for draft in drafts_of(path) if draft.plain}
        assert with_both == {"301 hp", "302 hp"}
        try:
            desk.save()
        except SaveRefused as refused:
            assert refused.reason == "held" and "is open by" in str(refused)
        else:
            raise AssertionError("a save went over a build that somebody else holds")
        desk.save(overwrite=True)
        (left,) = drafts_of(path)
        assert left.plain is not None and left.plain["plain"]["goal"]["power"] == "301 hp"
    finally:
        os.kill(other.pid or 0, signal.SIGKILL)
        other.join()
    assert owner_of(path) is None
    lock = take(path, Sitting.new())
    assert isinstance(lock, Lock)
    lock.release()
    assert not list(tmp_path.glob(".*.lock"))


def test_an_owner_on_another_machine_is_told_and_only_taken_over_by_choice(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    there = Sitting("0123456789abcdef", "ann", "bench-pc", 7, "1", "2026-05-14T14:02:00+00:00")
    (tmp_path / ".b.toml.lock").write_text(json.dumps(there.as_plain()))
    assert take(path, Sitting.new()) == there
    assert "ann on bench-pc since 2026-05-14" in there.words
    lock = take(path, Sitting.new(), by_force=True)
    assert isinstance(lock, Lock)
    lock.release()


def test_what_changed_outside_is_told_before_a_save(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    desk = Desk.open(path)
    desk.update()
    path.write_text(BUILD.replace("100", "450"))
    desk.type("goal.power", "300")
    try:
        desk.save()
    except SaveRefused as refused:
        assert refused.reason == "changed" and refused.differences == ("power 100 to 450\u00a0hp",)
    else:
        raise AssertionError("the change was not noticed")
    path.write_text(BUILD.replace("100", "460"))
    try:
        desk.save(overwrite=True)
    except FuelwizError:
        assert "460" in path.read_text()
    else:
        raise AssertionError("what came after the question was written over")
