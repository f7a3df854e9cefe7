"""Builds side by side: what was judged differently, in the texts as typed, and which is better in what."""

from __future__ import annotations

from typing import Any

import pytest
from rich.cells import cell_len

from fuelwiz.advice.blocks import Paragraph, Sheet, Table
from fuelwiz.report.compare import builds_that_fit, comparison
from fuelwiz.report.differences import JudgedBuild, differences
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook

from .builds import NAMES, plain, result_of


def judged(data: dict[str, Any], file: str = "build.toml") -> JudgedBuild:
    """A build as it is compared."""
    return JudgedBuild(file, data, result_of(data, file.removesuffix(".toml")))


def example(name: str) -> JudgedBuild:
    """An example as it is compared."""
    return judged(plain(name), f"{name}.toml")


def with_keys(name: str, **changes: Any) -> JudgedBuild:
    """An example with keys of a section changed: goal__power="400 hp"; None takes one out."""
    data = plain(name)
    for path, value in changes.items():
        section, key = path.split("__")
        if value is None:
            data[section].pop(key)
        else:
            data.setdefault(section, {})[key] = value
    return judged(data, "changed.toml")


def found(*builds: JudgedBuild) -> dict[str, tuple[str | None, ...]]:
    """The differences by key."""
    return {item.key: item.texts for item in differences(builds)}


def measured(sheet: Sheet) -> dict[str, list[str]]:
    """The lines of the first table of results."""
    table = next(block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].title == "")
    return {row[0].text: [cell.text.replace("\u00a0", " ") for cell in row[1:]] for row in table.rows}


def test_nothing_differs_from_itself() -> None:
    for name in NAMES:
        assert found(example(name), example(name)) == {}


def test_what_was_typed_stands_as_it_was_typed() -> None:
    changed = with_keys("full-session", goal__power="300 kW", pressure__boost="1.2 bar")
    assert found(example("full-session"), changed) == {
        "goal.power": ("410 hp", "300 kW"),
        "pressure.boost": ("21 psi", "1.2 bar"),
    }


def test_the_same_value_in_another_unit_is_no_difference() -> None:
    changed = with_keys(
        "full-session", pressure__base="300 kPa", pressure__altitude="300.0 m", tank__volume="0.055e3 l"
    )
    assert found(example("full-session"), changed) == {}


def test_what_is_left_out_is_named_as_assumed() -> None:
    changed = with_keys(
        "full-session", goal__reserve=None, pressure__boost=None, engine__bsfc=None, goal__next_boost=None
    )
    assert found(example("full-session"), changed) == {
        "goal.next_boost": ("27 psi", None),
        "engine.bsfc": ("0.78 lb/(hp*h)", None),
        "pressure.boost": ("21 psi", "15 psi (assumed)"),
    }


def test_a_section_that_one_lacks_is_one_line() -> None:
    data = plain("full-session")
    for key in ("surge", "pump", "wiring"):
        del data[key]
    data["feed"]["part"] = []
    assert found(example("full-session"), judged(data)) == {
        "pump": ("sample pump, in-tank", None),
        "wiring": ("given", None),
        "feed.part.0": ("ethanol sensor", None),
        "surge": ("given", None),
    }


def test_lists_are_compared_item_by_item() -> None:
    data = plain("full-session")
    data["feed"]["run"].append({"what": "along the rail", "length": "3 ft"})
    data["feed"]["run"][0]["length"] = "14 ft"
    data["pump"]["curve"][0]["points"][0] = ["20 psi", "110 gal/h"]
    differing = found(example("full-session"), judged(data))
    assert list(differing) == ["pump.curve.0.points", "feed.run.0.length", "feed.run.1"]
    assert differing["feed.run.1"] == (None, "along the rail")
    assert (differing["pump.curve.0.points"][1] or "").startswith("20 psi 110 gal/h, 40 psi 97 gal/h")


def test_names_and_notes_are_no_inputs() -> None:
    data = plain("full-session") | {"name": "other", "notes": "x", "show_units": "metric", "fitted": {}}
    assert found(example("full-session"), judged(data)) == {}


def test_hostile_texts_are_cleaned() -> None:
    data = plain("full-session")
    data["pump"]["name"] = "\x1b[2Jx\u202e"
    assert found(example("full-session"), judged(data))["pump.name"][1] == "[2Jx"


def test_the_better_figure_is_marked() -> None:
    sheet = comparison([example("hill-climb-coupe"), with_keys("hill-climb-coupe", pump__volts="12.7 V")], 80)
    lines = measured(sheet)
    assert lines["works"] == ["yes (better)", "no"]
    assert lines["volts at the pump"] == ["13.5 V (better)", "12.7 V"]
    assert lines["spare"][0].endswith("(better)") and "(better)" not in lines["spare"][1]
    assert lines["velocity"][0] == lines["velocity"][1]
    assert not any("better" in text for text in lines["fuel needed"] + lines["line to fit"])


def test_no_figure_is_rounded_onto_the_limit_that_it_fails() -> None:
    """tests/examples/hill-climb-coupe.json: -6 has 0.14798 to spare, and 15 % is wanted."""
    lines = measured(
        comparison([example("hill-climb-coupe"), with_keys("hill-climb-coupe", feed__chosen="-6")], 80)
    )
    assert lines["works"] == ["yes (better)", "no"]
    assert lines["spare"] == ["18 % (better)", "14.8 %"]


def test_less_is_better_where_less_is() -> None:
    larger = with_keys("full-session", feed__chosen="-6")
    lines = measured(comparison([example("full-session"), larger], 80))
    assert lines["line loss"][0].endswith("(better)") and "better" not in lines["line loss"][1]


