"""On a terminal of its own: stray bytes, pastes, a line that is gone, and a crash lose nothing and end nothing."""

from __future__ import annotations

import os
import shutil
import signal
import sys
import time
from pathlib import Path

import pexpect
import pytest

from fuelwiz.store.drafts import pending_drafts

from .terminal import KEYS, Terminal, wizard

SAMPLE = Path(__file__).parents[2] / "saved_sessions/gravel-four.toml"


DOWN = KEYS["down"]


def at_power(terminal: Terminal) -> None:
    """Wait for the first answer, and go to the power wanted."""
    terminal.until("Power wanted")
    terminal.quiet()
    terminal.press("ctrl+g", "1")
    terminal.quiet()
    for _ in range(12):
        if "▸ Power wanted" in terminal.text:
            return
        terminal.press("down")
        terminal.quiet(0.2)
    raise AssertionError(f"the power is not reached\n{terminal.text}")


@pytest.fixture
def build(tmp_path: Path) -> Path:
    """A build in a folder of its own."""
    return Path(shutil.copy(SAMPLE, tmp_path / "b.toml"))


@pytest.mark.parametrize(
    "stray",
    [
        b"\xff",
        b"\xe9",
        b"\x1b[M !\xf0",
        b"\x1b[?62;22c",
        b"\x1b]11;rgb:ffff/ffff/ffff\x1b\\",
        b"\x1b5",
        b"\x1bx",
    ],
)
def test_stray_bytes_change_no_answer(build: Path, stray: bytes) -> None:
    with wizard(build) as terminal:
        at_power(terminal)
        terminal.program.send(stray)
        terminal.quiet()
        terminal.press("433")
        terminal.until("433")
        terminal.press("ctrl+q", "x")
        assert terminal.ended() == 0


@pytest.mark.parametrize("brackets", [True, False])
def test_a_paste_of_64_kib_does_not_hold_the_keys_up(build: Path, brackets: bool) -> None:
    text = b"7, (x) " * (65_536 // 7)
    with wizard(build) as terminal:
        at_power(terminal)
        start = time.monotonic()
        whole = b"\x1b[200~" + text + b"\x1b[201~" if brackets else text
        for at in range(0, len(whole), 1024):
            terminal.program.send(whole[at : at + 1024])
            terminal.read(0.0)
        terminal.quiet()
        terminal.press("ctrl+u", "433")
        terminal.until("433")
        assert time.monotonic() - start < 10
        terminal.press("ctrl+q", "x")
        assert terminal.ended() == 0


def test_a_terminal_that_is_gone_ends_it_though_hang_ups_are_ignored(build: Path) -> None:
    program = pexpect.spawn(
        "/bin/sh",
        ["-c", f'trap "" HUP; exec "{sys.executable}" -m fuelwiz b.toml'],
        cwd=str(build.parent),
        dimensions=(24, 80),
        env={**os.environ, "TERM": "xterm-256color", "LANG": "C.UTF-8"},
    )
    try:
        program.expect("Power wanted", timeout=20)
        program.expect("spare", timeout=20)
        program.send(f"\x071{DOWN}433")
        program.expect("433", timeout=10)
        time.sleep(1.2)
        os.close(program.child_fd)
        end = time.monotonic() + 5
        while os.waitpid(program.pid, os.WNOHANG)[0] == 0:
            assert time.monotonic() < end, "the process stays without a terminal"
            time.sleep(0.05)
        (draft,) = build.parent.glob(".*.draft")
        assert "433 hp" in draft.read_text(encoding="utf-8")
    except BaseException:
        os.kill(program.pid, signal.SIGKILL)
        raise
    finally:
        program.closed = True
        program.child_fd = -1


def test_a_crash_keeps_the_draft_and_says_so_in_lines(build: Path) -> None:
    code = (
        "import sys\n"
        "from fuelwiz.wizard.editor.build_screen import BuildScreen\n"
        "from fuelwiz.cli import main\n"
        "def fall(self): raise ZeroDivisionError\n"
        "BuildScreen.changed = fall\n"
        "sys.exit(main(['b.toml']))\n"
    )
    program = pexpect.spawn(
        sys.executable,
        ["-c", code],
        cwd=str(build.parent),
        dimensions=(24, 80),
        env={**os.environ, "TERM": "xterm-256color", "LANG": "C.UTF-8"},
    )
    program.expect("Power wanted", timeout=20)
    program.expect("spare", timeout=20)
    program.send(f"\x071{DOWN}4")
    program.expect("something went wrong in the program itself", timeout=20)
    program.expect("next start offers it", timeout=5)
    program.expect(pexpect.EOF, timeout=5)
    program.close()
    assert b"Traceback" not in (program.before or b"") and program.exitstatus == 2
    assert pending_drafts(build), "what was typed is not in a draft"


def test_an_interrupt_from_outside_keeps_the_draft(build: Path) -> None:
    with wizard(build) as terminal:
        at_power(terminal)
        terminal.press("433")
        terminal.until("433")
        terminal.program.kill(signal.SIGINT)
        assert terminal.ended() == 130
    (draft,) = build.parent.glob(".*.draft")
    assert "433 hp" in draft.read_text(encoding="utf-8")
