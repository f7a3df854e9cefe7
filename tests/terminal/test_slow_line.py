"""A line of 2 kB a second with 300 ms on the way: how much is sent, and that what lags becomes one frame."""

from __future__ import annotations

import time
from pathlib import Path

from .terminal import Terminal, wizard
from .test_new_to_saved import to_the_power

BYTES_A_SECOND = 2000
DELAY_S = 0.3
MOST_OF_A_START = 10_000
MOST_OF_A_DIGIT = 3_000


class SlowLine:
    """Takes what a wizard sends at the pace of the line; what is not taken holds the wizard's own writing up."""

    def __init__(self, terminal: Terminal) -> None:
        self.terminal = terminal
        self.sent = 0

    def until(self, seen: str, patience_s: float = 60.0) -> None:
        end = time.monotonic() + patience_s
        while seen not in self.terminal.text:
            self._take()
            assert time.monotonic() < end, f"{seen!r} never stood on\n{self.terminal.text}"

    def quiet(self) -> None:
        """Until nothing has come for as long as a key and its answer are on the way."""
        last = time.monotonic()
        while time.monotonic() - last < 2 * DELAY_S + 0.4:
            if self._take():
                last = time.monotonic()

    def press(self, *keys: str) -> None:
        time.sleep(DELAY_S)
        self.terminal.press(*keys)

    def _take(self) -> int:
        came = self.terminal.read_at_most(BYTES_A_SECOND // 20, 0.05)
        self.sent += came
        if came:
            time.sleep(came / BYTES_A_SECOND)
        return came


def test_a_start_and_a_digit_are_short(tmp_path: Path) -> None:
    with wizard(tmp_path / "slow.toml") as terminal:
        line = SlowLine(terminal)
        line.until("Type the power")
        line.quiet()
        assert line.sent < MOST_OF_A_START
        line.press("\r", "6")
        line.quiet()
        line.press("0")
        line.quiet()
        for digit in "05":
            before = line.sent
            line.press(digit)
            line.quiet()
            assert 0 < line.sent - before < MOST_OF_A_DIGIT
        line.until("6005")


def test_what_lags_behind_the_keys_becomes_one_frame(tmp_path: Path) -> None:
    with wizard(tmp_path / "slow.toml") as terminal:
        line = SlowLine(terminal)
        line.until("Type the power")
        line.press("\r", "600")
        line.quiet()
        before = line.sent
        for _ in range(20):  # views that differ in every row, faster than the line can show them
            terminal.press("\x1b[15~")
            time.sleep(0.02)
        line.quiet()
        assert line.sent - before < 6 * MOST_OF_A_DIGIT
        line.press("7")
        line.until("6007")


def test_the_cursor_of_the_terminal_stands_where_one_types(tmp_path: Path) -> None:
    with wizard(tmp_path / "cursor.toml") as terminal:
        to_the_power(terminal)
        terminal.press("600")
        terminal.until("600 hp on E10")
        terminal.quiet()
        cursor = terminal.screen.cursor
        row = terminal.screen.display[cursor.y]
        assert "Power wanted" in row and row[: cursor.x].rstrip().endswith("600")
        assert not cursor.hidden
        terminal.press("ctrl+g")
        terminal.until("All keys")
        terminal.quiet()
        assert terminal.screen.cursor.hidden
