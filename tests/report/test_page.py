"""The page of a build: what goes to the wall comes first, every picture says what it shows, all forms agree."""

from __future__ import annotations

import json
import re
from functools import partial

import pytest

from fuelwiz.advice.blocks import FuelPath, PathLine, Table
from fuelwiz.advice.subject import Subject
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.json_form import json_text
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.page.pictures import pictures_of
from fuelwiz.report.page.pictures.axes import Frame, short, ticks
from fuelwiz.report.page.pictures.shapes import Box, Dot, Stroke, Word
from fuelwiz.report.page.pictures.way import way_picture
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.sizing.plot import plot_around

from .builds import NAMES, drawn_together, example, page, plain, result_of
from .test_wall_sheet import Page, read_markdown

WITH_PULL = {
    "pull": [
        {"power": "200 hp", "boost": "10 psi", "rpm": 3000},
        {"power": "380 hp", "boost": "20 psi", "rpm": 5500},
    ]
}


def order(source: str, *texts: str) -> list[int]:
    """Where each text first stands in the body."""
    body = source[source.index("<body") :]
    return [body.index(text) for text in texts]


@pytest.mark.parametrize("name", ["full-session", "twins"])
def test_what_goes_to_the_wall_comes_first(name: str) -> None:
    source = page(example(name))
    heads = [
        f"<h2>{head}</h2>"
        for head in ("Path", "What to buy", "Gauge pressures", "Cautions", "Pump against system", "Ladder")
    ]
    places = order(source, 'class="strong"', *heads, '<details class="part">')
    assert places == sorted(places)


def test_the_rest_is_folded_and_nothing_of_the_wall_is() -> None:
    source = page(example("full-session"))
    folded = re.findall(r"<details.*?</details>", source, re.S)
    assert all("checkbox" not in part and "The fuel" not in part for part in folded)
    assert {"Findings", "Assumed", "Bad days"} <= set(re.findall(r"<summary><h2>(.*?)</h2>", source))


def test_notes_of_any_length_are_folded() -> None:
    data = plain("full-session") | {"notes": "a long story " * 200}
    source = page(result_of(data))
    assert source.index("a long story") > source.index("<h2>Notes</h2>") > source.index("<h2>Cautions</h2>")


def test_each_thing_to_buy_has_a_box() -> None:
    result = example("full-session")
    rows = sum(len(b.rows) for b in sheet_of(result).blocks if isinstance(b, Table) and b.boxes)
    assert rows > 5 and page(result).count('<input type="checkbox">') == rows


@pytest.mark.parametrize("name", NAMES)
def test_tables_have_captions_scopes_and_row_heads(name: str) -> None:
    source = page(example(name))
    for table in re.findall(r"<table>.*?</table>", source, re.S):
        assert re.search(r"<caption[^>]*>[^<]+</caption>", table)
        head, body = table.split("<tbody>")
        assert head.count('<th scope="col"') == head.count("<th ") > 0
        assert body.count("<tr") == body.count("<th scope=row")


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_is_named_and_described(name: str) -> None:
    source = page(example(name))
    for svg in re.findall(r"<svg.*?</svg>", source, re.S):
        title, description = re.search(r'labelledby="(\S+) (\S+)"', svg).groups()
        assert re.search(f'<title id="{title}">[^<]+</title>', svg)
        assert re.search(f'<desc id="{description}">[^<]+</desc>', svg)


@pytest.mark.parametrize("name", NAMES)
def test_all_forms_have_the_figures_of_the_tables(name: str) -> None:
    result = example(name)
    sheet = sheet_of(result)
    shown = drawn_together(Page(page(result)).text)
    read = drawn_together(read_markdown(markdown_of(sheet)).text)
    written = drawn_together(text_of(sheet, TextLook(width=400)))
    for block in sheet.blocks:
        if isinstance(block, Table):
            for row in block.rows:
                for cell in row:
                    text = drawn_together(cell.text)
                    assert text in shown and text in read and text in written


@pytest.mark.parametrize("name", NAMES)
def test_pictures_have_the_figures_of_the_result(name: str) -> None:
    result = example(name)
    data = json.loads(json_text(result))
    subject = Subject(result.session, result.figures)
    drawn = pictures_of(subject, partial(plot_around, result.session))
    assert ("Ceilings" in drawn) == bool(data["ceilings"])
    for item in data["ceilings"]:
        goal = data["demand"]["crank_power_W"]
        told = subject.numbers.number("power", item["max_power_W"], goal)
        assert told in drawn["Ceilings"].description
    if data["spread"] is not None:
        for end in ("low", "high"):
            told = subject.numbers.number("percent", data["spread"]["margin"][end], 0.0)
            assert told in drawn["How sure"].sentence


