"""Every pane stays in its place on every terminal, and says what its picture shows in words."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from advice.builds import spaced
from textual.strip import Strip

from fuelwiz.advice import Result, result
from fuelwiz.advice.blocks import Heading, Table
from fuelwiz.advice.sections.captions import CAPTIONS
from fuelwiz.report.compose import sheet_of
from fuelwiz.session import validate
from fuelwiz.sizing import quick_figures
from fuelwiz.sizing.figures import Plot
from fuelwiz.wizard.live.answer import answer_lines
from fuelwiz.wizard.live.ceilings import ceiling_lines
from fuelwiz.wizard.live.curves import curve_lines
from fuelwiz.wizard.live.explain import explanation_lines
from fuelwiz.wizard.live.ladder import ladder_lines
from fuelwiz.wizard.live.pane import LivePane
from fuelwiz.wizard.live.parts import PARTS, part_lines
from fuelwiz.wizard.live.reading import read_lines
from fuelwiz.wizard.live.rule import BAD_DAYS, FINDINGS, LOG, VIEWS, next_view, rule_line
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, NAMES, crossing_lines, drawn_result, text

EXAMPLES = Path(__file__).parents[1] / "examples"
HELD = "Not updated: still using boost 22\u00a0psi until yours can be read."
PANES: dict[str, Callable[..., list[Strip]]] = {
    "answer": lambda result, size, area: answer_lines(result, area),
    "held": lambda result, size, area: answer_lines(result, area, HELD),
    "explanation": explanation_lines,
    "more": lambda result, size, area: explanation_lines(result, size, area, more=True),
    "ladder": ladder_lines,
    "curves": lambda result, size, area: curve_lines(crossing_lines(result, size), result, size, area),
    "ceilings": lambda result, size, area: ceiling_lines(result, area),
    "bad days": lambda result, size, area: read_lines(BAD_DAYS, result, area),
    "findings": lambda result, size, area: read_lines(FINDINGS, result, area),
    **{part: lambda result, size, area, part=part: part_lines(part, result, area) or [] for part in PARTS},
}
SCROLL = ("bad days", "findings", *PARTS)
OF_A_SIZE = ("explanation", "more", "ladder", "curves")
"""What the highlighted size changes; the other panes are those of the whole build."""


def drawn(
    pane: str,
    name: str = "hill-climb-six",
    size: str = "-8",
    *,
    width: int = 80,
    rows: int = 12,
    look: Look | None = None,
    units: str = "us",
) -> list[Strip]:
    return PANES[pane](drawn_result(name, units), size, Area(look or Look(), width, rows))


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
def test_every_pane_keeps_to_its_place(pane: str, look: Look) -> None:
    for name in NAMES:
        for size in ("-4", "-8", "-16") if pane in OF_A_SIZE else ("-8",):
            for width in (59, 60, 75, 80, 109):
                for rows in (1, 2, 4, 7, 11, 16):
                    lines = drawn(pane, name, size, width=width, rows=rows, look=look)
                    assert all(line.cell_length == width for line in lines)
                    assert len(lines) <= rows or pane in SCROLL


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("units", ["us", "metric"])
def test_ascii_terminals_get_ascii_alone(pane: str, units: str) -> None:
    for name in NAMES:
        for line in drawn(pane, name, look=LOOKS["ascii"], rows=14, units=units):
            assert line.text.isascii(), line.text


@pytest.mark.parametrize("pane", [pane for pane in PANES if pane not in ("held", "answer")])
def test_a_held_pane_has_one_grey(pane: str) -> None:
    look = Look()
    for line in drawn(pane, look=look.grayed, rows=14):
        assert {style.color for _, style, _ in line} == {look.style("muted").color}


@pytest.mark.parametrize("pane", PANES)
def test_colors_say_nothing_that_the_text_does_not(pane: str) -> None:
    for name in NAMES:
        assert text(drawn(pane, name)) == text(drawn(pane, name, look=LOOKS["none"]))


def test_the_answer_stands_first_and_what_to_do_under_it() -> None:
    words = drawn_result("hill-climb-six").words
    lines = text(drawn("answer", rows=8))
    assert lines[0] == " ! Short of your reserve: good for 851 of 750 hp, 13 % to spare, you want 15."
    assert " ".join(line.strip() for line in lines[1:3]) == spaced(words.answer[1])
    assert "   Choose -8: F6, Enter." in lines


@pytest.mark.parametrize(("width", "rows"), [(80, 4), (100, 3), (59, 4), (60, 3), (109, 12)])
def test_a_line_that_does_not_fit_gives_way_to_a_shorter_form(width: int, rows: int) -> None:
    words = drawn_result("twins").words
    lines = [line.strip(" !") for line in text(drawn("answer", "twins", rows=rows, width=width))]
    for forms in words.answer_forms[:rows]:
        assert any(spaced(form) in " ".join(lines) for form in forms)
    assert not any("…" in line for line in lines)


def test_the_mark_before_the_answer_says_works_fails_or_open() -> None:
    marks = {
        name: drawn("answer", name)[0].text[1] for name in ("hill-climb-six", "full-session", "goal-alone")
    }
    assert marks == {"hill-climb-six": "!", "full-session": "✓", "goal-alone": "?"}


@pytest.mark.parametrize(("width", "rows"), [(80, 2), (59, 4), (60, 1)])
def test_a_held_answer_says_so_in_words(width: int, rows: int) -> None:
    lines = drawn("held", width=width, rows=rows)
    (held,) = [line for line in lines if line.text[1] == "!"]
    assert "Not updated" in held.text
    hues = {style.color for line in lines for piece, style, _ in line if piece.strip() not in ("!", "")}
    assert hues <= {Look().style("text").color, Look().style("muted").color}


def test_a_refused_size_says_why_first() -> None:
    labels = [line.split()[0] for line in text(drawn("explanation", size="-6", rows=4))]
    assert labels == ["no", "means", "costs", "bigger"]
    labels = [line.split()[0] for line in text(drawn("explanation", size="-8", rows=4))]
    assert labels == ["means", "costs", "bigger", "smaller"]


@pytest.mark.parametrize(("name", "size", "said"), [("twins", "-8", True), ("twins", "-6", False)])
def test_a_size_that_works_in_a_build_that_does_not_says_so_first(name: str, size: str, said: bool) -> None:
    """Of twins the return alone is too small: a yes at -8 is no yes to the build, -6 is refused by itself."""
    result = drawn_result(name)
    assert result.figures.row(size).works == said and result.figures.verdict.limits == ("return",)
    lines = text(drawn("explanation", name, size, rows=4))
    first = "   but     not the build: the regulator is too small for the return flow"
    assert (lines[0].replace("\u00a0", " ").rstrip() == first) == said
    assert any("not the build" in line for line in lines) == said


def test_each_label_gets_a_line_before_any_text_gets_two() -> None:
    tight, roomy = (text(drawn("explanation", "twins", width=59, rows=rows)) for rows in (5, 8))
    assert [line[3:10].strip() for line in tight] == ["but", "means", "costs", "bigger", "smaller"]
    assert tight[1].endswith("…") and "…" not in "".join(roomy)


def test_the_table_in_focus_says_four_things_more() -> None:
    more = text(drawn("more", rows=8))
    assert [line[3:10].strip() for line in more[4:]] == ["lost in", "at most", "quoted", "flow"]
    ladder = drawn_result("hill-climb-six").figures.row("-8").ladder
    sat = [float(part) for part in re.findall(r"\d+\.\d", more[4])]
    lost = sorted((ladder.friction_Pa, ladder.fittings_Pa, ladder.filters_Pa), reverse=True)
    assert sat == pytest.approx(
        [part / 6894.757 for part in lost], abs=0.05
    )  # 1 psi is 6894.757 Pa (NIST SP 811)
    assert "5.1 ft/s, good" in more[5] and "2.9 ft/s" in more[6] and "turbulent" in more[7]


def test_before_the_lines_are_known_the_explanation_says_what_comes() -> None:
    assert text(drawn("explanation", "goal-alone", rows=4))[1:] == [
        "   open    loss, spare and power need a feed line",
        "   new?    F1 explains, ? puts in a sensible value",
    ]


def test_the_ladder_adds_up() -> None:
    lines = text(drawn("ladder", rows=12))
    figures = {line[3:14].strip(): float(line.split()[-1]) for line in lines[1:9]}
    steps = [figures[name] for name in ("base", "boost", "filter", "line", "fittings", "inlet")]
    assert sum(steps) == pytest.approx(figures["must make"], abs=0.05 * len(steps))
    assert figures["could make"] == 92.2  # as the independent solver has it, in tests/examples
    assert lines[9].strip() == ("At the goal the pump must make 69.0 psi and could make 92.2: 23.2 psi to")
    assert lines[10].strip() == "spare."


def test_each_step_of_the_ladder_begins_where_the_one_above_it_ends() -> None:
    bars = [re.search(r"█+", line).span() for line in text(drawn("ladder", size="-4"))[1:7]]
    assert bars[0][0] == 14
    for above, below in pairwise(bars):
        assert above[1] - 1 <= below[0] <= above[1]


def test_under_eight_rows_the_small_steps_are_one() -> None:
    names = [line[3:14].strip() for line in text(drawn("ladder", rows=7))]
    assert names[1:6] == ["base", "boost", "losses", "must make", "could make"]


def test_a_pump_that_cannot_make_it_is_said_to_fall_short() -> None:
    lines = drawn("ladder", size="-4")
    could = next(line for line in lines if "could make" in line.text)
    assert Look().style("fault").color in {style.color for _, style, _ in could}
    assert "short" in "".join(text(lines)[-2:])


def test_curves_meet_at_the_mark() -> None:
    for width, rows in ((80, 11), (59, 16), (60, 10)):
        lines = text(drawn("curves", width=width, rows=rows))
        plot = [line for line in lines if "│" in line]
        assert sum("◆" in line for line in plot) == 1
        for name in ("pump", "goal 106", "-8"):
            assert any(name in line for line in plot), name
        assert "meet at ◆: 124 gal/h at 70 psi" in " ".join(" ".join(lines).split())


def test_the_mark_stands_where_the_axes_say() -> None:
    lines = text(drawn("curves", width=80, rows=24))
    row = next(at for at, line in enumerate(lines) if "◆" in line)
    ticks = {at: float(line[:5]) for at, line in enumerate(lines) if re.match(r" *\d+│", line)}
    (first, high), *_, (second, low) = ticks.items()
    pressure = high + (row - first) / (second - first) * (low - high)
    row_height = (high - low) / (second - first)
    assert pressure == pytest.approx(70.4, abs=row_height)  # worked out apart from the picture
    flows = [
        (match.start() + len(match[0]) // 2, float(match[0])) for match in re.finditer(r"\d+", lines[-2])
    ]
    (left, least), (right, most) = flows[0], flows[-1]
    flow = least + (lines[row].index("◆") - left) / (right - left) * (most - least)
    assert flow == pytest.approx(124.4, abs=1.5 * (most - least) / (right - left))  # and at 124 gal/h


def test_curves_mark_the_points_of_the_pull_and_say_so() -> None:
    plot = crossing_lines(drawn_result("hill-climb-six", "us"), "-8")
    assert plot is not None and plot.crossing is not None
    flow, pressure = plot.crossing
    with_pull = replace(
        plot, pull=((0.8 * flow, 1.05 * pressure), (0.9 * flow, pressure), (0.1 * flow, pressure))
    )
    for look, mark in ((LOOKS["none"], "●"), (LOOKS["ascii"], "@")):
        shown = _curves(with_pull, look)
        assert "".join(shown[:-4]).count(mark) == 2, "one lies far to the left of the picture"
        assert f"The {mark} are the points of the pull." in " ".join(" ".join(shown).split())
        assert mark not in "".join(_curves(plot, look))


def test_curves_of_a_pump_of_unknown_kind_are_those_of_both_laws() -> None:
    plot = crossing_lines(drawn_result("hill-climb-six", "us"), "-8")
    assert plot is not None
    higher = tuple(1.1 * each for each in plot.pump_pressures)
    shown = _curves(replace(plot, by_turbine=plot.pump_pressures, by_displacement=higher), LOOKS["ascii"])
    picture = [line for line in shown if "|" in line]
    for text_in_it in ("turbine", "displacement", "o", "d"):
        assert any(text_in_it in line[6:] for line in picture), text_in_it
    assert not any(" pump" in line for line in picture)


def _curves(plot: Plot, look: Look) -> list[str]:
    return text(curve_lines(plot, drawn_result("hill-climb-six", "us"), "-8", Area(look, 80, 18)))


def test_sizes_whose_curves_run_together_are_one_curve_with_all_their_names() -> None:
    """Dashes within a row of the highlighted curve would blur both: their names stand behind its own instead."""
    result = drawn_result("full-session")
    plot = crossing_lines(result, "-12")
    assert plot is not None
    lines = curve_lines(plot, result, "-12", Area(Look(), 80, 10))
    (named,) = [line for line in lines if "-12" in line.text and "│" in line.text]
    assert named.text.rstrip().endswith("-12 -10 -16")
    assert Look().style("focus").color in {style.color for piece, style, _ in named if "-12" in piece}
    far = replace(plot, systems={**plot.systems, "-10": tuple(2.0 * at for at in plot.systems["-10"])})
    drawn_apart = curve_lines(far, result, "-12", Area(Look(), 80, 10))
    (label,) = [line.text.rstrip() for line in drawn_apart if "-12" in line.text and "│" in line.text]
    assert label.endswith("-12 -16")


def test_curves_need_seven_rows_and_a_pump() -> None:
    assert "7 rows" in text(drawn("curves", rows=6))[0]
    assert "◆" in "".join(text(drawn("curves", rows=7)))
    assert "needs a pump" in text(drawn("curves", "no-pump-yet"))[0]


def test_letters_draw_the_curves_where_there_are_no_dots() -> None:
    plot = [line for line in text(drawn("curves", look=LOOKS["ascii"], rows=16)) if "|" in line]
    for letter in "o=.:X":
        assert any(letter in line[6:] for line in plot), letter


def test_what_was_solved_stands_apart_from_rules_of_thumb() -> None:
    lines = text(drawn("ceilings", "full-session"))
    names = [re.match(r" +([A-Za-z ]*[a-z])", line)[1] for line in lines[1:7]]
    assert names == ["Solved", "injectors", "pump", "By rule of thumb", "filter", "feed line"]
    assert "goal 410" in lines[0]
    assert "█" in lines[2] and "▒" in lines[5]


def _mild_with(**goal: str) -> Result:
    """The build without boost, with another goal."""
    data = tomllib.loads((EXAMPLES / "mild.toml").read_text(encoding="utf-8"))
    data["goal"] |= goal
    session = validate(data, "mild")
    return result(session, quick_figures(session))


def test_the_next_goal_marks_the_ceilings_only_where_they_hold_for_it() -> None:
    """With more boost a pump is good for less than its bar says: then its figures at that goal are said."""
    boosted = _mild_with(next_power="400 hp", next_boost="8 psi", next_induction="supercharger")
    other = text(ceiling_lines(boosted, Area(Look(), 80, 12)))
    assert "goal 350" in other[0] and "next" not in other[0]
    assert any("Next, 400" in line for line in other)
    alike = _mild_with(next_power="400 hp")
    lines = text(ceiling_lines(alike, Area(Look(), 80, 12)))
    assert "goal 350" in lines[0] and "next 400" in lines[0]
    assert not any("Next, " in line for line in lines)


def test_a_ceiling_under_the_goal_is_marked() -> None:
    result = drawn_result("hill-climb-six")
    low = tuple(replace(part, max_power_W=part.max_power_W / 2) for part in result.figures.ceilings)
    short = replace(result, figures=replace(result.figures, ceilings=low))
    bars = [line for line in text(ceiling_lines(short, Area(Look(), 80, 12))) if "█" in line or "▒" in line]
    assert len(bars) == 3 and all("! " in line for line in bars)
    assert not any("! " in line for line in text(drawn("ceilings")))


def test_each_bad_day_has_its_line() -> None:
    lines = text(drawn("bad days", rows=12))
    cases = drawn_result("hill-climb-six").figures.stress
    names = drawn_result("hill-climb-six").words.case_names
    assert lines[0].strip() == "Wrong today already, so not said again below: the pump is too small."
    lines = lines[-len(cases) - 1 :]
    for line, case, name in zip(lines[1:], cases, names, strict=True):
        assert line[3:].startswith(name)
        assert ("✗ no " in line) == (case.works is False)
        assert ("✓ yes " in line) == (case.works is True)
    for line, case, what in zip(lines[1:], cases, drawn_result("hill-climb-six").words.stress, strict=True):
        changes, _, fails = what.partition(": ")
        said = (changes if case.works else fails[:1].upper() + fails[1:]).replace("\u00a0", " ")
        assert said[:12] in line


@pytest.mark.parametrize("width", [60, 80])
@pytest.mark.parametrize("units", ["us", "metric"])
def test_what_happens_on_a_bad_day_is_short_enough_for_its_line(width: int, units: str) -> None:
    for name in NAMES:
        result = drawn_result(name, units)
        lines = text(read_lines(BAD_DAYS, result, Area(Look(), width, 9)))
        for case in result.words.case_names:
            own = [line for line in lines if line[3:].startswith(f"{case}  ")]
            assert not any("…" in line for line in own), own


def test_bad_days_in_focus_are_told_whole() -> None:
    result = drawn_result("hill-climb-six")
    whole = " ".join(" ".join(text(read_lines(BAD_DAYS, result, Area(Look(), 80, 4), whole=True))).split())
    assert "…" not in whole
    assert "What helps: heavier wire" in whole


def test_findings_come_gravest_first_and_whole() -> None:
    for name in NAMES:
        lines = text(drawn("findings", name, rows=4))
        lines = lines[: lines.index(" Cautions")]
        words = [line[3:10].strip() for line in lines if line[3:10].strip()]
        assert words == sorted(words, key=("Stop", "Warning", "Note").index)
        marks = {line[3:10].strip(): line[1] for line in lines if line[1:2].strip()}
        assert all(marks[word] == {"Stop": "✗", "Warning": "!", "Note": "·"}[word] for word in words)
        told = " ".join(" ".join(line[11:] for line in lines).split())
        for finding in drawn_result(name).words.findings:
            assert finding.text.replace("\u00a0", " ") in told


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("width", [59, 60, 80, 109])
def test_the_rule_brackets_the_view_that_shows(view: str, width: int) -> None:
    for all_names in (False, True):
        line = rule_line(view, ("question 12 of 14",), Area(Look(), width, 1), all_names=all_names)
        assert line.cell_length == width and re.findall(r"\[([\w ]+)\]", line.text) == [view]
        if not all_names:
            assert f"{VIEWS.index(view) + 1} of {len(VIEWS)}, F5 {next_view(view)} " in line.text
            assert "question 12 of 14" in line.text
        elif width >= 80:
            assert all(name in line.text for name in VIEWS)


def test_the_rule_names_the_view_and_what_it_shows() -> None:
    rule = rule_line("sizes", ("question 1 of 5",), Area(Look(), 80, 1)).text
    at = VIEWS.index("sizes") + 1
    told = f"─[sizes] {at} of {len(VIEWS)}, F5 changes ─ question 1 of 5 "
    caption = " each size at the goal ─"
    assert rule == told + "─" * (80 - len(told) - len(caption)) + caption
    assert "each size" not in rule_line("sizes", ("question 1 of 5",), Area(Look(), 60, 1)).text
    assert set(CAPTIONS) == {*VIEWS, LOG}


def test_the_views_go_round() -> None:
    seen = [VIEWS[0]]
    while (following := next_view(seen[-1])) != VIEWS[0]:
        seen.append(following)
    assert tuple(seen) == VIEWS


LIVE = Path(__file__).parents[2] / "fuelwiz" / "wizard" / "live"
ABOUT_THE_SCREEN = {
    "Type the power that you want: the answer starts with it.",
    "more below: the arrows",
    "more below: F6, then the arrows",
    "F1 explains, ? puts in a sensible value",
    " rows: F6, or a taller window.",
    "Enter tries it as a what-if",
    "F6, then Enter: as a what-if",
    "The build names no log. Its file is asked for in Measured; F8 lists those that are at hand.",
    "The log has not been held against the build as it is: F8 in Measured, at the log, reads it.",
}


def strings_of(path: Path) -> Iterator[str]:
    """The texts in a module that are no docstrings, of constants neither."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    docstrings = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docstrings:
            yield node.value


