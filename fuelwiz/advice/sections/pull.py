"""The pull: further points of full power, each with what the pump has to spare there."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.phrases import point_name
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import PULL
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import PullFigures


def pull(subject: Subject, _words: Words) -> Iterator[Block]:
    """A row for each point; nothing without points."""
    points, numbers = subject.figures.pull, subject.numbers
    if not points:
        return
    yield Heading(PULL)
    columns = (
        Column("Speed", "rpm", figures=True),
        Column("Power", numbers.unit("power"), figures=True),
        Column("Boost", numbers.unit("pressure"), figures=True, rank=2),
        Column("Fuel", numbers.unit("flow"), figures=True, rank=1),
        Column("Spare", numbers.unit("percent"), figures=True),
        Column("Duty", numbers.unit("percent"), figures=True, rank=3),
        Column("What is short"),
    )
    least = subject.pick.least
    own = None if least is None else least.at
    yield Table(columns, tuple(_row(subject, point) for point in points), own)
    if least is not None:
        spare = numbers.figure("percent", least.margin, 0.0, subject.session.goal.reserve)
        where = "at the goal" if least.at is None else point_name(subject, least.at)
        yield Paragraph(f"Tightest {where}: {spare} to spare.")


def _row(subject: Subject, point: PullFigures) -> tuple[Cell, ...]:
    numbers, given = subject.numbers, subject.session.injectors
    limit = () if given is None else (given.duty_limit,)
    what = "; ".join(short_why(subject, limit) for limit in point.limits)
    return row(
        None if point.rpm is None else str(point.rpm),
        numbers.number("power", point.crank_power_W),
        numbers.number("pressure", point.boost_Pa),
        numbers.number("flow", point.flow_m3_s),
        None
        if point.margin is None
        else numbers.number("percent", point.margin, 0.0, subject.session.goal.reserve),
        None if point.duty is None else numbers.number("percent", point.duty, *limit),
        Cell(what, "no") if what else Cell("nothing", "yes") if point.margin is not None else None,
    )
