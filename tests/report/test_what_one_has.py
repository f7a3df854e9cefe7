"""What a report says to somebody who has parts already, whose hose is rubber, and whose next goal has no boost given."""

from __future__ import annotations

import re
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.report.compose import page_of, sheet_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .builds import plain

CAUTION = "Your rubber hose: use it with alcohol fuel only if its maker rates it for that."


def coupe(**changes: Any) -> Result:
    data = plain("hill-climb-coupe")
    for path, value in changes.items():
        section, _, key = path.partition("__")
        data.setdefault(section, {})[key] = value
    session = validate(data, "coupe")
    return result(session, quick_figures(session))


def page(one: Result) -> str:
    return " ".join(text_of(page_of(one), TextLook(unicode=True)).replace("\u00a0", " ").split())


def bought(one: Result) -> str:
    return page(one).partition("What to buy ─")[2].partition("Bad days ─")[0]


@pytest.mark.parametrize(("hose", "ethanol", "said"), [
    ("rubber", "85 %", True), ("rubber", "10 %", False), ("ptfe", "85 %", False),
])  # fmt: skip
def test_rubber_hose_with_alcohol_is_a_caution_of_the_page(hose: str, ethanol: str, said: bool) -> None:
    runs = [{"length": "15 ft", "hose": hose}]
    assert (CAUTION in page(coupe(feed__run=runs, fuel__kind="blend", fuel__ethanol=ethanol))) == said


def test_the_boost_of_the_next_goal_is_named_and_said_to_be_assumed() -> None:
    free, given = coupe(), coupe(goal__next_boost="30 psi")
    assert free.figures.next is not None and "of boost (assumed)" in " ".join(free.words.answer)
    assert "boost is assumed" in bought(free) and "of boost (assumed)" in free.words.next_goal[0]
    assert "30.0 psi" in bought(given) and "assumed" not in bought(given)
    assert "of boost (assumed)" not in " ".join((*given.words.answer, given.words.next_goal[0]))


def test_injectors_that_pass_are_those_that_one_has() -> None:
    enough, small = coupe(injectors__rated_flow="2500 cc/min"), coupe(injectors__rated_flow="300 cc/min")
    assert "injectors yours: 6 × 2500 cc/min" in bought(enough)
    assert re.search(r"injectors \d of \d+ cc/min or more", bought(small)) and "yours: 6" not in bought(small)


def test_short_notes_stand_on_the_page_and_long_ones_are_cut() -> None:
    data = plain("hill-climb-coupe")
    session = validate(data | {"notes": "Bought used. " * 40}, "coupe")
    short = validate(data | {"notes": "Bought used."}, "coupe")
    cut = page(result(session, quick_figures(session)))
    assert page(result(short, quick_figures(short))).count("Bought used.") == 1
    assert 10 < cut.count("Bought used.") < 40 and "used.…" in cut


def test_wire_is_named_by_its_metric_size_where_units_are_metric() -> None:
    metric, us = (text_of(sheet_of(_shown(units)), TextLook(unicode=True)) for units in ("metric", "us"))
    assert "6 mm² (10 AWG)" in metric and "mm²" not in us and "10 AWG" in us


def _shown(units: str) -> Result:
    data = plain("full-session") | {"show_units": units}
    session = validate(data, "coupe")
    return result(session, quick_figures(session))
