"""The program on a pty of its own, and the screen as the terminal would show it."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import pexpect
import pyte

PATIENCE_S = 20.0
KEYS = {
    "enter": "\r",
    "tab": "\t",
    "right": "\x1b[C",
    "left": "\x1b[D",
    "down": "\x1b[B",
    "up": "\x1b[A",
    "escape": "\x1b",
    "f1": "\x1bOP",
    "f4": "\x1bOS",
    "f6": "\x1b[17~",
    "f7": "\x1b[18~",
    "f8": "\x1b[19~",
    "pagedown": "\x1b[6~",
    "ctrl+g": "\x07",
    "ctrl+s": "\x13",
    "ctrl+p": "\x10",
    "ctrl+q": "\x11",
    "ctrl+u": "\x15",
    "ctrl+z": "\x1a",
}  # fmt: skip  as xterm sends them: XTerm Control Sequences, "PC-Style Function Keys"


class Terminal:
    """A terminal with the wizard in it."""

    def __init__(self, program: pexpect.spawn, width: int, height: int) -> None:
        self.program = program
        self.screen = pyte.Screen(width, height)
        self._stream = pyte.ByteStream(self.screen)

    def read(self, wait: float) -> int:
        """Take what the program has sent; how many bytes came."""
        return self.read_at_most(65536, wait)

    def read_at_most(self, count: int, wait: float) -> int:
        """The same, no more than so many bytes."""
        try:
            sent = self.program.read_nonblocking(count, timeout=wait)
        except (pexpect.TIMEOUT, pexpect.EOF):
            return 0
        self.take(sent)
        return len(sent)

    def take(self, sent: bytes) -> None:
        """Put on the screen what the program has sent."""
        self._stream.feed(sent)

    @property
    def text(self) -> str:
        return "\n".join(self.screen.display).replace("\N{NO-BREAK SPACE}", " ")

    def until(self, seen: str) -> None:
        """Wait until a text stands on the screen."""
        end = time.monotonic() + PATIENCE_S
        while seen not in self.text:
            self.read(0.05)
            assert time.monotonic() < end, f"{seen!r} never stood on\n{self.text}"

    def quiet(self, seconds: float = 0.5) -> None:
        """Wait until nothing has come for a while."""
        end = time.monotonic() + PATIENCE_S
        while self.read(seconds):
            assert time.monotonic() < end, "the program never falls silent"

    def press(self, *keys: str) -> None:
        """Keys by name or as text."""
        for key in keys:
            self.program.send(KEYS.get(key, key))

    def ended(self) -> int:
        """Wait for the end; the exit status, that of a signal negative."""
        end = time.monotonic() + PATIENCE_S
        while self.program.isalive():
            self.read(0.05)
            assert time.monotonic() < end, "the program does not end"
        return self.program.exitstatus if self.program.exitstatus is not None else -self.program.signalstatus


@contextmanager
def wizard(file: Path, width: int = 80, height: int = 24, term: str = "xterm-256color") -> Iterator[Terminal]:
    """`python -m fuelwiz FILE` on a terminal of that size."""
    command = [sys.executable, "-m", "fuelwiz", str(file)]
    with running(command, file.parent, width, height, TERM=term) as terminal:
        yield terminal


@contextmanager
def running(
    command: Sequence[str], folder: Path, width: int = 80, height: int = 24, **environ: str
) -> Iterator[Terminal]:
    """A command on a terminal of that size, with nothing of the environment but what is told."""
    kept = {name: os.environ[name] for name in ("PATH", "HOME") if name in os.environ}
    program = pexpect.spawn(
        command[0],
        list(command[1:]),
        cwd=str(folder),
        dimensions=(height, width),
        env={**kept, "TERM": "xterm-256color", "LANG": "C.UTF-8", **environ},
    )
    program.delaybeforesend = None
    try:
        yield Terminal(program, width, height)
    finally:
        program.close(force=True)
