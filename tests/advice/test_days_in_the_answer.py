"""What the second line of the answer says of bad days agrees with every row of their table."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.session import validate
from fuelwiz.sizing import assess, quick_figures

from .builds import NAMES, changed, independent, plain, spaced, told
from .scenarios import ALL, OUTSIDE, made

SAMPLES = sorted((Path(__file__).parents[2] / "saved_sessions").glob("*.toml"))
ALL_CLEAR = ("no bad day fails", "the other bad days pass")
TOO_SMALL = {"rated_flow": "200 cc/min"}
WIRE = {"supply": "13.8 V", "wire": "12 AWG", "length": "16 ft"}
CURRENT = [["58 psi", "9 A"]]
TWO_POINTS = [["40 psi", "75 gal/h"], ["58 psi", "65 gal/h"]]


def _sample(path: Path) -> Result:
    session = validate(tomllib.loads(path.read_text(encoding="utf-8")), path.stem)
    return result(session, quick_figures(session))


def _builds() -> Iterator[Result]:
    yield from (made(name) for name in ALL)
    yield from (independent(name) for name in NAMES)
    yield from (_sample(path) for path in SAMPLES)


def test_no_line_says_all_clear_while_a_day_fails() -> None:
    """One that is short by itself stands in the first half of the line."""
    judged = 0
    for one in _builds():
        failing = [day for day in one.figures.stress if day.works is False]
        if one.figures.pick.margin is None or not one.figures.stress:
            continue
        judged += 1
        lines = [spaced(form) for form in one.words.answer_forms[1]]
        if failing:
            assert not any(ALL_CLEAR[0] in form for form in lines), (one.session.name, lines)
        if len(failing) > 1:
            assert not any(ALL_CLEAR[1] in form for form in lines), (one.session.name, lines)
        if len(failing) == len(one.figures.stress):
            assert "Every" in lines[0] or "The others fail" in lines[0], (one.session.name, lines)
    assert judged > 100


@pytest.mark.parametrize("injectors", [None, TOO_SMALL])
def test_hot_fuel_that_boils_fails_though_it_is_too_close_today(injectors: dict[str, str] | None) -> None:
    """A pump outside the tank, 5000 ft up: too close to boiling today, boiling when hot."""
    one = told("mild", **OUTSIDE, injectors=injectors)
    today = one.figures.pick.vapour_margin_Pa
    hot = next(day for day in one.figures.stress if day.case == "hot fuel")
    assert today is not None and 0.0 < today < 20e3
    assert hot.vapour_margin_Pa is not None and hot.vapour_margin_Pa < 0.0
    assert ". Fails: hot fuel." in spaced(one.words.answer[1])
    said = spaced(one.words.stress[one.figures.stress.index(hot)])
    assert "the fuel boils at the pump inlet" in said and "the pump alone would have" in said


def test_days_that_fail_only_as_today_are_said_to_fail() -> None:
    """Injectors that are too small today are so on every bad day."""
    one = told("mild", injectors=TOO_SMALL)
    assert one.figures.verdict.limits == ("injectors",)
    assert {day.limits for day in one.figures.stress} == {("injectors",)}
    assert spaced(one.words.answer[1]).endswith(". Every bad day fails, as today does.")


def test_days_that_pass_are_told_from_those_that_fail_as_today() -> None:
    one = made("injectors too small but on some days")
    passing = {day.case for day in one.figures.stress if day.works}
    assert passing and passing < {"more ethanol", "less ethanol", "low volts"}
    line = spaced(one.words.answer[1])
    assert "; as today does: hot fuel, dirty filters, " in line
    assert not any(day in line for day in passing - {"low volts"})


def test_fuel_that_may_boil_leads_the_fourth_line_where_it_is_only_too_close_today() -> None:
    """The draws are judged by boiling; today by what the pump's place needs."""
    data = changed(plain("mild"), {**OUTSIDE, "pump__curve__0__points": TWO_POINTS})
    session = validate(data, "mild")
    one = result(session, assess(session))
    assert one.figures.verdict.limits == ("vapour",) and one.figures.spread is not None
    share = next(limit.share for limit in one.figures.spread.limits if limit.limit == "vapour")
    assert share > 0.02
    assert any("the fuel boils at the pump; measure its Reid pressure" in line for line in one.words.answer)


def test_what_lacks_today_is_said_in_words_as_on_the_bad_day() -> None:
    line = spaced(told("mild", goal__power="900 hp").words.answer[1])
    assert line.startswith("Tightest: ") and " short today)" in line and "\u2212" not in line


def test_a_pump_outside_is_not_all_clear_while_nothing_before_it_is_given() -> None:
    """Fuel boils there first, and one answer more may show it."""
    unknown = {**OUTSIDE, "inlet": None}
    one = told("mild", **unknown)
    assert one.figures.verdict.limits == () and all(day.works for day in one.figures.stress)
    for form in one.words.answer_forms[1][:-1]:
        assert "boiling" in spaced(form) and "not judged" in spaced(form)
    assert "not judged" not in " ".join(told("mild", **{**unknown, "pump__place": "tank"}).words.answer)


@pytest.mark.parametrize(
    ("wiring", "current", "counted"),
    [
        (WIRE, None, False),
        (WIRE, CURRENT, True),
        ({**WIRE, "length": None}, CURRENT, False),
        ({**WIRE, "wire": None}, CURRENT, False),
        (None, None, True),
    ],
)
def test_wire_that_seems_to_lose_nothing_is_said_beside_what_is_to_spare(
    wiring: dict[str, Any] | None, current: list[list[str]] | None, counted: bool
) -> None:
    given = None if wiring is None else {key: value for key, value in wiring.items() if value is not None}
    one = told("mild", wiring=given, pump__volts=None, pump__current=current)
    assert ("wire loss not counted" in spaced(one.words.answer[1])) is not counted


BOILS_AT_A_POINT = {
    "goal__reserve": "10 %",
    "inlet__strainer": {"rated_flow": "60 gal/h", "rated_loss": "1.8 psi"},
    "pull": [{"rpm": 4000, "power": "300 hp", "boost": "0 psi"}],
}


def test_a_day_on_which_the_fuel_boils_at_a_point_alone_says_so() -> None:
    said = told("hill-climb-coupe", fuel__temperature="46 degC", **BOILS_AT_A_POINT)
    at = [case.case for case in said.figures.stress].index("dirty filters")
    case = said.figures.stress[at]
    assert not said.figures.verdict.limits
    assert case.limits == ("vapour",) and case.vapour_margin_Pa is not None and case.vapour_margin_Pa > 0
    text = spaced(said.words.stress[at])
    assert "at a point of the pull the fuel boils at the pump inlet; the pump alone would have" in text
    assert "What helps: fit a cooler in the return" in text
    warned = next(f.text for f in said.words.findings if f.about == "fuel.temperature")
    assert "on a bad day: dirty filters" in spaced(warned)


def test_a_day_is_not_blamed_for_fuel_that_boils_at_a_point_today() -> None:
    said = told("hill-climb-coupe", fuel__temperature="55 degC", **BOILS_AT_A_POINT)
    assert said.figures.pick.vapour_margin_Pa is not None and said.figures.pick.vapour_margin_Pa > 0
    assert said.figures.verdict.limits == ("vapour",)
    at = [case.case for case in said.figures.stress].index("boost spike")
    assert said.figures.stress[at].limits == ("vapour",)
    assert "fails only for what is wrong today" in spaced(said.words.stress[at])