def test_nothing_is_better_where_all_look_the_same() -> None:
    lines = measured(comparison([example("full-session"), example("full-session")], 80))
    assert not any("better" in text for texts in lines.values() for text in texts)


def test_three_builds_have_a_best() -> None:
    builds = [example("full-session"), example("twins"), example("hill-climb-coupe")]
    lines = measured(comparison(builds, 120))
    feeds = lines["feeds"]
    assert [text.endswith("(best)") for text in feeds] == [False, True, False]


def test_mixed_goals_are_shown_at_the_crank() -> None:
    wheels = with_keys("full-session", goal__power_at="wheels", goal__driveline_loss="20 %")
    # 410 hp at the wheels is 512.5 at the crank with 20 % lost on the way.
    assert measured(comparison([example("full-session"), wheels], 80))["power at the goal"] == [
        "410 hp",
        "513 hp",
    ]
    assert measured(comparison([wheels, wheels], 80))["power at the goal"] == ["410 hp", "410 hp"]


@pytest.mark.parametrize(("width", "fit"), [(40, 2), (80, 2), (82, 3), (100, 3), (102, 4), (200, 8)])
def test_how_many_fit_at_a_width_is_said(width: int, fit: int) -> None:
    assert builds_that_fit(width) == fit
    said = comparison([example("mild"), example("twins")], width).blocks[-1]
    assert said == Paragraph(f"{width} columns hold {fit} builds side by side.")


def test_builds_that_do_not_fit_follow_beside_the_first() -> None:
    builds = [example(name) for name in ("full-session", "twins", "mild", "goal-alone")]
    sheet = comparison(builds, 80)
    heads = [
        [column.title for column in block.columns[1:]]
        for block in sheet.blocks
        if isinstance(block, Table) and block.columns[0].title == ""
    ]
    names = [build.result.session.name for build in builds]
    assert heads == [[names[0], name] for name in names[1:]]
    assert "the others follow, each beside the first" in text_of(sheet, TextLook())


@pytest.mark.parametrize("width", [60, 80, 100, 120])
def test_no_line_is_too_wide(width: int) -> None:
    builds = [example(name) for name in NAMES]
    long = plain("full-session") | {"name": "x" * 200}
    shown = text_of(comparison([*builds, judged(long)], width), TextLook(width=width))
    assert max(cell_len(line) for line in shown.splitlines()) <= width


def test_builds_of_one_name_are_told_apart_by_their_files() -> None:
    sheet = comparison([example("full-session"), with_keys("full-session", goal__power="420 hp")], 80)
    shown = " ".join(text_of(sheet, TextLook(width=200)).split())
    assert "full-session.toml Good for" in shown and "changed.toml Good for" in shown
    three = [example("full-session"), with_keys("full-session", goal__power="420 hp"), example("mild")]
    shown = " ".join(text_of(comparison(three, 200), TextLook(width=200)).split())
    assert "Gravel-rally wagon (full-session.toml)" in shown and "Gravel-rally wagon (changed.toml)" in shown
    assert "Mild eight (" not in shown


def test_every_answer_stands_on_top() -> None:
    shown = " ".join(
        text_of(comparison([example("twins"), example("no-pump-yet")], 80), TextLook(width=400)).split()
    )
    for name in ("twins", "no-pump-yet"):
        for line in example(name).result.words.answer[:2]:
            assert " ".join(line.replace("\u00a0", " ").split()) in shown


NEXT_ROWS = ("next goal", "works then", "what is wrong then", "spare then", "injector duty then")


def test_the_next_goal_stands_beside_this_years() -> None:
    """The goal of next year, typed as that of today, comes to the same."""
    data = plain("full-session")
    later = plain("full-session")
    later["goal"]["power"], later["pressure"]["boost"] = (
        later["goal"]["next_power"],
        later["goal"]["next_boost"],
    )
    for one in (data, later):
        one["feed"]["chosen"] = "-8"
        one.pop("pull", None)
    rows = measured(comparison([judged(data, "now.toml"), judged(later, "later.toml")], 80))
    plainly = {name: [cell.removesuffix(" (better)") for cell in cells] for name, cells in rows.items()}
    assert plainly["next goal"][0] == "500 hp at 27.0 psi"
    for then, name in (
        ("works then", "works"),
        ("spare then", "spare"),
        ("injector duty then", "injector duty"),
    ):
        assert plainly[then][0] == plainly[name][1], name
    assert plainly["injector duty then"][0] != plainly["injector duty"][0]


def test_a_next_goal_that_nobody_has_takes_no_rows() -> None:
    rows = measured(comparison([example("hill-climb-six"), example("mild")], 80))
    assert not set(NEXT_ROWS) & set(rows)
    with_one = measured(comparison([example("full-session"), example("mild")], 80))
    assert set(NEXT_ROWS) <= set(with_one)


def test_volts_without_a_current_are_better_in_nothing() -> None:
    """No current, no loss in the wire: more volts than anybody knows of."""
    data, bare = plain("full-session"), plain("full-session")
    for one in (data, bare):
        del one["pump"]["volts"]
    del bare["pump"]["current"]
    rows = measured(comparison([judged(data, "amps.toml"), judged(bare, "bare.toml")], 80))
    known, guessed = rows["volts at the pump"]
    assert "(" not in known and "(" not in guessed
    assert guessed.endswith("V, no current given") and float(guessed.split()[0]) > float(known.split()[0])
