"""All four forms of a report agree figure by figure: JSON with the tables, and these cell by cell in each form."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from typing import Any

import pytest
from markdown_it import MarkdownIt

from fuelwiz.advice.blocks import Heading, Table
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.json_form import json_text
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.page import html_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook

from .builds import NAMES, drawn_together, example

FOOT, INCH, PSI, HP = 0.3048, 0.0254, 6894.757293168, 745.69987158227  # NIST SP 811, appendix B.8
GALLON_AN_HOUR = 3.785411784e-3 / 3600  # the same
FIGURES: dict[str, tuple[str, dict[str, tuple[str, float]]]] = {
    "Sizes": (
        "sizes",
        {
            "Bore, in": ("bore_m", INCH),
            "Velocity, ft/s": ("velocity_m_s", FOOT),
            "Loss, psi": ("feed_loss_Pa", PSI),
            "Spare, %": ("margin", 0.01),
        },
    ),
    "Pull": (
        "pull",
        {
            "Speed, rpm": ("rpm", 1.0),
            "Boost, psi": ("boost_Pa", PSI),
            "Fuel, gal/h": ("flow_m3_s", GALLON_AN_HOUR),
            "Spare, %": ("margin", 0.01),
            "Duty, %": ("duty", 0.01),
        },
    ),
    "Bad days": ("stress", {"Spare, %": ("margin", 0.01)}),
    "Return line": (
        "return_line.sizes",
        {
            "Flow at idle, gal/h": ("flow_m3_s", GALLON_AN_HOUR),
            "Velocity, ft/s": ("velocity_m_s", FOOT),
            "Backs up to, psi": ("back_pressure_Pa", PSI),
            "Regulator, psi": ("regulator_loss_Pa", PSI),
            "Creep, psi": ("creep_Pa", PSI),
        },
    ),
}
"""By the section: the key of its figures in JSON, and by the head of a column which figure, in what."""


class Cells(HTMLParser):
    """The tables of a page, as rows of texts."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.tables: list[list[list[str]]] = []
        self._inside = False
        self.feed(source)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("th", "td"):
            self.tables[-1][-1].append("")
            self._inside = True

    def handle_endtag(self, tag: str) -> None:
        if tag in ("th", "td"):
            self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.tables[-1][-1][-1] += data


def cells_of(source: str) -> list[list[list[str]]]:
    """The tables of a page, the marks before their texts left out."""
    return [
        [[drawn_together(cell).lstrip("✓✗~! ") for cell in cells] for cells in table]
        for table in Cells(source).tables
    ]


def tables(name: str) -> Iterator[tuple[str, Table]]:
    """The tables of an example, each with the heading that it stands under."""
    heading = ""
    for block in sheet_of(example(name)).blocks:
        if isinstance(block, Heading):
            heading = block.text
        elif isinstance(block, Table):
            yield heading, block


@cache
def in_json(name: str) -> Any:
    return json.loads(json_text(example(name)))


@pytest.mark.parametrize("name", NAMES)
def test_each_cell_is_the_same_in_each_form(name: str) -> None:
    sheet = sheet_of(example(name))
    wanted = [
        [
            [drawn_together(column.head) for column in table.columns],
            *[[drawn_together(cell.text) for cell in row] for row in table.rows],
        ]
        for _, table in tables(name)
    ]
    marked = [[[cell.lstrip("✓✗~! ") for cell in row] for row in table] for table in wanted]
    rendered = MarkdownIt("gfm-like", {"linkify": False}).render(markdown_of(sheet))
    assert cells_of(rendered) == marked
    assert sorted(cells_of(html_of(sheet))) == sorted(marked)
    lines = [drawn_together(line) for line in text_of(sheet, TextLook(width=400)).splitlines()]
    for table in wanted:
        for row in table[1:]:
            assert any(_in_order(row, line) for line in lines), row


def _in_order(cells: list[str], line: str) -> bool:
    at = 0
    for cell in cells:
        at = line.find(cell, at)
        if at < 0:
            return False
        at += len(cell)
    return True


@pytest.mark.parametrize("name", NAMES)
def test_the_tables_have_the_figures_of_the_json(name: str) -> None:
    found = 0
    for heading, table in tables(name):
        key, columns = FIGURES.get(heading, ("", {}))
        heads = [column.head for column in table.columns]
        if not columns or not set(columns) <= set(heads):
            continue
        figures = in_json(name)
        for part in key.split("."):
            figures = figures[part]
        assert len(table.rows) == len(figures)
        for row, of in zip(table.rows, figures, strict=True):
            for head, (figure, unit) in columns.items():
                assert _agrees(row[heads.index(head)].text, of[figure], unit), (heading, head, figure)
                found += 1
    assert found or name == "goal-alone" or example(name).session.show_units != "us"


def _agrees(shown: str, figure: float | None, unit: float) -> bool:
    """Whether a figure is rounded as shown, half of its last digit either way; "–" where there is none."""
    if figure is None:
        return shown == "–"
    half = 0.5 * 10.0 ** -len(shown.partition(".")[2]) * 1.0001
    return bool(abs(float(shown.replace("\u2212", "-")) - figure / unit) <= half)


@pytest.mark.parametrize("name", NAMES)
def test_ceilings_and_ladder_have_the_figures_of_the_json(name: str) -> None:
    whole, session = in_json(name), example(name).session
    if session.show_units != "us" or not whole["ceilings"]:
        return
    at_goal = 1.0 - session.goal.driveline_loss if session.goal.power_at == "wheels" else 1.0
    shown = [row[1].text for heading, table in tables(name) if heading == "Ceilings" for row in table.rows]
    wanted = [
        one["max_power_W"] * at_goal
        for basis in ("solved", "rule")
        for one in whole["ceilings"]
        if one["basis"] == basis
    ]
    assert all(_agrees(text, figure, HP) for text, figure in zip(shown, wanted, strict=True))
    pick = next(row for row in whole["sizes"] if row["size"] == whole["verdict"]["size"])
    (ladder,) = [table for heading, table in tables(name) if heading == "Ladder"]
    steps = [value for key, value in pick["ladder"].items() if key != "could_make_Pa"]
    told = {drawn_together(row[0].text): row[1].text for row in ladder.rows}
    assert _agrees(told.pop("must make"), pick["pump_rise_Pa"], PSI)
    if "could make" in told:
        assert _agrees(told.pop("could make"), pick["ladder"]["could_make_Pa"], PSI)
    left = [step for step in steps if abs(step) >= 0.05 * PSI]
    assert len(told) == len(left)
    assert all(_agrees(text, step, PSI) for text, step in zip(told.values(), left, strict=True))


@pytest.mark.parametrize("name", NAMES)
def test_each_guess_has_the_margins_of_the_json_the_smaller_first(name: str) -> None:
    spread = in_json(name)["spread"]
    guesses = [row for heading, table in tables(name) if heading == "How sure" for row in table.rows]
    assert len(guesses) == (0 if spread is None else len(spread["inputs"]))
    for row, one in zip(guesses, spread["inputs"] if spread else [], strict=True):
        ends = sorted((one["low"], one["high"]))
        assert all(_agrees(cell.text, end, 0.01) for cell, end in zip(row[2:4], ends, strict=True))
