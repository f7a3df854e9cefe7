"""Factors of units kept between runs: the same as pint gives, and never taken from a damaged file."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from fuelwiz.factors import FILE, Factor, factors

PSI: Factor = (6894.757293168361, 0.0, 1.0)  # NIST SP 811, table B.8: 6.894 757 E+03 Pa
BAR: Factor = (100000.0, 0.0, 1.0)  # NIST SP 811, table 8


class Reckoning:
    """What gives factors, and counts how often it was asked."""

    def __init__(self) -> None:
        self.asked: list[str] = []

    def __call__(self, expression: str) -> Factor:
        self.asked.append(expression)
        return {"psi": PSI, "bar": BAR}[expression]


def test_reckons_once_and_then_remembers(tmp_path: Path) -> None:
    reckon = Reckoning()
    first = factors(tmp_path, ["psi", "bar"], reckon)
    again = factors(tmp_path, ["psi", "bar"], reckon)
    assert first == again == {"psi": PSI, "bar": BAR}
    assert reckon.asked == ["bar", "psi"]


def test_a_unit_that_was_not_kept_is_reckoned(tmp_path: Path) -> None:
    factors(tmp_path, ["psi"], Reckoning())
    assert factors(tmp_path, ["psi", "bar"], Reckoning())["bar"] == BAR


@pytest.mark.parametrize(
    "content",
    [
        "",
        "{",
        "[]",
        "null",
        '{"pint": "another", "factors": {"psi": [1.0, 0.0, 1.0]}}',
        '{"factors": {"psi": [1.0, 0.0, 1.0]}}',
        '"' + "x" * 20,
        "[" * 5000,
    ],
)
def test_a_damaged_file_is_reckoned_anew(tmp_path: Path, content: str) -> None:
    (tmp_path / FILE).write_text(content)
    assert factors(tmp_path, ["psi"], Reckoning()) == {"psi": PSI}
    assert factors(tmp_path, ["psi"], Reckoning()) == {"psi": PSI}


@pytest.mark.parametrize("factor", ["[1.0, 0.0]", "[NaN, 0.0, 1.0]", "[1.0, 0.0, 0.0]", "1.0", '["x", 0, 1]'])
def test_a_factor_that_is_none_is_reckoned_anew(tmp_path: Path, factor: str) -> None:
    factors(tmp_path, ["psi"], Reckoning())
    stamp = json.loads((tmp_path / FILE).read_text())["pint"]
    (tmp_path / FILE).write_text(f'{{"pint": {json.dumps(stamp)}, "factors": {{"psi": {factor}}}}}')
    assert factors(tmp_path, ["psi"], Reckoning()) == {"psi": PSI}


def test_without_a_folder_nothing_is_kept(tmp_path: Path) -> None:
    occupied = tmp_path / "file"
    occupied.write_text("")
    for folder in (None, occupied):
        assert factors(folder, ["psi"], Reckoning()) == {"psi": PSI}
    assert occupied.read_text() == ""


def test_a_second_run_does_without_pint(tmp_path: Path) -> None:
    code = "import sys; from fuelwiz import units; print(units.to_si(1, 'psi'), 'pint' in sys.modules)"
    environ = os.environ | {"XDG_CACHE_HOME": str(tmp_path)}
    runs = [
        subprocess.run([sys.executable, "-c", code], env=environ, capture_output=True, text=True, check=True)
        for _ in range(2)
    ]
    (first, with_pint), (second, without) = (run.stdout.split() for run in runs)
    assert first == second and (with_pint, without) == ("True", "False")
