"""How quick and how quiet the wizard is on a real pty: printed, never asserted by the clock."""

from __future__ import annotations

import os
import pty
import re
import select
import signal
import statistics
import struct
import sys
import termios
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from fcntl import ioctl
from pathlib import Path

import pytest
from safety.test_long_list import folder_of_many

pytestmark = pytest.mark.benchmark

ROOT = Path(__file__).parents[1]
BUILD = ROOT / "examples" / "hill-climb-six.toml"
BARE = """
from textual.app import App
from textual.widgets import Label
class Bare(App):
    def compose(self):
        yield Label("bare")
Bare().run(mouse=False)
"""
VERDICT = b"Spare"  # over the column that only a verdict has
QUIET_S = 0.06
STARTS = 7
ROUNDS = 12  # of four keys each


@contextmanager
def terminal(command: list[str], cwd: Path) -> Iterator[tuple[int, int]]:
    """A program on a pty of 80 by 24 with 256 colors: its other end, and the id of its process."""
    pid, fd = pty.fork()
    if pid == 0:
        os.chdir(cwd)
        os.environ.update(TERM="xterm-256color", LANG="C.UTF-8", COLUMNS="80", LINES="24")
        for name in ("NO_COLOR", "COLORTERM", "LC_ALL"):
            os.environ.pop(name, None)
        os.execvp(command[0], command)
    ioctl(fd, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    try:
        yield fd, pid
    finally:
        os.kill(pid, signal.SIGKILL)
        os.waitpid(pid, 0)
        os.close(fd)


def until(fd: int, text: bytes, timeout: float = 20.0) -> float:
    """Seconds until a text has come."""
    start, seen = time.perf_counter(), b""
    while text not in seen:
        if time.perf_counter() - start > timeout:
            raise AssertionError(f"{text!r} never came")
        if select.select([fd], [], [], 0.5)[0]:
            seen += os.read(fd, 65536)
    return time.perf_counter() - start


def drain(fd: int, quiet: float) -> bytes:
    """What comes until nothing has come for a while."""
    seen = b""
    while select.select([fd], [], [], quiet)[0]:
        seen += os.read(fd, 65536)
    return seen


def answer_to(fd: int, key: bytes) -> tuple[float, int]:
    """Milliseconds from a key to the last byte of its first burst, and the bytes."""
    start = time.perf_counter()
    os.write(fd, key)
    last, size = start, 0
    while select.select([fd], [], [], QUIET_S)[0]:
        size += len(os.read(fd, 65536))
        last = time.perf_counter()
    return (last - start) * 1e3, size


def wizard(tmp_path: Path) -> list[str]:
    copy = tmp_path / "six.toml"
    copy.write_text(BUILD.read_text(encoding="utf-8"), encoding="utf-8")
    return [sys.executable, "-m", "fuelwiz", str(copy)]


@pytest.mark.parametrize("view", ["s", "p", "w", "o"], ids=["sizes", "path", "changes", "how sure"])
def test_key_to_verdict(tmp_path: Path, view: str) -> None:
    """A key in Power that changes every row: time to the last byte, and bytes; wanted 10 ms, 16 ms and 3 kB."""
    with terminal(wizard(tmp_path), tmp_path) as (fd, _):
        until(fd, VERDICT)
        drain(fd, 1.5)
        for key in (b"\x07", b"v", view.encode()):
            os.write(fd, key)
            drain(fd, 0.3)
        os.write(fd, b"\x1bOR" * 6 + b"\x1b[B" + b"7")
        drain(fd, 1.5)
        times, sizes = [], []
        for _ in range(ROUNDS):
            for key in (b"5", b"0", b"\x7f", b"\x7f"):
                spent, size = answer_to(fd, key)
                if size:
                    times.append(spent)
                    sizes.append(size)
        drain(fd, 1.0)  # what fills in when the keys pause
        idle = len(drain(fd, 0.0)) + len(drain(fd, 1.5))
    assert times, "no key was answered"
    times.sort()
    print(
        f"\nkey to verdict: median {statistics.median(times):.1f} ms, 95 % {times[int(len(times) * 0.95)]:.1f} ms; "
        f"bytes median {statistics.median(sizes):.0f}, most {max(sizes)}; idle bytes {idle}"
    )


@dataclass
class Start:
    """What a start took until its moments, in pairs with the other; wall clock, and the processor's own time."""

    wall: list[float] = field(default_factory=list)
    processor: list[float] = field(default_factory=list)

    def note(self, pid: int, seconds: float) -> None:
        """A moment came."""
        self.wall.append(seconds)
        self.processor.append(processor_s(pid))

    def against(self, other: Start) -> str:
        """How many times the other, by both."""
        wall, processor = (
            statistics.median(ours) / statistics.median(theirs)
            for ours, theirs in ((self.wall, other.wall), (self.processor, other.processor))
        )
        return f"{wall:.2f} times ({processor:.2f} of the processor)"


def processor_s(pid: int) -> float:
    """Seconds of the processor that a process has had, which a neighbor's load hardly moves."""
    fields = Path(f"/proc/{pid}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def peak_mb(pid: int) -> float:
    """The most memory that a process has held, in MB."""
    status = Path(f"/proc/{pid}/status").read_text(encoding="ascii")
    return int(re.findall(r"VmHWM:\s+(\d+) kB", status)[0]) / 1024


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="there is no /proc on this system")
def test_start_against_a_bare_app(tmp_path: Path) -> None:
    """First question and first verdict against an app with one label; wanted 1.2 and 2.3 times, under 100 MB."""
    bare, first, verdict = Start(), Start(), Start()
    memory = 0.0
    for _ in range(STARTS):
        with terminal([sys.executable, "-c", BARE], tmp_path) as (fd, pid):
            bare.note(pid, until(fd, b"bare"))
        with terminal(wizard(tmp_path), tmp_path) as (fd, pid):
            asked = until(fd, b"Power wanted")
            first.note(pid, asked)
            verdict.note(pid, asked + until(fd, VERDICT))
            if not memory:
                drain(fd, 1.5)  # what fills in when the keys pause
                memory = peak_mb(pid)
    print(
        f"\nbare {statistics.median(bare.wall) * 1e3:.0f} ms; first question {first.against(bare)}, "
        f"first verdict {verdict.against(bare)}; at most {memory:.0f} MB"
    )


def test_start_of_a_long_list(tmp_path: Path) -> None:
    """First rows of 2 000 builds from the start of the process, against an app with one label; wanted 0.5 s.

    Then a filter is typed at once: the build that it finds is one that had not been read.
    """
    folder_of_many(tmp_path)
    command = [sys.executable, "-m", "fuelwiz", "--sessions", str(tmp_path)]
    bare, first, found = [], [], []
    for _ in range(5):
        with terminal([sys.executable, "-c", BARE], tmp_path) as (fd, _):
            bare.append(until(fd, b"bare"))
        with terminal(command, tmp_path) as (fd, _):
            first.append(until(fd, b"Build 1"))
            os.write(fd, b"/Build 0777")
            found.append(until(fd, b"877"))  # its power, which only its file tells
    base, rows = statistics.median(bare), statistics.median(first)
    print(
        f"\nbare {base * 1e3:.0f} ms; first rows of 2 000 builds {rows * 1e3:.0f} ms, {rows / base:.2f} times; "
        f"a build filtered for {statistics.median(found) * 1e3:.0f} ms later"
    )
