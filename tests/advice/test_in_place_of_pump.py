"""A wire or a larger line that does as much as one more pump is named beside it: it costs far less."""

from __future__ import annotations

from functools import cache
from typing import Any

from fuelwiz.advice import Result, result
from fuelwiz.advice.answer.what_first import not_needed, what_first
from fuelwiz.advice.blocks import Table
from fuelwiz.advice.sections.shopping import shopping
from fuelwiz.advice.subject import Subject
from fuelwiz.report.json_form import plain_result
from fuelwiz.session import validate
from fuelwiz.sizing import in_steps, quick_figures

from .builds import changed, spaced

TWO_ON_ONE_WIRE: dict[str, Any] = {
    "format": 1,
    "show_units": "us",
    "goal": {"power": "620 hp", "power_at": "wheels"},
    "engine": {"cylinders": 6, "induction": "turbo"},
    "fuel": {"ethanol": "85 %"},
    "pressure": {"base": "43.5 psi", "boost": "22 psi"},
    "pump": {
        "count": 2,
        "arrangement": "parallel",
        "current": [["60 psi", "12 A"]],
        "curve": [{"voltage": "13.5 V", "points": [["60 psi", "250 L/h"]]}],
    },
    "wiring": {
        "supply": "14 V",
        "wire": "10 AWG",
        "length": "14 ft",
        "return_path": "chassis",
        "circuits": 1,
    },
    "feed": {
        "chosen": "-8",
        "run": [{"hose": "ptfe", "length": "16 ft", "fittings": {"straight": 4, "swept_90": 3}}],
        "filter": [{"rated_flow": "100 gal/h", "rated_loss": "1 psi"}],
    },
    "inlet": {"strainer": {"carries": "each"}},
}
"""Two pumps on one wire that are short of their reserve alone."""


@cache
def _told(
    *, wires: int = 1, supply: str = "14 V", next_power: str | None = None, injectors: str = "1600 cc/min"
) -> Result:
    changes: dict[str, Any] = {"wiring__circuits": wires, "wiring__supply": supply}
    if next_power is not None:
        changes |= {"goal__next_power": next_power}
    session = validate(changed({**TWO_ON_ONE_WIRE, "injectors": {"rated_flow": injectors}}, changes), "car")
    steps = in_steps(session, quick_figures(session))
    figures = next(step for step in steps if step.changes and (step.next is None or step.next.changes))
    return result(session, figures)


def _subject(one: Result) -> Subject:
    return Subject(one.session, one.figures)


def _first(one: Result) -> str:
    forms = what_first(_subject(one))
    assert forms is not None
    return spaced(forms[0])


def test_a_wire_for_each_pump_is_named_beside_the_pump() -> None:
    one = _told()
    assert one.figures.verdict.limits == ("pump",) and one.figures.way_out == ("pump",)
    other = one.figures.in_place_of_pump
    assert other is not None and other.change == "circuits" and other.works
    assert "a third pump" in _first(one)
    assert "or, in its place, a fused wire for each pump" in _first(one)


def test_the_shop_hears_of_it_too() -> None:
    (table,) = [block for block in shopping(_subject(_told()), _told().words) if isinstance(block, Table)]
    pump = next(cells for cells in table.rows if cells[0].text == "pump")
    assert pump[1].text.endswith("; or, in its place, a fused wire for each pump")


def test_it_is_said_to_be_for_today_where_the_next_goal_takes_the_pump() -> None:
    one = _told(next_power="700 hp")
    assert one.figures.next is not None and "pump" in (one.figures.next.way_out or ())
    assert "or, for this goal alone, a fused wire for each pump" in _first(one)


def test_the_way_out_of_the_scripts_stays_the_one_with_most_margin() -> None:
    plain = plain_result(_told())
    assert plain["way_out"] == ["pump"] and "in_place_of_pump" not in plain


def test_where_no_wire_or_line_is_enough_none_is_named() -> None:
    one = _told(supply="12.6 V")
    assert one.figures.way_out is not None and "pump" in one.figures.way_out
    assert one.figures.in_place_of_pump is None
    assert "in its place" not in _first(one)


def test_no_larger_feed_is_needless_where_a_still_larger_one_cures() -> None:
    one = _told()
    feed = next(change for change in one.figures.changes if change.change == "feed")
    larger = [row for row in one.figures.sizes if row.bore_m > one.figures.pick.bore_m]
    assert feed.size == "-10" and not feed.cures and not larger[-1].limits
    assert not any("feed" in needless for needless in not_needed(_subject(one)))


def test_a_screen_of_eighty_columns_hears_of_it_too() -> None:
    forms = what_first(_subject(_told(injectors="1300 cc/min")))
    assert forms is not None
    fits = next(spaced(form) for form in forms if len(form) <= 76)
    assert fits == "Buy first: injectors of 1350 cc/min. Then a third pump or a wire for each."
