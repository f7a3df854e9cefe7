"""The page as a browser shows and prints it: silent, asking for nothing, readable by all, the first page whole."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from fuelwiz import advice
from fuelwiz.advice.blocks import Block, Column, FuelPath, Heading, Paragraph, Sheet, Table, row
from fuelwiz.advice.result import Result
from fuelwiz.document.file import load
from fuelwiz.measured.log.of_build import logged_run
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.page import html_of
from fuelwiz.sizing import quick_figures

from ..builds import NAMES as EXAMPLES
from ..builds import SAMPLES, example, page, result_of, sample
from .chromium import Tab, chromium, tab_in

ROOT = Path(__file__).parents[3]
AXE = ROOT / ".axe" / "node_modules" / "axe-core" / "axe.min.js"
LOGGED = "logged"
NAMES = ("full-session", "goal-alone", "outside-twins", "twins", LOGGED)
LOOKS = ("light", "dark")
A4, LETTER = (8.27, 11.69), (8.5, 11.0)
PHONE, DESK = (390, 844), (1100, 900)
RUN_AXE = (
    "axe.run(document, {resultTypes: ['violations']})"
    ".then(found => found.violations.map(each => [each.id, each.help, each.nodes[0].html]))"
)


@pytest.fixture(scope="module")
def tab() -> Iterator[Tab]:
    browser = chromium()
    if browser is None:
        pytest.skip("chromium is not on this system")
    with tab_in(browser) as opened:
        yield opened


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The page of each build in a file."""
    folder = tmp_path_factory.mktemp("pages")
    made = {name: folder / f"{name}.html" for name in NAMES}
    for name, path in made.items():
        path.write_text(page(logged() if name == LOGGED else example(name)), encoding="utf-8")
    return made


def logged() -> Result:
    """A sample with the log that comes with it."""
    _, session = load(SAMPLES / "gravel-four.toml")
    session = session.model_copy(
        update={"log": session.log.model_copy(update={"file": "gravel-four-pull.csv"})}
    )
    figures = quick_figures(session)
    return advice.result(session, figures, logged_run(SAMPLES / "gravel-four.toml", session, figures))


@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("name", NAMES)
def test_it_says_nothing_and_asks_for_nothing(tab: Tab, pages: dict[str, Path], name: str, look: str) -> None:
    tab.look(look)
    tab.show(pages[name])
    tab.value("document.querySelectorAll('details').forEach(each => each.open = true)")
    said = [e for e in tab.events if e["method"] in ("Runtime.consoleAPICalled", "Log.entryAdded")]
    assert said == []
    asked = {e["params"]["request"]["url"] for e in tab.events if e["method"] == "Network.requestWillBeSent"}
    assert asked == {pages[name].as_uri()}


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("name", NAMES)
def test_axe_finds_nothing(
    tab: Tab, pages: dict[str, Path], name: str, look: str, size: tuple[int, int]
) -> None:
    if not AXE.exists():
        pytest.skip("axe-core is not installed in .axe: npm install --prefix .axe axe-core")
    tab.look(look)
    tab.size(*size)
    tab.show(pages[name])
    tab.value("document.querySelectorAll('details').forEach(each => each.open = true)")
    tab.value(f"{AXE.read_text(encoding='utf-8')}; 1")
    assert tab.value(RUN_AXE) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_phone_need_not_be_moved_sideways(tab: Tab, pages: dict[str, Path], name: str) -> None:
    tab.size(*PHONE)
    tab.show(pages[name])
    tab.value("document.querySelectorAll('details').forEach(each => each.open = true)")
    assert tab.value("document.documentElement.scrollWidth") <= PHONE[0]


