"""A pump's table pasted or read from a file: what is understood, what is left out, and what is said of it."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuelwiz.desk.points.points_file import points_in_file, points_typed, read_points
from fuelwiz.printable import clean

from .desks import told

US = ("psi", "gal/h")
TABLE = "pressure (psi), flow (gal/h)\n20, 151\n40, 142\n60, 131\n80, 117\n100, 98\nn/a, 90\n"
FIVE = (
    ("20 psi", "151 gal/h"),
    ("40 psi", "142 gal/h"),
    ("60 psi", "131 gal/h"),
    ("80 psi", "117 gal/h"),
    ("100 psi", "98 gal/h"),
)


def test_a_table_of_points_with_its_heads() -> None:
    found = read_points(TABLE, US)
    assert found.points == FIVE
    assert found.left_out == ('line 7, "n/a": left out',)
    assert found.voltage is None


@pytest.mark.parametrize(
    ("text", "points"),
    [
        ("20,151\n40,142", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("20\t151\n40\t142", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("20;151\n40;142", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("20 151\r\n40  142\r\n", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("20 psi 151 gal/h\n3 bar 540 L/h", [("20 psi", "151 gal/h"), ("3 bar", "540 L/h")]),
        ("| 20 | 151 |\n| 40 | 142 |", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("1,4;571,5\n2,8;537", [("1.4 psi", "571.5 gal/h"), ("2.8 psi", "537 gal/h")]),
        ("20,5 151\n40,5 142", [("20.5 psi", "151 gal/h"), ("40.5 psi", "142 gal/h")]),
        ('"20","151"\n"40,5","142"', [("20 psi", "151 gal/h"), ("40.5 psi", "142 gal/h")]),
        ("bar;L/h\n1,4;571", [("1.4 bar", "571 L/h")]),
        ("Pressure, bar;Flow, L/h\n1.4;571", [("1.4 bar", "571 L/h")]),
        ("flow [L/h]\tpressure [bar]\n571\t1.4\n537\t2.8", [("1.4 bar", "571 L/h"), ("2.8 bar", "537 L/h")]),
        ("no,pressure,flow,amps\n1,20,151,5\n2,40,142,6", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("20,151,5\n40,142,6", [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")]),
        ("a sheet, page 2\n\npressure,flow\n20,151", [("20 psi", "151 gal/h")]),
        ("# measured\n// by us\n20,151", [("20 psi", "151 gal/h")]),
        (
            "60,131\n20,151\n40,142",
            [("20 psi", "151 gal/h"), ("40 psi", "142 gal/h"), ("60 psi", "131 gal/h")],
        ),
        ("\ufeff20,151", [("20 psi", "151 gal/h")]),
        ("", []),
        ("hello", []),
    ],
)
def test_columns_units_and_order(text: str, points: list[tuple[str, str]]) -> None:
    assert read_points(text, US).points == tuple(points)


def test_units_that_no_head_names_are_those_shown() -> None:
    assert read_points("1.4 571", ("bar", "L/h")).points == (("1.4 bar", "571 L/h"),)


def test_current_has_a_table_too() -> None:
    found = read_points("psi,A\n40,9\n80,15", ("psi", "A"), "pump.current")
    assert found.points == (("40 psi", "9 A"), ("80 psi", "15 A"))
    assert found.left_out == ()


@pytest.mark.parametrize(
    ("text", "volts"),
    [
        ("# at 13.5 V\n20,151", "13.5 V"),
        ("pump at 12 volts\n20,151", "12 V"),
        ("psi;gal/h at 13,5 V\n20;151", "13.5 V"),
        ("13.5 V\n20 151\n40 142", "13.5 V"),
        ("at 240 V\n20,151", None),
        ("20,151", None),
    ],
)
def test_the_volts_are_read_off_the_head(text: str, volts: str | None) -> None:
    assert read_points(text, US).voltage == volts


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("20,151\n40,many\n60,131", 'line 2, "many": left out'),
        ("20,151\n40\n60,131", 'line 2, "40": left out'),
        ("20,151\n900,3", 'line 2, "900": beyond 0 to 500 psi, left out'),
        ("20,151\n40,142\n20,150", "line 3, a second point at 20 psi: left out"),
        ("20,142\n40,151", "line 2: flow rises to 151 gal/h at 40 psi, which no pump does"),
        ("pressure (mm),flow\n20,151", '"mm" is not a unit of pressure: read as psi'),
        ("1.234,5;3", "no line with two numbers was found"),
        ('20;151\n"1,234",5', 'line 2, "1,234,5": left out'),
    ],
)
def test_what_is_left_out_is_said(text: str, said: str) -> None:
    assert said in read_points(text, US).left_out


def test_no_more_than_two_hundred_points_and_few_words() -> None:
    many = read_points("\n".join(f"{number},{400 - number}" for number in range(300)), US)
    assert len(many.points) == 200
    assert many.left_out == ("200 points are the most: those above 199 psi are left out",)
    bad = read_points("20,151\n" + "x,y\n" * 100, US)
    assert len(bad.left_out) == 8
    assert bad.left_out[-1] == "and 93 more lines like these"
    long = read_points("1,1\n" * 20000, US)
    assert long.left_out[0] == "the table is very long: only its first 500 lines are read"


def test_hostile_text_is_made_safe() -> None:
    found = read_points("\x1b]0;title\x07,\u202eevil\n20,151\x00\n", US)
    assert found.points == (("20 psi", "151 gal/h"),)
    assert all(clean(said) == said for said in found.left_out)


@settings(max_examples=300, deadline=None)
@given(
    text=st.one_of(st.text(max_size=200), st.text(alphabet='0123456789.,;\t "|-\npsibar()V', max_size=200))
)
def test_any_text_gives_points_that_rise_and_words_that_are_safe(text: str) -> None:
    found = read_points(text, US)
    again = read_points("\n".join(f"{p};{q}" for p, q in found.points), US)
    assert again.points == found.points
    assert all(clean(said) == said and len(said) < 120 for said in found.left_out)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_a_file_in_the_encoding_of_a_spreadsheet(tmp_path: Path, encoding: str) -> None:
    (tmp_path / "pump.csv").write_bytes("Druck (bar);Flow (L/h) für 13,5 V\n1,4;571\n".encode(encoding))
    found = points_typed("pump.csv", tmp_path, US)
    assert found.points == (("1.4 bar", "571 L/h"),)
    assert found.voltage == "13.5 V"


def test_a_file_that_is_not_there_or_no_file_is_said(tmp_path: Path) -> None:
    assert points_typed("gone.csv", tmp_path, US).left_out == ('there is no file "gone.csv"',)
    assert points_in_file(tmp_path, US).points == ()
    assert points_typed("\x00.csv", tmp_path, US).points == ()
    assert points_typed("~nobody/x.csv", tmp_path, US).points == ()
    (tmp_path / "binary.csv").write_bytes(bytes(range(256)) * 10)
    assert points_typed("binary.csv", tmp_path, US).points == ()


def test_a_table_typed_on_one_line_is_no_file(tmp_path: Path) -> None:
    assert points_typed("20 151", tmp_path, US).points == (("20 psi", "151 gal/h"),)


SAID = [
    (
        "0 psi 80 gph, 40 psi 62 gph, 60 psi 50 gph",
        None,
        (("0 psi", "80 gph"), ("40 psi", "62 gph"), ("60 psi", "50 gph")),
        (),
    ),
    (
        "12 V: 0 psi 80 gph, 40 psi 62 gph, 60 psi 50 gph, 80 psi 36 gph, 6, 8.5, 11 A at 40, 60, 80 psi",
        "12 V",
        (("0 psi", "80 gph"), ("40 psi", "62 gph"), ("60 psi", "50 gph"), ("80 psi", "36 gph")),
        (("40 psi", "6 A"), ("60 psi", "8.5 A"), ("80 psi", "11 A")),
    ),
    ("250 L/h at 40 psi at 13.5 V", "13.5 V", (("40 psi", "250 L/h"),), ()),
    (
        "at 13.5 V: 3 bar 330 L/h, 4 bar 295, 5 bar 250, drawing 9, 11, 13 A at 3, 4, 5 bar",
        "13.5 V",
        (("3 bar", "330 L/h"), ("4 bar", "295 L/h"), ("5 bar", "250 L/h")),
        (("3 bar", "9 A"), ("4 bar", "11 A"), ("5 bar", "13 A")),
    ),
    (
        "40 psi 62 gph 6 A\n60 psi 50 gph 8.5 A",
        None,
        (("40 psi", "62 gph"), ("60 psi", "50 gph")),
        (("40 psi", "6 A"), ("60 psi", "8.5 A")),
    ),
    (
        "psi,gph,amps\n40,62,6\n60,50,8.5",
        None,
        (("40 psi", "62 gph"), ("60 psi", "50 gph")),
        (("40 psi", "6 amps"), ("60 psi", "8.5 amps")),
    ),
]


@pytest.mark.parametrize(("text", "volts", "points", "current"), SAID)
def test_a_sheet_brings_its_current_on_one_line_or_many(
    text: str, volts: str | None, points: tuple[tuple[str, str], ...], current: tuple[tuple[str, str], ...]
) -> None:
    found = read_points(text, US)
    assert (found.voltage, found.points, found.current) == (volts, points, current)
    assert not found.left_out


@pytest.mark.parametrize(
    "text",
    [
        "psi,gal/h at 13.5 V,gal/h at 12 V\n20,151,130\n40,142,118",
        "20 psi 151 gal/h, 40 psi 142 gal/h at 13.5 V; 20 psi 130 gal/h, 40 psi 118 gal/h at 12 V",
    ],
)
def test_a_sheet_brings_both_its_voltages(text: str) -> None:
    found = read_points(text, US)
    assert (found.voltage, found.points) == ("13.5 V", (("20 psi", "151 gal/h"), ("40 psi", "142 gal/h")))
    assert found.further == (("12 V", (("20 psi", "130 gal/h"), ("40 psi", "118 gal/h"))),)


def test_a_pasted_sheet_is_the_pump_of_the_build(tmp_path: Path) -> None:
    desk = told(tmp_path)
    desk.choose("pump.known", "curve")
    desk.set_points("pump.curve.0.points", read_points(SAID[1][0], US))
    assert desk.value("pump.curve") == [{"points": [list(one) for one in SAID[1][2]], "voltage": "12 V"}]
    assert desk.value("pump.current") == [list(one) for one in SAID[1][3]]
    assert desk.refused == {}
    assert [desk.text_in_field(f"pump.amps.{n}").text for n in range(4)] == ["", "6", "8.5", "11"]
