"""How sure: what is to spare where each guess is somewhere within its tolerance."""

from __future__ import annotations

from fuelwiz.advice.sections.headings import HOW_SURE
from fuelwiz.advice.sections.how_sure import GuessRow, guess_rows, sure_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.bars import WIDTH, Bar, Line, bars
from fuelwiz.report.page.pictures.shapes import Kind, Picture
from fuelwiz.terminal.cells import clip

MOST = 7
SMALLEST = 0.005
"""An input that moves the spare by less than this is not drawn."""
LONGEST_NAME = 21


def how_sure_picture(subject: Subject) -> Picture | None:
    """The whole interval, then a bar for each guess that moves it; None while it is not worked out."""
    spread, numbers = subject.figures.spread, subject.numbers
    if spread is None:
        return None
    ends = spread.margin.low, spread.margin.high
    low, high = (numbers.number("percent", end, 0.0) for end in ends)
    moved = [each for each in guess_rows(subject) if abs(each.high - each.low) >= SMALLEST][:MOST]
    rows = [Bar("9 in 10", *ends, f"{low} to {high}", "focus"), *(_bar(each) for each in moved)]
    height, shapes = bars(rows, [Line("short | to spare", 0.0, "goal")], figures="%")
    figures = "; ".join([f"9 in 10 {low} to {high}", *(_in_words(each) for each in moved)])
    sentence = sure_sentence(subject, spread)
    if moved:
        sentence += " Each bar below is one guess moved alone, pale where it is assumed."
    return Picture("how-sure", HOW_SURE, f"In % to spare: {figures}.", sentence, WIDTH, height, shapes)


def _bar(guess: GuessRow) -> Bar:
    """Red where it may break the build, pale where it is assumed."""
    kind: Kind = "fails" if guess.near else "could" if guess.assumed else "works"
    return Bar(clip(guess.name, LONGEST_NAME, "…"), guess.low, guess.high, _between(guess), kind)


def _between(guess: GuessRow) -> str:
    return f"{guess.low_text} to {guess.high_text}"


def _in_words(guess: GuessRow) -> str:
    breaks = f", breaks at {guess.breaks}" if guess.breaks else ""
    return f"{guess.name} {_between(guess)}{breaks}"
