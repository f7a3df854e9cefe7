"""What editing keys make of a line, alone and in a field of the form."""

from __future__ import annotations

from pathlib import Path

import pytest

from fuelwiz.file_limits import LONGEST_TEXT
from fuelwiz.wizard.line_edit import LineEdit

from .keyboard import at_build, copy_of, flat

TEXT = "8 m of hose"


@pytest.mark.parametrize(
    ("key", "cursor", "text", "then"),
    [
        ("left", 3, TEXT, 2),
        ("left", 0, TEXT, 0),
        ("right", 3, TEXT, 4),
        ("right", len(TEXT), TEXT, len(TEXT)),
        ("home", 5, TEXT, 0),
        ("ctrl+a", 5, TEXT, 0),
        ("end", 5, TEXT, len(TEXT)),
        ("ctrl+e", 5, TEXT, len(TEXT)),
        ("backspace", 3, "8  of hose", 2),
        ("backspace", 0, TEXT, 0),
        ("delete", 0, TEXT[1:], 0),
        ("ctrl+d", 2, "8  of hose", 2),
        ("delete", len(TEXT), TEXT, len(TEXT)),
        ("ctrl+u", 4, "of hose", 0),
        ("ctrl+k", 3, "8 m", 3),
        ("ctrl+k", 0, "", 0),
        ("ctrl+k", len(TEXT), TEXT, len(TEXT)),
        ("ctrl+w", len(TEXT), "8 m of ", 7),
        ("ctrl+w", 7, "8 m hose", 4),
    ],
)
def test_what_a_key_makes_of_a_line(key: str, cursor: int, text: str, then: int) -> None:
    assert LineEdit(TEXT, cursor).key(key) == LineEdit(text, then)


@pytest.mark.parametrize("key", ["home", "ctrl+a", "end", "ctrl+e", "left", "ctrl+k"])
def test_a_marked_line_is_kept_by_a_key_that_moves(key: str) -> None:
    moved = LineEdit.marked(TEXT).key(key)
    assert moved is not None and moved.text == TEXT and not moved.selected


@pytest.mark.parametrize("key", ["backspace", "delete", "ctrl+d", "ctrl+u"])
def test_a_marked_line_goes_as_a_whole(key: str) -> None:
    assert LineEdit.marked(TEXT).key(key) == LineEdit()


@pytest.mark.parametrize("key", ["enter", "tab", "up", "escape", "ctrl+s", "f1"])
def test_other_keys_edit_nothing(key: str) -> None:
    assert LineEdit(TEXT, 3).key(key) is None


def test_signs_go_in_at_the_cursor_in_place_of_what_is_marked_and_as_far_as_there_is_room() -> None:
    assert LineEdit(TEXT, 1).insert(".5") == LineEdit("8.5 m of hose", 3)
    assert LineEdit.marked(TEXT).insert("9") == LineEdit("9", 1)
    assert len(LineEdit().insert("x" * (LONGEST_TEXT + 5)).text) == LONGEST_TEXT


async def test_to_the_start_and_away_with_the_rest_in_a_field(tmp_path: Path) -> None:
    async with at_build(copy_of("hill-climb-coupe", tmp_path)) as keys:
        keys.form.go_to_path("goal.power")
        await keys.press("ctrl+a", "1")
        assert keys.form.editor.text == "1560" and keys.desk.value("goal.power") == "1560 hp"
        await keys.press("right", "ctrl+k")
        assert keys.form.editor.text == "15" and keys.desk.text_in_field("goal.power").text == "15"
        await keys.press("ctrl+a", "ctrl+k")
        assert keys.form.editor.text == ""
        await keys.type("620")
        assert keys.desk.value("goal.power") == "620 hp"
        assert "620 hp" in flat(keys.part("top"))
