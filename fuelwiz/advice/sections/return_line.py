"""The return line at idle, size by size."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.part_figures import ReturnFigures, ReturnSize
from fuelwiz.sizing.thresholds import CREEP_CALLED_OUT_PA


def return_line(subject: Subject, _words: Words) -> Iterator[Block]:
    """Every size of return at idle, and the smallest that will do."""
    yield Heading("Return line")
    if subject.session.pressure.regulator == "none":
        yield Paragraph("There is none: no regulator sends fuel back.")
    elif no_return_at_the_tank(subject):
        yield Paragraph(
            "There is none: the regulator sits at the tank and lets fuel back into it the short way."
        )
    elif subject.figures.return_line is None:
        yield Paragraph(not_known_sentence(subject, "return line", "line", "pump"))
    else:
        yield _table(subject, subject.figures.return_line)
        yield Paragraph(_smallest(subject, subject.figures.return_line))


def no_return_at_the_tank(subject: Subject) -> bool:
    """Whether what is left over goes the short way back, with no line to judge."""
    return subject.at_tank and subject.session.return_line is None


def _table(subject: Subject, line: ReturnFigures) -> Table:
    unit = subject.numbers.unit
    columns = (
        Column("Size", whole=True),
        Column("Flow at idle", unit("flow"), figures=True, short="Flow", rank=2),
        Column("Velocity", unit("velocity"), figures=True, rank=3),
        Column("Backs up to", unit("pressure"), figures=True, short="Back"),
        Column("Regulator", unit("pressure"), figures=True, rank=4),
        Column("Creep", unit("pressure"), figures=True, rank=1),
        Column("Works", whole=True),
    )
    given = subject.session.return_line
    chosen = None if given is None or given.chosen is None else given.chosen.text
    own = next((at for at, size in enumerate(line.sizes) if size.size == line.size), None)
    return Table(columns, tuple(_row(subject, size, chosen) for size in line.sizes), own)


def _row(subject: Subject, size: ReturnSize, chosen: str | None) -> tuple[Cell, ...]:
    numbers = subject.numbers
    return row(
        "as it is" if size.fixed else f"{size.size}*" if size.size == chosen else size.size,
        numbers.number("flow", size.flow_m3_s),
        None if size.velocity_m_s is None else numbers.number("velocity", size.velocity_m_s),
        numbers.number("pressure", size.back_pressure_Pa, subject.figures.pressure.idle_rail_Pa),
        numbers.number("pressure", size.regulator_loss_Pa),
        numbers.number("pressure", size.creep_Pa, 0.0),
        _holds(size),
    )


def _holds(size: ReturnSize) -> Cell:
    if not size.holds:
        return Cell("no", "no")
    return Cell("at ease", "yes") if size.at_ease else Cell("just", "brisk")


def _smallest(subject: Subject, line: ReturnFigures) -> str:
    idle = subject.numbers.figure("pressure", subject.figures.pressure.idle_rail_Pa)
    holds = f"lets the regulator hold {idle} at idle"
    if line.smallest_that_holds is None:
        return (
            f"None of them {holds}."
            if len(line.sizes) > 1
            else f"It does not let the regulator hold {idle} at idle."
        )
    if line.fixed:
        return f"It {holds}."
    ease = ""
    if line.smallest_at_ease not in (None, line.smallest_that_holds):
        ease = f"; {line.smallest_at_ease} is the smallest at ease, with half of that to push back"
    return f"{line.smallest_that_holds} is the smallest return that {holds}{ease}.{_all_on(subject, line)}"


def _all_on(subject: Subject, line: ReturnFigures) -> str:
    """The creep with all pumps on and the throttle shut, where fewer run at idle."""
    if line.creep_all_on_Pa is None:
        return ""
    creep = subject.numbers.figure("pressure", line.creep_all_on_Pa, CREEP_CALLED_OUT_PA)
    return f" With all pumps on and the throttle shut it creeps {creep}."
