"""Reading a session file: what is refused before it is parsed, and the line of each fault."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from session.builds import EXAMPLES, FULL

from fuelwiz.document.file import load, read
from fuelwiz.document.scan import deepest, key_lines
from fuelwiz.errors import SessionError

SMALL = 'format = 1\n[goal]\npower = "410 hp"\n'


def refused(path: Path, content: str | bytes) -> list[str]:
    """What is said of a file with this content, without its path."""
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    with pytest.raises(SessionError) as caught:
        load(path)
    return [line.removeprefix(str(path)) for line in caught.value.lines()]


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "wagon.toml"


@pytest.mark.parametrize("example", [*EXAMPLES, FULL], ids=lambda path: path.stem)
def test_examples_are_read_to_the_last_character(example: Path) -> None:
    document, session = load(example)
    assert document.path == example
    assert document.text.encode() == example.read_bytes()
    assert document.plain["goal"]["power"]
    assert session.name


def test_the_name_is_the_files_without_toml(tmp_path: Path) -> None:
    for file, name in (("wagon.toml", "wagon"), ("v1.2.toml", "v1.2"), ("notes.txt", "notes.txt")):
        (tmp_path / file).write_text(SMALL)
        assert load(tmp_path / file)[1].name == name


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_byte_order_mark_are_no_hindrance(path: Path, mark: str, ending: str) -> None:
    content = mark + SMALL.replace("\n", ending)
    path.write_bytes(content.encode())
    document, _ = load(path)
    assert document.text == content
    assert document.plain == {"format": 1, "goal": {"power": "410 hp"}}


def test_what_cannot_be_opened(tmp_path: Path) -> None:
    def said(path: Path) -> str:
        with pytest.raises(SessionError) as caught:
            read(path)
        return str(caught.value).removeprefix(f"{path}: ")

    assert said(tmp_path / "none.toml") == "there is no such file"
    assert said(tmp_path) == "is a folder, not a session file"
    assert said(tmp_path / ("x" * 300)).startswith("cannot be read: ")
    assert "\x00" not in said(tmp_path / "a\x00b")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    with pytest.raises(SessionError, match="is not a plain file"):
        read(tmp_path / "pipe.toml")


def test_a_file_that_may_not_be_read(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path.write_text(SMALL)

    def denied(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", denied)
    with pytest.raises(SessionError, match="may not be read"):
        read(path)


@pytest.mark.parametrize("content", ["", " \n\t\n", "\ufeff", "\ufeff\r\n"])
def test_an_empty_file(path: Path, content: str) -> None:
    assert refused(path, content) == [": is empty: a session file begins with format = 1"]


def test_64_kib_is_the_most(path: Path) -> None:
    filler = "#" * (64 * 1024 - len(SMALL) - 1) + "\n"
    path.write_text(SMALL + filler)
    assert load(path)[1].goal.power > 0
    assert refused(path, SMALL + "#" + filler) == [": is larger than 64 KiB, which no session file is"]


def test_a_file_that_is_not_utf_8(path: Path) -> None:
    assert refused(path, SMALL.encode() + b'name = "\xe9"\n') == [", line 4: is not text in UTF-8"]


@pytest.mark.parametrize(
    "content",
    [
        "x = " + "[" * 9 + "]" * 9,
        "x = " + "{ a = " * 9 + "1" + " }" * 9,
        "x = [{ a = [{ a = [{ a = [{ a = [1] }] }] }] }]",
        "a.b.c.d.e.f.g.h.i.j = 1",
        "[a.b.c.d.e.f.g.h.i]",
        "[[a.b.c.d.e.f.g.h]]",
        "[a.b.c.d]\ne.f.g.h.i.j = 1",
        "x = { a.b.c.d.e.f.g.h.i = 1 }",
        "[" * 60000,
        "x = " + "{a=" * 20000,
    ],
)
def test_deep_nesting_is_refused_before_it_is_parsed(path: Path, content: str) -> None:
    said = refused(path, content)
    assert len(said) == 1
    assert said[0].endswith("deep; the limit is 8")


@pytest.mark.parametrize(
    ("content", "levels"),
    [
        ("x = 1", 0),
        ("x = " + "[" * 8 + "]" * 8, 8),
        ("a.b.c.d.e.f.g.h.i = 1", 8),
        ('[[pump.curve]]\npoints = [["40 psi", "97 gal/h"]]', 5),
        ('x = "[[[[[[[[[["', 0),
        ("x = '[[[[[[[[[['", 0),
        ('x = """\n[[[[\n"[[[[[" \\" [[\n"""', 0),
        ("x = '''\n[[[[\n'[[[[[' [[\n'''", 0),
        ("# [[[[[[[[[[\nx = [ # [[[[[[[[[[\n1]", 1),
        ("x = [1.5, 2.5, 3.5, 4.5]", 1),
        ('x = { a = "a.b.c", b.c = 1 }', 2),
        ('x = { "a.b.c.d" = 1 }', 1),
    ],
)
def test_levels_are_counted_outside_texts_and_comments(content: str, levels: int) -> None:
    assert deepest(content) == levels


def test_a_full_file_is_well_within_the_depth() -> None:
    assert deepest(FULL.read_text(encoding="utf-8")) <= 6


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (
            SMALL + "[pressure]\nboost = 21 psi\n",
            ", line 5: is not TOML: there is something after the value: are the quotes right?",
        ),
        (
            SMALL + "[pressure]\nboost = psi\n",
            ", line 5: is not TOML: a value is missing here, or is not in quotes",
        ),
        (SMALL + 'power = "3 hp"\n', ", line 4: is not TOML: this key is here twice"),
        (SMALL + "[goal]\n", ", line 4: is not TOML: this section is here twice"),
        (SMALL + "reserve\n", ", line 4: is not TOML: a key needs = and a value after it"),
        (
            SMALL + 'name = "x\n',
            ", line 4: is not TOML: a text has no closing quotes, or holds a control character",
        ),
        (SMALL + 'name = "\\x"\n', ", line 4: is not TOML: a backslash in a text must be doubled"),
        (SMALL + "[pump\n", ", line 4: is not TOML: a section header has no closing bracket"),
        (SMALL + "x = " + "9" * 5000, ": is not TOML: a number in it is far too large"),
    ],
)
def test_what_is_no_toml_is_said_plainly_with_its_line(path: Path, content: str, words: str) -> None:
    assert refused(path, content) == [words]