def test_the_curves_mark_goal_meeting_point_and_pull() -> None:
    result = result_of(plain("full-session") | WITH_PULL)
    picture = pictures_of(Subject(result.session, result.figures), partial(plot_around, result.session))[
        "Pump against system"
    ]
    dots = [shape for shape in picture.shapes if isinstance(shape, Dot)]
    assert [dot.diamond for dot in dots] == [False, False, True]
    assert any(isinstance(shape, Word) and shape.text.startswith("goal ") for shape in picture.shapes)
    assert "The dots are the points of the pull." in picture.sentence


def test_a_pump_of_unknown_kind_is_drawn_by_both_laws() -> None:
    data = plain("full-session")
    data["pump"].pop("kind", None)
    data["pump"]["volts"] = "12.0 V"
    result = result_of(data)
    picture = pictures_of(Subject(result.session, result.figures), partial(plot_around, result.session))[
        "Pump against system"
    ]
    kinds = [shape.kind for shape in picture.shapes if isinstance(shape, Stroke)]
    assert "pump" in kinds and "could" in kinds
    assert "The kind of pump is not known" in picture.sentence
    data["pump"]["kind"] = "turbine"
    result = result_of(data)
    known = pictures_of(Subject(result.session, result.figures), partial(plot_around, result.session))
    assert "kind of pump" not in known["Pump against system"].sentence


def test_the_pull_is_drawn_by_engine_speed() -> None:
    result = result_of(plain("full-session") | WITH_PULL)
    drawn = pictures_of(Subject(result.session, result.figures), None)
    assert "Pump against system" not in drawn
    assert "3000 rpm burns" in drawn["Pull"].description and "5500 rpm burns" in drawn["Pull"].description


def test_bars_end_where_their_figures_do() -> None:
    result = example("full-session")
    picture = pictures_of(Subject(result.session, result.figures), None)["Ladder"]
    boxes = [shape for shape in picture.shapes if isinstance(shape, Box)]
    ladder = result.figures.pick.ladder
    assert boxes[1].x == pytest.approx(boxes[0].x + boxes[0].width)
    assert boxes[1].width / boxes[0].width == pytest.approx(ladder.boost_Pa / ladder.base_Pa)


def test_a_frame_cuts_a_curve_where_it_leaves() -> None:
    frame = Frame(0, 0, 100, 100, 0.0, 10.0, 0.0, 10.0)
    assert frame.place(0.0, 10.0) == (0.0, 0.0) and frame.place(10.0, 0.0) == (100.0, 100.0)
    assert frame.curve([(0.0, 20.0), (10.0, 0.0)]) == pytest.approx([(50.0, 0.0), (100.0, 100.0)])


@pytest.mark.parametrize(
    ("low", "high", "wanted"),
    [
        (0, 100, [0, 20, 40, 60, 80, 100]),
        (0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]),
        (3000, 5500, [3000, 3500, 4000, 4500, 5000, 5500]),
    ],
)
def test_ticks_are_round(low: float, high: float, wanted: list[float]) -> None:
    assert ticks(low, high) == pytest.approx(wanted)
    assert short(-0.2) == "\u22120.2"


WAY = FuelPath(
    (
        PathLine("tank", "tank", "14.5 gal", comes_out="lasts 8 min", place="stop"),
        PathLine("filter", "filter", "for 120 gal/h", comes_out="0.5 psi", assumed=True),
        PathLine("injectors", "injectors", "4 of them", comes_out="87 % open", place="branch", mark="no"),
    )
)


def test_the_way_has_every_part_with_its_figures_and_marks_what_limits() -> None:
    picture = way_picture(WAY)
    words = [shape for shape in picture.shapes if isinstance(shape, Word)]
    assert [word.text for word in words if word.kind == "fails"] == ["injectors", "✗ 87 % open"]
    assert {"tank", "lasts 8 min", "assumed: for 120 gal/h"} <= {word.text for word in words}
    assert picture.description.startswith("tank, 14.5 gal, lasts 8 min; filter, assumed: for 120 gal/h")
    assert picture.height > max(word.y for word in words)
