"""A value far outside the usual range is taken, with a word of doubt in the units of the build."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz import units
from fuelwiz.desk.composites import field_of
from fuelwiz.desk.doubt import doubt
from fuelwiz.questions import catalogue
from fuelwiz.session import field_at

from .desks import empty, opened, told

WITH_RANGE = [key for key, question in catalogue().items() if question.sure]


@pytest.mark.parametrize(
    ("path", "typed", "said"),
    [
        ("pressure.boost", "5 bar", "5 bar is 72.5 psi: are you sure? Usual:"),
        ("pressure.boost", "70", "70 psi: are you sure?"),
        ("pressure.boost", "20", ""),
        ("pressure.boost", "0", ""),
        ("goal.power", "12", "12 hp: are you sure?"),
        ("feed.length", "200", "200 ft: are you sure?"),
    ],
)
def test_it_is_taken_and_doubted(tmp_path: Path, path: str, typed: str, said: str) -> None:
    desk = told(tmp_path)
    desk.type(path, typed)
    assert desk.is_given(path) and path not in desk.refused
    words = doubt(desk, catalogue()[path], path).replace("\u00a0", " ")
    assert words.startswith(said) if said else not words


@pytest.mark.parametrize("key", WITH_RANGE)
def test_what_is_sure_lies_within_what_is_allowed(key: str) -> None:
    """And the fallback, where there is one, is not doubted."""
    question = catalogue()[key]
    assert question.sure is not None
    spec = field_at(question.writes[0])
    spec = spec.parts[int(field_of(key)[-1])] if spec.type == "points" else spec
    assert spec.kind is not None and spec.low is not None and spec.high is not None
    low, high = (units.parse(end, spec.kind) for end in question.sure)
    assert units.parse(spec.low, spec.kind) <= low < high <= units.parse(spec.high, spec.kind)
    if spec.fallback is not None:
        assert low <= units.parse(spec.fallback, spec.kind) <= high


@pytest.mark.parametrize("path", ["goal.next_boost", "goal.next_induction"])
def test_boost_with_nothing_that_makes_it_is_doubted(tmp_path: Path, path: str) -> None:
    desk = told(tmp_path, goal__next_power="900 hp", goal__next_boost="8")
    question = catalogue()[path]
    desk.choose("goal.next_induction", "none")
    assert doubt(desk, question, path).startswith('8 psi of boost, but "no boost" as the next induction')
    desk.choose("goal.next_induction", "supercharger")
    assert not doubt(desk, question, path)
    desk.choose("goal.next_induction", "none")
    desk.type("goal.next_boost", "0")
    assert not doubt(desk, question, path)


@pytest.mark.parametrize(("ethanol", "hose", "said"), [
    ("85 %", "rubber", True), ("85 %", "ptfe", False), ("10 %", "rubber", False),
])  # fmt: skip
@pytest.mark.parametrize("path", ["feed.hose", "feed.run.0.hose"])
def test_rubber_for_alcohol_is_doubted_where_it_is_answered(
    tmp_path: Path, path: str, ethanol: str, hose: str, said: bool
) -> None:
    desk = told(tmp_path, fuel__ethanol=ethanol, feed__length="15")
    desk.choose("feed.hose", hose)
    desk.update()
    words = doubt(desk, catalogue()["feed.hose"], path)
    assert ("maker rates it" in words) == said and bool(words) == said


@pytest.mark.parametrize(("power", "said"), [("700", True), ("800", False)])
def test_a_next_goal_below_this_one_is_doubted_where_it_is_answered(
    tmp_path: Path, power: str, said: bool
) -> None:
    desk = told(tmp_path, goal__next_power=power)
    desk.update()
    assert ("below this one" in doubt(desk, catalogue()["goal.next_power"], "goal.next_power")) == said


@pytest.mark.parametrize(
    ("power", "said"),
    [
        # (14.696 + 22) x 500/750 - 14.696 = 9.8 psi, by hand
        ("500", "Boost is still 22 psi, as for 750 hp; in step with power it would be 9.8 psi."),
        ("770", ""),
        ("9999999", ""),
    ],
)
def test_boost_that_was_told_for_another_power_is_pointed_out(tmp_path: Path, power: str, said: str) -> None:
    desk = opened(tmp_path)
    desk.type("goal.power", power)
    question = catalogue()["goal.power"]
    words = doubt(desk, question, "goal.power").replace("\u00a0", " ")
    assert words.startswith(said) if said else not words
    assert "Boost" not in doubt(desk, catalogue()["goal.reserve"], "goal.reserve")


def test_boost_that_is_told_anew_or_saved_so_is_left_alone(tmp_path: Path) -> None:
    question = catalogue()["goal.power"]
    desk = opened(tmp_path)
    desk.type("goal.power", "500")
    desk.type("pressure.boost", "12")
    assert not doubt(desk, question, "goal.power")
    desk.type("pressure.boost", "22")
    assert doubt(desk, question, "goal.power")
    desk.save()
    assert not doubt(desk, question, "goal.power")


def test_a_new_build_has_no_other_power_to_hold_boost_against(tmp_path: Path) -> None:
    desk = empty(tmp_path)
    for power in ("400", "800"):
        desk.type("goal.power", power)
        desk.type("pressure.boost", "20")
        assert not doubt(desk, catalogue()["goal.power"], "goal.power")
