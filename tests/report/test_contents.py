"""What stands in a report: the figures behind it, and nothing that contradicts them."""

from __future__ import annotations

import copy
import re
from typing import Any

import pytest

from fuelwiz.advice import Result
from fuelwiz.advice.blocks import Heading, Item, Listing, Pairs, Paragraph, Sheet, Table
from fuelwiz.advice.numbers import Numbers
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.session import inputs_digest

from .builds import NAMES, example, plain, result_of


def section(sheet: Sheet, heading: str) -> list[Any]:
    """The blocks under a heading."""
    starts = [at for at, block in enumerate(sheet.blocks) if isinstance(block, Heading)]
    start = next(at for at in starts if sheet.blocks[at] == Heading(heading))
    end = next((at for at in starts if at > start), len(sheet.blocks))
    return list(sheet.blocks[start + 1 : end])


def tables(sheet: Sheet, heading: str) -> list[Table]:
    """The tables under a heading."""
    return [block for block in section(sheet, heading) if isinstance(block, Table)]


def cells(table: Table) -> list[list[str]]:
    """The texts of a table, row by row."""
    return [[cell.text for cell in row] for row in table.rows]


def items(sheet: Sheet, heading: str) -> list[Item]:
    """The list entries under a heading."""
    blocks = section(sheet, heading)
    return [item for block in blocks if isinstance(block, Listing) for item in block.items]


def said(sheet: Sheet, heading: str) -> str:
    """The sentences under a heading."""
    return " ".join(block.text for block in section(sheet, heading) if isinstance(block, Paragraph))


def pairs(sheet: Sheet, heading: str) -> dict[str, str]:
    """The labeled lines under a heading."""
    blocks = section(sheet, heading)
    return dict(row for block in blocks if isinstance(block, Pairs) for row in block.rows)


@pytest.mark.parametrize("name", NAMES)
def test_one_row_a_size_with_its_verdict(name: str) -> None:
    known = example(name)
    (table,) = tables(sheet_of(known), "Sizes")
    assert len(table.rows) == len(known.figures.sizes)
    for row, size in zip(table.rows, known.figures.sizes, strict=True):
        assert row[0].text.rstrip("*") == size.size
        assert (row[3].text, row[3].mark) == (size.band, None if size.limits else size.band)
        assert row[7].text == {True: "yes", False: "no", None: "–"}[size.works]
        assert row[7].mark == {True: "yes", False: "no", None: None}[size.works]


@pytest.mark.parametrize("name", NAMES)
def test_the_pick_and_its_neighbors_explain_themselves(name: str) -> None:
    known = example(name)
    titles = [block.title for block in section(sheet_of(known), "Sizes") if isinstance(block, Pairs)]
    at = [row.size for row in known.figures.sizes].index(known.figures.verdict.size)
    beside = [known.figures.sizes[i].size for i in (at, at - 1, at + 1) if 0 <= i < len(known.figures.sizes)]
    assert [title.split(",")[0] for title in titles] == beside


@pytest.mark.parametrize("name", [name for name in NAMES if name != "goal-alone"])
def test_the_ladder_adds_up(name: str) -> None:
    known = example(name)
    *_, table = tables(sheet_of(known), "Ladder")
    rows = {row[0]: float(row[1].replace("−", "-")) for row in cells(table)}
    made, could = rows.pop("must make"), rows.pop("could make", None)
    # Each line is rounded to a tenth of a psi, so eight of them may be out by 0.4.
    assert sum(rows.values()) == pytest.approx(made, abs=0.4)
    assert made == pytest.approx((known.figures.pick.pump_rise_Pa or 0) / 6894.757, abs=0.051)
    assert (could is None) == (known.session.pump is None)


def test_solved_ceilings_stand_apart_from_rules_of_thumb() -> None:
    # Figures of tests/examples/full-session.json: injectors 329.5 kW, pump 444 kW; 745.7 W is a horsepower.
    solved, rules = tables(sheet_of(example("full-session")), "Ceilings")
    assert [row[:2] for row in cells(solved)] == [["injectors", "442"], ["pump", "596"]]
    assert {row[0] for row in cells(rules)} == {"filter", "feed line"}
    assert solved.columns[2].head.endswith("410\u00a0hp")
    assert solved.columns[3].head == "Next 500\u00a0hp at 27.0\u00a0psi"
    assert [cell.mark for cell in solved.rows[0]] == [None, None, "yes", "no"]


def _with_the_next_goal_typed(data: dict[str, Any]) -> Result:
    """The same build a season on: the next goal is its own."""
    goal, engine, pressure = data["goal"], data["engine"], data["pressure"]
    goal["power"] = goal.pop("next_power")
    pressure["boost"] = goal.pop("next_boost", pressure.get("boost", "0 psi"))
    engine["induction"] = goal.pop("next_induction", engine["induction"])
    return result_of(data)


