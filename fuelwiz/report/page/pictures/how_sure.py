"""How sure: what is to spare where each guess is somewhere within its tolerance."""

from __future__ import annotations

from fuelwiz.advice.guesses import GUESSES, break_value
from fuelwiz.advice.sections.how_sure import NAME
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.bars import WIDTH, Bar, Line, bars
from fuelwiz.report.page.pictures.shapes import Picture
from fuelwiz.sizing.slow_figures import InputFigures

MOST = 7
SMALLEST = 0.005
"""An input that moves the spare by less than this is not drawn."""
LONGEST_NAME = 20


def how_sure_picture(subject: Subject) -> Picture | None:
    """The whole interval, then a bar for each guess that moves it; None while it is not worked out."""
    spread, numbers = subject.figures.spread, subject.numbers
    if spread is None:
        return None
    low, high = (numbers.number("percent", end, 0.0) for end in (spread.margin.low, spread.margin.high))
    moved = [each for each in spread.inputs if each.effect >= SMALLEST][:MOST]
    rows = [Bar("9 in 10", spread.margin.low, spread.margin.high, f"{low} to {high}", "focus")]
    rows += [_bar(subject, each) for each in moved]
    lines = [Line("short | to spare", 0.0, "goal")]
    height, shapes = bars(rows, lines, figures="%")
    told = "; ".join([f"9 in 10 {low} to {high}", *(_told(subject, each) for each in moved)])
    moved_alone = "Each bar below is one guess moved alone, the others kept."
    sentence = f"To spare 9 times in 10: {low} to {high}\u00a0%. {moved_alone}"
    return Picture("how-sure", NAME, f"In % to spare: {told}.", sentence, WIDTH, height, shapes)


def _bar(subject: Subject, moved: InputFigures) -> Bar:
    low, high = sorted((moved.low, moved.high))
    return Bar(_name(moved), low, high, _between(subject, moved), "works" if low >= 0.0 else "fails")


def _name(moved: InputFigures) -> str:
    """What the input is called, without an article, in the room that a row has."""
    name = GUESSES[moved.input].name.removeprefix("the ").removeprefix("its ")
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 1].rstrip()}…"


def _between(subject: Subject, moved: InputFigures) -> str:
    number = subject.numbers.number
    low, high = sorted((moved.low, moved.high))
    return f"{number('percent', low, 0.0)} to {number('percent', high, 0.0)}"


def _told(subject: Subject, moved: InputFigures) -> str:
    name = GUESSES[moved.input].name
    breaks = "" if moved.breaks is None else f", breaks at {break_value(subject, moved)[0]}"
    return f"{name} {_between(subject, moved)}{breaks}"
