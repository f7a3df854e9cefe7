"""Keys of one's own: what is taken, what is said with its line, and that the default holds then."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from fuelwiz.wizard.actions import BUILD, LIST, by_id, by_key
from fuelwiz.wizard.app import FuelwizApp
from fuelwiz.wizard.own_keys import KeyTable, key_table, read_keys

from .keyboard import Keyboard, copy_of


def table(text: str) -> KeyTable:
    return key_table(tomllib.loads(text), text)


def test_none_of_ones_own_are_the_usual_ones(tmp_path: Path) -> None:
    assert read_keys(tmp_path / "keys.toml") == KeyTable() == KeyTable(BUILD, LIST)


def test_keys_are_taken_by_id_and_by_the_words_on_the_page() -> None:
    keys = table(
        '[build]\nsave = ["Ctrl+S", "F10"]\nwhat_if = "ctrl+x"\nwrite_report = "f12"\n[list]\ncopy = "y"\n'
    )
    assert not keys.faults
    assert by_id(keys.build, "save").keys == ("ctrl+s", "f10")
    found = by_key(keys.build, "ctrl+x")
    assert found is not None and found.id == "what_if"
    assert by_id(keys.build, "write").shown_key == "F12"
    assert by_id(keys.list, "copy").keys == ("y",)
    assert by_key(keys.list, "c") is None


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ('[build]\n\nsaves = "f10"\n', 3, "nothing that can be done"),
        ('[build]\nsave = "ctrl+m"\n', 2, "does not reach"),
        ('[build]\nsave = "s"\n', 2, "is no key"),
        ("[build]\nsave = 5\n", 2, "wants keys"),
        ("[build]\nsave = []\n", 2, "wants keys"),
        ('[build]\nnext = "f10"\n', 2, "cannot be changed"),
        ('[build]\nsave = "f1"\n', 2, "a key of `help`"),
        ('[build]\nundo = "f10"\nsave = "f10"\n', 3, "a key of `undo`"),
        ('[kitchen]\nsave = "f10"\n', 1, "no part"),
        ("build = 5\n", 1, "holds no keys"),
    ],
)
def test_what_cannot_be_is_said_with_its_line_and_the_default_holds(text: str, line: int, words: str) -> None:
    keys = table(text)
    (fault,) = keys.faults
    assert fault.startswith(f"keys.toml, line {line}: ") and words in fault
    assert by_id(keys.build, "save") == by_id(BUILD, "save")
    assert keys.list == LIST


@pytest.mark.parametrize(("first", "second"), [("copy", "rename"), ("rename", "copy")])
def test_of_two_that_want_one_key_the_first_has_it(first: str, second: str) -> None:
    keys = table(f'[list]\n{first} = "y"\n{second} = ["f10", "y"]\n')
    (fault,) = keys.faults
    assert fault.startswith(f"keys.toml, line 3: {second} is on a key of `{first}`; it stays on ")
    assert by_id(keys.list, first).keys == ("y",)
    assert by_id(keys.list, second) == by_id(LIST, second)


def test_what_is_given_keys_by_id_and_by_its_words_has_the_first() -> None:
    keys = table('[build]\nwrite = "f12"\nwrite_report = "f10"\n')
    assert keys.faults == ("keys.toml, line 3: write_report is the same as write, which holds.",)
    assert by_id(keys.build, "write").keys == ("f12",)


def test_faults_come_in_the_order_of_their_lines() -> None:
    keys = table(
        '[list]\nhelp = "ctrl+m"\nfoo = "y"\ncopy = "n"\n[build]\nsave = "f10"\nundo = "f10"\n'
        'help = "f10"\nunsure = "x"\n[zz]\na = 1\n'
    )
    lines = [fault.partition(":")[0] for fault in keys.faults]
    assert lines == [f"keys.toml, line {line}" for line in (2, 3, 4, 7, 8, 9, 10)]
    assert by_id(keys.build, "save").keys == ("f10",)


def test_a_key_under_both_headers_is_said_with_its_own_line() -> None:
    (fault,) = table('[build]\nhelp = "f12"\n[list]\nhelp = "ctrl+m"\n').faults
    assert fault.startswith("keys.toml, line 4: help ")


def test_a_key_may_be_had_once_its_owner_has_another() -> None:
    keys = table('[build]\nhelp = "f12"\nsave = "f1"\n')
    assert not keys.faults
    assert by_id(keys.build, "save").keys == ("f1",)


def test_a_file_that_is_no_toml_changes_nothing(tmp_path: Path) -> None:
    file = tmp_path / "keys.toml"
    for content in (b"[build\n", b"\xff\xfe", b"[build]\n" * 3):
        file.write_bytes(content)
        keys = read_keys(file)
        assert keys.faults and (keys.build, keys.list) == (BUILD, LIST)


async def test_they_hold_on_the_screen_and_the_key_page_shows_them(tmp_path: Path) -> None:
    path = copy_of("hill-climb-six", tmp_path)
    own = table('[build]\nhelp = "f12"\nsave = "ctrl+m"\n')
    app = FuelwizApp(tmp_path, path, keys=own)
    async with app.run_test(size=(120, 36)) as pilot:
        keys = Keyboard(pilot)
        await keys.opened(path)
        assert "keys.toml, line 3: save" in keys.text
        await keys.press("f1")
        by_usual_key = keys.screen.mode
        await keys.press("f12")
        assert (by_usual_key, keys.screen.mode) == ("form", "help")
        await keys.press("escape", "ctrl+g")
        assert "F12" in keys.text and "Ctrl+S" in keys.text
