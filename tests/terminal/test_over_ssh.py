"""From New to saved through a real SSH server, in multiplexers too, and what a cut line leaves."""

from __future__ import annotations

import time
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from fuelwiz.store.drafts import abandoned_draft

from .ssh import Server, needs, server, wizard_there
from .terminal import Terminal
from .test_new_to_saved import agrees, left, report_of, saved, start_of_a_build, to_the_power


@pytest.fixture(scope="module")
def there(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    with server(tmp_path_factory.mktemp("server")) as running:
        yield running


def new_to_saved(terminal: Terminal, file: Path) -> None:
    start_of_a_build(terminal)
    terminal.press("f4")
    terminal.until("[· Lines]")
    terminal.press("down", "14", "enter")
    saved(terminal, file)
    agrees(terminal, report_of(file))


def test_new_to_saved(there: Server, tmp_path: Path) -> None:
    file = tmp_path / "far.toml"
    with wizard_there(there, file) as terminal:
        new_to_saved(terminal, file)
        assert left(terminal) == 0


def test_new_to_saved_in_tmux(there: Server, tmp_path: Path) -> None:
    needs("tmux")
    file, settings = tmp_path / "far.toml", tmp_path / "tmux.conf"
    settings.write_text("set -g status off\nset -g default-terminal tmux-256color\n", encoding="utf-8")
    socket = str(tmp_path / "tmux.socket")
    with wizard_there(there, file, "tmux", "-S", socket, "-f", str(settings), "new-session") as terminal:
        new_to_saved(terminal, file)
        terminal.press("ctrl+q")
        assert terminal.ended() == 0


def test_new_to_saved_in_gnu_screen(there: Server, tmp_path: Path) -> None:
    needs("screen")
    file = tmp_path / "far.toml"
    folder = tmp_path / "sockets"
    folder.mkdir(mode=0o700)
    with wizard_there(there, file, "screen", "-c", "/dev/null", "-U", SCREENDIR=str(folder)) as terminal:
        new_to_saved(terminal, file)
        terminal.press("f1")
        terminal.until("F1 close")
        terminal.press("\x1b")
        terminal.until("F1 help")
        terminal.press("ctrl+q")
        assert terminal.ended() == 0


def test_a_client_that_is_killed_leaves_a_draft_that_is_found_again(there: Server, tmp_path: Path) -> None:
    file = tmp_path / "cut.toml"
    with wizard_there(there, file) as terminal:
        start_of_a_build(terminal)
        terminal.quiet()
        terminal.program.kill(9)
    gone = time.monotonic() + 5  # who works at it still holds its draft
    while abandoned_draft(file) is None:
        assert time.monotonic() < gone, sorted(tmp_path.iterdir())
        time.sleep(0.05)
    with wizard_there(there, file) as terminal:
        terminal.until("draft")
        terminal.press("d")
        terminal.until("600 hp, E30")
        saved(terminal, file)
        assert left(terminal) == 0
    assert tomllib.loads(file.read_text(encoding="utf-8"))["goal"]["power"] == "600 hp"


@pytest.mark.parametrize(
    ("term", "locale"),
    [
        ("xterm-256color", {"LANG": "C.UTF-8"}),
        ("xterm", {"LANG": "en_US.UTF-8"}),
        ("xterm", {"LANG": "C"}),
        ("screen-256color", {"LANG": "C.UTF-8"}),
        ("screen", {"LANG": "POSIX"}),
        ("tmux-256color", {"LANG": "C.UTF-8"}),
        ("linux", {"LANG": "C.UTF-8"}),
        ("vt220", {"LANG": "C"}),
        ("vt100", {"LANG": "en_US.ISO-8859-1"}),
        ("rxvt-unicode-256color", {"LANG": "de_DE.UTF-8"}),
        ("xterm-kitty", {"LANG": "C.UTF-8", "COLORTERM": "truecolor"}),
        ("no-such-terminal", {"LANG": "C.UTF-8", "NO_COLOR": "1"}),
    ],
)
def test_any_terminal_and_locale_reaches_the_verdict(
    there: Server, tmp_path: Path, term: str, locale: dict[str, str]
) -> None:
    file = tmp_path / "any.toml"
    with wizard_there(there, file, TERM=term, **locale) as terminal:
        to_the_power(terminal)
        terminal.press("600")
        terminal.until("600 hp on E10")
        terminal.quiet()
        if term in ("linux", "vt100", "vt220") or not locale["LANG"].endswith("UTF-8"):
            assert terminal.text.isascii()
