"""The comments that say what measured a value: dated, beside every other, gone once the value is typed over."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from measured.benched import TEXT

from fuelwiz.desk import Desk
from fuelwiz.measured.figures import Proposal

COMMENTS = ("# My car, as the sheets have it.", "# at the crank", "# bought used", "# as sold", "# 90 gal/h")
HEALTH = Proposal("pump.health", "92.8 %", "tolerance.pump_flow", "2.8 %", "bench tests", "2026-05-14")
BASE = Proposal("pressure.base", "41.0 psi", None, None, "rail in the log")
POINTS = [
    {"rpm": 4500, "power": "330 hp", "boost": "20.0 psi"},
    {"rpm": 6500, "power": "400 hp", "boost": "19.0 psi"},
]
PULL = Proposal("pull", POINTS, None, None, "bins of the log")
TODAY = date.today().isoformat()
MEASURED_HEALTH = "# measured: bench tests, 2026-05-14; was 100 %"


@pytest.fixture
def car(tmp_path: Path) -> Path:
    """A build's file with comments of the builder's."""
    path = tmp_path / "car.toml"
    path.write_text(TEXT, encoding="utf-8")
    return path


def opened(path: Path) -> Desk:
    """Its desk, as the wizard has it."""
    desk = Desk.open(path)
    desk.update()
    return desk


def after(path: Path, *steps: Callable[[Desk], object]) -> str:
    """What the file says once it was opened, some things were done, and it was saved."""
    desk = opened(path)
    for step in steps:
        step(desk)
    desk.save(overwrite=True)
    return path.read_text(encoding="utf-8")


def take(*proposals: Proposal) -> Callable[[Desk], object]:
    """The builder takes some proposals."""

    def step(desk: Desk) -> None:
        for proposal in proposals:
            desk.take(proposal)

    return step


def told(text: str) -> dict[str, Any]:
    """What a file holds without the record."""
    return {key: value for key, value in tomllib.loads(text).items() if key != "record"}


def test_a_value_that_is_taken_has_a_comment_and_leaves_all_others(car: Path) -> None:
    taken = after(car, take(HEALTH, BASE))
    found, lines = told(taken), taken.splitlines()
    assert found["pump"]["health"] == "92.8 %"
    assert found["tolerance"] == {"pump_flow": "2.8 %"}
    assert found["pressure"] == {"base": "41.0 psi"}
    assert MEASURED_HEALTH in lines
    assert 'pump_flow = "2.8 %"  # measured: bench tests, 2026-05-14' in lines
    assert f'base = "41.0 psi"  # measured: rail in the log, {TODAY}' in lines
    assert all(comment in taken for comment in COMMENTS)
    assert found["pump"]["curve"] == told(TEXT)["pump"]["curve"]


def test_a_later_measurement_takes_the_place_of_the_comment_before(car: Path) -> None:
    after(car, take(HEALTH))
    later = Proposal("pump.health", "90 %", "tolerance.pump_flow", "2 %", "bench tests", "2026-08-01")
    taken = after(car, take(later))
    assert taken.count("# measured: bench tests") == 2
    assert "# measured: bench tests, 2026-08-01; was 92.8 %" in taken.splitlines()
    assert "2026-05-14;" not in taken
    assert all(comment in taken for comment in COMMENTS)


@pytest.mark.parametrize("saved_between", [False, True])
def test_a_value_typed_over_a_measured_one_loses_its_comment_and_undo_brings_it_back(
    car: Path, *, saved_between: bool
) -> None:
    measured = after(car, take(HEALTH))
    desk = opened(car)
    desk.visit("pump.health")
    desk.type("pump.health", "97")
    if saved_between:
        desk.save()
        typed_over = car.read_text(encoding="utf-8")
        assert told(typed_over)["pump"]["health"] == "97 %"
        assert MEASURED_HEALTH not in typed_over and all(comment in typed_over for comment in COMMENTS)
    assert desk.undo() == "pump.health"
    desk.save()
    assert car.read_text(encoding="utf-8") == measured


def test_a_value_taken_out_leaves_no_word_of_what_measured_it(car: Path) -> None:
    after(car, take(HEALTH))
    text = after(
        car, lambda desk: desk.unsure("pump.health"), lambda desk: desk.unsure("tolerance.pump_flow")
    )
    assert "measured" not in text and all(comment in text for comment in COMMENTS)


def test_the_same_value_typed_again_is_measured_still(car: Path) -> None:
    measured = after(car, take(HEALTH))
    desk = opened(car)
    desk.visit("pump.health")
    for so_far in ("9", "92", "92.", "92.8", "92.8 %"):
        desk.type("pump.health", so_far)
    assert not desk.dirty
    desk.save()
    assert car.read_text(encoding="utf-8") == measured


def test_a_comment_of_the_builders_stays_whatever_is_typed(car: Path) -> None:
    car.write_text(TEXT.replace("# as sold", "# measured: by myself, twice"), encoding="utf-8")
    text = after(car, lambda desk: desk.type("pump.health", "97"))
    assert "# measured: by myself, twice" in text


def test_a_comment_moved_by_hand_beside_another_stays_as_it_is_laid_out(car: Path) -> None:
    laid_out = TEXT.replace("# as sold", "# measured: bench tests, 2026-05-14")
    car.write_text(laid_out, encoding="utf-8")
    text = after(car, lambda desk: desk.type("goal.power", "410"))
    assert 'health = "100 %"    # measured: bench tests, 2026-05-14' in text.splitlines()


def test_taken_undone_and_taken_again(car: Path) -> None:
    desk = opened(car)
    desk.finish()
    before = desk.plain, desk.result
    texts = []
    for step in (take(HEALTH), Desk.undo, take(HEALTH)):
        step(desk)
        desk.save()
        texts.append(car.read_text(encoding="utf-8"))
        if step is Desk.undo:
            assert (desk.plain, desk.result) == before
    assert texts[0] == texts[2] and MEASURED_HEALTH in texts[0]
    assert told(texts[1]) == told(TEXT) and "measured" not in texts[1]


def test_windows_line_ends_and_a_byte_order_mark_stay(car: Path) -> None:
    plain = after(car, take(HEALTH))
    car.write_bytes(("\ufeff" + TEXT.replace("\n", "\r\n")).encode())
    after(car, take(HEALTH))
    taken = car.read_bytes().decode()
    assert taken.startswith("\ufeff") and taken.count("\r\n") == taken.count("\n")
    assert taken.replace("\r\n", "\n").removeprefix("\ufeff") == plain
    after(car, lambda desk: desk.type("pump.health", "97"))
    assert MEASURED_HEALTH not in car.read_bytes().decode()


def test_points_of_a_pull_are_tables_under_one_comment(car: Path) -> None:
    taken = after(car, take(PULL))
    assert told(taken)["pull"] == POINTS
    assert f"# measured: bins of the log, {TODAY}\n[[pull]]" in taken
    assert after(car, lambda desk: desk.type("goal.power", "410")).count("# measured: bins of the log") == 1
    assert "bins of the log" not in after(car, lambda desk: desk.type("pull.1.power", "395"))


def test_a_draft_keeps_what_measured_its_values(car: Path) -> None:
    after(car, take(HEALTH, PULL))
    desk = opened(car)
    desk.type("goal.power", "410")
    desk.type("tolerance.pump_flow", "3")
    place = desk.write_draft()
    assert place is not None
    again = Desk.from_draft(place)
    again.update()
    again.save()
    text = car.read_text(encoding="utf-8")
    assert MEASURED_HEALTH in text and "# measured: bins of the log" in text
    assert 'pump_flow = "3 %"' in text.splitlines()


def test_what_stood_there_goes_into_the_comment_as_one_line(car: Path) -> None:
    car.write_text(TEXT.replace('"100 %"', '"100 %\\n"'), encoding="utf-8")
    assert MEASURED_HEALTH in after(car, take(HEALTH))
    assert MEASURED_HEALTH not in after(car, lambda desk: desk.type("pump.health", "97"))
