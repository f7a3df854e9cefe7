"""Any build that can be read can be reported and compared: keys knocked out of examples, others set to odd values."""

from __future__ import annotations

import re
from typing import Any

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from rich.cells import cell_len

from fuelwiz.errors import SessionError
from fuelwiz.report.compare import comparison
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.differences import JudgedBuild
from fuelwiz.report.json_form import json_text
from fuelwiz.report.markdown import markdown_of
from fuelwiz.report.page import html_of
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook

from .builds import NAMES, plain, result_of

ODD: dict[str, list[Any]] = {
    "regulator": ["rail", "tank", "none"],
    "reference": ["manifold", "atmosphere"],
    "place": ["tank", "surge", "outside"],
    "arrangement": ["parallel", "series"],
    "induction": ["none", "turbo", "supercharger"],
    "kind": ["blend", "methanol"],
    "show_units": ["us", "metric"],
    "power_at": ["crank", "wheels"],
    "volts": ["5 V", "12 V", "24 V"],
    "boost": ["0 psi", "60 psi", "100 psi"],
    "relief": ["5 psi", "60 psi", "500 psi"],
    "power": ["10 hp", "300 hp", "5000 hp"],
    "reserve": ["0 %", "200 %"],
    "count": [1, 2, 6],
    "chosen": ["-4", "-16", "8 mm"],
    "wire": ["24 AWG", "0 AWG"],
    "temperature": ["-40 degC", "90 degC"],
}
NOT_WORDS = re.compile(r"\b(None(?! is given| of them)|nan|inf|True|False)\b|[{}]")


@st.composite
def builds(draw: st.DrawFn) -> dict[str, Any]:
    """An example with a few keys gone and a few set to odd values."""
    data = plain(draw(st.sampled_from(NAMES)))
    places = [place for place in _places(data) if place[1] not in {"format", "goal"}]
    for table, key in draw(st.lists(st.sampled_from(places), max_size=8)):
        if key in ODD and draw(st.booleans()):
            table[key] = draw(st.sampled_from(ODD[key]))
        elif key != "power":
            table.pop(key, None)
    return data


def _places(table: dict[str, Any]) -> list[tuple[dict[str, Any], str]]:
    """Every key of a table and of the tables in it."""
    found = []
    for key, value in table.items():
        found.append((table, key))
        inside = value if isinstance(value, list) else [value]
        found += [place for item in inside if isinstance(item, dict) for place in _places(item)]
    return found


def _judged(data: dict[str, Any]) -> JudgedBuild:
    try:
        return JudgedBuild("build.toml", data, result_of(data))
    except SessionError:
        assume(False)
        raise


@settings(max_examples=120, deadline=None)
@given(builds(), st.sampled_from([44, 80]))
def test_a_build_that_can_be_read_can_be_reported(data: dict[str, Any], width: int) -> None:
    known = _judged(data).result
    sheet = sheet_of(known)
    shown = text_of(sheet, TextLook(width=width))
    assert max(map(cell_len, shown.splitlines())) <= width
    assert not NOT_WORDS.search(" ".join(shown.split()))
    assert html_of(sheet) and markdown_of(sheet) and json_text(known)


@settings(max_examples=60, deadline=None)
@given(builds(), builds())
def test_any_two_builds_can_be_compared(one: dict[str, Any], other: dict[str, Any]) -> None:
    shown = text_of(comparison([_judged(one), _judged(other)], 80), TextLook())
    assert max(map(cell_len, shown.splitlines())) <= 80
    assert not NOT_WORDS.search(" ".join(shown.split()))
