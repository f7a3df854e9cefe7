"""The sheet of a build that was measured: what and when, how to do it safely, and what nobody has measured yet."""

from __future__ import annotations

from io import BytesIO, TextIOWrapper
from pathlib import Path

import pytest

from fuelwiz.cli import main
from fuelwiz.desk import Desk

SAMPLE = Path(__file__).parents[2] / "saved_sessions" / "gravel-four.toml"
READINGS = """
[[bench]]
date = "2026-05-14"
at = "rail"
pressure = "43.5 psi"
volts = "13.3 V"
volume = "2 gal"
time = "92 s"

[[gauge]]
date = "2026-05-20"
hose_off = "41 psi"
"""
CARES = ("utdoors", "flame", "phone", "can", "extinguisher", "elieve the pressure", "charger", "inch a hose")
"""What is said wherever a bench test is: where, without what, into what, with what at hand, and what comes first."""


@pytest.fixture
def car(tmp_path: Path) -> Path:
    """A sample that was tested on the bench and read with a gauge."""
    path = tmp_path / "car.toml"
    path.write_text(SAMPLE.read_text(encoding="utf-8") + READINGS, encoding="utf-8")
    return path


def told(capsys: pytest.CaptureFixture[str], path: Path, *words: str) -> str:
    """The report as one line."""
    assert main(["report", str(path), *words]) == 0
    return " ".join(capsys.readouterr().out.replace("\u00a0", " ").split())


@pytest.mark.parametrize("whole", [[], ["--all"]])
def test_it_says_what_was_measured_when_and_what_still_rests_on_a_sheet_or_a_guess(
    whole: list[str], car: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = told(capsys, car, *whole)
    assert "On the bench the pump sends" in text and "2026-05-14" in text and "2026-05-20" in text
    assert "Still by a sheet: amps of the pump, loss of the filter and flow of the injectors." in text
    assert "Still a guess: fuel use, " in text


def test_what_was_taken_into_the_build_has_its_day_and_is_proposed_no_more(
    car: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "Proposed by what was measured" in told(capsys, car, "--all")
    desk = Desk.open(car)
    desk.update()
    desk.finish()
    assert desk.result is not None
    for proposal in desk.result.measured.proposals:
        desk.take(proposal)
    assert {one.key: one.when for one in desk.result.measured.taken} == {
        "pump.health": "2026-05-14",
        "pressure.base": "2026-05-20; was 3 bar",
    }
    desk.save()
    for whole in ([], ["--all"]):
        text = told(capsys, car, *whole)
        assert "In the build: flow of the pump over its sheet 86 %, by bench tests, 2026-05-14." in text
        assert "base pressure 41.0 psi, by gauge with the hose off, 2026-05-20; was 3 bar." in text
        assert "Proposed by what was measured" not in text


def test_what_a_log_measured_is_told_by_the_comment_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "car.toml"
    health = 'health = "94 %"  # measured: pressure sagged in the log, 2026-06-01'
    text = SAMPLE.read_text(encoding="utf-8").replace("[pump]\n", f"[pump]\n{health}\n")
    path.write_text(text, encoding="utf-8")
    said = told(capsys, path)
    assert "flow of the pump over its sheet 94 %, by pressure sagged in the log, 2026-06-01." in said
    assert "Still by a sheet: amps of the pump," in said


def test_where_nothing_was_measured_nothing_is_said_of_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert "Still by a sheet" not in told(capsys, SAMPLE, "--all")


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_how_to_test_safely_stands_with_what_a_test_should_show(
    form: str, capsys: pytest.CaptureFixture[str]
) -> None:
    text = told(capsys, SAMPLE, "--all", "--format", form)
    after = text[text.index("What a bench test should show") :][:1500]
    assert [care for care in CARES if care not in after] == []
    assert (
        "one pump, the regulator at 43.5 psi, its hose off, 13.3 V at the pump: 2 gal in 80 s at the return."
        in after
    )
    assert (
        "the regulator at 64.5 psi, by hand pump, 13.3 V at the pump: 1 gal in 47 s at the return." in after
    )


def test_the_page_has_it_with_the_check_of_the_return(capsys: pytest.CaptureFixture[str]) -> None:
    text = told(capsys, SAMPLE)
    assert "Engine off, charger, pump on:" in text
    cautions = text[text.index("Cautions") :]
    for care in ("Relieve the pressure", "open air", "no flame or phone", "extinguisher", "ground tank, can"):
        assert care in cautions


def test_asked_line_by_line_it_is_said_too(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin", TextIOWrapper(BytesIO(b"/skip Measured\n\n")))
    assert main(["ask", str(SAMPLE)]) == 0
    out = " ".join(capsys.readouterr().out.replace("\u00a0", " ").split())
    expected = out[out.index("expect 2 gal") :]
    assert [care for care in CARES if care not in expected] == []
