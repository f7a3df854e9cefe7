"""What units are worth: the shipped table is what pint says, and nothing that lies in a user's cache is believed."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest

import fuelwiz
from fuelwiz import unit_judge, unit_table, units

SHIPPED = (files(fuelwiz) / "facts/unit_factors.toml").read_text(encoding="utf-8")


def test_the_shipped_table_is_what_pint_says_to_the_last_bit() -> None:
    table = tomllib.loads(SHIPPED)
    assert table.keys() == unit_table.expressions()
    assert {name: tuple(given) for name, given in table.items()} == {
        name: unit_judge.factor(name) for name in table
    }
    assert unit_judge.table_of(unit_table.expressions()) == SHIPPED


@pytest.mark.parametrize(
    ("unit", "one_in_si"),
    [
        ("psi", 6894.757),  # NIST SP 811, table B.8: 6.894 757 E+03 Pa
        ("bar", 100_000.0),  # NIST SP 811, table 8
        ("gal/h", 1.051503e-06),  # NIST SP 811, table B.8: gallon (US) 3.785 412 E-03 m3, over 3600 s
        ("hp", 745.6999),  # NIST SP 811, table B.8: horsepower (550 ft lbf/s) 7.456 999 E+02 W
    ],
)
def test_known_units_are_worth_what_a_standard_says(unit: str, one_in_si: float) -> None:
    assert units.to_si(1, unit) == pytest.approx(one_in_si, rel=1e-6)


def test_a_unit_that_is_not_shipped_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(unit_table, "_factors", dict)
    unit_table._scale_of_expression.cache_clear()
    scale = unit_table._scale_of_expression("psi")
    assert scale.times / scale.over == pytest.approx(6894.757, rel=1e-6)  # NIST SP 811, table B.8
    unit_table._scale_of_expression.cache_clear()


def test_nothing_that_a_cache_holds_is_believed_executed_or_waited_for(tmp_path: Path) -> None:
    """A planted factor, a planted pickle that would leave a file, and a pipe, where caches are looked for."""
    folder = tmp_path / "fuelwiz" / "units"
    folder.mkdir(parents=True)
    (folder / "factors.json").write_text('{"pint": "", "factors": {"psi": [1.0, 0.0, 1.0]}}')
    (folder / "x.pickle").write_bytes(b"cos\nmkdir\n(S'" + str(tmp_path / "run").encode() + b"'\ntR.")
    os.mkfifo(folder / "pipe.json")
    code = "from fuelwiz import units; print(round(units.to_si(1, 'psi'), 3))"
    environ = os.environ | {"XDG_CACHE_HOME": str(tmp_path), "HOME": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", code], env=environ, capture_output=True, text=True, check=True, timeout=30
    )
    assert done.stdout.strip() == "6894.757"  # NIST SP 811, table B.8
    assert sorted(one.name for one in folder.iterdir()) == ["factors.json", "pipe.json", "x.pickle"]
    assert not (tmp_path / "run").exists()
