"""Prices in what to buy, worked by hand from the sample parts file."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.cli import main

from .files import SAMPLE_PARTS, SAMPLES

GRAVEL = str(SAMPLES / "gravel-four.toml")
BY_HAND = {
    "pump": "140",
    "strainer": "–",
    "filter": "–",
    "feed line": "271.50",  # 15 ft at 8.50 and 6 ends at 24
    "return line": "120.50",  # 13 ft at 6.50 and 2 ends at 18
    "regulator": "120",
    "injectors": "368",  # 4 of 1300 cc/min at 92
    "wire": "25.20",  # 28 ft out and back at 0.90
    "relay, fuse": "–",
}
"""Of a car that has nothing on it yet."""
SUM = "1045.20"  # 140 + 271.50 + 120.50 + 120 + 368 + 25.20


@pytest.fixture
def bare(tmp_path: Path) -> str:
    """The sample with nothing on the car yet."""
    path = tmp_path / "bare.toml"
    text = Path(GRAVEL).read_text(encoding="utf-8")
    path.write_text(text.replace("[fitted]\n", "[fitted]\nhas = []\n"), encoding="utf-8")
    return str(path)


def what_to_buy(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """That section of a report."""
    assert main(["report", *words]) == 0
    out = capsys.readouterr().out
    return out[out.index("What to buy") : out.index("Bad days")]


def rows(listed: str) -> dict[str, str]:
    """The last field of each row of what to buy."""
    found: dict[str, str] = {}
    for line in listed.splitlines():
        part = next((part for part in BY_HAND if line.startswith(f"{part}  ")), None)
        if part is not None:
            found.setdefault(part, line.split()[-1])
    return found


def said(listed: str) -> str:
    """The sentences under the rows, as one line."""
    return " ".join(listed[listed.index("comes to") - 20 :].split())


def test_each_row_has_its_price_and_they_are_summed_up(bare: str, capsys: pytest.CaptureFixture[str]) -> None:
    listed = what_to_buy(capsys, bare, "--parts", str(SAMPLE_PARTS))
    assert rows(listed) == BY_HAND
    assert "yours:" not in listed
    assert f"What has a price comes to {SUM} USD." in said(listed)
    assert "No price in the parts file: strainer, filter and relay, fuse." in said(listed)


def test_what_is_there_is_free(capsys: pytest.CaptureFixture[str]) -> None:
    """All but the regulator, of which the build says nothing, and what nobody sells."""
    listed = what_to_buy(capsys, GRAVEL, "--parts", str(SAMPLE_PARTS))
    there = dict.fromkeys(BY_HAND, "0") | {"regulator": "120", "relay, fuse": "–"}
    assert rows(listed) == there
    assert "What has a price comes to 120 USD. No price in the parts file: relay, fuse." in said(listed)
    assert "What you have or own costs nothing." in said(listed)


def test_what_the_parts_file_says_is_owned_is_free(
    bare: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "shop.toml"
    text = SAMPLE_PARTS.read_text(encoding="utf-8")
    path.write_text(text.replace("price = 140\n", "price = 140\nowned = true\n"), encoding="utf-8")
    listed = what_to_buy(capsys, bare, "--parts", str(path))
    assert rows(listed)["pump"] == "0" and "comes to 905.20 USD" in said(listed)


def test_a_pump_that_is_too_small_gives_no_price_to_the_one_that_is_wanted(
    bare: str, capsys: pytest.CaptureFixture[str]
) -> None:
    path = Path(bare)
    path.write_text(path.read_text(encoding="utf-8").replace('"410 hp"', '"700 hp"', 1), encoding="utf-8")
    listed = what_to_buy(capsys, bare, "--parts", str(SAMPLE_PARTS))
    assert "No price in the parts file: pump," in said(listed)


def test_without_a_parts_file_there_is_no_price(capsys: pytest.CaptureFixture[str]) -> None:
    listed = what_to_buy(capsys, GRAVEL)
    assert "Costs" not in listed and "comes to" not in listed


def test_a_parts_file_that_cannot_be_read_is_told_of(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert main(["report", GRAVEL, "--parts", str(tmp_path / "none.toml")]) == 2
    assert "there is no such file" in capsys.readouterr().err


def test_what_has_no_price_is_a_dash_and_no_part_of_the_sum(
    bare: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "shop.toml"
    text = SAMPLE_PARTS.read_text(encoding="utf-8")
    path.write_text(text.replace("price = 140\n", "").replace("end = 24\n", ""), encoding="utf-8")
    listed = what_to_buy(capsys, bare, "--parts", str(path))
    found = rows(listed)
    assert found["pump"] == "–" and found["feed line"] == "–" and found["return line"] == "120.50"
    assert "comes to 633.70 USD. No price in the parts file: pump, strainer, filter, feed line" in said(
        listed
    )
