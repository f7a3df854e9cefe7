"""Edits of files that are laid out in other ways, and of texts that are hard to write."""

from __future__ import annotations

import tomllib

import pytest

from .edits import TYPED, changed, difference


def test_the_last_key_of_a_section() -> None:
    text = 'format = 1\n[goal]\npower = "410 hp"\n[[feed.run]]\n'
    assert changed(text, lambda plain: plain["goal"].clear()) == "format = 1\n[goal]\n[[feed.run]]\n"
    new = changed(text, lambda plain: plain["feed"].clear())
    assert tomllib.loads(new)["feed"] == {}


@pytest.mark.parametrize(
    "text",
    [
        'format = 1\ngoal.power = "410 hp" # dotted\ngoal.reserve = "15 %"\n',
        'format = 1\ngoal = { power = "410 hp", reserve = "15 %" } # inline\n',
        'format = 1\n[goal] # section\n"power" = "410 hp"\n\'reserve\' = "15 %"\n',
    ],
)
def test_sections_written_in_other_ways(text: str) -> None:
    comment = text[text.index("#") :].splitlines()[0]
    for change in (
        lambda plain: plain["goal"].update(power="420 hp"),
        lambda plain: plain["goal"].update(power_at="wheels"),
        lambda plain: plain["goal"].pop("reserve"),
        lambda plain: plain.update(tank={"fill": "30 %"}),
    ):
        assert comment in changed(text, change)


def test_runs_written_as_a_list_of_inline_tables() -> None:
    text = 'format = 1\n[feed]\nrun = [\n  { length = "3 ft" }, # a\n  { length = "4 ft" }, # b\n]\n'
    new = changed(text, lambda plain: plain["feed"]["run"][1].update(length="5 ft"))
    assert difference(text, new) == ['-  { length = "4 ft" }, # b', '+  { length = "5 ft" }, # b']
    changed(text, lambda plain: plain["feed"]["run"].pop(0))


@pytest.mark.parametrize(
    "value",
    [
        "",
        'quotes " and \\ backslash \\n',
        "two\nlines\n",
        'ends in """',
        "\n\nx\\\n",
        "tab\t bell\x07 del\x7f nul\x00 nel\x85",
        "日本 ü",
        "a\r\nb",
    ],
)
def test_any_text_is_written_as_it_is(value: str) -> None:
    assert tomllib.loads(changed(TYPED, lambda plain: plain.update(notes=value)))["notes"] == value


def test_line_ends_of_both_kinds_stay_as_they_are() -> None:
    half = TYPED.index("[[feed.run]]")
    text = TYPED[:half].replace("\n", "\r\n") + TYPED[half:]
    new = changed(text, lambda plain: plain["goal"].update(reserve="20 %"))
    assert new == text.replace("'15%'", '"20 %"')
