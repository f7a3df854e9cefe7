"""What takes longest comes a little at a time, and what is typed meanwhile drops it."""

from __future__ import annotations

import itertools
import math
from pathlib import Path
from types import SimpleNamespace

import pytest

from fuelwiz.advice import result
from fuelwiz.desk import Desk, calculation
from fuelwiz.desk.whole_result import whole_result
from fuelwiz.session import validate
from fuelwiz.sizing import assess, quick_figures

from .desks import empty, opened

MOST_SLICES = 20_000


def in_slices(desk: Desk, seconds: float = 0.0005) -> int:
    """Fill a build in; the slices that it took."""
    for count in range(1, MOST_SLICES):
        desk.fill_in(seconds)
        if desk.filled_in:
            return count
    raise AssertionError("never filled in")


@pytest.mark.parametrize("example", ["full-session", "hill-climb-six", "goal-alone", "no-pump-yet"])
def test_it_ends_with_all_figures_of_the_file(tmp_path: Path, example: str) -> None:
    desk = opened(tmp_path, example)
    in_slices(desk)
    session = validate(desk.plain, example)
    assert desk.complete
    figures = assess(session)
    assert desk.result == result(session, figures)


@pytest.mark.parametrize("example", ["full-session", "goal-alone", "no-pump-yet"])
def test_the_whole_of_a_result_can_be_worked_out_apart_from_the_desk(tmp_path: Path, example: str) -> None:
    desk = opened(tmp_path, example)
    told = desk.result
    assert told is not None
    whole = whole_result(told)
    assert desk.result is told and not desk.filled_in
    in_slices(desk)
    assert whole == desk.result


def test_changes_come_before_the_spread_and_in_many_slices(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    seen: list[tuple[bool, bool]] = []
    slices = 0
    while not desk.filled_in:
        slices += 1
        if desk.fill_in(0.0005):
            assert desk.result is not None
            seen.append((bool(desk.result.figures.changes), desk.result.figures.spread is not None))
    assert seen[-1] == (True, True)
    assert (True, False) in seen
    assert seen.index((True, False)) < seen.index((True, True))
    assert slices > 20


def test_what_is_typed_drops_it(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    assert desk.result is not None
    while not desk.result.figures.changes:
        desk.fill_in(0.001)
    desk.type("goal.power", "600")
    assert desk.result is not None
    assert not desk.filled_in
    assert desk.result.figures.changes == () and desk.result.figures.spread is None
    in_slices(desk)
    session = validate(desk.plain, "six")
    assert desk.result.figures == assess(session)


def test_what_changes_nothing_drops_nothing(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.fill_in(math.inf)
    desk.visit("goal.power")
    desk.update()
    assert desk.filled_in and desk.result is not None and desk.result.figures.spread is not None


def test_a_slice_stops_in_the_middle_of_the_work(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    desk = opened(tmp_path)
    desk.type("goal.power", "601")
    desk.finish()
    readings = itertools.count()
    clock = SimpleNamespace(perf_counter=lambda: 0.0004 * next(readings))
    monkeypatch.setattr(calculation, "time", clock)
    desk.fill_in(0.001)
    assert not desk.filled_in
    assert next(readings) == 4  # at the start, before each of two steps, and past the end


def test_without_a_power_there_is_nothing_to_fill_in(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    assert not desk.fill_in(math.inf)
    assert desk.result is None and not desk.filled_in


def test_the_quick_figures_stand_until_then(tmp_path: Path) -> None:
    desk = opened(tmp_path)
    desk.finish()
    session = validate(desk.plain, "six")
    figures = quick_figures(session)
    assert desk.result == result(session, figures)
