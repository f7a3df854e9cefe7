"""What is on the car need not be bought as long as it does, for this goal and for the next."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.cli import main
from fuelwiz.report.compose import page_of, sheet_of
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import validate
from fuelwiz.sizing import assess

from .builds import SAMPLES

EVERYTHING = ["line", "return_line", "pump", "regulator", "injectors", "filter", "strainer", "wire"]
WIDE = TextLook(unicode=True, width=200)


def four(power: str = "300 hp", **changes: Any) -> Result:
    """An invented four on E85 with one pump, injectors of 850 cc/min, and all of it on the car."""
    data: dict[str, Any] = {
        "format": 1,
        "goal": {"power": power, "power_at": "wheels", "next_power": "350 hp"},
        "fuel": {"ethanol": "85 %"},
        "pressure": {"base": "3 bar", "boost": "1.4 bar"},
        "pump": {
            "current": [["3 bar", "9 A"], ["5 bar", "13 A"]],
            "curve": [{"points": [["3 bar", "330 L/h"], ["4 bar", "295 L/h"], ["5 bar", "250 L/h"]]}],
        },
        "wiring": {"supply": "13.9 V", "wire": "10 AWG", "length": "3 m", "return_path": "chassis"},
        "feed": {"chosen": "-6", "run": [{"hose": "ptfe", "length": "4.5 m"}], "filter": [{}]},
        "inlet": {"strainer": {}},
        "return_line": {"chosen": "-6", "run": [{"length": "4 m"}]},
        "injectors": {"count": 4, "rated_flow": "850 cc/min"},
        "fitted": {"has": EVERYTHING},
    }
    for section, keys in changes.items():
        data[section] = {**data.get(section, {}), **keys} if isinstance(keys, dict) else keys
    session = validate(data, "four")
    return result(session, assess(session))


def bought(one: Result, look: TextLook = WIDE) -> str:
    """What to buy, from a page."""
    told = text_of(page_of(one), look).replace("\u00a0", " ")
    return told.partition("What to buy ─")[2].partition("Bad days ─")[0]


def row_of(part: str, told: str) -> str:
    """The row of a part; empty where there is none."""
    return next((" ".join(line.split()) for line in told.splitlines() if line.startswith(f"{part}  ")), "")


def already(told: str) -> str:
    """The sentence on what is there."""
    return told.partition("On the car already: ")[2].partition(".")[0]


def test_injectors_on_the_car_that_are_too_small_are_to_be_bought() -> None:
    one = four()
    assert "injectors" in one.figures.verdict.limits and one.figures.way_out == ("injectors",)
    told = bought(one)
    assert ", in place of those on the car" in row_of("injectors", told)
    assert "injectors" not in already(told) and "feed line" in already(told)


def test_every_format_says_so() -> None:
    one = four()
    texts = (text_of(sheet_of(one), WIDE), markdown_of(page_of(one)))
    assert all("in place of those on the car" in text.replace("\u00a0", " ") for text in texts)


def test_a_pump_that_does_today_stands_there_for_the_next_goal_that_it_does_not_do() -> None:
    one = four()
    following = one.figures.next
    assert following is not None and "pump" in following.limits and "pump" not in one.figures.verdict.limits
    told = bought(one)
    assert row_of("pump", told).startswith("pump on the car, does a second pump, or one of ")
    assert "pump" in already(told)


def test_parts_that_do_for_both_goals_are_left_out() -> None:
    one = four(
        "200 hp", goal={"power": "200 hp", "next_power": "210 hp"}, injectors={"rated_flow": "1500 cc/min"}
    )
    assert one.figures.next is not None and one.figures.next.works
    told = bought(one)
    assert not any(row_of(part, told) for part in ("pump", "injectors", "filter", "feed line", "wire"))
    assert "feed line, filter, injectors, pump" in already(told)


def test_a_pump_on_the_car_that_is_too_small_is_to_be_bought() -> None:
    one = four(
        "450 hp", goal={"power": "450 hp", "next_power": "500 hp"}, injectors={"rated_flow": "2500 cc/min"}
    )
    assert one.figures.way_out is not None and "pump" in one.figures.way_out
    told = bought(one)
    assert row_of("pump", told).startswith("pump a second pump, or one of ")
    assert "in place of the one on the car" in row_of("pump", told) and "pump" not in already(told).split(
        ", "
    )


@pytest.mark.parametrize(("rated", "said"), [("100 L/h", True), ("2000 L/h", False)])
def test_a_filter_on_the_car_is_held_against_its_rating(rated: str, said: bool) -> None:
    one = four(feed={"filter": [{"rated_flow": rated, "rated_loss": "0.05 bar"}]})
    assert ("in place of the one on the car" in row_of("filter", bought(one))) == said


@pytest.mark.parametrize(("wire", "said"), [("18 AWG", True), ("10 AWG", False)])
def test_wire_on_the_car_that_does_not_carry_the_fuse_is_to_be_bought(wire: str, said: bool) -> None:
    one = four(wiring={"wire": wire}, injectors={"rated_flow": "2500 cc/min"})
    assert ("fuse" in one.figures.verdict.limits) == said
    assert ("in place of the one on the car" in row_of("wire", bought(one))) == said


def test_a_line_on_the_car_that_is_refused_is_to_be_bought() -> None:
    one = four(feed={"chosen": "-4"}, injectors={"rated_flow": "2500 cc/min"}, goal={"power": "340 hp"})
    assert one.figures.way_out == ("feed",)
    told = bought(one)
    assert row_of("feed line", told).startswith("feed line -6 PTFE") and "feed line" not in already(told)
    assert "in place of the one on the car" in row_of("feed line", told)


def test_injectors_on_the_car_that_are_too_small_cost_money(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """4 of 1300 cc/min at 92 each, as the sample parts file has them."""
    text = (SAMPLES / "gravel-four.toml").read_text(encoding="utf-8")
    path = tmp_path / "small.toml"
    small = text.replace("[fitted]\n", '[fitted]\nhas = ["injectors", "pump"]\n')
    path.write_text(
        small.replace('rated_flow = "1300 cc/min"', 'rated_flow = "900 cc/min"'), encoding="utf-8"
    )
    parts = str(SAMPLES / "parts" / "sample-parts.toml")
    assert main(["report", str(path), "--parts", parts]) == 0
    told = capsys.readouterr().out
    lines = told[told.index("What to buy") :].splitlines()
    assert next(line for line in lines if line.startswith("injectors  ")).split()[-1] == "368"


def test_injectors_to_buy_are_the_least_and_the_next_size_of_the_answer() -> None:
    """Sizes go by 50 cc/min, and the answer names them."""
    one = four()
    figures, following = one.figures.injectors, one.figures.next
    assert figures is not None and figures.smallest_rating_m3_s is not None and following is not None
    assert following.injector_rating_m3_s is not None
    told = row_of("injectors", bought(one))
    for rating in (figures.smallest_rating_m3_s, following.injector_rating_m3_s):
        least = rating * 60e6
        sold = math.ceil(least / 50) * 50
        assert f"{least:.0f} cc/min or more ({sold} is the next size)" in told
    sold = math.ceil(figures.smallest_rating_m3_s * 60e6 / 50) * 50
    assert f"Buy first: injectors of {sold} cc/min" in " ".join(one.words.answer).replace("\u00a0", " ")


def test_a_point_of_full_power_that_asks_for_larger_injectors_is_in_the_list_too() -> None:
    one = four(engine={"rpm": 6500, "cylinders": 4}, pull=[{"power": "330 hp", "boost": "1.2 bar"}])
    named = next(change for change in one.figures.changes if change.change == "injectors").rated_flow_m3_s
    assert named is not None
    assert f"{named * 60e6:.0f} cc/min or more," in row_of("injectors", bought(one))


@pytest.mark.parametrize(("wire", "told"), [
    ("2.5 mm^2", "yours: 2.5 mm²"), ("0.75 mm^2", "1.5 mm² or thicker, 9.8 ft one way, back through the body"),
])  # fmt: skip
def test_wire_of_the_builders_own_is_judged_by_its_area(wire: str, told: str) -> None:
    """A metric size is no gauge of the list, yet it does where its area is enough."""
    one = four(wiring={"wire": wire}, fitted={"has": []}, goal={"next_power": "310 hp"})
    assert row_of("wire", bought(one)).startswith(f"wire {told}")


def test_answer_changes_and_list_agree_on_what_the_next_goal_needs_besides() -> None:
    one = four()
    following = one.figures.next
    assert following is not None and following.way_out is not None
    assert one.figures.way_out == ("injectors",) and set(following.way_out) == {"injectors", "pump"}
    rating = next(each.rated_flow_m3_s for each in following.changes if each.change == "injectors")
    assert rating is not None
    told = " ".join(one.words.answer).replace("\u00a0", " ")
    assert ". For 350 hp: a second pump on its own wire." in told
    assert f"), or {rating * 60e6:.0f} for 350 hp too." in told
    assert "a second pump" in row_of("pump", bought(one))


def test_nothing_is_said_of_a_next_goal_that_needs_nothing_besides() -> None:
    one = four(goal={"next_power": "301 hp"})
    following = one.figures.next
    assert following is not None and following.way_out == one.figures.way_out == ("injectors",)
    ratings = [
        next(each.rated_flow_m3_s for each in changes if each.change == "injectors")
        for changes in (one.figures.changes, following.changes)
    ]
    assert ratings[0] == ratings[1]
    assert "For 301 hp" not in " ".join(one.words.answer).replace("\u00a0", " ")


def test_a_line_of_the_builders_choice_that_works_is_the_one_to_buy() -> None:
    one = four(feed={"chosen": "-8"}, fitted={"has": []}, injectors={"rated_flow": "2500 cc/min"})
    assert one.figures.line_to_fit != "-8" and not one.figures.pick.limits
    assert row_of("feed line", bought(one)).startswith("feed line -8 PTFE")


def test_days_that_fail_only_by_what_fails_today_are_no_days_that_pass() -> None:
    """Screen and page say the same of them: they do not work, and nothing more is wrong."""
    one = four()
    days = {case.case: case for case in one.figures.stress}
    as_today = [name for name, case in days.items() if case.limits == one.figures.verdict.limits]
    assert "low volts" in as_today and days["less ethanol"].works
    told = (
        text_of(page_of(one), WIDE)
        .replace("\u00a0", " ")
        .partition("Bad days ─")[2]
        .partition("Assumed ─")[0]
    )
    passing, failing = (next(line for line in told.splitlines() if line.startswith(mark)) for mark in "✓✗")
    assert "less ethanol" in passing and "low volts" not in passing
    assert failing.startswith(
        "✗ Fail only for what is wrong today (the injectors are too small): low volts with "
    )
    sentences = dict(zip(days, one.words.stress, strict=True))
    assert all("fails only for what is wrong today, " in sentences[name] for name in as_today)


@pytest.mark.parametrize(("hose", "assumed"), [({}, True), ({"hose": "ptfe"}, False)])
def test_a_return_whose_hose_was_not_answered_is_assumed_on_the_path(
    hose: dict[str, str], assumed: bool
) -> None:
    one = four(return_line={"chosen": "-6", "run": [{"length": "4 m", **hose}]})
    path = (
        text_of(page_of(one), WIDE).replace("\u00a0", " ").partition("Path ─")[2].partition("Ceilings ─")[0]
    )
    back = path.partition("regulator")[2].splitlines()[1]
    assert "-6 PTFE" in back and ("assumed: 13.1 ft" in back) == assumed
