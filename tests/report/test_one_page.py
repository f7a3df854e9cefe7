"""The report of one page: what stands on it, and that it is one page."""

from __future__ import annotations

import itertools
import re
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.report.compose import page_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import validate
from fuelwiz.sizing import assess

from .builds import NAMES, SAMPLES, example, plain, result_of

ON_THE_PAGE = (
    "Path",
    "Ceilings",
    "Sizes",
    "Gauge pressures",
    "What to buy",
    "Bad days",
    "Assumed",
    "Cautions",
)
GAL_H = 3600 / 0.003785411784  # in 1 m3/s: a US gallon is 231 cubic inches, and an inch 25.4 mm
MOST_LINES = 75
FILES = sorted(SAMPLES.glob("*.toml"))


@cache
def sample(path: Path) -> Result:
    session = validate(tomllib.loads(path.read_text(encoding="utf-8")), path.stem)
    return result(session, assess(session))


def page(one: Result, *, unicode: bool = True) -> str:
    return text_of(page_of(one), TextLook(unicode=unicode)).replace("\u00a0", " ")


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_sample_takes_one_page(path: Path) -> None:
    lines = page(sample(path)).splitlines()
    assert 40 <= len(lines) <= MOST_LINES
    assert max(map(len, lines)) <= 80


@pytest.mark.parametrize("unicode", [True, False])
@pytest.mark.parametrize("name", NAMES)
def test_its_sections_in_their_order(name: str, unicode: bool) -> None:
    lines = page(example(name), unicode=unicode).splitlines()
    heads = [re.sub(r" [─-]{3,}$", "", line) for line in lines]
    places = [heads.index(head) for head in ON_THE_PAGE]
    assert places == sorted(places)


@pytest.mark.parametrize("name", NAMES)
def test_the_answer_comes_first(name: str) -> None:
    one = example(name)
    told = " ".join(page(one).partition("Path ─")[0].split())
    said = [text.replace("\u00a0", " ") for text in one.words.answer]
    assert all(text in told for text in said)
    assert [told.index(text) for text in said] == sorted(told.index(text) for text in said)


def test_bad_days_that_pass_are_one_entry_and_those_that_fail_say_what_they_change() -> None:
    one = sample(SAMPLES / "strip-twins.toml")
    bad = page(one).partition("Bad days ─")[2].partition("Assumed ─")[0]
    assert "✓" not in bad and bad.count("✗ Fail only for what is wrong today (") == 1
    in_one = " ".join(bad.split())
    assert (
        "the regulator is too small for the return flow): low volts with 9 % to spare, hot fuel 33 %"
        in in_one
    )
    assert "✗ One pump stopped: the pumps are 31 % short." in bad
    assert bad.count("return") == 1, "the return is wrong today already"


def test_days_that_fail_as_today_name_what_still_fails_then() -> None:
    """Today the reserve is missing too, but no day asks for it: the day fails for the line alone."""
    data = plain("hill-climb-coupe")
    data["goal"]["power"] = "250 hp"
    data["feed"]["chosen"] = "-4"
    one = result_of(data)
    assert one.figures.verdict.limits == ("velocity", "delivery", "pump")
    bad = " ".join(page(one).partition("Bad days ─")[2].partition("Assumed ─")[0].split())
    assert (
        "✗ Fails only for what is wrong today (the feed line is too small): less ethanol with 10 % to spare."
        in bad
    )
    assert "the pump is too small" not in bad


def test_what_to_buy_leaves_out_what_is_on_the_car() -> None:
    data = tomllib.loads((SAMPLES / "gravel-four.toml").read_text(encoding="utf-8"))
    data["fitted"]["has"] = ["line", "filter"]
    session = validate(data, "fitted")
    buy = page(result(session, assess(session))).partition("What to buy ─")[2].partition("Bad days ─")[0]
    assert "On the car already: feed line and filter." in buy
    assert "\nfilter" not in buy and "\nfeed line" not in buy and "\npump" in buy
    in_one = " ".join(buy.replace("\u00a0", " ").split())
    assert (
        "Next, 500 hp" in buy and re.search(r"\d gal/h \(\d+ L/h\) at [\d.]+ psi", in_one) and " bar)" in buy
    )


def test_the_way_out_is_bought_first() -> None:
    buy = page(sample(SAMPLES / "slalom-methanol.toml")).partition("What to buy ─")[2].splitlines()
    assert sample(SAMPLES / "slalom-methanol.toml").figures.way_out == ("feed",)
    assert buy[2].startswith("feed line    -6 PTFE")


