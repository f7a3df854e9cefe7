"""A disk that is full: the old file stays whole, it is said, and there is room again as if nothing had been."""

from __future__ import annotations

import multiprocessing
import resource
import signal
from pathlib import Path

from fuelwiz.desk import Desk
from fuelwiz.errors import FuelwizError

BUILD = 'format = 1\nname = "Full"\n[goal]\npower = "100 hp"\n'


def _fills_up(path: Path) -> None:
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    desk = Desk.open(path)
    desk.update()
    desk.type("goal.power", "300")
    resource.setrlimit(resource.RLIMIT_FSIZE, (40, resource.RLIM_INFINITY))
    for write in (desk.write_draft, desk.save):
        try:
            write()
        except FuelwizError as error:
            assert "file too large" in str(error), error
        else:
            raise AssertionError("a full disk was not noticed")
    assert path.read_text() == BUILD
    assert {one.name for one in path.parent.rglob("*")} <= {"b.toml", ".history"}
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    assert desk.write_draft() is not None
    desk.save()


def test_a_full_disk_loses_nothing(tmp_path: Path) -> None:
    path = tmp_path / "b.toml"
    path.write_text(BUILD)
    writer = multiprocessing.get_context("fork").Process(target=_fills_up, args=(path,))
    writer.start()
    writer.join(60)
    assert writer.exitcode == 0
    assert 'power = "300 hp"' in path.read_text()
