"""The page as a browser shows and prints it: silent, asking for nothing, readable by all, the first page whole."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from fuelwiz.advice.blocks import FuelPath, Table
from fuelwiz.advice.result import Result
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.page import html_page
from fuelwiz.sizing.plot import plot_around

from ..builds import example
from .chromium import Tab, chromium, tab_in

ROOT = Path(__file__).parents[3]
AXE = ROOT / ".axe" / "node_modules" / "axe-core" / "axe.min.js"
NAMES = ("full-session", "goal-alone", "outside-twins", "twins")
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
        path.write_text(page(example(name)), encoding="utf-8")
    return made


def page(result: Result) -> str:
    """A result as a page, with all its pictures."""
    return html_page(result, partial(plot_around, result.session))


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


@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "letter"])
@pytest.mark.parametrize("name", ["full-session", "outside-twins", "twins"])
def test_the_first_page_holds_answer_path_list_and_cautions(
    tab: Tab, pages: dict[str, Path], tmp_path: Path, name: str, paper: tuple[float, float]
) -> None:
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not on this system")
    tab.look("dark")
    tab.show(pages[name])
    tab.pdf(tmp_path / "page.pdf", *paper)
    first = _first_page(tmp_path / "page.pdf")
    result = example(name)
    wanted = [*result.words.answer, *result.words.cautions]
    for block in sheet_of(result).blocks:
        if isinstance(block, FuelPath):
            wanted += [line.name for line in block.lines]
        if isinstance(block, Table) and block.boxes:
            wanted += [cell.text for row in block.rows for cell in row]
    assert len(wanted) > 20
    missing = [text for text in wanted if _squeezed(text) not in first]
    assert missing == []


def _first_page(pdf: Path) -> str:
    """The text of the first page without blanks: words are broken by columns."""
    command = ["pdftotext", "-f", "1", "-l", "1", "-raw", str(pdf), "-"]
    return _squeezed(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


def _squeezed(text: str) -> str:
    return "".join(text.split())


def test_hostile_names_do_nothing(tab: Tab, tmp_path: Path) -> None:
    from ..builds import result_of
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
