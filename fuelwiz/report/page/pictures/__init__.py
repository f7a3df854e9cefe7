"""The pictures of a page, each as shapes that a template draws."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.ceilings import ceilings_picture
from fuelwiz.report.page.pictures.curves import curves_picture
from fuelwiz.report.page.pictures.how_sure import how_sure_picture
from fuelwiz.report.page.pictures.ladder import ladder_picture
from fuelwiz.report.page.pictures.logged import logged_picture
from fuelwiz.report.page.pictures.pull import pull_picture
from fuelwiz.report.page.pictures.shapes import Picture
from fuelwiz.sizing.figures import Plot

__all__ = ["Picture", "pictures_of"]


def pictures_of(subject: Subject, plot_of: Callable[[str], Plot | None] | None) -> dict[str, Picture]:
    """The pictures that there is something to draw for, by the heading of their section."""
    plot = None if plot_of is None else plot_of(subject.pick.size)
    drawn = (
        None if plot is None else curves_picture(subject, plot),
        ladder_picture(subject),
        ceilings_picture(subject),
        how_sure_picture(subject),
        pull_picture(subject),
        logged_picture(subject),
    )
    return {picture.heading: picture for picture in drawn if picture is not None}
