"""The top of a sheet: what the build is, the answer, and what to do next."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Paragraph
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject
from fuelwiz.shown_units import base_system
from fuelwiz.terms import INDUCTIONS

SITS = {
    "rail": "regulator at the rail",
    "tank": "regulator at the tank",
    "none": "no regulator, the pump's speed holds the pressure",
}


def opening(subject: Subject, words: Words) -> Iterator[Block]:
    """The build in a line, its notes, and the answer."""
    yield Paragraph(build_in_a_line(subject))
    yield from notes(subject)
    yield from answer(words)


def notes(subject: Subject, most: int | None = None) -> Iterator[Block]:
    """What the builder wrote down about the build, cut between words where it is longer than `most` characters."""
    text = subject.session.notes.strip()
    if most is not None and len(text) > most:
        text = f"{text[:most].rpartition(' ')[0] or text[:most]}…"
    if text:
        yield Paragraph(text)


def answer(words: Words) -> Iterator[Block]:
    """The lines of the answer, the first to be read first, and the line to fit under them."""
    first, *others = words.answer
    yield Paragraph(first, strong=True)
    under = [*others, *([words.line_to_fit] if words.line_to_fit else [])]
    if under:
        yield Paragraph("\n".join(under))


def build_in_a_line(subject: Subject) -> str:
    """Goal, fuel, air and pressure."""
    session, numbers = subject.session, subject.numbers
    power = numbers.figure("power", subject.figures.demand.crank_power_W)
    at = "at the wheels" if session.goal.power_at == "wheels" else "at the crank"
    air = INDUCTIONS[session.engine.induction]
    if session.pressure.boost > 0.0:
        air = f"{air}, {numbers.figure('pressure', session.pressure.boost)} of boost"
    base = numbers.figure("pressure", session.pressure.base)
    sits = SITS[session.pressure.regulator]
    gallons = " Gallons are US gallons." if base_system(numbers.system) == "us" else ""
    return f"{power} {at} on {subject.fuel}; {air}; {base} base pressure, {sits}.{gallons}"
