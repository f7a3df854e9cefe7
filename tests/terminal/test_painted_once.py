"""How often the screen is painted: bytes of a start and of each change of mode against those of one repaint."""

from __future__ import annotations

import shutil
import sys
import time
from pathlib import Path

import pytest

from .terminal import Terminal, running

SAMPLE = Path(__file__).parents[2] / "saved_sessions" / "gravel-four.toml"
MOST_OF_A_START = 1.3
SILENCE_S = 1.0
ALL_IS_THERE_S = 4.0  # how sure it all is comes last
CLICK = "\x1b[<0;5;5M\x1b[<0;5;5m"  # XTerm Control Sequences, "SGR (1006)": button 1 down and up
FOCUS_OUT, FOCUS_IN = "\x1b[O", "\x1b[I"  # XTerm Control Sequences, "FocusIn/FocusOut"
F6 = "\x1b[17~"


def bytes_until_quiet(terminal: Terminal, silence: float = SILENCE_S) -> int:
    """What comes until nothing has come for a while."""
    count, last = 0, time.monotonic()
    while time.monotonic() - last < silence:
        came = terminal.read(0.05)
        count += came
        if came:
            last = time.monotonic()
    return count


def bytes_of_a_repaint(terminal: Terminal) -> int:
    """What a screen costs that has to be drawn whole: one column less, and the same size again."""
    height, width = terminal.program.getwinsize()
    terminal.program.setwinsize(height, width - 1)
    bytes_until_quiet(terminal)
    terminal.program.setwinsize(height, width)
    return bytes_until_quiet(terminal)


@pytest.mark.parametrize(
    "environ", [{}, {"TERM": "xterm"}, {"NO_COLOR": "1"}], ids=["256 colors", "16 colors", "no color"]
)
def test_start_and_changes_of_mode_are_painted_once(tmp_path: Path, environ: dict[str, str]) -> None:
    file = tmp_path / "gravel.toml"
    shutil.copy(SAMPLE, file)
    command = [sys.executable, "-m", "fuelwiz", str(file)]
    with running(command, tmp_path, 80, 24, **environ) as terminal:
        start = 0
        while "Measure: fuel use" not in terminal.text:
            start += terminal.read(0.05)
        start += bytes_until_quiet(terminal, ALL_IS_THERE_S)
        whole = bytes_of_a_repaint(terminal)
        assert 0 < start < MOST_OF_A_START * whole

        for key in ("f1", "escape", "ctrl+g", "escape", F6, F6):
            terminal.press(key)
            assert 0 < bytes_until_quiet(terminal) < whole, key
        for nothing in (FOCUS_OUT + FOCUS_IN, CLICK):
            terminal.press(nothing)
            assert bytes_until_quiet(terminal) == 0, nothing


def test_a_build_that_is_opened_from_the_list_is_painted_once(tmp_path: Path) -> None:
    builds = tmp_path / "builds"
    builds.mkdir()
    shutil.copy(SAMPLE, builds / "gravel.toml")
    command = [sys.executable, "-m", "fuelwiz", "--sessions", str(builds)]
    with running(command, tmp_path) as terminal:
        start = 0
        while "Good for" not in terminal.text:
            start += terminal.read(0.05)
        start += bytes_until_quiet(terminal, ALL_IS_THERE_S)
        assert 0 < start < MOST_OF_A_START * bytes_of_a_repaint(terminal)
        terminal.press("enter")
        opened = bytes_until_quiet(terminal, ALL_IS_THERE_S)
        assert "Power wanted" in terminal.text
        assert 0 < opened < MOST_OF_A_START * bytes_of_a_repaint(terminal)
