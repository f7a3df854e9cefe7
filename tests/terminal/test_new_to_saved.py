"""From an empty screen to a saved file on a real terminal; the file's report says what the screen said."""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.desk.desk import Desk
from fuelwiz.store.folder import unsaved

from .terminal import Terminal, wizard

FT_M = 0.3048  # the international foot, NIST SP 811 (2008), appendix B.8


def report_of(file: Path) -> dict[str, Any]:
    done = subprocess.run(
        [sys.executable, "-m", "fuelwiz", "report", str(file), "--format", "json"],
        capture_output=True, text=True, timeout=60, check=True, cwd=file.parent,
    )  # fmt: skip
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def rows_on(terminal: Terminal) -> dict[str, list[str]]:
    """The table on the screen: size to its words."""
    rows = re.findall(r"^\s*▸?\s*(-\d+)\*?\s+(\d\.\d+.*)$", terminal.text, re.MULTILINE)
    return {size: words.split() for size, words in rows}


def agrees(terminal: Terminal, report: dict[str, Any]) -> None:
    """Velocity and spare of every size in sight, and the answer, are those of the report."""
    rows = rows_on(terminal)
    assert len(rows) >= 4, terminal.text
    for size in report["sizes"]:
        if size["size"] not in rows:
            continue
        words = rows[size["size"]]
        assert float(words[1]) == pytest.approx(size["velocity_m_s"] / FT_M, abs=0.051)
        _, band, after = " ".join(words).partition(f" {size['band']} ")
        assert band, (size["band"], words)
        if size["margin"] is not None:
            spare = after.split()[1]
            assert float(spare.replace("−", "-").replace("–", "-")) == pytest.approx(
                100 * size["margin"], abs=0.51
            )
    said = " ".join(terminal.text.split())
    answer = report["verdict"]["answer"][0].replace("\N{NO-BREAK SPACE}", " ")
    assert answer[:40] in said, (answer, said)


def to_the_power(terminal: Terminal) -> None:
    """Past the units, which are asked first."""
    terminal.until("Type the power")
    terminal.press("enter")
    terminal.until("▸ Power wanted" if "▸" in terminal.text else "> Power wanted")


def start_of_a_build(terminal: Terminal) -> None:
    """Goal, fuel and pressure, with wrong values on the way."""
    to_the_power(terminal)
    terminal.press("6oo")
    terminal.until("!")
    terminal.press("ctrl+u", "600")
    terminal.until("600 hp on E10")
    terminal.press("ctrl+g", "v", "s")
    terminal.until("[sizes]")
    terminal.press("f4")
    terminal.until("[· Fuel]")
    terminal.press("right")
    terminal.press("f4")
    terminal.until("[· Pressure]")
    terminal.press("18")
    terminal.press("f4")
    terminal.until("[· Pump]")


def a_pump_pasted(terminal: Terminal) -> None:
    """The table of an invented pump on the page that takes one."""
    terminal.press("f8")
    terminal.until("Paste the table here")
    for line in ("20 151", "40 142", "60 131", "80 117", "100 98"):
        terminal.press(line, "enter")


def saved(terminal: Terminal, file: Path) -> None:
    terminal.press("ctrl+g", "1", "ctrl+s")
    terminal.until(f"Saved: {file.name}")
    terminal.quiet()


def left(terminal: Terminal) -> int:
    terminal.press("ctrl+q")
    return terminal.ended()


def test_without_a_pump(tmp_path: Path) -> None:
    file = tmp_path / "first.toml"
    with wizard(file) as terminal:
        start_of_a_build(terminal)
        terminal.press("f4")
        terminal.until("[· Lines]")
        terminal.press("down", "14", "enter")
        saved(terminal, file)
        agrees(terminal, report_of(file))
        assert left(terminal) == 0


def test_with_a_pump(tmp_path: Path) -> None:
    file = tmp_path / "second.toml"
    with wizard(file) as terminal:
        start_of_a_build(terminal)
        a_pump_pasted(terminal)
        terminal.until("Understood 5 points")
        terminal.press("f8")
        terminal.until("5 points read")
        terminal.press("f4")
        terminal.until("[· Lines]")
        terminal.press("down", "14", "enter")
        saved(terminal, file)
        assert not unsaved(tmp_path), "what is saved leaves no draft behind"
        report = report_of(file)
        assert all(size["margin"] is not None for size in report["sizes"])
        agrees(terminal, report)
        assert left(terminal) == 0


PSI_PA = 6894.757293168  # NIST SP 811 (2008), appendix B.8


def part_rows(terminal: Terminal) -> list[list[str]]:
    """The rows of a part's own table: those that end in yes or no."""
    lines = (line.split() for line in terminal.text.splitlines())
    return [words for words in lines if words and words[-1] in ("yes", "no")]


def test_through_every_step(tmp_path: Path) -> None:
    file = tmp_path / "whole.toml"
    with wizard(file) as terminal:
        start_of_a_build(terminal)
        a_pump_pasted(terminal)
        terminal.press("f8", "f4")
        terminal.until("[· Lines]")
        terminal.press("down", "14", "f4")
        terminal.until("[· In/return]")
        terminal.press(
            "left", "down", "150", "down", "0.5", "down", "0.3", "down", "down", "down", "15 parsecs"
        )
        terminal.until("!")
        terminal.press("ctrl+u", "15")
        terminal.until("smallest return that lets the regulator hold")
        terminal.press("f4")
        terminal.until("[· Wiring]")
        terminal.press("13.8", "down", "10", "down", "14")
        terminal.until("Enter the current that the pump draws")
        terminal.press("f4")
        terminal.until("[· Injectors]")
        terminal.press("1800", "down", "down", "6")
        terminal.until("6 × 1800*")
        injectors = part_rows(terminal)
        terminal.press("ctrl+g", "6")
        terminal.until("smallest return that lets the regulator hold")
        terminal.quiet()
        returns = part_rows(terminal)
        saved(terminal, file)
        report = report_of(file)
        agrees(terminal, report)
        assert left(terminal) == 0
    assert all(report[part] is not None for part in ("return_line", "inlet", "wiring", "injectors"))
    needs = {words[0].rstrip("*"): float(words[3]) for words in returns}
    sizes = {size["size"]: size for size in report["return_line"]["sizes"]}
    assert needs, "the screen has room for one size at least"
    for name, needed in needs.items():
        assert needed == pytest.approx(sizes[name]["back_pressure_Pa"] / PSI_PA, abs=0.051)
    (fitted,) = [words for words in injectors if words[:3] == ["6", "×", "1800*"]]
    assert float(fitted[3]) == pytest.approx(100 * report["injectors"]["duty"], abs=0.51)


@pytest.mark.parametrize(("number", "status"), [(signal.SIGHUP, 129), (signal.SIGTERM, 143)])
def test_a_signal_leaves_with_its_status_and_the_draft(tmp_path: Path, number: int, status: int) -> None:
    file = tmp_path / "cut.toml"
    with wizard(file) as terminal:
        to_the_power(terminal)
        terminal.press("615")
        terminal.until("615 hp on E10")
        os.kill(terminal.program.pid, number)
        assert terminal.ended() == status
    (place,) = tmp_path.glob(".*.draft")
    assert not file.exists()
    assert Desk.from_draft(place).plain["goal"]["power"] == "615 hp"


def test_nothing_is_sent_while_nothing_happens(tmp_path: Path) -> None:
    with wizard(tmp_path / "idle.toml") as terminal:
        to_the_power(terminal)
        terminal.press("600")
        terminal.until("600 hp on E10")
        terminal.quiet(1.5)
        assert terminal.read(2.5) == 0
