"""The way back: the regulator, the return, and where they end."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.limits.returning import regulator_makes_most
from fuelwiz.advice.part_words import regulator_in_words
from fuelwiz.advice.sections.path_line import PathLine, gap
from fuelwiz.advice.sections.path_runs import run_line
from fuelwiz.advice.sections.return_line import no_return_at_the_tank
from fuelwiz.advice.subject import Subject

SHORT_WAY = "at the tank, no return"


def regulator_at_the_tank(subject: Subject) -> Iterator[PathLine]:
    """A regulator at the tank with no line behind it: what is left over goes the short way into the tank."""
    if no_return_at_the_tank(subject):
        yield PathLine("├", "regulator", SHORT_WAY)


def way_back(subject: Subject) -> Iterator[PathLine]:
    """The regulator and the way back."""
    session, line, numbers = subject.session, subject.figures.return_line, subject.numbers
    if session.pressure.regulator == "none":
        return
    if session.return_line is None:
        if subject.at_rail:
            yield gap("│", "return", "return line")
        return
    regulator = session.return_line.regulator
    rated = regulator_in_words(subject, regulator)
    lost = "" if line is None else f"{numbers.figure('pressure', line.regulator_loss_Pa)} at idle"
    taken = "return_line.regulator" in subject.assumed
    limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "return")
    at_regulator = regulator_makes_most(subject) or not session.return_line.run
    yield PathLine("│", "regulator", rated, "", lost, limits if at_regulator else (), taken)
    for number, run in enumerate(session.return_line.run):
        size = "" if line is None else line.size
        last = number == len(session.return_line.run) - 1
        speed = there = ""
        if line is not None and last:
            idle = subject.figures.pressure.idle_rail_Pa
            back = numbers.number("pressure", line.back_pressure_Pa, idle)
            there = f"{back} of {numbers.figure('pressure', idle, line.back_pressure_Pa)} at idle"
            if not line.holds:
                held = numbers.number("pressure", idle, line.back_pressure_Pa)
                there = f"{numbers.figure('pressure', line.back_pressure_Pa, idle)} at idle, not {held}"
            speed = "" if line.velocity_m_s is None else numbers.number("velocity", line.velocity_m_s)
        found = limits if last and not at_regulator else ()
        yield run_line(subject, run, size, speed, there, found, f"return_line.run.{number}")
    goes = "surge pot" if session.surge is not None and session.surge.return_to == "surge" else "tank"
    yield PathLine("", goes, "")
