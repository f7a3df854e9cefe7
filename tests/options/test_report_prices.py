"""Prices in what to buy, worked by hand from the sample parts file."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.cli import main

from .files import SAMPLE_PARTS, SAMPLES

GRAVEL = str(SAMPLES / "gravel-four.toml")
BY_HAND = {
    "pump": "140",
    "feed line": "271.50",  # 15 ft at 8.50 and 6 ends at 24
    "return line": "120.50",  # 13 ft at 6.50 and 2 ends at 18
    "regulator": "120",
    "injectors": "368",  # 4 of 1300 cc/min at 92
    "wire": "25.20",  # 28 ft out and back at 0.90
    "filter": "–",
}


def rows(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, str]:
    """The last field of each row of what to buy."""
    assert main(["report", GRAVEL, *words]) == 0
    out = capsys.readouterr().out
    listed = out[out.index("What to buy") :].splitlines()
    found: dict[str, str] = {}
    for line in listed:
        part = next((part for part in BY_HAND if line.startswith(f"{part}  ")), None)
        if part is not None:
            found.setdefault(part, line.split()[-1])
    return found


def test_each_row_has_its_price(capsys: pytest.CaptureFixture[str]) -> None:
    assert rows(capsys, "--parts", str(SAMPLE_PARTS)) == BY_HAND


def test_without_a_parts_file_there_is_no_price(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["report", GRAVEL]) == 0
    assert "Costs" not in capsys.readouterr().out


def test_a_parts_file_that_cannot_be_read_is_told_of(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert main(["report", GRAVEL, "--parts", str(tmp_path / "none.toml")]) == 2
    assert "there is no such file" in capsys.readouterr().err


def test_what_has_no_price_is_a_dash(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    text = SAMPLE_PARTS.read_text(encoding="utf-8")
    path.write_text(text.replace("price = 140\n", "").replace("end = 24\n", ""), encoding="utf-8")
    found = rows(capsys, "--parts", str(path))
    assert found["pump"] == "–" and found["feed line"] == "–" and found["return line"] == "120.50"
