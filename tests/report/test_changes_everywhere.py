"""What one change buys says the same for the next goal on the screen, as text, as a page and as JSON."""

from __future__ import annotations

import json
import re
from html import unescape

from fuelwiz.advice.sections.changes import change_rows
from fuelwiz.advice.subject import Subject
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.json_form import json_text
from fuelwiz.report.page import html_page
from fuelwiz.report.text import text_of
from fuelwiz.report.text_look import TextLook
from fuelwiz.wizard.live.changes import change_lines
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area

from .builds import drawn_together, example

NAME = "full-session"
YES_OR_NO = {True: "yes", False: "no", None: "\u2013"}


def told() -> dict[str, str]:
    """How each row ends, by what it says: whether it works today, and then."""
    figures = json.loads(json_text(example(NAME)))
    today = {one["change"]: one for one in figures["changes"]}
    then = {one["change"]: one for one in figures["next"]["changes"]}
    assert today and then
    return {
        drawn_together((today.get(name) or then[name])["what"]): " ".join(
            YES_OR_NO[one[name]["works"] if name in one else None] for one in (today, then)
        )
        for name in [*today, *(name for name in then if name not in today)]
    }


def test_the_text_has_the_rows_of_the_json() -> None:
    text = drawn_together(re.sub("[✓✗]", "", text_of(sheet_of(example(NAME)), TextLook(width=200))))
    for what, works in told().items():
        assert re.search(rf"{re.escape(what)} [\d–−. ]+ {works}\b", f"{text} "), what


def test_the_page_has_the_rows_of_the_json() -> None:
    page = html_page(example(NAME))
    rows = [
        drawn_together(unescape(re.sub("<[^>]*>|[✓✗]", " ", row)))
        for row in re.findall("<tr.*?</tr>", page, re.S)
    ]
    for what, works in told().items():
        assert any(row.startswith(what) and row.endswith(works) for row in rows), what


def test_the_screen_has_the_rows_of_the_json() -> None:
    result = example(NAME)
    rows = change_rows(Subject(result.session, result.figures))
    lines = [
        drawn_together(re.sub("[✓✗▸]", "", line.text))
        for line in change_lines(result, 0, Area(Look(), 160, 60))
    ]
    assert len(rows) == len(told())
    for what, works in told().items():
        assert any(line.startswith(what) and line.endswith(works) for line in lines), what
