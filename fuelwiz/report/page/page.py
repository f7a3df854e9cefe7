"""A result as a page: what stands where, and the templates that draw it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from fuelwiz.advice.blocks import SYMBOLS, Mark, Sheet
from fuelwiz.advice.result import Result
from fuelwiz.advice.subject import Subject
from fuelwiz.report.compose import sheet_of
from fuelwiz.report.page.arrange import arranged
from fuelwiz.report.page.colors import DARK_COLORS, LIGHT_COLORS
from fuelwiz.report.page.pictures import Picture, pictures_of
from fuelwiz.report.page.pictures.way import way_picture
from fuelwiz.sizing.figures import PlotOf

TEMPLATES = Path(__file__).parent / "templates"


def html_page(result: Result, plot_of: PlotOf | None = None) -> str:
    """The page of a build, with pictures; pump against system where `plot_of` gives its curves."""
    subject = Subject(result.session, result.figures, result.measured)
    notes = result.session.notes.strip()
    return html_of(sheet_of(result), pictures_of(subject, plot_of), notes)


def html_of(sheet: Sheet, pictures: Mapping[str, Picture] | None = None, notes: str = "") -> str:
    """A sheet as a page without scripts and without anything from elsewhere; ends with a line end.

    Args:
        sheet: what there is to read.
        pictures: by the heading of their section; one without a section of its own makes one.
        notes: the builder's, which are folded wherever the sheet has them.
    """
    page = arranged(sheet, pictures or {}, notes)
    return _environment().get_template("page.html.jinja").render(page=page) + "\n"


@cache
def _environment() -> Environment:
    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals |= {"way_picture": way_picture, "light": LIGHT_COLORS, "dark": DARK_COLORS}
    made.filters |= {"kind": lambda block: type(block).__name__, "symbol": _symbol, "css": _css, "at": _at}
    return made


def _symbol(mark: Mark) -> str:
    return SYMBOLS[mark]


def _css(mark: Mark) -> str:
    """A mark as the name of a style, which holds no blank."""
    return mark.replace(" ", "-")


def _at(value: float) -> str:
    """A place in a picture, as short as it can be written."""
    return f"{value:.1f}".removesuffix(".0")
