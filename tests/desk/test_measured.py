"""What was measured of a build at the desk: in its result, taken with a key, undone, and written with its day."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.measured import measured

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
        assert desk.result is not None and desk.session is not None and desk.result.measured is not None
        assert desk.result.measured == measured(desk.session, desk.result.figures)
        assert desk.result.measured.bench is not None
        assert len(desk.result.measured.bench.tests) == 1
    assert desk.filled_in
