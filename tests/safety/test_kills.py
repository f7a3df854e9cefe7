"""A process killed at any moment while it keeps drafts and saves: what it had told was kept is there, whole."""

from __future__ import annotations

import multiprocessing
import os
import random
import signal
import time
from multiprocessing.connection import Connection
from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.document.file import load
from fuelwiz.store.drafts import pending_drafts
from fuelwiz.store.folder import listing
from fuelwiz.store.history import last_change

from .amount import amount

BUILD = 'format = 1\nname = "Killed"\n[goal]\npower = "100 hp"\n'


def _types_and_saves(path: Path, said: Connection) -> None:
    """Types a power after the other, keeps each, saves every fifth, and tells what was kept."""
    desk = Desk.open(path)
    desk.update()
    for power in range(101, 2000):
        desk.type("goal.power", str(power))
        if power % 5:
            desk.write_draft()
        else:
            desk.save(overwrite=True)
        said.send(power)


def _kept(path: Path) -> int:
    """The highest power that the file or a draft of it holds; both have to be whole."""
    found = [int(float(load(path)[0].plain["goal"]["power"].split()[0]))]
    for draft in pending_drafts(path):
        desk = Desk.from_draft(draft.place)
        found.append(int(float(desk.value("goal.power").split()[0])))
    return max(found)


def test_nothing_that_was_kept_is_lost_and_nothing_is_torn(tmp_path: Path) -> None:
    dice = random.Random(18)
    fork = multiprocessing.get_context("fork")
    for number in range(amount(200)):
        path = tmp_path / str(number) / "b.toml"
        path.parent.mkdir()
        path.write_text(BUILD)
        mine, theirs = fork.Pipe(duplex=False)
        writer = fork.Process(target=_types_and_saves, args=(path, theirs))
        writer.start()
        assert mine.poll(20)
        time.sleep(dice.uniform(0.0, 0.15))
        os.kill(writer.pid or 0, signal.SIGKILL)
        writer.join()
        told = 100
        while mine.poll():
            try:
                told = mine.recv()
            except EOFError:
                break
        assert _kept(path) >= told
        last_change(path)
        for left in path.parent.iterdir():
            os.utime(left, (1, 1), follow_symlinks=False)
        names = {entry.path.name for entry in listing(path.parent).builds}
        assert names == {"b.toml"}
        assert not [one for one in path.parent.iterdir() if one.name.endswith(".tmp")]
