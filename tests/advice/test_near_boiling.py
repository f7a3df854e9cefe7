"""Fuel too close to boiling at the pump inlet: no line loses it, and each cure that is named does cure it."""

from __future__ import annotations

import re
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.advice.answer.other_stops import NO_CEILING
from fuelwiz.advice.blocks import Paragraph
from fuelwiz.advice.limits import cured_at, short_why, what_and_do
from fuelwiz.advice.sections.how_sure import how_sure
from fuelwiz.advice.sections.path import path_lines
from fuelwiz.advice.subject import Subject
from fuelwiz.session import validate
from fuelwiz.sizing import assess

from .builds import changed, plain, spaced, told
from .scenarios import ALL, OUTSIDE, made

TOO_SMALL = {"rated_flow": "200 cc/min"}


def _subject(one: Result) -> Subject:
    return Subject(one.session, one.figures)


def _do(one: Result) -> str:
    """What is said to do about it."""
    return spaced(what_and_do(_subject(one), "vapour")[1])


@pytest.mark.parametrize("name", ALL)
def test_a_stop_that_is_no_ceiling_does_not_vanish_behind_one_that_is(name: str) -> None:
    one = made(name)
    first = one.words.answer_forms[0][0]
    if one.figures.pick.margin is None or "Full power is fine" in first:
        return
    stops = [limit for limit in one.figures.verdict.limits if limit in NO_CEILING]
    assert all(short_why(_subject(one), limit) in first for limit in stops), first


def test_it_stays_beside_injectors_that_are_too_small_on_a_narrow_screen_too() -> None:
    one = told("mild", **OUTSIDE, injectors=TOO_SMALL)
    assert one.figures.verdict.limits == ("vapour", "injectors")
    assert all("And the fuel" in spaced(form) for form in one.words.answer_forms[0])


def _outside(**changes: Any) -> Result:
    return told("mild", **{**OUTSIDE, **changes})


def test_a_pump_in_the_tank_is_named_where_that_is_enough() -> None:
    """It needs nothing above boiling there, 20 kPa outside."""
    assert _outside().figures.verdict.limits == ("vapour",)
    assert _do(_outside()).startswith("Put the pump into the tank or a surge pot")
    assert _outside(pump__place="tank").figures.verdict.limits == ()
    assert cured_at(_subject(_outside()), "vapour") == "pump.place"
    hot = _outside(fuel__temperature="60 degC")
    assert "vapour" in _outside(fuel__temperature="60 degC", pump__place="tank").figures.verdict.limits
    assert "tank" not in _do(hot)


def test_the_reid_pressure_that_is_named_is_low_enough_and_hardly_too_low() -> None:
    found = re.search(r"Reid pressure ([0-9.]+) psi or less", _do(_outside()))
    assert found is not None
    reid = float(found[1])
    assert _outside(fuel__reid_pressure=f"{reid} psi").figures.verdict.limits == ()
    assert _outside(fuel__reid_pressure=f"{1.03 * reid} psi").figures.verdict.limits == ("vapour",)


def test_strainer_and_suction_line_are_named_where_they_lose_a_good_part_of_what_is_missing() -> None:
    """What they lose is 0.1 of the 2.3 psi that are missing, unless they are small."""
    assert "strainer" not in _do(_outside()) and "suction" not in _do(_outside())
    small = {"strainer": {"rated_flow": "30 gal/h", "rated_loss": "1 psi"}}
    assert "clean or enlarge the strainer" in _do(_outside(inlet=small))
    thin = {"strainer": False, "run": [{"size": "-4", "length": "6 ft", "hose": "rubber"}]}
    assert "shorten or enlarge the suction line" in _do(_outside(inlet=thin))


def test_a_pump_is_not_told_to_sit_lower_than_a_car_has_room() -> None:
    assert "lower" not in _do(_outside())
    little = _outside(fuel__temperature="38 degC", pressure__altitude="2500 ft")
    found = re.search(r"mount the pump ([0-9.]+) ft lower", _do(little))
    assert found is not None and 0.0 < float(found[1]) < 2.0
    lowered = {"strainer": {}, "fuel_head": f"{float(found[1]) + 0.1} ft"}
    done = _outside(fuel__temperature="38 degC", pressure__altitude="2500 ft", inlet=lowered)
    assert done.figures.verdict.limits == ()


def test_the_path_says_what_is_wrong_at_the_pump_in_place_of_its_pressure() -> None:
    one = _outside()
    (pump,) = (
        line for line in path_lines(_subject(one), one.figures.pick, one.figures.path) if line.name == "pump"
    )
    assert pump.limits == ("vapour",)
    assert "above boiling" in pump.at_the_goal and "psi" in pump.given


def test_what_cools_the_fuel_names_no_power_and_the_other_place() -> None:
    session = validate(changed(plain("mild"), OUTSIDE), "mild")
    one = result(session, assess(session))
    assert one.figures.way_out == ("cooler",)
    assert spaced(one.words.answer[2]).startswith("Do first: fuel 27 °F cooler (or the pump in the tank).")


def test_how_sure_says_that_it_breaks_at_boiling_where_today_is_too_close() -> None:
    """And that it is of fuel that so few draws are short, beside limits that nearly all of them meet."""
    session = validate(changed(plain("mild"), {**OUTSIDE, "injectors": TOO_SMALL}), "mild")
    one = result(session, assess(session))
    said = [block.text for block in how_sure(_subject(one), one.words) if isinstance(block, Paragraph)]
    assert "short of fuel" in spaced(said[0]) and "the injectors are too small" in spaced(said[0])
    assert said[-1].endswith("Fuel breaks it where it boils; today it is only too close to that.")
