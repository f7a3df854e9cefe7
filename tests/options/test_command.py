"""`fuelwiz options`: its exit status, its JSON and its text."""

from __future__ import annotations

import json
from math import ceil
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.cli import main

from .files import SAMPLE_PARTS, SAMPLES

GRAVEL = str(SAMPLES / "gravel-four.toml")
KEYS = [
    "labels", "pump", "count", "base_Pa", "size", "return_size", "wire", "injectors_rated_m3_s", "price", "unpriced",
    "weight_kg", "current_A", "margin", "tightest", "next_works", "buy",
]  # fmt: skip


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    status = main(["options", *words])
    return status, capsys.readouterr().out


def result(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    _, out = run(capsys, *words, "--format", "json")
    found: dict[str, Any] = json.loads(out)
    return found


def parts_without(tmp_path: Path, old: str, new: str) -> str:
    path = tmp_path / "shop.toml"
    path.write_text(SAMPLE_PARTS.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    return str(path)


def test_the_result_has_its_keys_in_order(capsys: pytest.CaptureFixture[str]) -> None:
    found = result(capsys, GRAVEL, "--parts", str(SAMPLE_PARTS))
    assert list(found)[:4] == ["tried", "works", "rows", "failed"]
    assert 0 < len(found["rows"]) <= 7
    for row in found["rows"]:
        assert list(row)[: len(KEYS)] == KEYS
        assert list(row["tightest"]) == ["case", "margin"]
        assert all(list(line)[:3] == ["what", "quantity", "price"] for line in row["buy"])
    assert all(list(each) == ["limit", "sets"] for each in found["failed"])
    counts = [each["sets"] for each in found["failed"]]
    assert counts == sorted(counts, reverse=True)


def test_more_asked_is_passed_by_fewer(capsys: pytest.CaptureFixture[str]) -> None:
    words = GRAVEL, "--parts", str(SAMPLE_PARTS)
    today, following, bad = (
        result(capsys, *words, *more)["works"] for more in ([], ["--next"], ["--bad-day"])
    )
    both = result(capsys, *words, "--next", "--bad-day")
    assert today > following >= both["works"] and today > bad >= both["works"]
    assert all(row["next_works"] and row["tightest"]["margin"] >= 0 for row in both["rows"])


def test_the_pump_that_may_not_carry_the_fuel_is_no_candidate(capsys: pytest.CaptureFixture[str]) -> None:
    """Pump S of the sample; 2 of it, 4 base pressures that are 3 as one is today's, and 4 sizes."""
    found = result(capsys, GRAVEL, "--parts", str(SAMPLE_PARTS))
    assert {"limit": "alcohol", "sets": 2 * 3 * 4} in found["failed"]
    assert not any(row["pump"].startswith("sample pump S") for row in found["rows"])


def test_no_set_is_status_1_and_names_the_one_part(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """Injectors, up to the next 50 cc/min above what the report of the build says is the smallest that does."""
    build, parts = tmp_path / "build.toml", tmp_path / "shop.toml"
    text = Path(GRAVEL).read_text(encoding="utf-8").replace("1300 cc/min", "500 cc/min")
    build.write_text(text, encoding="utf-8")
    parts.write_text('format = 1\nkind = "parts"\n', encoding="utf-8")
    assert main(["report", str(build), "--format", "json"]) == 0
    smallest = json.loads(capsys.readouterr().out)["injectors"]["smallest_rating_m3_s"] * 60e6
    status, out = run(capsys, str(build), "--parts", str(parts))
    assert status == 1 and "None of 2 sets does the job today." in out
    assert f"Injectors of {50 * ceil(smallest / 50)} cc/min in the file would let a set in." in out


def test_a_set_without_a_price_stands_apart(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    parts = parts_without(tmp_path, "price = 140\n", "")
    status, out = run(capsys, GRAVEL, "--parts", parts, "--next")
    assert status == 0
    priced, _, apart = out.partition("Not priced in full")
    assert "sample pump T" in priced and "no price for sample pump R" not in priced
    assert "no price for sample pump R" in apart


def test_a_fuel_that_nobody_says_a_pump_may_carry_is_said(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    parts = parts_without(tmp_path, "alcohol = true\n", "")
    _, out = run(capsys, GRAVEL, "--parts", parts)
    assert "does not say that this pump may carry E70: ask its maker" in " ".join(out.split())


def test_text_fits_80_columns_in_both_units(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    metric = tmp_path / "metric.toml"
    metric.write_text('show_units = "metric"\n' + Path(GRAVEL).read_text(encoding="utf-8"), encoding="utf-8")
    for file in (GRAVEL, str(metric)):
        _, out = run(capsys, file, "--parts", str(SAMPLE_PARTS), "--bad-day")
        assert max(map(len, out.splitlines())) <= 80 and "Why the others fail" in out


@pytest.mark.parametrize(
    "words",
    [[], [GRAVEL], [GRAVEL, "--parts", "nowhere.toml"], ["nowhere.toml", "--parts", str(SAMPLE_PARTS)]],
)
def test_what_cannot_be_read_is_status_2(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["options", *words]) == 2
    assert capsys.readouterr().err


def test_a_build_without_a_feed_line_is_told_so(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "bare.toml"
    path.write_text('format = 1\n[goal]\npower = "400 hp"\n', encoding="utf-8")
    assert main(["options", str(path), "--parts", str(SAMPLE_PARTS)]) == 2
    assert "`feed.run` is missing" in capsys.readouterr().err
