"""README's pictures show the wizard as it is: much the same is drawn today, and nothing in them is fetched."""

from __future__ import annotations

import importlib.util
import re
from difflib import SequenceMatcher
from html import unescape
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / ".pictures"
AS_ALIKE = 0.8
"""A word that is said otherwise is no reason for a new picture; another layout is."""


def maker() -> ModuleType:
    """The script that makes them."""
    spec = importlib.util.spec_from_file_location("make_pictures", FOLDER / "make.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def words_of(svg: str) -> list[str]:
    """What a picture says, word by word."""
    texts = re.findall(r"<text[^>]*>([^<]*)</text>", svg)
    return unescape(" ".join(texts)).replace("\u00a0", " ").split()


PICTURES = sorted(path.stem for path in FOLDER.glob("*.svg"))


def test_each_scene_has_its_picture_and_readme_shows_it() -> None:
    assert sorted(maker().SCENES) == PICTURES
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert sorted(re.findall(r"\(\.pictures/(\w+)\.svg\)", readme)) == PICTURES


@pytest.mark.parametrize("name", PICTURES)
def test_the_wizard_still_looks_like_that(name: str) -> None:
    made = maker()
    kept = words_of((FOLDER / f"{name}.svg").read_text(encoding="utf-8"))
    today = words_of(made.picture_of(made.SCENES[name]))
    alike = SequenceMatcher(None, kept, today, autojunk=False).ratio()
    assert alike >= AS_ALIKE, f"{alike:.2f} alike: run .pictures/make.py and look at what changed"
    assert len(kept) > 100


@pytest.mark.parametrize("name", PICTURES)
def test_nothing_in_a_picture_is_fetched(name: str) -> None:
    svg = (FOLDER / f"{name}.svg").read_text(encoding="utf-8")
    assert "url(" not in svg.replace("url(#", "") and "@font-face" not in svg and "<script" not in svg
    assert set(re.findall(r"https?://[^\"\s<]+", svg)) <= {"http://www.w3.org/2000/svg"}
