"""Result -> sheet: all that there is to read about a build, in the order in which a builder reads it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fuelwiz.advice.blocks import Block, Sheet
from fuelwiz.advice.result import Result, Words
from fuelwiz.advice.sections.bad_days import bad_days, findings, next_goal
from fuelwiz.advice.sections.ceilings import ceilings
from fuelwiz.advice.sections.changes import changes
from fuelwiz.advice.sections.closing import assumed, cautions, on_the_car, said_before
from fuelwiz.advice.sections.gauge import gauge_pressures
from fuelwiz.advice.sections.how_sure import how_sure
from fuelwiz.advice.sections.injectors import injectors
from fuelwiz.advice.sections.inlet import before_the_pump
from fuelwiz.advice.sections.logged import logged
from fuelwiz.advice.sections.measured import measured, measured_in_brief
from fuelwiz.advice.sections.opening import opening
from fuelwiz.advice.sections.page import (
    assumed_in_brief,
    cautions_in_brief,
    ceilings_in_brief,
    days_in_brief,
    gauges_in_brief,
    opening_in_brief,
    three_sizes,
    warnings_in_brief,
)
from fuelwiz.advice.sections.parts import parts_and_lengths
from fuelwiz.advice.sections.path import path
from fuelwiz.advice.sections.pressure import fuel_and_rail, ladder
from fuelwiz.advice.sections.pull import pull
from fuelwiz.advice.sections.pump import pump_to_look_for
from fuelwiz.advice.sections.return_line import return_line
from fuelwiz.advice.sections.shopping import shopping
from fuelwiz.advice.sections.sizes import sizes
from fuelwiz.advice.sections.wiring import wire_and_fuse
from fuelwiz.advice.subject import Subject
from fuelwiz.file_limits import UNNAMED

Section = Callable[[Subject, Words], Iterator[Block]]

SECTIONS: tuple[Section, ...] = (
    opening,
    path,
    sizes,
    fuel_and_rail,
    ladder,
    ceilings,
    changes,
    how_sure,
    pull,
    bad_days,
    next_goal,
    findings,
    gauge_pressures,
    measured,
    logged,
    pump_to_look_for,
    before_the_pump,
    return_line,
    wire_and_fuse,
    injectors,
    parts_and_lengths,
    shopping,
    assumed,
    on_the_car,
    said_before,
    cautions,
)


PAGE: tuple[Section, ...] = (
    opening_in_brief,
    path,
    ceilings_in_brief,
    three_sizes,
    gauges_in_brief,
    measured_in_brief,
    shopping,
    warnings_in_brief,
    days_in_brief,
    assumed_in_brief,
    said_before,
    cautions_in_brief,
)
"""What stands on one page."""


def page_of(result: Result) -> Sheet:
    """The sheet of one build on a page."""
    return _sheet(result, PAGE)._replace(compact=True)


def sheet_of(result: Result) -> Sheet:
    """The sheet of one build with everything that there is to read."""
    return _sheet(result, SECTIONS)


def _sheet(result: Result, sections: tuple[Section, ...]) -> Sheet:
    build = Subject(result.session, result.figures, result.measured, result.prices)
    blocks = (block for section in sections for block in section(build, result.words))
    return Sheet(result.session.name or UNNAMED, tuple(blocks))