@pytest.mark.parametrize("look", LOOKS)
def test_each_look_has_its_own_ground(tab: Tab, pages: dict[str, Path], look: str) -> None:
    tab.look(look)
    tab.show(pages["twins"])
    ground = tab.value("getComputedStyle(document.body).backgroundColor")
    assert ground == {"light": "rgb(255, 255, 255)", "dark": "rgb(18, 18, 18)"}[look]


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_has_a_title_and_a_description(tab: Tab, pages: dict[str, Path], name: str) -> None:
    tab.show(pages[name])
    texts: list[list[str]] = tab.value(
        "[...document.querySelectorAll('svg')].map(svg => svg.getAttribute('aria-labelledby').split(' ')"
        ".map(id => document.getElementById(id).textContent))"
    )
    assert all(len(pair) == 2 and all(pair) for pair in texts)
    if name != "goal-alone":
        assert [title for title, _ in texts][:3] == ["The fuel's way", "Pump against system", "Ladder"]
    assert ("Log of a run" in [title for title, _ in texts]) == (name == LOGGED)


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "letter"])
def test_the_first_page_holds_answer_path_list_and_cautions(
    tab: Tab, tmp_path: Path, paper: tuple[float, float]
) -> None:
    """Of every sample and every example that has a line."""
    tab.look("dark")
    builds = {name: example(name) for name in EXAMPLES if name != "goal-alone"}
    builds |= {path.stem: sample(path) for path in sorted(SAMPLES.glob("*.toml"))}
    for name, result in builds.items():
        (tmp_path / f"{name}.html").write_text(page(result), encoding="utf-8")
        tab.show(tmp_path / f"{name}.html")
        tab.pdf(tmp_path / f"{name}.pdf", *paper)
        first = _squeezed(_printed(tmp_path / f"{name}.pdf")[0])
        wanted = [*result.words.answer, *result.words.cautions]
        for block in sheet_of(result).blocks:
            if isinstance(block, FuelPath):
                wanted += [line.name for line in block.lines]
            if isinstance(block, Table) and block.boxes:
                wanted += [cell.text for row in block.rows for cell in row]
        assert len(wanted) > 20
        missing = [text for text in wanted if _squeezed(text) not in first]
        assert missing == [], name


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "letter"])
def test_the_second_page_has_all_pictures(tab: Tab, tmp_path: Path, paper: tuple[float, float]) -> None:
    """Of a build that has each, the log's apart."""
    (tmp_path / "pull.html").write_text(page(example("street-turbo")), encoding="utf-8")
    tab.show(tmp_path / "pull.html")
    tab.pdf(tmp_path / "pull.pdf", *paper)
    second = _printed(tmp_path / "pull.pdf")[1].splitlines()
    assert {"Pump against system", "Ladder", "Ceilings", "How sure", "Pull"} <= set(second)
    assert _squeezed("what the pump could send there.") in _squeezed("".join(second))


def test_paper_has_what_is_folded(tab: Tab, pages: dict[str, Path], tmp_path: Path) -> None:
    tab.show(pages["full-session"])
    assert tab.value("document.querySelectorAll('details[open]').length") == 0
    tab.pdf(tmp_path / "page.pdf", *LETTER)
    first, *others = _printed(tmp_path / "page.pdf")
    printed = _squeezed("".join(others))
    for block in sheet_of(example("full-session")).blocks:
        if isinstance(block, Table) and not block.boxes:
            cells = [_squeezed(cell.text) for row in block.rows for cell in row]
            assert all(text in printed or text in _squeezed(first) for text in cells)
    assert "Ladderinfigures" in printed and "Lastsave" in printed


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "letter"])
def test_no_head_of_a_table_stands_apart_from_its_rows(
    tab: Tab, tmp_path: Path, paper: tuple[float, float]
) -> None:
    """Tables of many lengths, one after the other, longer ones than a page too: some would be parted anywhere."""
    blocks: list[Block] = [Heading("Many")]
    for number, length in enumerate((1, 2, 3, 5, 8, 13, 21, 34, 90, 55, 2, 1, 1, 1, 3) * 2):
        rows = tuple(row(f"row {number}-{at}", "x") for at in range(length))
        blocks += [Paragraph("Between."), Table((Column(f"head {number}."), Column("x")), rows)]
    (tmp_path / "many.html").write_text(html_of(Sheet("many", tuple(blocks))), encoding="utf-8")
    tab.show(tmp_path / "many.html")
    tab.pdf(tmp_path / "many.pdf", *paper)
    printed = _printed(tmp_path / "many.pdf")
    assert len(printed) > 5
    for text in printed:
        lines = text.splitlines()
        heads = [at for at, line in enumerate(lines) if line.startswith("head ")]
        assert heads
        for at in heads:
            table = lines[at].split()[1].rstrip(".")
            assert lines[at + 1].startswith(f"row {table}-")


def _printed(pdf: Path) -> list[str]:
    """The text of each page."""
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not on this system")
    command = ["pdftotext", "-raw", str(pdf), "-"]
    whole = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    pages = whole.split("\f")[:-1]
    return ["\n".join(line.strip() for line in text.splitlines() if line.strip()) for text in pages]


def _squeezed(text: str) -> str:
    """A text without blanks: words are broken by columns."""
    return "".join(text.split())


def test_hostile_names_do_nothing(tab: Tab, tmp_path: Path) -> None:
    from ..test_wall_sheet import HOSTILE, with_name

    for number, text in enumerate(HOSTILE):
        path = tmp_path / f"{number}.html"
        path.write_text(page(result_of(with_name(text))), encoding="utf-8")
        tab.show(path)
        counts: Any = tab.value(
            "['script', 'img', 'a', 'iframe', 'h1'].map(tag => document.querySelectorAll(tag).length)"
        )
        assert counts == [0, 0, 0, 0, 1]
        assert [e for e in tab.events if e["method"] == "Runtime.consoleAPICalled"] == []
