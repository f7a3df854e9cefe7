"""What a command writes to: closed pipes, full disks, terminals with color and without, other encodings."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parent / "examples"
WORKS, LIMITED = (str(EXAMPLES / f"{name}.toml") for name in ("full-session", "twins"))
UTF8 = {"PYTHONIOENCODING": "utf-8"}
UTF8_PLAIN = {**os.environ, **UTF8, "LANG": "C.UTF-8", "TERM": "xterm"}


def test_a_device_is_written_and_left_a_device(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    done = subprocess.Popen(
        [sys.executable, "-m", "fuelwiz", "report", WORKS, "--output", str(pipe)], env=os.environ
    )
    assert pipe.read_text(encoding="utf-8").startswith("Gravel-rally wagon")
    assert done.wait() == 0 and pipe.is_fifo()


def test_a_dash_as_the_output_is_the_standard_output(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "fuelwiz", "report", WORKS]
    usual, dashed = (
        subprocess.run(each, capture_output=True, text=True, check=True, cwd=tmp_path, env=UTF8_PLAIN).stdout
        for each in (command, [*command, "--output", "-"])
    )
    assert usual == dashed
    assert list(tmp_path.iterdir()) == []


def test_a_closed_pipe_leaves_quietly() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    command = [sys.executable, "-m", "fuelwiz", "report", WORKS]
    done = subprocess.run(command, stdout=writer, stderr=subprocess.PIPE, check=False)
    os.close(writer)
    assert (done.returncode, done.stderr) == (141, b"")


def test_check_breaks_its_lines_between_words_on_a_terminal_alone(tmp_path: Path) -> None:
    missing = "a-build-of-that-name-is-nowhere-to-be-found.toml"
    arguments = [sys.executable, "-m", "fuelwiz", "check", WORKS, LIMITED, missing]
    plain = subprocess.run(arguments, capture_output=True, text=True, check=False, env=UTF8_PLAIN)
    master, terminal = pty.openpty()
    environ = {**UTF8_PLAIN, "COLUMNS": "60"}
    shown = subprocess.Popen(arguments, stdout=terminal, stderr=terminal, env=environ)
    os.close(terminal)
    lines = everything_from(master).decode().replace("\r\n", "\n").splitlines()
    assert shown.wait() == plain.returncode == 2
    assert all(len(line) <= 60 for line in lines if missing not in line and WORKS not in line)
    joined = "\n".join(lines).replace("\n  ", " ")
    for line in (*plain.stdout.splitlines(), *plain.stderr.splitlines()):
        assert line in joined.splitlines()


def everything_from(master: int) -> bytes:
    """What a program writes to its terminal until it ends."""
    found = b""
    while True:
        try:
            part = os.read(master, 65536)
        except OSError:
            break
        if not part:
            break
        found += part
    os.close(master)
    return found


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no device that is always full")
@pytest.mark.parametrize(
    "arguments", [["report", WORKS], ["check", WORKS], ["schema"], ["--help"], ["--version"]]
)
def test_a_full_disk_is_said(arguments: list[str]) -> None:
    command = [sys.executable, "-m", "fuelwiz", *arguments]
    with open("/dev/full", "w") as full:
        done = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, encoding="utf-8", check=False)
    assert done.returncode == 2
    assert done.stderr == "fuelwiz: standard output cannot be written: no space left on device\n"


def test_closed_outputs_do_no_harm() -> None:
    command = f'"{sys.executable}" -m fuelwiz check "{WORKS}" nowhere.toml >&- 2>&-'
    assert subprocess.run(["sh", "-c", command], check=False).returncode == 2


@pytest.mark.parametrize("form", ["text", "markdown", "html", "json"])
@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252"])
def test_an_output_that_is_not_utf8_gets_what_it_can_hold(form: str, encoding: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "fuelwiz", "report", WORKS, "--format", form],
        env=os.environ | {"PYTHONIOENCODING": encoding},
        capture_output=True,
        check=False,
    )
    assert done.returncode == 0 and done.stderr == b"" and done.stdout.isascii()


@pytest.mark.parametrize(
    ("term", "no_color", "colored", "utf8"),
    [("xterm-256color", "", True, True), ("xterm-256color", "1", False, True), ("vt100", "", False, False)],
)
def test_color_only_on_a_terminal_that_has_it(term: str, no_color: str, colored: bool, utf8: bool) -> None:
    shown = _on_a_terminal(["report", LIMITED], TERM=term, NO_COLOR=no_color)
    assert ("\x1b[" in shown) is colored
    assert ("✗" in shown) is utf8
    assert "too small" in shown


def _on_a_terminal(arguments: list[str], **environ: str) -> str:
    """What a command writes to a terminal."""
    ours, its = pty.openpty()
    command = [sys.executable, "-m", "fuelwiz", *arguments]
    with subprocess.Popen(command, stdout=its, stderr=its, env=os.environ | UTF8 | environ):
        os.close(its)
        parts = []
        while part := _read(ours):
            parts.append(part)
    os.close(ours)
    return b"".join(parts).decode("utf-8")


def _read(terminal: int) -> bytes:
    try:
        return os.read(terminal, 65536)
    except OSError:  # Linux says so when the other end is closed
        return b""


def test_a_file_name_that_is_no_text_is_only_shown() -> None:
    name = os.fsencode(WORKS).replace(b"full-session", b"\xff\x1b[2J")
    done = subprocess.run(
        [sys.executable.encode(), b"-m", b"fuelwiz", b"check", name],
        env=os.environ | UTF8,
        capture_output=True,
        check=False,
    )
    assert done.returncode == 2 and b"\x1b" not in done.stdout + done.stderr
    assert b"there is no such file" in done.stderr