def test_a_pump_that_a_larger_line_lets_keep_up_is_not_to_be_bought() -> None:
    one = sample(SAMPLES / "slalom-methanol.toml")
    assert "pump" in one.figures.verdict.limits and one.figures.way_out == ("feed",)
    assert "\npump         yours: sample pump S\n" in page(one)


@pytest.mark.parametrize(
    ("name", "said"), [("strip-twins", True), ("gravel-four", False), ("slalom-methanol", False)]
)
def test_works_is_said_of_the_size_where_the_build_fails_for_another_part(name: str, said: bool) -> None:
    one = sample(SAMPLES / f"{name}.toml")
    note = "Works judges the size alone: the regulator is too small for the return flow.\n"
    assert (note in page(one)) == said and ("Works judges" in page(one)) == said


@pytest.mark.parametrize(("name", "counted"), [("gravel-four", True), ("strip-twins", False)])
def test_one_more_pump_is_said_to_be_off_at_idle(name: str, counted: bool) -> None:
    one = sample(SAMPLES / f"{name}.toml")
    following = one.figures.next
    assert ("pump" in ((following and following.way_out) or ())) == counted
    in_one = " ".join(page(one).split())
    assert ("a second pump stays off at idle." in in_one) == counted
    assert ("pump stays off" in in_one) == counted


def test_the_next_goal_asks_for_nothing_that_is_there_and_enough() -> None:
    """The pumps, filter, injectors and wire of this build carry its next goal as they are."""
    one = example("outside-twins")
    assert one.figures.next is not None and not one.figures.next.limits
    buy = page(one).partition("What to buy ─")[2].partition("Bad days ─")[0].splitlines()
    there = {line[:14].strip() for line in buy if line.endswith("yours is enough")}
    assert there == {"pump", "filter", "injectors", "wire"}


def test_a_filter_carries_what_one_more_pump_gives_at_the_next_goal() -> None:
    """As the same build with that goal and that pump as its own: all of it passes the filter, at the rail."""
    data = tomllib.loads((SAMPLES / "gravel-four.toml").read_text(encoding="utf-8"))
    one = sample(SAMPLES / "gravel-four.toml")
    assert one.figures.next is not None and one.figures.next.way_out == ("pump",)
    assert re.search(r"\nfilter +yours: 10 micron, for 120 gal/h +for 130 gal/h or more\n", page(one))
    assert "yours is enough" not in _bought("filter", data), "the way out is not worked out yet"
    data["goal"] = {"power": "500 hp"}
    data["pressure"]["boost"] = f"{one.figures.next.boost_Pa} Pa"
    data["pump"] |= {"count": 2, "running_at_idle": 1}
    capacity = result_of(data).figures.pick.capacity_m3_s
    assert capacity is not None and round(capacity * GAL_H) == 130


def test_a_wire_that_is_thin_but_carries_its_fuse_need_not_be_bought() -> None:
    one = example("street-turbo")
    assert not one.figures.verdict.limits
    assert _bought("wire", plain("street-turbo")).startswith(
        "wire yours: 12 AWG, but thin; better 10 AWG or thicker"
    )


def _bought(part: str, data: dict[str, Any]) -> str:
    """A row of what to buy, its lines in one."""
    lines = page(result_of(data)).partition("What to buy ─")[2].partition("Bad days ─")[0].splitlines()
    at = next(at for at, text in enumerate(lines) if text.startswith(part))
    more = itertools.takewhile(lambda text: text.startswith(" "), lines[at + 1 :])
    return " ".join(" ".join((lines[at], *more)).split())


def test_wire_and_fuse_stay_on_the_list_without_a_current() -> None:
    data = plain("street-turbo")
    assert "AWG or thicker, 15 ft each way" in _bought("wire", data)
    del data["pump"]["current"]
    assert _bought("wire", data) == "wire once the pump's current is known, 15 ft each way"
    assert _bought("relay", data).startswith("relay, fuse for each circuit, once the pump's current is known")


def test_wire_and_fuse_say_what_is_missing_beside_the_current() -> None:
    data = plain("street-turbo")
    del data["wiring"]
    assert _bought("wire", data) == "wire once its length is known"
    assert _bought("relay", data).startswith("relay, fuse for each circuit, once the wiring is given")


