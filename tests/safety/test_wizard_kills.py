"""The wizard on a terminal, killed at any moment while somebody types: what stood on the screen is kept.

Each wizard is a process of its own that types into the notes, into a table of points, or into a build that has no
file yet; some save now and then, and after some kills the clocks of all files jump. What had stood on the screen for
a second has to be in the file or in a draft that the next start offers, on a loaded machine for two.
"""

from __future__ import annotations

import os
import random
import signal
import statistics
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import pytest
from terminal.terminal import Terminal, running

from fuelwiz.desk import Desk
from fuelwiz.document.file import load
from fuelwiz.store.drafts import abandoned_draft
from fuelwiz.store.folder import listing, unsaved

from .amount import amount

BUILD = 'format = 1\nname = "Killed"\n[goal]\npower = "100 hp"\n'
PROCESSES = 4
KEPT_WITHIN_S = 1.0
LOADED_S = 1.0
"""How much later a draft may come where as many wizards as this share two cores with whatever else runs."""
RESTARTED = 5
DAY_S = 86_400
WAYS = ("notes", "notes", "points", "new", "saves")


@dataclass(frozen=True, slots=True)
class Killed:
    """One kill: which way it typed, what had been on the screen when, and what was there afterwards."""

    way: str
    shown: tuple[tuple[float, int], ...]
    at: float
    kept: int

    @property
    def lost_s(self) -> float:
        """For how long what is lost had stood on the screen; 0 where all is kept."""
        return max((self.at - when for when, number in self.shown if number > self.kept), default=0.0)


def token(number: int) -> str:
    return f" {number:04}"


def to_the_field(terminal: Terminal, way: str) -> None:
    terminal.until("Power wanted")
    terminal.quiet(0.3)
    terminal.press("\x10", *("pump data" if way == "points" else "notes"), "enter")
    if way == "points":
        terminal.press("f8")
        terminal.until("Paste the table here")
    else:
        terminal.until("▸ Notes")


def type_until_killed(
    terminal: Terminal, way: str, dice: random.Random
) -> tuple[list[tuple[float, int]], float]:
    """Types numbers, each higher than the one before, and notes when each stood on the screen; then kills."""
    end = time.monotonic() + dice.uniform(0.2, 4.0)
    pause_s = dice.choice((0.012, 0.03, 0.1))
    shown: list[tuple[float, int]] = []
    sent = 0
    while time.monotonic() < end:
        sent += 1
        for key in token(sent):
            terminal.press(key)
            terminal.read(pause_s)
        if way == "saves" and sent % 7 == 0:
            terminal.press("ctrl+s")
        on_screen = terminal.text
        now = time.monotonic()
        for number in range(len(shown) + 1, sent + 1):
            if token(number) in on_screen:
                shown += [(now, one) for one in range(len(shown) + 1, number + 1)]
    os.kill(terminal.program.pid, signal.SIGKILL)
    killed_at = time.monotonic()
    terminal.program.wait()
    return shown, killed_at


def text_kept(path: Path) -> str:
    """The text that the next start finds: in the draft that it offers, else in the file."""
    place = abandoned_draft(path) if path.exists() else None
    if not path.exists():
        drafts = unsaved(path.parent)
        place = drafts[0].path if drafts else None
    if place is not None:
        desk = Desk.from_draft(place)
        return desk.table[1] or desk.text_in_field("notes").text
    return str(load(path)[0].plain.get("notes", "")) if path.exists() else ""


def clocks_jump(folder: Path, dice: random.Random) -> None:
    """Every file was last changed on some other day."""
    for place in folder.rglob("*"):
        when = dice.choice((1.0, time.time() - DAY_S, time.time() + DAY_S, 4e9))
        os.utime(place, (when, when), follow_symlinks=False)


def kept_of(text: str) -> int:
    """The last number of which nothing is missing, with all that came before it."""
    numbers = [int(word) for word in text.split() if len(word) == 4]
    assert numbers == list(range(1, len(numbers) + 1)), text
    return len(numbers)


def one_kill(folder: Path, number: int) -> Killed:
    dice = random.Random(18_000 + number)
    way = WAYS[number % len(WAYS)]
    path = folder / "b.toml"
    folder.mkdir()
    if way != "new":
        path.write_text(BUILD)
    command = [sys.executable, "-m", "fuelwiz", str(path)]
    with running(command, folder) as terminal:
        to_the_field(terminal, way)
        shown, killed_at = type_until_killed(terminal, way, dice)
    if number % 2:
        clocks_jump(folder, dice)
    killed = Killed(way, tuple(shown), killed_at, kept_of(text_kept(path)))
    if number % RESTARTED == 0 and abandoned_draft(path):
        offered_again(path, killed.kept)
    for left in folder.iterdir():
        os.utime(left, (1, 1), follow_symlinks=False)
    names = {entry.path.name for entry in listing(folder).builds}
    assert names <= {"b.toml"} and not list(folder.glob("*.tmp")) and not list(folder.glob(".*.tmp"))
    return killed


def offered_again(path: Path, kept: int) -> None:
    """The next start takes the dead one's lock over without a word, offers the draft, and has the text in it."""
    with running([sys.executable, "-m", "fuelwiz", str(path)], path.parent) as terminal:
        terminal.until("A draft was left")
        assert "Open elsewhere" not in terminal.text
        terminal.press("d")
        terminal.quiet()
        if "Paste the table here" not in terminal.text:
            terminal.press("\x10", *"notes", "enter")
        if kept:
            terminal.until(token(kept))
        terminal.program.kill(signal.SIGTERM)
        with suppress(AssertionError):
            terminal.ended()


@pytest.mark.skipif(sys.platform == "win32", reason="no terminal of one's own there")
def test_what_stood_on_the_screen_for_a_second_is_kept(tmp_path: Path) -> None:
    count = amount(200)
    with ThreadPoolExecutor(PROCESSES) as pool:
        kills = list(pool.map(lambda number: one_kill(tmp_path / str(number), number), range(count)))
    lost = sorted(kill.lost_s for kill in kills)
    typed = sum(len(kill.shown) for kill in kills)
    print(
        f"\n{count} kills over {typed} numbers: the oldest lost had stood for {statistics.median(lost):.2f} s"
        f" (median), {lost[int(len(lost) * 0.95)]:.2f} s (95 %), {lost[-1]:.2f} s (worst)"
    )
    late = [kill for kill in kills if kill.lost_s > KEPT_WITHIN_S + LOADED_S]
    assert not late, late
    assert typed > 3 * count and any(kill.kept for kill in kills)
