"""Result -> sheet: all that there is to read about a build, in the order in which a builder reads it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fuelwiz.advice.blocks import Block, Sheet
from fuelwiz.advice.result import Result, Words
from fuelwiz.advice.sections.bad_days import bad_days, findings, next_goal
from fuelwiz.advice.sections.ceilings import ceilings
from fuelwiz.advice.sections.closing import assumed, cautions, on_the_car, said_before
from fuelwiz.advice.sections.gauge import gauge_pressures
from fuelwiz.advice.sections.inlet import before_the_pump
from fuelwiz.advice.sections.opening import opening
from fuelwiz.advice.sections.parts import parts_and_lengths
from fuelwiz.advice.sections.sizes import sizes, what_it_takes
from fuelwiz.advice.sections.would_do import pump_to_look_for, return_that_would_do, wire_and_injectors
from fuelwiz.advice.subject import Subject
from fuelwiz.file_limits import UNNAMED

Section = Callable[[Subject, Words], Iterator[Block]]

SECTIONS: tuple[Section, ...] = (
    opening,
    sizes,
    what_it_takes,
    ceilings,
    bad_days,
    next_goal,
    findings,
    gauge_pressures,
    pump_to_look_for,
    before_the_pump,
    return_that_would_do,
    wire_and_injectors,
    parts_and_lengths,
    assumed,
    on_the_car,
    said_before,
    cautions,
)


def sheet_of(result: Result) -> Sheet:
    """The sheet of one build."""
    build = Subject(result.session, result.figures)
    blocks = (block for section in SECTIONS for block in section(build, result.words))
    return Sheet(result.session.name or UNNAMED, tuple(blocks))