def test_ceilings_at_the_next_goal_are_those_of_its_boost() -> None:
    """As the build has them once that goal is typed as its own; today's boost lets the pump seem enough."""
    data = plain("mild")
    data["goal"] |= {"next_power": "600 hp", "next_boost": "20 psi", "next_induction": "supercharger"}
    data["injectors"] = {"rated_flow": "400 cc/min"}
    data["pressure"] |= {"base": "43.5 psi", "reference": "manifold", "regulator": "rail"}
    one, later = result_of(copy.deepcopy(data)), _with_the_next_goal_typed(data)
    following = one.figures.next
    assert following is not None
    wanted = {item.part: item.max_power_W for item in later.figures.ceilings}
    assert {item.part: item.max_power_W for item in following.ceilings} == pytest.approx(wanted, rel=1e-9)
    pump_today = next(item.max_power_W for item in one.figures.ceilings if item.part == "pump")
    assert wanted["pump"] < following.crank_power_W < pump_today
    solved, *_ = tables(sheet_of(one), "Ceilings")
    (pump,) = (line for line in solved.rows if line[0].text == "pump")
    assert pump[2].mark == "yes" and pump[3].mark == "no" and pump[3].text.endswith("short")


@pytest.mark.parametrize("name", NAMES)
def test_no_tick_stands_beside_a_pump_that_is_too_small(name: str) -> None:
    """Nor beside one that lacks its reserve, today or at the next goal."""
    one = example(name)
    found = tables(sheet_of(one), "Ceilings")
    for line in (line for table in found for line in table.rows if line[0].text in ("pump", "pumps")):
        margin = one.figures.pick.margin
        assert margin is not None
        assert (line[2].mark == "yes") == (margin >= one.session.goal.reserve)
        if len(line) > 3:
            assert one.figures.next is not None
            assert not (line[3].mark == "yes" and "pump" in one.figures.next.limits)


def test_what_passes_or_fails_stands_beside_the_ceilings() -> None:
    found = {
        item.text.split(":")[0]: item.mark for item in items(sheet_of(example("full-session")), "Ceilings")
    }
    assert found == {
        "Return at idle": "yes",
        "Wire": "yes",
        "Relief valve": "yes",
        "Dead head": "yes",
    }
    failing = {item.text.split(":")[0]: item for item in items(sheet_of(example("twins")), "Ceilings")}
    assert failing["Return at idle"].mark == "no"
    # A -6 return needs 41 psi where the regulator wants 34.5, so the rail creeps 7 psi high.
    assert (
        "41.3\u00a0psi" in failing["Return at idle"].text
        and "6.8\u00a0psi high" in failing["Return at idle"].text
    )
    assert failing["Wire"].mark == "note" and "needs the wiring" in failing["Wire"].text


@pytest.mark.parametrize(
    ("change", "about", "word"),
    [
        ({"wire": "18 AWG"}, "Wire", "too thin"),
        ({"wire": None}, "Wire", "needs the size of the wire"),
    ],
)
def test_a_wire_that_is_too_thin_or_unknown(change: dict[str, Any], about: str, word: str) -> None:
    data = plain("full-session")
    for key, value in change.items():
        if value is None:
            del data["wiring"][key]
        else:
            data["wiring"][key] = value
    found = next(item for item in items(sheet_of(result_of(data)), "Ceilings") if item.text.startswith(about))
    assert word in found.text


def test_a_relief_that_opens_too_early_and_a_rating_that_is_too_low() -> None:
    data = plain("full-session")
    data["pump"]["relief"] = "60 psi"
    data["feed"]["filter"][0]["pressure_rating"] = "50 psi"
    found = {item.text.split(":")[0]: item for item in items(sheet_of(result_of(data)), "Ceilings")}
    assert found["Relief valve"].mark == "no" and "before the goal is met" in found["Relief valve"].text
    assert found["Dead head"].mark == "no"


@pytest.mark.parametrize("name", NAMES)
def test_every_bad_day_with_its_verdict(name: str) -> None:
    known = example(name)
    found = tables(
        sheet_of(known), "Bad days"
    )  # a bad day of one's own stands beside today in a table before
    rows = cells(found[-1]) if found else []
    assert tuple(row[0] for row in rows) == (known.words.case_names if known.figures.stress else ())
    assert [row[2] for row in rows] == ["yes" if case.works else "no" for case in known.figures.stress]


def test_the_return_table_names_the_smallest_that_holds() -> None:
    (table,) = tables(sheet_of(example("twins")), "Return line")
    # Half of the 34.5 psi at idle is 17.2: the regulator alone takes more, so no size is at ease.
    assert [(row[0], row[6]) for row in cells(table)] == [
        ("-4", "no"),
        ("-6*", "no"),
        ("-8", "just"),
        ("-10", "just"),
        ("-12", "just"),
    ]
    assert "-8 is the smallest return that lets the regulator hold" in text_of(
        sheet_of(example("twins")), TextLook()
    )


