"""What a report says to somebody who has parts already, whose hose is rubber, and whose next goal has no boost given."""

from __future__ import annotations

import re
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.advice.blocks import Table
from fuelwiz.advice.sections.wiring import wires_that_would_do
from fuelwiz.advice.subject import Subject
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
    assert "10 AWG (5.3 mm²)" in metric and "mm²" not in us and "10 AWG" in us


@pytest.mark.parametrize(
    ("units", "wire", "rows"),
    [
        ("metric", None, "1 mm²|1.5 mm²|2.5 mm²|4 mm²|6 mm²|10 mm²|16 mm²|25 mm²"),
        ("us", "2.5 mm^2", "1 mm²|1.5 mm²|2.5 mm²*|4 mm²|6 mm²|10 mm²|16 mm²|25 mm²"),
        ("us", None, "18 AWG|16 AWG|14 AWG|12 AWG|10 AWG|8 AWG|6 AWG|4 AWG"),
        ("us", "11 AWG", "18 AWG|16 AWG|14 AWG|12 AWG|11 AWG*|10 AWG|8 AWG|6 AWG|4 AWG"),
    ],
)
def test_wire_is_listed_as_the_build_speaks_of_it(units: str, wire: str | None, rows: str) -> None:
    table = _wire_table(wire, units)
    assert "|".join(cells[0].text for cells in table.rows) == rows


def _wire_table(wire: str | None, units: str = "us") -> Table:
    """Every wire of the build with what it loses, its own wire as typed."""
    data = plain("full-session") | {"show_units": units}
    data["wiring"] = {key: value for key, value in data["wiring"].items() if key != "wire"}
    data["wiring"] |= {} if wire is None else {"wire": wire}
    session = validate(data, "coupe")
    blocks = wires_that_would_do(Subject(session, quick_figures(session)))
    (table,) = (block for block in blocks if isinstance(block, Table))
    return table


@pytest.mark.parametrize(
    ("wire", "word"), [("0.5 mm^2", "no"), ("18 AWG", "no"), ("10 mm^2", "yes"), ("6 AWG", "yes")]
)
def test_a_wire_is_refused_where_its_fuse_does_not_guard_it(wire: str, word: str) -> None:
    """18 AWG carries 17 A in an engine space, 0.5 mm² is below the table: the fuse is one of 20 A."""
    table = _wire_table(wire)
    assert table.own is not None and table.rows[table.own][-1].text == word


def test_a_wire_that_carries_its_fuse_and_loses_much_is_thin() -> None:
    """Of the rows between, each loses over 0.5 V, and carries 20 A or more."""
    thin = [cells for cells in _wire_table(None).rows if cells[-1].text == "thin"]
    assert thin and all(float(cells[1].text) > 0.5 and float(cells[2].text) >= 20 for cells in thin)


def _shown(units: str) -> Result:
    data = plain("full-session") | {"show_units": units}
    session = validate(data, "coupe")
    return result(session, quick_figures(session))
