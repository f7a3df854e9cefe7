"""A build with a log: every form of its report says what was measured, when and by which file, with the same figures."""

from __future__ import annotations

import json
import os
import re
from pathlib import Path
from typing import Any

import pytest
from measured.cars import Car, Logger, plain, write_log

from fuelwiz.advice import Result, result
from fuelwiz.advice.blocks import Table
from fuelwiz.advice.sections.headings import LOG_OF_A_RUN
from fuelwiz.advice.subject import Subject
from fuelwiz.cli import main
from fuelwiz.measured.figures import LogFigures
from fuelwiz.measured.log.of_build import logged_run
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.json_form import json_text
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.page import html_page
from fuelwiz.report.page.pictures import pictures_of
from fuelwiz.report.page.pictures.shapes import Dot, Word
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .builds import drawn_together
from .test_page import order
from .test_wall_sheet import Page, read_markdown

WEAK = Car(factor=0.62, base=42.0)
PULL = [
    {"power": "300 hp", "boost": "10 psi", "rpm": 4000},
    {"power": "480 hp", "boost": "20 psi", "rpm": 6500},
]
NOON_OF_14_MAY_2026 = 1778760000  # seconds since 1970, 12:00 UTC


def logged(folder: Path, car: Car, name: str = "pull.csv", **more: Any) -> Result:
    """A build as its sheets have it, and the log of a car that is not so."""
    path = write_log(folder / name, car, Logger(hz=20))
    os.utime(path, (NOON_OF_14_MAY_2026, NOON_OF_14_MAY_2026))
    session = validate(plain(Car(), log={"file": name}, **more), "build")
    figures = quick_figures(session)
    return result(session, figures, logged_run(folder / "b.toml", session, figures))


def log_of(found: Result) -> LogFigures:
    """What the log of a result shows."""
    assert found.measured.log is not None
    assert found.measured.log.figures is not None
    return found.measured.log.figures


def table_of(found: Result) -> Table:
    """The table by engine speed."""
    blocks = sheet_of(found).blocks
    (table,) = (one for one in blocks if isinstance(one, Table) and one.columns[0].title == "Engine speed")
    return table


def test_all_forms_have_the_figures_of_the_log(tmp_path: Path) -> None:
    found = logged(tmp_path, WEAK)
    sheet, log, numbers = sheet_of(found), log_of(found), Subject(found.session, found.figures).numbers
    forms = (
        drawn_together(Page(html_page(found)).text),
        drawn_together(read_markdown(markdown_of(sheet)).text),
        drawn_together(text_of(sheet, TextLook(width=400))),
    )
    rows = [tuple(drawn_together(cell.text) for cell in row) for row in table_of(found).rows]
    assert len(rows) == len(log.bins) > 10
    for form in forms:
        assert all(" ".join(row) in re.sub(r"[✓✗] ", "", form) for row in rows)
        assert "Log pull.csv of 2026-05-14: " in form
        assert "The pump sends 62 % of what the build counts on" in form
    told = json.loads(json_text(found))["log"]
    assert (told["file"], told["day"], told["refused"]) == ("pull.csv", "2026-05-14", None)
    assert len(told["bins"]) == len(rows)
    for one, row in zip(told["bins"], rows, strict=True):
        assert row == (
            f"{one['rpm_low']:.0f} to {one['rpm_high']:.0f}",
            *(numbers.number("pressure", one[key]) for key in ("boost_Pa", "target_Pa", "injector_Pa")),
            *(numbers.number("flow", one[key]) for key in ("flow_m3_s", "capacity_m3_s")),
            "sags" if one["sags"] else "holds",
        )


