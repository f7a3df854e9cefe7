"""README as a reader sees it: rendered by two renderers of others, with all that it points at."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from importlib.metadata import metadata
from pathlib import Path

import pytest
from markdown_it import MarkdownIt

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")


class Shown(HTMLParser):
    """A page's tags, what it points at, its pictures' texts, and the cells of each row of its tables."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.links: list[str] = []
        self.pictures: dict[str, str] = {}
        self.rows: list[int] = []
        self.feed(source)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = {name: value or "" for name, value in attrs}
        self.tags.append(tag)
        if "href" in said:
            self.links.append(said["href"])
        if tag == "img":
            self.pictures[said["src"]] = said["alt"]
        if tag == "tr":
            self.rows.append(0)
        if tag in ("th", "td"):
            self.rows[-1] += 1


@pytest.fixture(scope="module")
def shown() -> Shown:
    return Shown(MarkdownIt("commonmark").enable("table").render(README))


def test_what_it_points_at_is_there(shown: Shown) -> None:
    assert len(shown.pictures) >= 2 and all(shown.pictures.values())
    targets = [*shown.pictures, *(link for link in shown.links if not link.startswith("#"))]
    assert [target for target in targets if not (ROOT / target).is_file()] == []
    heads = {
        re.sub(r"[^\w -]", "", head.lower()).replace(" ", "-")
        for head in re.findall(r"^#+ (.*)", README, re.M)
    }
    assert {link[1:] for link in shown.links if link.startswith("#")} <= heads


def test_every_block_is_closed_and_every_table_is_one(shown: Shown) -> None:
    fences = re.findall(r"^```", README, re.M)
    assert len(fences) % 2 == 0 and shown.tags.count("pre") == len(fences) // 2
    outside = re.sub(r"^```.*?^```$", "", README, flags=re.M | re.S)
    lines = [line for line in outside.splitlines() if line.startswith("|")]
    assert len(shown.rows) == len(lines) - shown.tags.count("table"), "each line but the rules is a row"
    assert set(shown.rows) == {2, 3}
    assert "script" not in shown.tags


def test_the_first_screenful_says_shows_and_starts_it() -> None:
    first = README.partition("\n## ")[0]
    assert len(first.splitlines()) <= 16
    says, shows, starts = first.index("A wizard"), first.index("![The wizard"), first.index("```sh")
    assert says < shows < starts
    assert "whoever builds, tunes or checks" in first and "| key |" not in first


def test_a_package_index_shows_it_too(shown: Shown) -> None:
    markdown = pytest.importorskip("readme_renderer.markdown")
    rendered = markdown.render(README)
    assert rendered is not None
    page = Shown(rendered)
    assert page.pictures == shown.pictures and page.rows == shown.rows
    assert page.tags.count("pre") == shown.tags.count("pre")


def test_the_package_says_what_it_is() -> None:
    said = metadata("fuelwiz")
    assert said["Description-Content-Type"] == "text/markdown"
    assert said["Summary"] and said["Requires-Python"] == ">=3.11" and said["Keywords"]
    topics = [line.partition(" :: ")[0] for line in said.get_all("Classifier") or []]
    assert {"Development Status", "Environment", "Intended Audience", "Operating System", "Topic"} <= set(
        topics
    )
