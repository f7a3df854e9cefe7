"""Blocks on the screen: what a narrow place leaves out, and what it never does."""

from __future__ import annotations

import pytest
from textual.strip import Strip

from fuelwiz.advice.blocks import (
    Block,
    Cell,
    Column,
    Heading,
    Item,
    Listing,
    Mark,
    Pairs,
    Paragraph,
    Table,
    row,
)
from fuelwiz.wizard.block_view import around_own, left_out, lines_of
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .results import LOOKS, text

COLUMNS = (
    Column("Size", whole=True),
    Column("Flow at idle", "gal/h", figures=True, short="Flow", rank=2),
    Column("Velocity", "ft/s", figures=True, rank=3),
    Column("Pressure", "psi", figures=True),
    Column("Works", whole=True),
)
ROWS = (
    row("-4", "130", "25.1", "88.6", Cell("no", "no")),
    row("-6*", "207", "14.4", "41.9", Cell("yes", "yes")),
    row("-8", "216", "8.9", "33.1", None),
)
TABLE = Table(COLUMNS, ROWS, own=1)
BLOCKS: tuple[Block, ...] = (
    Heading("Heads"),
    Paragraph("A sentence that is long enough to take two lines where there are few columns for it."),
    Listing((Item("wrong", "stop", "Stop"), Item("known", "note", "Note"), Item("plain"))),
    Pairs((("label", "what is so"), ("another", "what else is so")), "Title"),
    TABLE,
)


def drawn(*blocks: Block, width: int = 80, look: Look | None = None, one_line: bool = False) -> list[Strip]:
    return lines_of(blocks, Area(look or Look(), width, 24), one_line=one_line)


@pytest.mark.parametrize("width", [30, 40, 59, 60, 80, 120])
@pytest.mark.parametrize("look", LOOKS.values(), ids=list(LOOKS))
def test_every_line_is_as_wide_as_its_place(width: int, look: Look) -> None:
    lines = drawn(*BLOCKS, width=width, look=look)
    assert {line.cell_length for line in lines} == {width}
    assert look.unicode or all(line.text.isascii() for line in lines)


def test_a_blank_line_parts_blocks_but_not_a_heading_from_what_it_heads() -> None:
    assert text(drawn(Heading("Heads"), Paragraph("One."), Paragraph("Two."))) == [
        " Heads",
        "   One.",
        "",
        "   Two.",
    ]


def test_where_there_is_room_every_column_shows_with_its_unit() -> None:
    assert text(drawn(TABLE)) == [
        "   Size  Flow at idle, gal/h  Velocity, ft/s  Pressure, psi  Works",
        "   -4                    130            25.1           88.6  ✗ no",
        "   -6*                   207            14.4           41.9  ✓ yes",
        "   -8                    216             8.9           33.1    –",
    ]


@pytest.mark.parametrize(
    ("width", "titles"),
    [
        (66, ["Size", "Flow at idle,", "gal/h", "Velocity,", "ft/s", "Pressure,", "psi", "Works"]),
        (46, ["Flow at idle", "Velocity", "Pressure", "Size", "gal/h", "ft/s", "psi", "Works"]),
        (38, ["Flow", "Velocity", "Pressure", "Size", "gal/h", "ft/s", "psi", "Works"]),
        (30, ["Flow", "Pressure", "Size", "gal/h", "psi", "Works"]),
        (24, ["Pressure", "Size", "psi", "Works"]),
    ],
)
def test_gaps_go_first_then_units_then_long_titles_then_columns(width: int, titles: list[str]) -> None:
    lines = text(drawn(TABLE, width=width))
    heads = lines[: len(lines) - len(ROWS)]
    words = " ".join(" ".join(heads).split())
    assert words == " ".join(titles)
    for line, size in zip(lines[len(heads) :], ("-4", "-6*", "-8"), strict=True):
        assert size in line
    assert "88.6" in lines[-3] and "✗ no" in lines[-3]


def test_a_row_in_one_line_says_the_short_form_and_that_there_is_more() -> None:
    columns = (Column("Case"), Column("What happens"))
    long = "the pump gives less than the engine burns, so fit heavier wire and another pump besides"
    table = Table(
        columns, (row("low volts", Cell(long, in_one_line=("too little",))), row("hot", Cell(long)))
    )
    whole, short = drawn(table, width=60), text(drawn(table, width=60, one_line=True))
    assert len(whole) > 3 and long in " ".join(" ".join(line[14:] for line in text(whole)[3:]).split())
    assert len(short) == 3
    assert short[1].endswith("too little") and short[2].endswith("…")


def test_the_builders_own_row_stands_out() -> None:
    look = Look()
    grounds = [
        {style.bgcolor for _, style, _ in line if style is not None} for line in drawn(TABLE, look=look)[1:]
    ]
    assert grounds[1] == {look.style("text", "row").bgcolor}
    assert grounds[0] == grounds[2] == {look.style("text").bgcolor}


@pytest.mark.parametrize(("mark", "role"), [("no", "too fast"), ("yes", "easy")])
def test_a_mark_colors_its_word(mark: Mark, role: str) -> None:
    look = Look()
    (_, line) = drawn(Table((Column("Works"),), (row(Cell("word", mark)),)), look=look)
    colors = {style.color for piece, style, _ in line if style is not None and piece.strip()}
    assert colors == {look.style(role).color}  # type: ignore[arg-type]


def test_with_sixteen_colors_the_mark_is_a_chip_and_its_word_is_plain() -> None:
    look = Look(colors="16")
    (_, line) = drawn(Table((Column("Works"),), (row(Cell("word", "no")),)), look=look)
    styles = {piece.strip(): style for piece, style, _ in line if style is not None and piece.strip()}
    assert styles["✗"].bgcolor is not None and styles["word"].bgcolor is None


@pytest.mark.parametrize(("own", "most", "shown"), [(0, 2, "01"), (2, 2, "12"), (1, 1, "1"), (None, 1, "1")])
def test_rows_that_do_not_fit_leave_those_around_the_builders_own(
    own: int | None, most: int, shown: str
) -> None:
    """Without a row of the builder's own it is the first that works."""
    fitting = around_own(TABLE._replace(own=own), most)
    assert fitting.rows == tuple(ROWS[int(at)] for at in shown)
    assert (fitting.own is None) == (own is None)
    if own is not None and fitting.own is not None:
        assert fitting.rows[fitting.own] == ROWS[own]


def test_a_table_that_fits_is_left_alone() -> None:
    assert around_own(TABLE, 3) is TABLE


@pytest.mark.parametrize(("own", "most", "said"), [(0, 2, "below"), (len(TABLE.rows) - 1, 2, "above")])
def test_rows_that_are_not_shown_are_counted(own: int, most: int, said: str) -> None:
    fitting = around_own(TABLE._replace(own=own), most)
    hidden = len(TABLE.rows) - most
    assert left_out(TABLE, fitting) == f"not shown: {hidden} {said}; the report has every row"
    assert left_out(TABLE, TABLE) == ""
