"""One row of sizes in figures for people, and the limits that each of them is judged by."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from fuelwiz.advice.numbers import Numbers, Role
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG
from fuelwiz.sizing.vocabulary import Band

Limits = tuple[float, ...]


@record
class RowFigure:
    """A figure of a row: what it is, where it is read, and what it is never rounded onto or across."""

    role: Role
    value: Callable[[SizeFigures], float | None]
    limits: Callable[[Subject], Limits] = lambda _subject: ()

    def number(self, subject: Subject, size: SizeFigures, numbers: Numbers | None = None) -> str | None:
        """The figure without its unit, as it stands in a column; None where it is not known yet.

        Args:
            subject: the build whose row it is.
            size: the row.
            numbers: how it is shown, where that is not the build's own way.
        """
        value = self.value(size)
        return (
            None
            if value is None
            else (numbers or subject.numbers).number(self.role, value, *self.limits(subject))
        )

    def figure(self, subject: Subject, size: SizeFigures, numbers: Numbers | None = None) -> str | None:
        """The figure with its unit, as `number` otherwise."""
        value = self.value(size)
        return (
            None
            if value is None
            else (numbers or subject.numbers).figure(self.role, value, *self.limits(subject))
        )


def _bands(subject: Subject) -> Limits:
    return tuple(subject.session.bands.feed)


def _most_sag(subject: Subject) -> Limits:
    """At the tank the loss of the line is what the rail sags by; elsewhere no limit judges it."""
    return (MOST_SAG * subject.figures.pressure.injector_Pa,) if subject.at_tank else ()


def _reserve(subject: Subject) -> Limits:
    return (subject.session.goal.reserve, 0.0)


def _goal(subject: Subject) -> Limits:
    return (subject.figures.demand.crank_power_W,)


BORE = RowFigure("bore", lambda size: size.bore_m)
VELOCITY = RowFigure("velocity", lambda size: size.velocity_m_s, _bands)
FULL_DELIVERY_VELOCITY = RowFigure("velocity", lambda size: size.full_delivery_velocity_m_s, _bands)
LOSS = RowFigure("pressure", lambda size: size.feed_loss_Pa, _most_sag)
SPARE = RowFigure("percent", lambda size: size.margin, _reserve)
FEEDS = RowFigure("power", lambda size: size.max_power_W, _goal)


def works(size: SizeFigures) -> Literal["yes", "no"] | None:
    """Whether a size works, in a word; None while that is not known."""
    return None if size.works is None else "yes" if size.works else "no"


def size_name(subject: Subject, size: SizeFigures) -> str:
    """The size, with a star where it is the one that was chosen."""
    return f"{size.size}*" if size.size == subject.figures.chosen else size.size


def speed_mark(size: SizeFigures) -> Band | None:
    """The mark of the velocity; none on a row where something is wrong, so that no tick stands there."""
    return None if size.limits else size.band
