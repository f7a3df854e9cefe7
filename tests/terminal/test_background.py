"""A terminal that is asked for its background: one that answers, late or at once, and one that never does."""

from __future__ import annotations

import os
import shutil
import sys
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pexpect
import pytest

from fuelwiz.terminal.environment import BACKGROUND_QUERY
from fuelwiz.terminal.palette import DARK_GROUNDS, LIGHT_GROUNDS

from .terminal import PATIENCE_S, Terminal, running

SAMPLE = Path(__file__).parents[2] / "saved_sessions" / "gravel-four.toml"
LIGHT, DARK = (grounds["background"].removeprefix("#") for grounds in (LIGHT_GROUNDS, DARK_GROUNDS))
WHITE = "\x1b]11;rgb:ffff/ffff/ffff\x1b\\"
BLACK = "\x1b]11;rgb:0000/0000/0000\x07"


class Asked(Terminal):
    """A terminal that keeps what it was sent, and counts how often it is asked for its background."""

    def __init__(self, program: pexpect.spawn, width: int, height: int) -> None:
        super().__init__(program, width, height)
        self.sent = ""

    def take(self, sent: bytes) -> None:
        super().take(sent)
        self.sent += sent.decode("utf-8", "replace")

    @property
    def asked(self) -> int:
        return self.sent.count(BACKGROUND_QUERY)

    @property
    def ground(self) -> str:
        """The background that most cells have."""
        cells = (self.screen.buffer[y][x].bg for y in range(24) for x in range(80))
        return Counter(cells).most_common(1)[0][0]

    def until_ground(self, color: str) -> None:
        end = time.monotonic() + PATIENCE_S
        while self.ground != color:
            self.read(0.05)
            assert time.monotonic() < end, f"the ground stays {self.ground}"

    def until_asked(self) -> None:
        end = time.monotonic() + PATIENCE_S
        while not self.asked:
            self.read(0.05)
            assert time.monotonic() < end, "it never asks"


@contextmanager
def asked(folder: Path, **environ: str) -> Iterator[Asked]:
    """The wizard at a build."""
    file = folder / "gravel.toml"
    shutil.copy(SAMPLE, file)
    command = [sys.executable, "-m", "fuelwiz", str(file)]
    with running(command, folder, 80, 24, **environ) as terminal:
        yield Asked(terminal.program, 80, 24)


def test_a_light_terminal_is_painted_light(tmp_path: Path) -> None:
    with asked(tmp_path) as terminal:
        terminal.until_asked()
        terminal.press(WHITE)
        terminal.until("Good for 505 hp")
        terminal.until_ground(LIGHT)
        assert terminal.asked == 1


def test_an_answer_in_the_middle_of_typing_types_nothing(tmp_path: Path) -> None:
    with asked(tmp_path) as terminal:
        terminal.until("Good for 505 hp")
        terminal.until_ground(DARK)
        terminal.press("4", WHITE, "3", "3")
        terminal.until_ground(LIGHT)
        terminal.until("[433 ")
        terminal.press(BLACK)
        terminal.until_ground(DARK)


@pytest.mark.parametrize(
    ("environ", "ground"),
    [
        ({"FUELWIZ_BACKGROUND": "light"}, LIGHT),
        ({"FUELWIZ_BACKGROUND": "dark", "COLORFGBG": "0;15"}, DARK),
        ({"COLORFGBG": "0;15"}, LIGHT),
    ],
    ids=str,
)
def test_what_the_environment_says_comes_first_and_nobody_asks(
    tmp_path: Path, environ: dict[str, str], ground: str
) -> None:
    with asked(tmp_path, **environ) as terminal:
        terminal.until("Good for 505 hp")
        terminal.until_ground(ground)
        assert terminal.asked == 0


def test_a_terminal_that_never_answers_costs_the_question_alone(tmp_path: Path) -> None:
    """The first question stands there before any answer could have come, and stays dark."""
    with asked(tmp_path) as terminal:
        terminal.until("Power wanted")
        assert terminal.asked == 1 and len(os.fsencode(BACKGROUND_QUERY)) < 10
        terminal.until("Good for 505 hp")
        terminal.until_ground(DARK)