def test_the_picture_stands_behind_the_pull_and_says_its_figures(tmp_path: Path) -> None:
    found = logged(tmp_path, WEAK, pull=PULL)
    log = log_of(found)
    source = html_page(found)
    places = order(source, "<h2>Pull</h2>", f"<h2>{LOG_OF_A_RUN}</h2>", '<details class="part">')
    assert places == sorted(places)
    subject = Subject(found.session, found.figures, found.measured)
    picture = pictures_of(subject, None)[LOG_OF_A_RUN]
    for row in table_of(found).rows:
        for cell in (row[2], row[3], row[4], row[5]):
            assert cell.text in picture.description
    marked = [one for one in picture.shapes if isinstance(one, Dot) and one.diamond]
    sagging = sum(one.sags for one in log.bins)
    assert sagging > 0 and len(marked) == 2 * (sagging + 1)  # in both frames, and once in the legend of each
    assert '<title id="log-title">' in source and '<desc id="log-description">' in source


def test_no_picture_is_wider_than_the_others_so_that_its_words_are_as_large_on_a_phone(
    tmp_path: Path,
) -> None:
    found = logged(tmp_path, WEAK, pull=PULL)
    pictures = pictures_of(Subject(found.session, found.figures, found.measured), None)
    assert LOG_OF_A_RUN in pictures and len(pictures) > 3
    assert {name for name, picture in pictures.items() if not 340 <= picture.width <= 360} == set()


def test_a_log_without_engine_speed_is_told_pull_by_pull(tmp_path: Path) -> None:
    found = logged(tmp_path, WEAK)
    log = tmp_path / "pull.csv"
    rows = [line.split(",") for line in log.read_text(encoding="utf-8").splitlines()]
    log.write_text("\n".join(",".join([row[0], *row[2:]]) for row in rows) + "\n", encoding="utf-8")
    run = logged_run(tmp_path / "b.toml", found.session, found.figures)
    by_pull = result(found.session, found.figures, run)
    assert [row[0].text for row in table_of(by_pull).rows] == ["pull 1", "pull 2", "pull 3"]
    picture = pictures_of(Subject(by_pull.session, by_pull.figures, by_pull.measured), None)[LOG_OF_A_RUN]
    assert "pull 2 " in picture.description and "rpm" not in picture.description
    assert any(isinstance(one, Word) and one.text == "pull" for one in picture.shapes)


def test_a_pressure_that_holds_is_not_marked(tmp_path: Path) -> None:
    found = logged(tmp_path, Car())
    picture = pictures_of(Subject(found.session, found.figures, found.measured), None)[LOG_OF_A_RUN]
    assert not [one for one in picture.shapes if isinstance(one, Dot) and one.diamond]
    assert "does not sag with flow" in picture.sentence
    assert "at least" in Page(html_page(found)).text


@pytest.mark.parametrize("form", ["text", "markdown", "html", "json"])
def test_a_log_that_is_not_there_is_said_and_the_report_comes(
    form: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    from fuelwiz.document.merge import merge

    build = tmp_path / "car.toml"
    build.write_text(merge("format = 1\n", plain(Car(), log={"file": "gone.csv"})), encoding="utf-8")
    assert main(["report", str(build), "--format", form]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "gone.csv" in said and "there is no such file" in said
    assert str(tmp_path) not in said


def test_the_command_and_the_report_agree(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    from fuelwiz.document.merge import merge

    build = tmp_path / "car.toml"
    build.write_text(merge("format = 1\n", plain(Car(), log={"file": "pull.csv"})), encoding="utf-8")
    write_log(tmp_path / "pull.csv", WEAK, Logger(hz=20))
    assert main(["log", str(build), "--format", "json"]) == 0
    by_command = json.loads(capsys.readouterr().out)
    assert main(["report", str(build), "--format", "json"]) == 0
    in_report = json.loads(capsys.readouterr().out)["log"]
    assert {key: in_report[key] for key in by_command} == by_command


def test_a_hostile_name_stays_text(tmp_path: Path) -> None:
    name = "<script>x&quot;.csv"
    source = html_page(logged(tmp_path, Car(), name))
    assert "<script" not in source and "&lt;script&gt;x" in source