def test_the_next_goal_says_its_wire_and_fuse_where_the_pump_stays() -> None:
    """As the same build with that goal typed as its own; a pump more draws what nobody knows yet."""
    data = plain("street-turbo")
    del data["pull"]
    data["goal"] |= {"power": "200 hp", "next_power": "250 hp", "next_boost": "20 psi"}
    said = _bought("wire", data) + _bought("relay", data)
    typed = plain("street-turbo")
    del typed["pull"]
    typed["goal"]["power"], typed["pressure"]["boost"] = "250 hp", "20 psi"
    figures = result_of(typed).figures.wiring
    assert figures is not None and figures.smallest_wire is not None and figures.fuse_A is not None
    following = result_of(data).figures.next
    assert following is not None and following.wiring is not None
    assert following.wiring.fuse_A == figures.fuse_A
    assert following.wiring.current_A == pytest.approx(figures.current_A, rel=0.02)
    assert said.count(" or thicker") == 2 and "by the current" not in said
    data["goal"]["next_power"] = "900 hp"
    assert "by the current of the pumps then" in _bought("wire", data)


def test_a_bad_day_that_is_short_is_not_among_those_that_pass() -> None:
    """Also where the pump is short today already."""
    data = plain("street-turbo")
    data["goal"]["power"] = "700 hp"
    one = result_of(data)
    assert one.figures.pick.margin is not None and one.figures.pick.margin < 0
    assert "no bad day fails" not in one.words.answer[1]
    bad = page(one).partition("Bad days ─")[2].partition("Assumed ─")[0]
    short = [case for case in one.figures.stress if case.margin is not None and case.margin < 0]
    assert short and bad.count("✗") >= len(short)


def test_the_path_marks_what_limits_and_names_gaps() -> None:
    way = page(sample(SAMPLES / "slalom-methanol.toml")).partition("Path ─")[2].partition("Ceilings ─")[0]
    (line,) = (line for line in way.splitlines() if "│ -4 PTFE" in line)
    assert "13.2 ft/s" in line and "✗ 20.1 psi" in line
    assert "· not given yet: injectors" in way
    assert "assumed: for 120 gal/h" in way


def test_injectors_of_the_next_goal_say_that_they_allow_for_boost() -> None:
    """By hand: 58 psi less 8 psi of boost."""
    data = plain("mild")
    data["pressure"] |= {"base": "58 psi", "reference": "atmosphere"}
    data["goal"] |= {"next_power": "500 hp", "next_boost": "8 psi", "next_induction": "supercharger"}
    assert "50.0 psi that boost leaves across them" in _bought("injectors", data)
    data["pressure"]["reference"] = "manifold"
    assert "counts" not in _bought("injectors", data)


def test_warnings_that_bear_on_the_answer_stand_on_the_page_in_a_line_each() -> None:
    data = plain("pipe")
    data["goal"] |= {"next_power": "400 hp", "next_boost": "8 psi", "next_induction": "turbo"}
    data["pressure"]["reference"] = "atmosphere"
    told = page(result_of(data)).partition("Warnings ─")[2].partition("Bad days ─")[0]
    said = " ".join(told.split())
    assert "! One point of the pump's curve is known; the rest is a guess." in told
    assert "! The pump's curve is for 12.0 V, it gets 13.0 V" in told
    assert "! For 400 hp at 8.0 psi of boost: the regulator has no hose to the manifold" in said
    assert told.count("!") == 3, "what the list of what to buy says, the ratings, is not said twice"


@pytest.mark.parametrize("name", NAMES)
def test_no_page_is_without_a_warning_that_nothing_else_on_it_says(name: str) -> None:
    """Bad days, ratings, alcohol and a shortage have sections of their own."""
    elsewhere = {
        "stress",
        "feed.run.pressure_rating",
        "goal.power",
        "pump.count",
        "feed.run.hose",
        "fuel.temperature",
    }
    said = " ".join(page(example(name)).split())
    for finding in example(name).words.findings:
        if finding.severity == "warning" and finding.about not in elsewhere:
            what = " ".join(finding.text.replace("\u00a0", " ").split())
            assert any(f"! {what[:length]}" in said for length in range(30, len(what))), what


def test_a_next_goal_that_has_become_this_one_has_no_column_of_its_own() -> None:
    data = plain("mild")
    data["goal"] |= {"next_power": "350 hp"}
    assert "Next, " not in page(result_of(data)) and "next" not in " ".join(result_of(data).words.answer)
    data["goal"] |= {"next_boost": "8 psi", "next_induction": "supercharger"}
    assert "Next, 350 hp at 8.0 psi" in page(result_of(data)), "the same power with boost is another goal"
    data["engine"]["induction"], data["pressure"]["boost"] = "supercharger", "8 psi"
    assert "Next, " not in page(result_of(data))
