"""The report of one page: what stands on it, and that it is one page."""

from __future__ import annotations

import re
import tomllib
from functools import cache
from pathlib import Path

import pytest

from fuelwiz.advice import Result, result
from fuelwiz.report.compose import page_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import validate
from fuelwiz.sizing import assess

from .builds import NAMES, SAMPLES, example

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
    assert bad.count("✓") == 1 and "Pass, with to spare: low volts 9 %" in bad
    assert "✗ One pump stopped: the pumps are 31 % short." in bad
    assert "return" not in bad, "the return is wrong today already"


def test_what_to_buy_leaves_out_what_is_on_the_car() -> None:
    data = tomllib.loads((SAMPLES / "gravel-four.toml").read_text(encoding="utf-8"))
    data["fitted"]["has"] = ["line", "filter"]
    session = validate(data, "fitted")
    buy = page(result(session, assess(session))).partition("What to buy ─")[2].partition("Bad days ─")[0]
    assert "On the car already: feed line and filter." in buy
    assert "\nfilter" not in buy and "\nfeed line" not in buy and "\npump" in buy
    assert "Next, 500 hp" in buy and re.search(r"\d gal/h \(\d+ L/h\) at [\d.]+ psi", buy) and " bar)" in buy


def test_the_way_out_is_bought_first() -> None:
    buy = page(sample(SAMPLES / "slalom-methanol.toml")).partition("What to buy ─")[2].splitlines()
    assert sample(SAMPLES / "slalom-methanol.toml").figures.way_out == ("feed",)
    assert buy[2].startswith("feed line    -6 PTFE")


def test_the_path_marks_what_limits_and_names_gaps() -> None:
    way = page(sample(SAMPLES / "slalom-methanol.toml")).partition("Path ─")[2].partition("Ceilings ─")[0]
    (line,) = (line for line in way.splitlines() if "│ -4 PTFE" in line)
    assert "13.2 ft/s" in line and "✗ 20.1 psi" in line
    assert "· not given yet: injectors" in way
    assert "assumed: for 120 gal/h" in way
