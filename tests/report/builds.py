"""Builds that the tests of the reports share: the examples, and what is made from them."""

from __future__ import annotations

import tomllib
from functools import cache, partial
from pathlib import Path
from typing import Any

from fuelwiz.advice import Result, result
from fuelwiz.report.page import html_page
from fuelwiz.session import validate
from fuelwiz.sizing import assess, quick_figures
from fuelwiz.sizing.plot import plot_around

EXAMPLES = Path(__file__).parent.parent / "examples"
NAMES = tuple(sorted(path.stem for path in EXAMPLES.glob("*.toml")))
SAMPLES = Path(__file__).parent.parent.parent / "saved_sessions"


def plain(name: str) -> dict[str, Any]:
    """What the file of an example holds; a fresh copy."""
    return tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))


def result_of(data: dict[str, Any], default_name: str = "build") -> Result:
    """The result of plain session data."""
    session = validate(data, default_name)
    return result(session, quick_figures(session))


@cache
def example(name: str) -> Result:
    """The result of an example, with all that takes hundreds of solutions."""
    session = validate(plain(name), name)
    return result(session, assess(session))


def page(result: Result) -> str:
    """A result as a page, with all its pictures."""
    return html_page(result, partial(plot_around, result.session))


def drawn_together(text: str) -> str:
    """A text with any run of blanks as one."""
    return " ".join(text.replace("\u00a0", " ").split())


@cache
def sample(path: Path) -> Result:
    """The result of a file."""
    return result_of(tomllib.loads(path.read_text(encoding="utf-8")), path.stem)
