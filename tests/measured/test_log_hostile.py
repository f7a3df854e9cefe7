"""Logs that cannot be read end in one sentence that names the file, and exit status 2."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from fuelwiz.cli import main
from fuelwiz.document.merge import merge
from fuelwiz.measured.log import table

from .cars import Car, Logger, plain, write_log

HEADS = "Time (s),Engine speed (rpm),Fuel pressure (psi),MAP (kPa),Injector duty (%)\n"
ROWS = "".join(f"{at / 10},5000,63.5,{239 + at % 2},60\n" for at in range(40))

HOSTILE: dict[str, tuple[bytes, str]] = {
    "empty": (b"", "is empty"),
    "blank": (b"\n \n\t\n", "is empty"),
    "binary": (bytes(range(256)) * 50, "is not text"),
    "UTF-16": ((HEADS + ROWS).encode("utf-16"), "UTF-16"),
    "one column": (b"Time\n1\n2\n3\n", "holds one column"),
    "no heads": (ROWS.encode(), "no row of heads"),
    "heads alone": (HEADS.encode(), ""),
    "no rail": (b"Time (s),MAP (kPa),Injector duty (%)\n" + b"1,100,50\n" * 30, "`rail`"),
    "nothing but gaps": ((HEADS + "NaN,NaN,NaN,NaN,NaN\n1,2,x,3,4\n" * 50).encode(), ""),
    "time runs back": ((HEADS + ROWS + "1.0,5000,63,239,60\n").encode(), "time runs back"),
    "no full load": ((HEADS + "0.0,900,35,40,3\n0.1,900,35,40,3\n").encode(), "20 are the fewest"),
    "no unit": ((HEADS.replace(" (psi)", "") + ROWS).encode(), "`rail`"),
    "infinite": ((HEADS + "inf,inf,inf,inf,inf\n" * 50).encode(), ""),
    "a line without an end": (HEADS.encode() + b"1," * 500_000, ""),
    "an open quote": ((HEADS + '"' + ROWS * 200).encode(), ""),
    "escapes": (b"\x1b[31mTime (s),\x1b]0;x\x07Rail\n1,2\n2,3\n", ""),
}


@pytest.fixture
def build(tmp_path: Path) -> Path:
    path = tmp_path / "car.toml"
    path.write_text(merge("format = 1\n", plain(Car())), encoding="utf-8")
    return path


@pytest.mark.parametrize("kind", HOSTILE)
def test_it_ends_in_a_sentence(
    kind: str, build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content, said = HOSTILE[kind]
    log = tmp_path / "pull.csv"
    log.write_bytes(content)
    assert main(["log", str(build), str(log)]) == 2
    out, error = capsys.readouterr()
    assert out == ""
    (line,) = error.splitlines()
    assert line.startswith(f"fuelwiz: {log}: ")
    assert said in line
    assert line.isprintable()
    assert len(line) < 600
    assert "program itself" not in line


def test_where_there_is_no_log_it_is_said(
    build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for named, said in (
        ([], "names no log"),
        ([str(tmp_path / "none.csv")], "there is no such file"),
        ([str(tmp_path)], "is a folder"),
    ):
        assert main(["log", str(build), *named]) == 2
        assert said in capsys.readouterr().err


@pytest.mark.parametrize("command", ["log", "report"])
def test_a_pipe_or_a_device_is_not_waited_for(
    command: str, build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    os.mkfifo(tmp_path / "pipe.csv")
    for name in ("pipe.csv", "/dev/zero"):
        build.write_text(merge("format = 1\n", plain(Car(), log={"file": name})), encoding="utf-8")
        assert main([command, str(build)]) == (2 if command == "log" else 0)
        told = capsys.readouterr()
        assert "is not a plain file" in " ".join((told.out + told.err).split())


def test_a_log_that_is_too_large_is_refused_before_it_is_read(
    build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    large = tmp_path / "large.csv"
    with large.open("wb") as file:
        file.truncate(64 * 1024 * 1024 + 1)
    assert main(["log", str(build), str(large)]) == 2
    assert "64 MiB" in capsys.readouterr().err


def test_a_column_that_is_named_and_is_not_there_is_named(
    build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    text = build.read_text(encoding="utf-8")
    build.write_text(f'{text}\n[log.columns]\nrail = "Rail"\n', encoding="utf-8")
    assert main(["log", str(build), str(log)]) == 2
    error = capsys.readouterr().err
    assert 'no column "Rail"' in error
    assert "Fuel pressure (psi)" in error


def test_columns_by_name_with_their_units(build: Path, tmp_path: Path) -> None:
    log = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    text = log.read_text(encoding="utf-8").replace("Fuel pressure (psi)", "FP1").replace("MAP (kPa)", "Mani")
    log.write_text(text, encoding="utf-8")
    columns = (
        '[log]\nfile = "pull.csv"\n[log.columns]\ntime = "Time (s)"\nrail = ["FP1", "psi"]\n'
        'manifold = ["Mani", "kPa"]\nrpm = "engine speed (RPM)"\nduty = "Injector duty"\n'
    )
    build.write_text(build.read_text(encoding="utf-8") + "\n" + columns, encoding="utf-8")
    assert main(["log", str(build)]) == 0


def test_more_rows_than_are_read_end_in_a_sentence(
    build: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(table, "MOST_ROWS", 30)
    log = tmp_path / "pull.csv"
    log.write_text(HEADS + ROWS, encoding="utf-8")
    assert main(["log", str(build), str(log)]) == 2
    assert "more than 30 rows" in capsys.readouterr().err
