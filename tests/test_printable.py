"""Texts of a file are shown without what could play tricks with a terminal."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from session.builds import session

from fuelwiz.printable import clean, quoted


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("plain words, ünïcödé, 日本", "plain words, ünïcödé, 日本"),
        ("a\x1b[31mred\x1b[0m", "a[31mred[0m"),
        ("bell\x07 back\x08 del\x7f null\x00", "bell back del null"),
        ("c1 \x9b31m \x85 \x90", "c1 31m  "),
        ("turned \u202egnirts\u202c \u2066x\u2069 \u200f\u200e\u061c", "turned gnirts x "),
        ("two\nlines\tand a tab\r", "two lines and a tab"),
        ("line\u2028end\u2029s", "lineends"),
        ("half \ud800", "half "),
    ],
)
def test_one_line(text: str, expected: str) -> None:
    assert clean(text) == expected


def test_lines_of_notes_stay() -> None:
    assert clean("two\r\nlines\x1b", lines=True) == "two\nlines"


@given(st.text(st.characters()))
def test_nothing_but_what_can_be_shown_is_left(text: str) -> None:
    """C0, DEL and C1 make up category Cc; bidirectional controls are of Cf (Unicode, chapter 23)."""
    kept = clean(text)
    assert not any(ord(sign) < 32 or 127 <= ord(sign) < 160 for sign in kept)
    assert not set(kept) & set("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e")
    assert not set(kept) & set("\u2066\u2067\u2068\u2069")
    kept.encode("utf-8")


@pytest.mark.parametrize("path", ["name", "fitted.line", "feed.run.0.what", "stress.case.0.name"])
def test_a_session_holds_clean_texts(path: str) -> None:
    plain = {"change": {"fuel.temperature": "50 degC"}, "name": "a\x1b]0;b\x07\nc"}
    if path == "stress.case.0.name":
        assert session("stress.case", [plain]).stress.case[0].name == "a]0;b c"
        return
    built = session(path, plain["name"])
    held = {"name": built.name, "fitted.line": built.fitted.line}
    assert held.get(path, built.feed.run[0].what if built.feed.run else "") == "a]0;b c"


def test_notes_keep_their_lines() -> None:
    assert session("notes", "a\nb\x1bc").notes == "a\nbc"


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (True, "true"),
        (3, "3"),
        (0.5, "0.5"),
        (10**30, "a number far too large"),
        ("a\x1bb", '"ab"'),
        ("x" * 50, f'"{"x" * 39}…"'),
        ([], "an empty list"),
        ([1], "a list"),
        ({}, "a table"),
    ],
)
def test_a_value_said_back(value: object, words: str) -> None:
    assert quoted(value) == words
