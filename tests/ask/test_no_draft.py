"""Where no place takes a draft, that is said once and the questions go on; what would be lost is said before it is."""

from __future__ import annotations

import os
import pty
import select
import subprocess
import sys
import time
from pathlib import Path

import pytest

NOWHERE = Path("/proc")
"""A folder that takes no file from anybody."""
WITHOUT = {"XDG_STATE_HOME": str(NOWHERE), "XDG_DATA_HOME": str(NOWHERE), "TMPDIR": str(NOWHERE)}
ASK = [sys.executable, "-m", "fuelwiz", "ask", str(NOWHERE / "mine.toml")]

pytestmark = pytest.mark.skipif(not (NOWHERE / "self").exists(), reason="no folder here refuses root as well")


def test_it_is_said_once_and_the_answer_comes_all_the_same() -> None:
    done = subprocess.run(
        ASK, input="\n400\n\n\n\n", capture_output=True, text=True, timeout=60, check=False,
        env={**os.environ, **WITHOUT},
    )  # fmt: skip
    assert done.stdout.count("no draft can be kept") == 1
    assert "It goes on without one; /save NAME keeps the build." in done.stdout
    assert "Induction: turbo assumed." in done.stdout
    assert done.stdout.splitlines()[-1].startswith("Measure or look up first:")
    assert done.stderr.startswith("fuelwiz: mine is not saved: ") and "no draft can be kept" in done.stderr
    assert done.returncode == 2


def test_what_is_saved_elsewhere_needs_no_draft(tmp_path: Path) -> None:
    done = subprocess.run(
        [*ASK[:-1], str(tmp_path / "mine.toml")], input="\n400\n/save\n", capture_output=True, text=True,
        timeout=60, check=False, env={**os.environ, **WITHOUT},
    )  # fmt: skip
    assert done.returncode == 0 and not done.stderr
    assert 'power = "400 hp"' in (tmp_path / "mine.toml").read_text()


def test_whoever_types_is_asked_before_it_is_dropped() -> None:
    pid, fd = pty.fork()
    if pid == 0:
        os.environ.update(WITHOUT)
        os.execv(sys.executable, ASK)
    os.write(fd, b"\n400\n/quit\n")
    seen = _until(fd, b"/quit again drops it.")
    assert b"Not saved, no draft kept. /save NAME keeps it, /quit again drops it." in seen
    os.write(fd, b"/quit\n")
    _until(fd, None)
    assert os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]) == 2


def _until(fd: int, words: bytes | None) -> bytes:
    """What is shown until these words are, or until it ends."""
    seen, until = b"", time.monotonic() + 30
    while time.monotonic() < until and (words is None or words not in seen):
        if not select.select([fd], [], [], 1)[0]:
            continue
        try:
            chunk = os.read(fd, 65536)
        except OSError:
            break
        if not chunk:
            break
        seen += chunk
    return seen
