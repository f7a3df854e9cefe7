"""A regulator at the tank: the drop through the line is the line's, and the short way back is no gap."""

from __future__ import annotations

from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.advice.answer.how_far import culprit, lowest_solved
from fuelwiz.advice.blocks import Pairs, Table
from fuelwiz.advice.sections.ceilings import ceilings as ceilings_section
from fuelwiz.advice.sections.page import ceilings_in_brief
from fuelwiz.advice.sections.path import path_lines
from fuelwiz.advice.sections.path_line import PathLine
from fuelwiz.advice.sections.shopping import shopping
from fuelwiz.advice.subject import Subject
from fuelwiz.report.json_form import plain_result
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures

from .builds import changed, spaced

CAR: dict[str, Any] = {
    "format": 1,
    "show_units": "us",
    "goal": {"power": "430 hp"},
    "engine": {"cylinders": 6, "induction": "supercharger"},
    "fuel": {"ethanol": "10 %"},
    "pressure": {"base": "58 psi", "boost": "10 psi", "reference": "atmosphere", "regulator": "tank"},
    "pump": {"volts": "12.6 V", "curve": [{"points": [["60 psi", "70 gal/h"]]}]},
    "feed": {
        "chosen": "5/16 in",
        "run": [
            {"hose": "tube", "length": "12 ft"},
            {"hose": "rubber", "length": "3 ft", "size": "3/8 in", "fittings": {"forged_90": 2}},
        ],
        "filter": [{}],
    },
    "inlet": {"strainer": {}},
}
"""A supercharged six with its regulator at the tank and a pump of one point that has plenty to spare."""


def _told(**changes: Any) -> Result:
    session = validate(changed(CAR, changes), "car")
    return result(session, quick_figures(session))


def _subject(one: Result) -> Subject:
    return Subject(one.session, one.figures)


def _line(one: Result, name: str) -> PathLine | None:
    lines = path_lines(_subject(one), one.figures.pick, one.figures.path)
    return next((line for line in lines if line.name == name), None)


def test_the_drop_through_the_line_is_not_laid_at_the_pump() -> None:
    one = _told()
    first = lowest_solved(_subject(one))
    assert first is not None and first.by_line
    assert one.figures.pick.margin is not None and one.figures.pick.margin > 0.15
    assert culprit(_subject(one), first) == "the feed line"
    assert "the feed line is the limit." in spaced(one.words.answer[0])
    assert "guess" not in one.words.answer[0]
    assert one.words.first_limit is not None
    assert spaced(one.words.first_limit).startswith(
        "The feed line (rail pressure drops too far) reaches its limit first, at 384 hp."
    )


def test_a_pump_that_is_the_limit_is_still_named() -> None:
    one = _told(feed__chosen="-8", goal__power="600 hp")
    first = lowest_solved(_subject(one))
    assert first is not None and not first.by_line
    assert "the pump is the limit" in spaced(one.words.answer[0])


def test_page_and_whole_report_name_the_line() -> None:
    one = _told()
    (pairs,) = [block for block in ceilings_in_brief(_subject(one), one.words) if isinstance(block, Pairs)]
    assert pairs.rows[0] == ("solved, hp", "line drop 384")
    tables = [block for block in ceilings_section(_subject(one), one.words) if isinstance(block, Table)]
    assert tables[0].rows[0][0].text == "line drop"


def test_scripts_find_the_ceiling_where_it_was() -> None:
    first = plain_result(_told())["ceilings"][0]
    assert list(first) == ["part", "max_power_W", "basis"]
    assert first["part"] == "pump"


def test_the_rail_has_what_the_line_leaves() -> None:
    rail = _line(_told(), "rail")
    assert rail is not None and spaced(rail.at_the_goal) == "55.1 of 58.0 psi"
    there = [spaced(finding.text) for finding in _told(injectors={"rated_flow": "600 cc/min"}).words.findings]
    assert any(
        "10.0 psi of boost, 2.9 psi lost in the line, 45.1 psi of 58.0 is left" in text for text in there
    )


def test_a_rail_behind_a_regulator_of_its_own_has_what_that_holds() -> None:
    rail = _line(_told(pressure__regulator="rail"), "rail")
    assert rail is not None and spaced(rail.at_the_goal) == "58.0 psi"


@pytest.mark.parametrize(("sits", "gap"), [("tank", False), ("rail", True)])
def test_only_a_regulator_at_the_rail_lacks_a_return(sits: str, gap: bool) -> None:
    one = _told(pressure__regulator=sits)
    way = _line(one, "return")
    assert (way is not None and way.gap) is gap
    assert any(finding.about == "return_line" for finding in one.words.findings) is gap
    regulator = _line(one, "regulator")
    assert (regulator is not None and regulator.given == "at the tank, no return") is not gap


def test_a_return_that_is_given_is_shown_at_the_tank_too() -> None:
    one = _told(return_line={"chosen": "-6", "run": [{"length": "2 ft"}]})
    regulator = _line(one, "regulator")
    assert regulator is not None and regulator.at_the_goal.endswith("at idle")


def test_the_limit_of_the_drop_is_explained_at_the_size() -> None:
    one = _told()
    chosen = next(at for at, row in enumerate(one.figures.sizes) if row is one.figures.pick)
    means = one.words.explanations[chosen].means
    assert means is not None
    assert "5 % of the 48.0 psi across the injectors" in spaced(means)


def test_what_was_only_taken_is_not_called_the_builders_own() -> None:
    one = _told()
    for name in ("filter", "strainer"):
        line = _line(one, name)
        assert line is not None and line.assumed
    (table,) = [block for block in shopping(_subject(one), one.words) if isinstance(block, Table)]
    wanted = {cells[0].text: cells[1].text for cells in table.rows}
    assert spaced(wanted["filter"]).endswith("gal/h or more, 10 micron")
    assert spaced(wanted["strainer"]).endswith("gal/h or more")


def test_a_dead_head_that_is_guessed_from_one_point_has_no_digits_that_mean_nothing() -> None:
    assert _ratings(_told()) == "above about 150 psi (10.5 bar)"
    known = {"voltage": "12.6 V", "points": [["40 psi", "90 gal/h"], ["87 psi", "0 gal/h"]]}
    assert _ratings(_told(pump__curve=[known])) == "above 87.0 psi (6.00 bar)"


def _ratings(one: Result) -> str:
    (table,) = [block for block in shopping(_subject(one), one.words) if isinstance(block, Table)]
    return spaced(next(cells[1].text for cells in table.rows if cells[0].text == "ratings"))
