"""The report as text: no line too wide, nothing that a terminal would obey, color only where it is wanted."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rich.cells import cell_len

from fuelwiz.report.compose import sheet_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook, text_look_of

from .builds import NAMES, SAMPLES, example, plain, result_of, sample

ESCAPE = re.compile(r"\x1b\[[0-9;]*m")
HEADINGS = """
Sizes / Fuel and rail / Ladder / Ceilings / Bad days / Next goal / Findings /
Gauge pressures / Pump to look for / Before the pump / Return line / Wire and fuse / Injectors /
Parts and lengths / Assumed / On the car / Cautions
"""
UNSEEN = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")


class Output:
    """An output as far as a look needs it."""

    def __init__(self, encoding: str | None, terminal: bool) -> None:
        self.encoding = encoding
        self._terminal = terminal

    def isatty(self) -> bool:
        """Whether it is a terminal."""
        return self._terminal


def report(data: dict[str, Any], **look: Any) -> str:
    """The report of plain session data."""
    return text_of(sheet_of(result_of(data)), TextLook(**look))


def widest(text: str) -> int:
    """The columns of the widest line, as Rich counts them."""
    return max(cell_len(line) for line in text.splitlines())


@pytest.mark.parametrize("width", [40, 60, 80, 120])
@pytest.mark.parametrize("unicode", [True, False])
@pytest.mark.parametrize("name", NAMES)
def test_no_line_of_an_example_is_too_wide(name: str, unicode: bool, width: int) -> None:
    assert widest(text_of(sheet_of(example(name)), TextLook(width=width, unicode=unicode))) <= width


@pytest.mark.parametrize("file", sorted(SAMPLES.glob("*.toml")), ids=lambda file: file.stem)
@pytest.mark.parametrize("width", [60, 80])
def test_no_line_of_a_sample_is_too_wide(file: Any, width: int) -> None:
    assert widest(text_of(sheet_of(sample(file)), TextLook(width=width))) <= width


def _named(text: str) -> dict[str, Any]:
    """The full session with one text in every place that takes one."""
    data = plain("full-session")
    short = text[:200]
    data |= {"name": short, "notes": text}
    data["pump"]["name"] = short
    data["feed"]["run"][0]["what"] = short
    data["feed"]["filter"][0]["what"] = short
    data["feed"]["part"][0]["what"] = short
    data["return_line"]["run"][0]["what"] = short
    data["fitted"] = dict.fromkeys(("line", "return_line", "pump", "regulator", "injectors", "filter"), short)
    data["stress"]["case"][0]["name"] = short
    data["record"]["answer"] = short
    return data


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=400), st.sampled_from([44, 80]), st.booleans())
def test_any_text_in_any_name_keeps_the_width(text: str, width: int, unicode: bool) -> None:
    shown = report(_named(text), width=width, unicode=unicode)
    assert widest(shown) <= width
    assert not UNSEEN.search(shown)


@pytest.mark.parametrize(
    "text",
    [
        "x" * 200,
        "漢" * 200,
        "e\u0301" * 100,
        "-8 " * 60,
        "❤\ufe0f" * 60,
        "a" * 79 + " " + "b" * 81,
        "\u00a0" * 200,
    ],
)
def test_long_names_keep_the_width(text: str) -> None:
    assert widest(report(_named(text), width=80)) <= 80


def test_hostile_names_do_nothing() -> None:
    hostile = "\x1b[2J\x1b]0;title\x07\x9b31m\u202eevil\r\n[red]x[/red]"
    shown = report(_named(hostile))
    assert not UNSEEN.search(shown)
    assert "[red]x[/red]" in shown


@pytest.mark.parametrize("name", NAMES)
def test_ascii_holds_the_same_sections(name: str) -> None:
    sheet = sheet_of(example(name))
    shown = text_of(sheet, TextLook(unicode=False))
    assert shown.isascii()
    assert [line for line in shown.splitlines() if line.startswith("---")]


@pytest.mark.parametrize("name", NAMES)
def test_sections_stand_in_the_order_in_which_a_builder_reads(name: str) -> None:
    lines = text_of(sheet_of(example(name)), TextLook()).splitlines()
    places = [lines.index(heading.strip()) for heading in HEADINGS.split("/")]
    assert places == sorted(places)
    assert lines[0] == example(name).session.name


@pytest.mark.parametrize("name", NAMES)
def test_everything_that_is_said_is_in_it(name: str) -> None:
    known = example(name)
    told = " ".join(text_of(sheet_of(known), TextLook(width=4000)).replace("\u00a0", " ").split())
    words = known.words
    for text in (
        *words.answer,
        words.line_to_fit or "",
        *(finding.text for finding in words.findings),
        *words.stress,
        *words.next_goal,
        *words.cautions,
        words.first_limit or "",
    ):
        assert " ".join(text.replace("\u00a0", " ").split()) in told
    for item in known.figures.assumed:
        assert item.key in told


def test_what_the_session_says_nothing_on_is_one_line_each() -> None:
    lines = text_of(sheet_of(example("goal-alone")), TextLook()).splitlines()
    for heading in ("Bad days", "Next goal", "Return line", "Wire and fuse", "Injectors"):
        at = lines.index(heading)
        assert lines[at + 2] and lines[at + 3] == ""
        assert lines[at + 2].startswith(("Not known", "None is given"))


def test_figures_keep_to_their_side_of_the_limit() -> None:
    # The coupe has 14.8 % to spare through -6 where 15 % is wanted, and is not shown as 15.
    shown = text_of(sheet_of(example("hill-climb-coupe")), TextLook())
    assert re.search(r"^-6 .* 14\.8 .* no$", shown, re.MULTILINE)


def test_the_chosen_size_has_its_star() -> None:
    shown = text_of(sheet_of(example("full-session")), TextLook())
    assert re.search(r"^-8\* ", shown, re.MULTILINE) and "* is the size you chose" in shown


TERMINALS = [
    ({"TERM": "xterm"}, "16"),
    ({"TERM": "xterm-256color"}, "256"),
    ({"TERM": "xterm", "COLORTERM": "truecolor"}, "256"),
    ({"TERM": "xterm-256color", "NO_COLOR": "1"}, "none"),
    ({"TERM": "xterm-256color", "NO_COLOR": ""}, "256"),  # no-color.org: set and not empty
    ({"TERM": "dumb"}, "none"),
    ({"TERM": "vt100"}, "none"),
    ({"TERM": ""}, "none"),
    ({}, "none"),
]


@pytest.mark.parametrize(("environ", "colors"), TERMINALS)
def test_colors_are_those_of_the_terminal(environ: dict[str, str], colors: str) -> None:
    assert text_look_of(Output("utf-8", True), environ).colors == colors
    assert text_look_of(Output("utf-8", False), environ).colors == "none"
    assert text_look_of(None, environ).colors == "none"


@pytest.mark.parametrize(
    ("encoding", "terminal", "term", "unicode"),
    [
        ("utf-8", True, "xterm", True),
        ("UTF8", False, "", True),
        ("utf-8", True, "linux", False),
        ("utf-8", True, "vt100", False),
        ("utf-8", False, "vt100", True),
        ("iso8859-1", True, "xterm", False),
        ("ascii", False, "xterm", False),
        (None, False, "xterm", False),
    ],
)
def test_signs_are_those_of_the_encoding(
    encoding: str | None, terminal: bool, term: str, unicode: bool
) -> None:
    environ = {"TERM": term, "LANG": "en_US.UTF-8"}
    assert text_look_of(Output(encoding, terminal), environ).unicode is unicode


@pytest.mark.parametrize(
    ("environ", "unicode"),
    [
        ({}, False),
        ({"LANG": "C", "LC_CTYPE": "C.UTF-8"}, False),  # the second is Python's own doing
        ({"LANG": "en_US.ISO-8859-1"}, False),
        ({"LANG": "C", "LC_ALL": "de_DE.utf8"}, True),
        ({"LANG": "C", "PYTHONUTF8": "1"}, True),
        ({"LANG": "C", "PYTHONIOENCODING": "utf-8:replace"}, True),
    ],
)
def test_signs_are_those_of_the_locale(environ: dict[str, str], unicode: bool) -> None:
    for terminal in (True, False):
        assert text_look_of(Output("utf-8", terminal), {"TERM": "xterm", **environ}).unicode is unicode


@pytest.mark.parametrize(("columns", "width"), [(None, 80), (120, 120), (60, 60), (1, 40)])
def test_width_is_that_of_the_terminal(columns: int | None, width: int) -> None:
    assert text_look_of(Output("utf-8", True), {"TERM": "xterm"}, columns).width == width
    assert text_look_of(Output("utf-8", False), {"TERM": "xterm"}, columns).width == 80


@pytest.mark.parametrize("colors", ["16", "256"])
@pytest.mark.parametrize("name", NAMES)
def test_color_changes_no_letter(name: str, colors: Any) -> None:
    sheet = sheet_of(example(name))
    colored, bare = text_of(sheet, TextLook(colors=colors)), text_of(sheet, TextLook())
    assert ESCAPE.search(colored) and not ESCAPE.search(bare)
    assert ESCAPE.sub("", colored) == bare


def test_a_printer_is_as_wide_as_it_says() -> None:
    assert text_look_of(Output("utf-8", False), {"COLUMNS": "40"}, 40).width == 40
    assert text_look_of(Output("utf-8", False), {}, 40).width == 80


def test_where_columns_do_not_fit_each_row_stands_alone() -> None:
    text = text_of(sheet_of(example("twins")), TextLook(width=40))
    assert "Size -6\n  Bore, in        0.313\n  Velocity, ft/s  8.9\n" in text
