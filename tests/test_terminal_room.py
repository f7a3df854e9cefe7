"""What report and wizard share of terminals: texts in cells, and texts in ASCII."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fuelwiz.terminal.cells import clip, pad, width_of, wrap, wrap_plain
from fuelwiz.terminal.folding import in_ascii
from fuelwiz.terminal.marks import MARKS

ANY_TEXT = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=60)


@given(ANY_TEXT, st.integers(2, 40))
def test_lines_fit_and_lose_no_sign(text: str, width: int) -> None:
    lines = wrap(text, width)
    assert all(width_of(line) <= width for line in lines)
    kept = "".join(lines).replace(" ", "").replace("\N{NO-BREAK SPACE}", "")
    assert kept == "".join(text.split(" ")).replace("\N{NO-BREAK SPACE}", "")


@given(ANY_TEXT, st.integers(0, 30), st.booleans())
def test_clipped_and_padded_texts_are_as_wide_as_asked(text: str, width: int, right: bool) -> None:
    assert width_of(clip(text, width, "…")) <= width
    assert width_of(pad(text, width, right=right)) == width


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("44\N{NO-BREAK SPACE}ft/s is", ["44 ft/s", "is"]),
        ("white-liner hose", ["white-li", "ner hose"]),
        ("a bb", ["a bb"]),
    ],
)
def test_a_number_stays_with_its_unit(text: str, lines: list[str]) -> None:
    assert wrap_plain(text, 8) == lines


@pytest.mark.parametrize(
    ("width", "lines"),
    [
        (20, ["Written:", "/cars/shop/", "v-8-report.txt"]),
        (12, ["Written:", "/cars/shop/", "v-8-report.t", "xt"]),
        (40, ["Written: /cars/shop/v-8-report.txt"]),
    ],
)
def test_a_path_is_parted_behind_a_slash_before_a_name_is(width: int, lines: list[str]) -> None:
    assert wrap("Written: /cars/shop/v-8-report.txt", width) == lines


@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("½ in", " 1/2 in"),
        ("100 °F, 2 mm²", "100 F, 2 mm2"),
        ("45° → Ærø", "45 deg -> AEro"),
        ("水", "?"),
    ],
)
def test_texts_in_ascii_keep_their_meaning(text: str, folded: str) -> None:
    assert in_ascii(text) == folded


@pytest.mark.parametrize("name", MARKS)
def test_every_mark_has_a_likeness_of_the_same_width(name: str) -> None:
    sign, likeness = MARKS[name]
    assert likeness.isascii() and width_of(sign) == len(likeness)
