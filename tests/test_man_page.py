"""The manual page: made from the commands' own table, in the wheel, and nowhere else."""

from __future__ import annotations

import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from fuelwiz.man_page import man_page
from fuelwiz.usage import COMMANDS, ENVIRONMENT

ROOT = Path(__file__).parents[1]
PLACE = ".data/data/share/man/man1/fuelwiz.1"


def test_it_says_every_command_example_and_variable() -> None:
    page = man_page().replace("\\-", "-").replace("\\e", "\\").replace("\\&", "")
    for name, command in COMMANDS.items():
        assert f".SS fuelwiz {name}" in page
        assert command.about in page and command.example in page
    assert all(name in page for name in ENVIRONMENT)
    assert all(heading in page for heading in (".SH NAME", ".SH EXIT STATUS", "keys.toml", "US gallons"))


def test_no_line_of_text_is_a_request() -> None:
    known = (".TH", ".SH", ".SS", ".TP", ".PP", ".B ", ".br", ".nf", ".fi")
    assert all(line.startswith(known) for line in man_page().splitlines() if line.startswith((".", "'")))


def test_it_is_set_without_a_warning() -> None:
    if shutil.which("groff") is None:
        pytest.skip("groff is not on this system")
    done = subprocess.run(
        ["groff", "-man", "-Tascii", "-ww"], input=man_page(), capture_output=True, text=True, check=True
    )
    assert not done.stderr


def test_it_is_in_the_wheel_and_not_in_the_repository(tmp_path: Path) -> None:
    """Nor is anything in the wheel that a build before left behind."""
    source = tmp_path / "source"
    shutil.copytree(ROOT / "fuelwiz", source / "fuelwiz", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / ".build_backend", source / ".build_backend")
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, source)
    left_behind = source / "build/lib/fuelwiz/gone.py"
    left_behind.parent.mkdir(parents=True)
    left_behind.touch()
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation", "-w", str(tmp_path), "."],
        cwd=source,
        check=True,
        capture_output=True,
    )  # fmt: skip
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        (name,) = [name for name in packed.namelist() if name.endswith(PLACE)]
        assert packed.read(name).decode() == man_page()
        assert "fuelwiz/cli.py" in packed.namelist()
        assert "fuelwiz/gone.py" not in packed.namelist()
    assert not [path for path in ROOT.rglob("fuelwiz.1") if "build" not in path.parts]