def test_a_newer_format_is_refused_whatever_else_stands_there(path: Path) -> None:
    words = "`format` is a newer format (2); this program writes 1 and will not open it"
    assert refused(path, "# mine\nformat = 2\n[unheard]\nof = 1\n") == [f", line 2: {words}"]
    with pytest.raises(SessionError):
        read(path)


def test_a_file_with_faults_can_still_be_read(path: Path) -> None:
    path.write_text("format = 1\nbost = 3\n")
    assert read(path).plain == {"format": 1, "bost": 3}


def test_each_fault_has_its_line(path: Path) -> None:
    content = """\
format = 1
[goal]
reserve = "15 %"
[engine]
cylinders = 99        # too many
"bo st" = 1
[[feed.run]]
length = "1 ft"
[[feed.run]]
fittings = { exit = 1 }
# how long it is:
length = "1 psi"
[pump]
curve = [
  { points = [["40 psi", "97 gal/h"],
              ["30 psi", "90 gal/h"]] },
]
[[stress.case]]
change = { "fuel.temperature" = "200 degC" }
"""
    assert [line.split("`")[0] + line.split("`")[1] for line in refused(path, content)] == [
        ", line 2: goal.power",
        ", line 5: engine.cylinders",
        ', line 6: engine."bo st"',
        ", line 14: pump.curve.0.points.1.0",
        ", line 12: feed.run.1.length",
        ", line 19: stress.case.0.change.fuel.temperature",
    ]


def test_keys_are_found_however_they_are_written() -> None:
    lines = key_lines(
        'a.b = 1\n["q.x"]\n\'k\' = """\nno = 1\n"""\n[ f . g ]\nh=[\n#c = 2\n]\n[[l]]\n[[l]]\n[l.m]\nn = 1\n'
    )
    assert lines == {
        "a": 1,
        "a.b": 1,
        '"q.x"': 2,
        '"q.x".k': 3,
        "f": 6,
        "f.g": 6,
        "f.g.h": 7,
        "l": 10,
        "l.0": 10,
        "l.1": 11,
        "l.1.m": 12,
        "l.1.m.n": 13,
    }


def test_a_name_with_control_characters_is_said_safely(tmp_path: Path) -> None:
    with pytest.raises(SessionError) as caught:
        read(tmp_path / "x\x1b[2J.toml")
    assert "\x1b" not in str(caught.value)


def test_a_parts_file_is_told_from_a_build(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text('format = 1\nkind = "parts"\n[[pump]]\n', encoding="utf-8")
    with pytest.raises(SessionError, match="is a parts file, not a build"):
        load(path)
