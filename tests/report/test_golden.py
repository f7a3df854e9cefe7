"""Sheets as they were last looked at: one of every kind of block in each form, and every kind of shape.

Look at what changed before it is kept: FUELWIZ_GOLDEN=1 writes the files of `golden/` anew.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from pathlib import Path
from typing import get_args

import pytest
from markdown_it import MarkdownIt

from fuelwiz.advice.blocks import (
    Block,
    Cell,
    Column,
    FuelPath,
    Heading,
    Item,
    Listing,
    Pairs,
    Paragraph,
    PathLine,
    Sheet,
    Table,
    row,
)
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.page import html_of
from fuelwiz.report.page.pictures import Picture
from fuelwiz.report.page.pictures.bars import WIDTH, Bar, Line, bars
from fuelwiz.report.page.pictures.shapes import Dot, Sign, Stroke, Word, legend
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook

GOLDEN = Path(__file__).parent / "golden"
SHEET = Sheet(
    "A car & its <fuel>",
    (
        Paragraph("410 hp at the crank; regulator at the rail."),
        Paragraph("Good for 442 hp of the 410 wanted: the injectors are the limit.", strong=True),
        Paragraph("Least to spare: 16 % on low volts.\n9 in 10: 37 to 54 % to spare."),
        Heading("Path"),
        FuelPath(
            (
                PathLine("tank", "tank", "14.5 gal, 50 % full", comes_out="lasts 8 min", place="stop"),
                PathLine("strainer", "strainer", "pump inlet", gap=True),
                PathLine(
                    "pump", "pump", "2 × sample pump R, 13.3 V", comes_out="makes 66 of 87 psi", place="stop"
                ),
                PathLine("filter", "filter", "for 120 gal/h", comes_out="0.5 psi", assumed=True),
                PathLine("run", "-8 PTFE", "13 ft, 2 straight, 2 swept 90°", "2.2 ft/s", "0.7 psi"),
                PathLine("rail", "rail", "43.5 + 21 psi of boost", comes_out="64.5 psi", place="stop"),
                PathLine(
                    "injectors",
                    "injectors",
                    "4 × 1120 cc/min",
                    comes_out="87 % open",
                    place="branch",
                    mark="no",
                ),
                PathLine("regulator", "regulator", "6 psi at 100 gal/h", comes_out="5.2 psi at idle"),
                PathLine("tank", "tank", place="stop"),
            )
        ),
        Heading("What to buy"),
        Table(
            (Column("Part", whole=True), Column("This goal")),
            (
                row("pump", "yours: sample pump R"),
                row("feed line", "-8 PTFE 15 ft, ends: 3 straight, 3 swept 90°"),
            ),
            boxes=True,
        ),
        Heading("Gauge pressures"),
        Table(
            (Column("Engine"), Column("At the rail", "psi", figures=True)),
            (row("idling", "34.7"), row("full power at the goal", "64.5")),
        ),
        Paragraph("Relieve the pressure before you fit a gauge.", quiet=True),
        Heading("Sizes"),
        Table(
            (Column("Size"), Column("Velocity", "ft/s", figures=True), Column("Works")),
            (
                row("-4", "10.5", Cell("no", "no")),
                row("-6", "3.8", Cell("yes", "yes")),
                row("-8*", "2.2", Cell("yes", "yes")),
            ),
            own=2,
        ),
        Pairs((("means", "the loss hardly matters"), ("costs", "1.5 psi")), "-8, chosen"),
        Heading("Findings"),
        Listing(
            (Item("The pump is too small.", "stop", "Stop"), Item("Look at the wire.", "warning", "Warning"))
        ),
        Listing((Item("No more than a list."), Item("Another | of its entries."))),
        Listing((Item("Ask the maker."),), boxes=True),
        Heading("Cautions"),
        Listing((Item("Relieve the pressure before you open a line."),)),
    ),
)


def pictures() -> dict[str, Picture]:
    """One of bars, and one with every other shape; neither stands for a real build."""
    rows = (Bar("pump", 0.0, 572.0, "572", "works"), Bar("feed line", 0.0, 300.0, "300", "fails"))
    height, shapes = bars(rows, (Line("goal 410", 410.0, "goal"),), figures="hp")
    drawn = (
        Stroke(((10.0, 10.0), (50.0, 40.5)), "pump"),
        Dot(50.0, 40.5, "focus", diamond=True),
        Dot(20.0, 20.0, "pump"),
        Sign(80.0, 20.0, "pump", "muted"),
        Word(100.0, 20.0, "a < b", "strong", "end"),
        *legend([("pump", "pump"), ("through -8", "focus")], 8.0, 70.0, 90.0),
    )
    return {
        "Ceilings": Picture("ceilings", "Ceilings", "In hp: pump 572.", "Each alone.", WIDTH, height, shapes),
        "Sizes": Picture("sizes", "Sizes", "Two lines.", "Two lines meet.", 120.0, 100.0, drawn),
    }


FORMS: dict[str, Callable[[], str]] = {
    "sheet.txt": lambda: text_of(SHEET, TextLook(width=80, unicode=True)),
    "sheet-40.txt": lambda: text_of(SHEET, TextLook(width=40, unicode=False)),
    "sheet.md": lambda: markdown_of(SHEET),
    "sheet.html": lambda: html_of(SHEET, pictures()),
}


@pytest.mark.parametrize("name", FORMS)
def test_a_sheet_is_as_it_was_looked_at(name: str) -> None:
    made = FORMS[name]()
    if os.environ.get("FUELWIZ_GOLDEN"):
        (GOLDEN / name).write_text(made, encoding="utf-8")
    assert made == (GOLDEN / name).read_text(encoding="utf-8")


def test_the_sheet_has_every_kind_of_block() -> None:
    assert {type(block) for block in SHEET.blocks} == set(get_args(Block))


def test_markdown_shows_tables_and_the_way_in_a_block_of_code() -> None:
    """By a renderer of others, set as forums set it."""
    shown = MarkdownIt("gfm-like", {"linkify": False}).render(markdown_of(SHEET))
    (code,) = re.findall(r'<pre><code class="language-text">(.*?)</code></pre>', shown, re.S)
    assert code.isascii() and max(map(len, code.splitlines())) <= 80
    assert [line.split()[0] for line in code.splitlines()][:2] == ["tank", "|"]
    assert "x 87 % open" in code
    assert shown.count("<table>") == 3 and shown.count("<th") - shown.count("<thead") == 7
    assert "Another | of its entries." in shown and "A car &amp; its &lt;fuel&gt;" in shown


@pytest.mark.parametrize("width", [40, 80])
def test_text_keeps_to_a_printers_width(width: int) -> None:
    for unicode in (True, False):
        lines = text_of(SHEET, TextLook(width=width, unicode=unicode)).splitlines()
        assert max(map(len, lines)) <= width
        assert unicode or all(line.isascii() for line in lines)