def test_parts_and_lengths_name_every_run_with_its_size() -> None:
    (table,) = tables(sheet_of(example("full-session")), "Parts and lengths")
    assert cells(table) == [
        ["feed: tank to engine bay", "PTFE", "-8", "13.0", "2 straight, 2 swept 90°"],
        ["return: regulator to tank", "PTFE", "-6", "13.0", "2 straight, 1 plain outlet"],
    ]


def test_wire_fuse_and_injectors_that_would_do() -> None:
    sheet = sheet_of(example("full-session"))
    # tests/examples/full-session.json: fuse_A 20, smallest_wire "10 AWG"; smallest rating 1.732e-5 m3/s = 1039 cc/min.
    assert pairs(sheet, "Wire and fuse")["fuse"] == "20\u00a0A"
    (wires,) = tables(sheet, "Wire and fuse")
    working = [row[0].text for row in wires.rows if row[-1].mark == "yes"]
    assert working[0] == "10 AWG" and "10 AWG is the thinnest that loses no more than" in said(
        sheet, "Wire and fuse"
    )
    assert "1039\u00a0cc/min each" in said(sheet, "Injectors")
    (ratings,) = tables(sheet, "Injectors")
    assert next(row[0].text for row in ratings.rows if row[-1].mark == "yes") == "4 × 1050"
    assert ratings.columns[0].head == "Injectors, cc/min"


@pytest.mark.parametrize("name", NAMES)
def test_every_assumption_is_told_in_words(name: str) -> None:
    known = example(name)
    found = tables(sheet_of(known), "Assumed")
    rows = cells(found[0]) if found else []
    taken = {item.key: item.effect for item in known.figures.assumed}
    assert sorted(row[3] for row in rows) == sorted(taken)
    moved = [-1.0 if (effect := taken[row[3]]) is None else effect for row in rows]
    assert moved == sorted(moved, reverse=True)
    assert all(row[0] and row[1] for row in rows)


def test_what_is_assumed_is_shown_in_the_units_of_the_build() -> None:
    data = plain("goal-alone")
    us, metric = (sheet_of(result_of(data | {"show_units": units})) for units in ("us", "metric"))
    values = [
        {row[3].text: row[1].text for row in tables(sheet, "Assumed")[0].rows} for sheet in (us, metric)
    ]
    # The file's fallbacks: 40 degC is 104 °F, 43.5 psi is 3.00 bar (6894.757 Pa a psi, NIST SP 811).
    assert [shown["fuel.temperature"] for shown in values] == ["104\u00a0°F", "40\u00a0°C"]
    assert [shown["pressure.base"] for shown in values] == ["43.5\u00a0psi", "3\u00a0bar"]
    assert values[0]["engine.bsfc"].endswith("\u00a0lb/hp·h") and values[1]["engine.bsfc"].endswith(
        "\u00a0g/kWh"
    )
    assert [shown["pressure.regulator"] for shown in values] == ["on the rail"] * 2


def _saved(answer: str, inputs: str) -> str:
    data = plain("full-session")
    data["record"] = {"inputs": inputs, "saved": "2026-05-14", "version": "0.3.0", "answer": answer}
    return " ".join(text_of(sheet_of(result_of(data)), TextLook()).split())


def test_the_answer_of_the_last_save_where_something_has_changed() -> None:
    known = example("full-session")
    same = inputs_digest(known.session)
    assert "Last save" not in _saved(known.words.answer[0], same)
    changed = "You have changed the build since it was saved on 2026-05-14. Result at that time: other."
    assert changed in _saved("other.", "9f86d081884c7d65")
    assert "fuelwiz 0.3.0 gave another result at that time: other." in _saved("other.", same)
    assert "Last save" not in _saved("", same)


def test_metric_builds_are_told_in_metric() -> None:
    data = plain("full-session") | {"show_units": "metric"}
    shown = text_of(sheet_of(result_of(data)), TextLook())
    own = re.sub(r"\([^()]*\)", "", shown.split("Assumed")[0])  # what to buy has the other system in brackets
    assert "psi" not in own.replace("rated for", "")
    assert "bar" in shown and "kW" in shown and "gallons" not in shown.lower()


def test_powers_are_shown_as_the_goal_was_given() -> None:
    data = plain("full-session")
    data["goal"] |= {"power_at": "wheels"}
    known = result_of(data)
    shown = text_of(sheet_of(known), TextLook())
    assert "410 hp at the wheels" in shown
    wheels = Numbers.of(known.session).number("power", known.figures.ceilings[0].max_power_W)
    assert wheels in shown


def test_a_rail_that_leans_out_is_said_at_the_gauge() -> None:
    data = plain("hill-climb-coupe")
    data["pump"]["volts"] = "10 V"
    known = result_of(data)
    held = known.figures.pick.rail_at_goal_Pa
    assert held is not None and held < known.figures.pressure.rail_Pa
    shown = " ".join(text_of(sheet_of(known), TextLook()).split())
    assert "the mixture goes lean" in shown.split("Gauge pressures")[1].split("Pump to look for")[0]
