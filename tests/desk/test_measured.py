"""What was measured of a build at the desk: in its result, taken with a key, undone, and written with its day."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from fuelwiz.desk import Desk
from fuelwiz.measured import measured
from fuelwiz.measured.figures import Proposal

from .desks import opened

A_TEST = {
    "date": "2026-05-14",
    "at": "pump",
    "pressure": "40 psi",
    "volts": "13.5 V",
    "pumps": 1,
    "volume": "2 gal",
    "time": "60 s",
}


def test_the_result_has_what_was_measured_from_the_first_to_the_last(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.add("bench", A_TEST)
    for go_on in (desk.update, desk.finish, lambda: desk.fill_in(60)):
        go_on()
        assert desk.result is not None and desk.session is not None
        assert desk.result.measured == measured(desk.session, desk.result.figures)
        assert desk.result.measured.bench is not None
        assert len(desk.result.measured.bench.tests) == 1
    assert desk.filled_in


def with_a_proposal(folder: Path) -> tuple[Desk, Proposal]:
    """An example with a bench test, and the health that the test proposes."""
    folder.mkdir(exist_ok=True)
    desk = opened(folder)
    desk.add("bench", A_TEST)
    assert desk.result is not None
    (proposal,) = (one for one in desk.result.measured.proposals if one.key == "pump.health")
    return desk, proposal


def test_taken_undone_and_taken_again(tmp_path: Path) -> None:
    desk, proposal = with_a_proposal(tmp_path)
    before = desk.plain, desk.result
    desk.take(proposal)
    assert desk.value("pump.health") == proposal.value
    assert desk.value("tolerance.pump_flow") == proposal.tolerance
    taken = desk.plain, desk.result
    assert taken[1] != before[1]
    assert desk.undo() == "measured.pump.health"
    assert (desk.plain, desk.result) == before
    assert desk.redo() == "measured.pump.health"
    assert (desk.plain, desk.result) == taken


def test_the_file_says_what_measured_it_until_it_is_typed_over(tmp_path: Path) -> None:
    desk, proposal = with_a_proposal(tmp_path)
    desk.take(proposal)
    written = desk.save().path.read_text(encoding="utf-8")
    assert "# measured: bench tests, 2026-05-14" in written
    assert tomllib.loads(written)["pump"]["health"] == proposal.value

    desk, proposal = with_a_proposal(tmp_path / "other")
    desk.take(proposal)
    desk.type("pump.health", "97")
    line = next(one for one in desk.save().path.read_text(encoding="utf-8").splitlines() if "health" in one)
    assert "measured" not in line


def test_a_draft_keeps_what_measured_it(tmp_path: Path) -> None:
    desk, proposal = with_a_proposal(tmp_path)
    desk.take(proposal)
    place = desk.write_draft()
    assert place is not None
    again = Desk.from_draft(place)
    again.update()
    assert "# measured: bench tests, 2026-05-14" in again.save().path.read_text(encoding="utf-8")


def test_the_head_of_a_column_is_typed_as_it_stands_in_the_file(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.type("log.file", "pull.csv")
    desk.type("log.columns.rail", "Fuel pressure (psi)")
    desk.type("log.columns.barometer", "1.0 bar")
    assert not desk.refused
    assert desk.session is not None and desk.session.log.columns.rail is not None
    assert desk.session.log.columns.rail.head == "Fuel pressure (psi)"
    assert desk.session.log.columns.barometer is not None
    assert desk.session.log.columns.barometer.value == pytest.approx(1e5)
    desk.type("log.columns.rail", "x" * 500)
    assert "log.columns.rail" in desk.refused
