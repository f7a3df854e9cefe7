"""Lines keep their width whatever is written on them, and text breaks where it may."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from fuelwiz.printable import NO_BREAK
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area, Row, clip, pad, wrap

ANY_TEXT = st.text(st.sampled_from("ab-8 ,;.\u00a0✓é燃😀漢"), max_size=60)


@given(ANY_TEXT, st.integers(0, 30))
def test_clipped_text_fits(text: str, width: int) -> None:
    assert cell_len(clip(text, width, "…")) <= width


@given(ANY_TEXT, st.integers(0, 30), st.booleans())
def test_padded_text_is_exactly_so_wide(text: str, width: int, right: bool) -> None:
    short = pad(text, width, right=right)
    assert cell_len(short) == width or (cell_len(text) > width and cell_len(short) <= width)


@given(ANY_TEXT, st.integers(2, 40))
def test_wrapped_lines_fit_and_lose_nothing(text: str, width: int) -> None:
    lines = wrap(text, width)
    assert all(cell_len(line) <= width for line in lines)
    kept = "".join(lines).replace(" ", "").replace(NO_BREAK, "")
    assert kept == text.replace(" ", "").replace(NO_BREAK, "")


@given(ANY_TEXT, st.integers(2, 40), st.integers(1, 4))
def test_wrapped_lines_keep_to_their_number(text: str, width: int, rows: int) -> None:
    whole, cut = wrap(text, width), wrap(text, width, rows)
    assert len(cut) <= rows
    assert all(cell_len(line) <= width for line in cut)
    assert (cut == whole) == (len(whole) <= rows) or cut[-1].endswith("…")


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [
        ("Fit -8 or -10", 9, ["Fit -8 or", "-10"]),
        ("Fit -8 or -10", 8, ["Fit -8", "or -10"]),
        ("it is well-known", 9, ["it is", "well-know", "n"]),
        ("loses 3.3\u00a0psi here", 11, ["loses", "3.3\u00a0psi", "here"]),
        ("", 9, [""]),
    ],
)
def test_a_hyphen_or_a_no_break_space_is_no_place_to_break(text: str, width: int, lines: list[str]) -> None:
    assert wrap(text, width) == lines


def test_what_is_left_out_is_marked_without_a_loose_comma() -> None:
    assert wrap("one two, three four five", 9, 1) == ["one two…"]
    assert wrap("one two, three four five", 9, 2, "...") == ["one two,", "three..."]


@given(st.lists(st.tuples(st.integers(0, 50), ANY_TEXT), max_size=5), st.integers(1, 40))
def test_a_row_is_as_wide_as_it_was_asked_to_be(pieces: list[tuple[int, str]], width: int) -> None:
    row = Row(Look(), width)
    for column, text in pieces:
        row.put(column, text, "easy")
    strip = row.strip()
    assert strip.cell_length == width == cell_len(strip.text)


def test_pieces_stand_at_their_columns() -> None:
    row = Row(Look(), 20).put(3, "-8").put_right(12, "4.4").put(14, "good", "good")
    assert row.strip().text == "   -8    4.4  good  "


def test_alike_neighbors_are_one_piece() -> None:
    row = Row(Look(), 30).put(1, "one").put(6, "two").put(12, "three", "easy").put(20, "four", "easy")
    assert len(list(row.strip())) == 2


def test_a_gap_is_not_colored_like_the_chip_before_it() -> None:
    look = Look(colors="16")
    strip = Row(look, 10).lay(1, "✗ ", look.chip("too fast")).put(6, "x").strip()
    assert [(text, bool(style and style.bgcolor)) for text, style, _ in strip] == [
        (" ", False),
        ("✗ ", True),
        ("   x   ", False),
    ]


def test_an_area_is_filled_to_its_height() -> None:
    area = Area(Look(), 12, 3)
    lines = area.filled(area.paragraph("one two three", 3))
    assert [line.text for line in lines] == ["   one two  ", "   three    ", " " * 12]
    assert len(area.high(1).filled(lines)) == 1
