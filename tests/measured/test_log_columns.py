"""Which column is what: named one by one, guessed for the rest, or said not to be there; times as a clock shows them."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from fuelwiz.errors import LogError, SessionError
from fuelwiz.measured.figures import LogFigures
from fuelwiz.measured.log.layout import clock_s
from fuelwiz.measured.log.run import read_log
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .cars import Car, Logger, plain, write_log


def read(path: Path, **columns: Any) -> LogFigures:
    session = validate(plain(Car(), log={"file": path.name, "columns": columns}), "a build")
    return read_log(path, session, quick_figures(session))


def taken(log: LogFigures) -> dict[str, tuple[str, bool]]:
    return {one.key: (one.head, one.guessed) for one in log.columns}


def test_naming_one_column_leaves_the_guesses_of_the_others(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    guessed = taken(read(path))
    assert all(was for _, was in guessed.values())
    named = taken(read(path, rail="Fuel pressure (psi)"))
    assert named == {**guessed, "rail": ("Fuel pressure (psi)", False)}


def test_a_column_that_is_not_in_the_log_is_not_guessed(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    log = read(path, power="none")
    assert "power" not in taken(log)
    assert log.bsfc_kg_J is None
    assert read(path).bsfc_kg_J is not None
    with pytest.raises(LogError, match="`rail`"):
        read(path, rail="None")


def test_a_column_that_is_called_none_is_named_with_its_unit(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    path.write_text(path.read_text(encoding="utf-8").replace("Fuel pressure (psi)", "none"), encoding="utf-8")
    assert taken(read(path, rail=["none", "psi"]))["rail"] == ("none", False)


def test_a_unit_that_is_not_known_is_said_by_name(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    head = "Fuel pressure (furlong)"
    path.write_text(path.read_text(encoding="utf-8").replace("Fuel pressure (psi)", head), encoding="utf-8")
    with pytest.raises(LogError, match=r"no known unit for its column \"Fuel pressure \(furlong\)\""):
        read(path, rail=head)
    assert taken(read(path, rail=[head, "psi"]))["rail"] == (head, False)


def test_a_head_that_is_named_is_not_guessed_for_another_key(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    found = taken(read(path, battery="Pump volts (V)"))
    assert found["battery"] == ("Pump volts (V)", False)
    assert "volts" not in found


def test_boost_and_manifold_are_never_both_taken(tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(), Logger(hz=10))
    lines = path.read_text(encoding="utf-8").splitlines()
    with_boost = [
        lines[0] + ",Boost (psi)",
        *(f"{line},{float(line.split(',')[3]) / 6.894757 - 14.7:.3f}" for line in lines[1:]),
    ]
    path.write_text("\n".join(with_boost) + "\n", encoding="utf-8")
    assert {"manifold", "boost"} & set(taken(read(path))) == {"manifold"}
    assert {"manifold", "boost"} & set(taken(read(path, boost="Boost (psi)"))) == {"boost"}
    assert {"manifold", "boost"} & set(taken(read(path, manifold="none"))) == {"boost"}
    assert {"manifold", "boost"} & set(taken(read(path, manifold="none", boost="Boost"))) == {"boost"}
    with pytest.raises(SessionError, match="must not stand beside"):
        read(path, manifold="MAP", boost="Boost")


# By hand: 59 min 50 s is 3590 s, and 1 h 2 min 3.5 s is 3723.5 s.
@pytest.mark.parametrize(
    ("text", "seconds"), [("00:59:50", 3590.0), ("1:02:03.5", 3723.5), ("62:03,5", 3723.5)]
)
def test_a_time_of_a_clock_comes_to_seconds(text: str, seconds: float) -> None:
    assert clock_s(text) == pytest.approx(seconds, abs=1e-9)


@pytest.mark.parametrize("text", ["12", "1:2:3:4", "a:b", "1:-2", "", ":", "1:2e3"])
def test_what_is_no_time_of_a_clock_is_refused(text: str) -> None:
    with pytest.raises(ValueError):
        clock_s(text)


@pytest.mark.parametrize("head", ["Clock", "Time", "Time (hh:mm:ss)", "Time (s)"])
@pytest.mark.parametrize("comma", [False, True])
def test_a_log_with_times_of_a_clock_shows_the_same(head: str, comma: bool, tmp_path: Path) -> None:
    path = write_log(tmp_path / "pull.csv", Car(factor=0.62), Logger(hz=20, comma=comma))
    as_seconds = read(path)
    first, *lines = path.read_text(encoding="utf-8").splitlines()
    sign = ";" if comma else ","
    rows = [first.replace("Time (s)", head)]
    for line in lines:
        seconds, rest = line.split(sign, 1)
        minutes, left = divmod(float(seconds.replace(",", ".")) + 3590, 60)
        clock = f"{int(minutes // 60):02d}:{int(minutes % 60):02d}:{left:06.3f}"
        rows.append(f"{clock.replace('.', ',') if comma else clock}{sign}{rest}")
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    log = read(path)
    assert log.pump.factor == pytest.approx(as_seconds.pump.factor, rel=1e-9)
    assert (log.samples, len(log.pulls), log.skipped) == (as_seconds.samples, len(as_seconds.pulls), 0)
    assert log.pulls[0].start_s == pytest.approx(as_seconds.pulls[0].start_s + 3590, abs=1e-6)


def test_a_clock_that_passes_midnight_runs_back(tmp_path: Path) -> None:
    path = tmp_path / "pull.csv"
    heads = "Time,Engine speed (rpm),Fuel pressure (psi),MAP (kPa),Injector duty (%)\n"
    rows = "".join(f"{at},5000,63.5,239,60\n" for at in ("23:59:59.9", "00:00:00.0"))
    path.write_text(heads + rows, encoding="utf-8")
    with pytest.raises(LogError, match="time runs back"):
        read(path)
