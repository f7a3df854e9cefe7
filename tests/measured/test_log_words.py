"""What a log shows, as JSON and in words: the keys in their order, and no more said than is known."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.cli import main
from fuelwiz.document.merge import merge

from .cars import Car, Logger, plain, write_log

TOP = "samples pulls zero bins regulator_slope bsfc_kg_J wiring_ohm pump signatures proposals rows skipped columns"
INSIDE = {
    "pulls": "start_s end_s",
    "bins": "rpm_low rpm_high boost_Pa target_Pa injector_Pa flow_m3_s capacity_m3_s sags",
    "signatures": "name first_s text",
    "proposals": "key value tolerance why",
    "columns": "key head unit guessed",
}


def run(tmp_path: Path, capsys: pytest.CaptureFixture[str], car: Car, *options: str) -> str:
    build = tmp_path / "car.toml"
    build.write_text(merge("format = 1\n", plain(Car())), encoding="utf-8")
    log = write_log(tmp_path / "pull.csv", car, Logger())
    assert main(["log", str(build), str(log), *options]) == 0
    return capsys.readouterr().out


def test_keys_of_json_stand_in_their_order(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found: dict[str, Any] = json.loads(run(tmp_path, capsys, Car(factor=0.6, base=40), "--format", "json"))
    assert list(found) == TOP.split()
    assert list(found["zero"]) == ["rail_Pa", "manifold_Pa"]
    assert list(found["pump"]) == ["known", "factor", "tolerance"]
    for key, wanted in INSIDE.items():
        assert found[key]
        for entry in found[key]:
            assert list(entry) == wanted.split()
    assert found["pump"]["known"] == "factor"
    assert all(set(entry["name"]) for entry in found["signatures"])


def test_a_bound_is_said_as_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = " ".join(run(tmp_path, capsys, Car()).split())
    assert "The pump sends at least" in text
    assert "No more is known from this log" in text
    assert "sagged" not in text
    assert "give or take" not in text


def test_a_weak_pump_is_a_factor_with_its_tolerance_and_a_warning(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = " ".join(run(tmp_path, capsys, Car(factor=0.6)).split())
    assert "give or take 3 %" in text
    assert "lean" in text
    assert "guessed from its head" in text


def test_the_report_says_what_was_measured_and_how_to_do_it_safely(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    test = {
        "date": "2026-05-14",
        "at": "pump",
        "pressure": "40 psi",
        "volts": "13 V",
        "volume": "1 gal",
        "time": "45 s",
    }
    gauge = {"date": "2026-05-20", "hose_off": "40 psi"}
    build = tmp_path / "car.toml"
    build.write_text(
        merge("format = 1\n", {**plain(Car()), "bench": [test], "gauge": [gauge]}), encoding="utf-8"
    )
    assert main(["report", str(build)]) == 0
    page = " ".join(capsys.readouterr().out.split())
    assert "On the bench the pump sends 83 %" in page
    assert "Tested: 2026-05-14" in page
    assert "on 2026-05-20: 40.0 psi where 43.5 psi is expected: the regulator is set low" in page
    assert main(["report", str(build), "--all"]) == 0
    text = " ".join(capsys.readouterr().out.split())
    for said in (
        "On the bench the pump sends 83 %",
        "2026-05-14",
        "the regulator is set low",
        "What a bench test should show",
    ):
        assert said in text
    for safety in ("outdoors", "grounded", "extinguisher", "phones", "Relieve the pressure", "charger"):
        assert safety in text
    assert main(["report", str(build), "--format", "json"]) == 0
    bench = json.loads(capsys.readouterr().out)["bench"]
    assert list(bench) == ["factor", "tolerance", "tests"]
    assert list(bench["tests"][0]) == ["flow_m3_s", "model_m3_s", "factor", "tolerance", "odd"]