def test_the_live_side_makes_no_sentence_but_about_keys_and_window() -> None:
    """What is said of a build is said in advice, so that the sheet says the same."""
    texts = {text for path in LIVE.glob("*.py") for text in strings_of(path)}
    sentences = {text for text in texts if len(text.split()) > 3 and not text.endswith("}")}
    assert sentences == ABOUT_THE_SCREEN


def test_the_sheet_and_the_live_side_call_a_view_by_one_name() -> None:
    sheet = sheet_of(drawn_result("full-session"))
    headings = {block.text.lower() for block in sheet.blocks if isinstance(block, Heading)}
    assert set(VIEWS) - headings == {"curves"}


@pytest.mark.parametrize("width", [60, 80])
def test_the_last_step_shows_what_to_buy_as_the_sheet_has_it(width: int) -> None:
    result = drawn_result("full-session")
    sheet = sheet_of(result).blocks
    at = next(
        i for i, block in enumerate(sheet) if isinstance(block, Heading) and block.text == "What to buy"
    )
    parts = [
        row[0].text for block in sheet[at + 1 : at + 2] if isinstance(block, Table) for row in block.rows
    ]
    assert len(parts) > 4
    lines = text(part_lines("summary", result, Area(Look(), width, 6)) or [])
    assert [part for part in parts if any(line.strip().startswith(part) for line in lines)] == parts
    assert not any("…" in line for line in lines)


