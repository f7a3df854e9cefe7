"""The sheet for the wall: Markdown and HTML say what the text says, and hold nothing that acts."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from fuelwiz.advice.blocks import Block, FuelPath, Heading, Listing, Pairs, Paragraph, Sheet, Table
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.markdown import escaped, markdown_of
from fuelwiz.report.page import html_of
from fuelwiz.terminal.folding import in_ascii

from .builds import NAMES, drawn_together, example, plain, result_of

VOID = {"meta", "br", "hr", "img", "link", "input"}
HOSTILE = (
    "<script>alert(1)</script>",
    "</title><h1>x",
    "<img src=x onerror=alert(1)>",
    "[click](https://example.org)",
    "![x](https://example.org/x.png)",
    "https://example.org/a_b_c",
    "www.example.org",
    "*bold* _slanted_ ~~gone~~ `code`",
    "# not a head",
    "- not a list",
    "1. not a list",
    "a | b | c",
    "&lt;b&gt; &copy;",
    "\\* \\",
    "$x^2$",
    "---",
    "> quoted",
    "    indented",
)


class Page(HTMLParser):
    """What a page holds: its tags in order, its text, and whether every tag is closed."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.attributes: list[tuple[str, str | None]] = []
        self.open: list[str] = []
        self.texts: list[str] = []
        self.feed(source)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.attributes += attrs

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if "style" not in self.open:
            self.texts.append(data)

    @property
    def text(self) -> str:
        """All of its text, blanks drawn together."""
        return drawn_together(" ".join(self.texts))


def texts_of(block: Block) -> list[str]:
    """Every text of a block."""
    match block:
        case Heading() | Paragraph():
            return block.text.split("\n")
        case Listing():
            return [item.text for item in block.items]
        case Pairs():
            return [block.title, *(text for row in block.rows for text in row)]
        case Table():
            return [column.head for column in block.columns] + [
                cell.text for row in block.rows for cell in row
            ]
        case FuelPath():
            return [
                text for line in block.lines for text in (line.name, line.given, line.speed, line.comes_out)
            ]


def all_texts(sheet: Sheet) -> list[str]:
    """Every text of a sheet."""
    return [sheet.title, *(text for block in sheet.blocks for text in texts_of(block) if text.strip())]


def read_markdown(source: str) -> Page:
    """Markdown as a reader of GitHub's flavour shows it."""
    return Page(MarkdownIt("gfm-like", {"linkify": False}).render(source))


def with_name(text: str) -> dict[str, Any]:
    """A build in which every name says that."""
    data = plain("full-session")
    data |= {"name": text[:200], "notes": text}
    data["pump"]["name"] = text[:200]
    data["feed"]["run"][0]["what"] = text[:200]
    data["fitted"]["line"] = text[:200]
    return data


@pytest.mark.parametrize("name", NAMES)
def test_html_says_all_that_the_sheet_says(name: str) -> None:
    sheet = sheet_of(example(name))
    page = Page(html_of(sheet))
    assert not page.open
    for text in all_texts(sheet):
        assert drawn_together(text) in page.text


@pytest.mark.parametrize("name", NAMES)
def test_markdown_says_all_that_the_sheet_says(name: str) -> None:
    sheet = sheet_of(example(name))
    page = read_markdown(markdown_of(sheet))
    for text in all_texts(Sheet(sheet.title, tuple(b for b in sheet.blocks if not isinstance(b, FuelPath)))):
        assert drawn_together(text) in page.text
    words = page.text.split()
    for block in sheet.blocks:
        for text in texts_of(block) if isinstance(block, FuelPath) else ():
            assert set(drawn_together(in_ascii(text)).split()) <= set(words)
    assert page.tags.count("table") == sum(isinstance(block, Table) for block in sheet.blocks)
    assert page.tags.count("h2") == sum(isinstance(block, Heading) for block in sheet.blocks)


@pytest.mark.parametrize("name", NAMES)
def test_html_stands_alone(name: str) -> None:
    page = Page(html_of(sheet_of(example(name))))
    assert not {"script", "link", "img", "a", "iframe", "object", "form"} & set(page.tags)
    assert not [name for name, _ in page.attributes if name in {"src", "href"} or name.startswith("on")]
    source = html_of(sheet_of(example(name)))
    assert "http" not in source and "url(" not in source and "@import" not in source
    assert source.startswith("<!DOCTYPE html>") and 'charset="utf-8"' in source and "@media print" in source


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_names_are_only_shown(text: str) -> None:
    sheet = sheet_of(result_of(with_name(text)))
    usual = sheet_of(result_of(plain("full-session")))
    clean_tags = Page(html_of(usual)).tags
    page = Page(html_of(sheet))
    assert set(page.tags) <= {*clean_tags, "br"}
    assert drawn_together(text) in page.text
    read = read_markdown(markdown_of(sheet))
    known = read_markdown(markdown_of(usual))
    assert set(read.tags) <= {*known.tags, "br"}
    assert drawn_together(text) in read.text
    assert read.tags.count("h1") == 1 and read.tags.count("table") == known.tags.count("table")


@settings(max_examples=150, deadline=None)
@given(st.text(st.characters(exclude_categories=["Cc", "Cs", "Zs", "Zl", "Zp"]), min_size=1, max_size=60))
def test_any_text_escaped_reads_as_itself(text: str) -> None:
    read = read_markdown(f"x {escaped(text)} x\n\n| h |\n| --- |\n| {escaped(text)} |\n")
    assert set(read.tags) <= {"p", "table", "thead", "tbody", "tr", "th", "td"}
    assert read.text == drawn_together(f"x {text} x h {text}")
    assert Page(html_of(Sheet(text, (Paragraph(text),)))).texts.count(text) == 3


@pytest.mark.parametrize(
    "text", ["https://example.org", "www.example.org", "WWW.example.org", "a@example.org"]
)
def test_nothing_becomes_a_link(text: str) -> None:
    # GitHub's autolinks want these signs bare (GFM spec 0.29, section 6.9).
    shown = escaped(text)
    assert not re.search(r"(?<!\\):/|(?i:www)\.|(?<!\\)@", shown)
    assert read_markdown(shown).text == text
