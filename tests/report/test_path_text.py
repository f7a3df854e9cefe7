"""The fuel's way as text: a row a part, two where it is narrow, and nothing left out."""

from __future__ import annotations

import pytest
from rich.cells import cell_len

from fuelwiz.advice.blocks import FuelPath, Item, Listing, PathLine, Sheet
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.path_text import path_lines
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.terminal.folding import in_ascii

from .builds import plain, result_of

PATH = FuelPath(
    (
        PathLine(
            "tank",
            "tank",
            "55 l, half full, 104\u00a0°F",
            comes_out="lasts 8 min at 410\u00a0hp",
            place="stop",
        ),
        PathLine("strainer", "strainer", "for 120\u00a0gal/h", comes_out="0.1\u00a0psi"),
        PathLine(
            "pump", "pump", "1 × sample pump R", comes_out="makes 66\u00a0psi, could make 87", place="stop"
        ),
        PathLine("filter", "filter", "Which filter?", gap=True),
        PathLine("run", "-8 PTFE", "13 ft, 2 straight, 2 swept 90°", "2.2\u00a0ft/s", "0.4\u00a0psi"),
        PathLine("rail", "rail", "43.5 + 21 psi of boost", comes_out="64.5\u00a0psi", place="stop"),
        PathLine(
            "injectors", "injectors", "4 × 1200", comes_out="87\u00a0% open, of 85", place="branch", mark="no"
        ),
        PathLine("regulator", "regulator", "6 psi at 100 gal/h", comes_out="5.1\u00a0psi", assumed=True),
        PathLine("tank", "tank", place="stop"),
    )
)


def test_at_80_columns_each_part_has_a_row() -> None:
    lines = path_lines(PATH, 80, str)
    assert len(lines) == len(PATH.lines)
    assert lines[0].split() == [
        "tank",
        "55",
        "l,",
        "half",
        "full,",
        "104",
        "°F",
        "lasts",
        "8",
        "min",
        "at",
        "410",
        "hp",
    ]
    assert lines[0].endswith("lasts 8 min at 410 hp") and cell_len(lines[0]) == 80
    assert lines[1].startswith("  │ strainer")
    assert lines[3].split() == ["│", "filter", "·", "Which", "filter?"]
    assert lines[6].startswith("  ├ injectors") and lines[6].endswith("✗ 87 % open, of 85")
    assert "assumed: 6 psi at 100 gal/h" in lines[7]
    assert lines[8] == " tank"


@pytest.mark.parametrize("width", [40, 44, 63, 64, 72, 80])
@pytest.mark.parametrize("fold", [str, in_ascii])
def test_at_any_width_all_is_said(width: int, fold: type[str]) -> None:
    lines = path_lines(PATH, width, fold)
    assert max(map(cell_len, lines)) <= width
    words = " ".join(lines).split()
    for line in PATH.lines:
        for text in (line.name, line.given_text, line.speed, line.comes_out):
            for word in fold(text).replace("\u00a0", " ").rstrip(",").split():
                assert word in words or f"{word}," in words


def test_ascii_is_ascii() -> None:
    assert "\n".join(path_lines(PATH, 80, in_ascii)).isascii()


def test_markdown_has_it_in_a_block_of_code() -> None:
    path = FuelPath((PathLine("pump", "```", place="stop"),))
    source = markdown_of(Sheet("x", (path, Listing((Item("a pump"),), boxes=True))))
    assert "````text\n ```\n````" in source and "- [ ] a pump" in source


def test_a_list_to_tick_has_boxes() -> None:
    text = text_of(Sheet("x", (Listing((Item("a pump"),), boxes=True),)), TextLook())
    assert "[ ] a pump" in text


@pytest.mark.parametrize(
    ("lost", "length", "at_fault"),
    [("12 psi", "15 ft", "regulator"), ("2 psi", "40 ft", "-6 PTFE")],
)
def test_a_return_that_fails_is_marked_where_most_of_the_pressure_is_made(
    lost: str, length: str, at_fault: str
) -> None:
    data = plain("twins")
    data["return_line"] |= {"regulator": {"rated_flow": "140 gal/h", "rated_loss": lost}, "sizes": ["-6"]}
    data["return_line"]["run"][0]["length"] = length
    made = result_of(data)
    assert "return" in made.figures.verdict.limits
    ways = [block for block in sheet_of(made).blocks if isinstance(block, FuelPath)]
    assert [line.name for line in ways[0].lines if line.mark == "no"] == [at_fault]