@pytest.mark.parametrize(("width", "rows"), [(60, 13), (80, 14), (59, 33), (80, 47)])
def test_all_that_is_to_buy_can_be_read_page_by_page(width: int, rows: int) -> None:
    pane, area = LivePane(Look()), Area(Look(), width, rows)
    pane.about, pane._result = "summary", drawn_result("full-session")
    whole = text(part_lines("summary", drawn_result("full-session"), area) or [])
    seen = []
    for _ in whole:
        page = text(pane.painted(area))
        seen += page
        if "more below: PgDn" not in page[-1]:
            break
        assert pane.part_scrolls
        pane.scrolled += max(pane._room - 1, 1)
    assert set(whole) <= set(seen)
    assert len(set(whole)) > 8


def test_a_step_is_read_from_its_top() -> None:
    pane = LivePane(Look())
    pane.about, pane.scrolled = "summary", 3
    pane.show(None, "")
    assert pane.scrolled == 0


def test_the_rule_says_what_a_step_shows_for_its_part() -> None:
    pane = LivePane(Look())
    for about, caption in (("goal", "each size at the goal"), ("summary", "what to buy")):
        pane.about = about
        pane._result = drawn_result("full-session")
        assert caption in pane.painted(Area(Look(), 80, 14))[0].text
    pane.table_focused = True
    assert "each size at the goal" in pane.painted(Area(Look(), 80, 14))[0].text
    pane.table_focused, pane._result, pane.about = False, None, "goal"
    assert "what to buy" not in pane.painted(Area(Look(), 80, 14))[0].text
