"""How sure the answer is: what comes of it where every input is somewhere within its tolerance."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from fuelwiz.advice.answer.measure import WORTH_SAYING, in_words, nine_in_ten
from fuelwiz.advice.blocks import Block, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.case_sentences import boils_today
from fuelwiz.advice.guesses import GUESSES, break_value, keeps_up
from fuelwiz.advice.numbers import Role
from fuelwiz.advice.sections.headings import HOW_SURE
from fuelwiz.advice.sections.unknown import slow_part_unknown
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.printable import MINUS
from fuelwiz.sizing.vocabulary import ADDED, Input, input_of

if TYPE_CHECKING:
    from fuelwiz.advice.result import Words
    from fuelwiz.sizing.slow_figures import InputFigures, SpreadFigures

ALONE = "Each line moves one input alone, from one end of its give or take to the other."
WHERE_IT_BOILS = "Fuel breaks it where it boils; today it is only too close to that."
MOST_LIMITS = 2
THOUSAND = 1000

_TOLERANCE: dict[Input, Role] = {
    "boost": "pressure",
    "base": "pressure",
    "voltage": "volts",
}
"""In what the tolerance of an input is shown where that is not in percent; that of temperature, whole."""


class GuessRow(NamedTuple):
    """One input: its give or take, the margins at its ends, in words and as shares, and where it breaks.

    `short` is its name where room is short. `near` is so where it breaks within its give or take.
    """

    name: str
    short: str
    give: str
    assumed: bool
    low: float
    high: float
    low_text: str
    high_text: str
    breaks: str
    near: bool


def how_sure(subject: Subject, _words: Words) -> Iterator[Block]:
    """The margin of nine in ten, what may go wrong, and every input with what it moves."""
    yield Heading(HOW_SURE)
    spread = subject.figures.spread
    if spread is None:
        yield Paragraph(slow_part_unknown(subject))
        return
    yield Paragraph(sure_sentence(subject, spread))
    guess, give, low, high, breaks = sure_columns()
    columns = (guess, give, low, high, breaks)
    rows = (
        row(one.name, given(one), one.low_text, one.high_text, one.breaks or None)
        for one in guess_rows(subject)
    )
    yield Table(columns, tuple(rows))
    too_close = "vapour" in subject.figures.verdict.limits and not boils_today(subject)
    yield Paragraph(f"{ALONE} {WHERE_IT_BOILS}" if too_close else ALONE, quiet=True)


def sure_columns() -> tuple[Column, Column, Column, Column, Column]:
    """The heads: what is not known exactly, by how much, what is left at both ends, where it breaks."""
    return (
        Column("Guess"),
        Column("Give or take", whole=True, short="+/-"),
        Column("To spare, %", figures=True, short="%"),
        Column("to", figures=True),
        Column("Breaks at"),
    )


def sure_sentence(subject: Subject, spread: SpreadFigures) -> str:
    """What nine in ten stay within, how many are short of fuel, and which limits are met beside that."""
    said: dict[str, str] = {}
    for one in sorted(spread.limits, key=lambda limit: -limit.share):
        fails = keeps_up(subject, one.limit).fails
        if one.limit != "pump" and one.share >= WORTH_SAYING and len(said) < MOST_LIMITS:
            said.setdefault(fails, f"{capitalized(in_words(one.share))}: {fails}.")
    return " ".join([f"{nine_in_ten(subject, spread)}; {_short(spread)}.", *said.values()])


def _short(spread: SpreadFigures) -> str:
    if spread.short <= 0.0:
        return f"none in {min(spread.draws, THOUSAND)} short of fuel"
    return f"{in_words(spread.short)} short of fuel at the goal"


def given(one: GuessRow) -> str:
    """The give or take, and that it is of an assumed value where it is."""
    return f"{one.give} assumed" if one.assumed else one.give


def guess_rows(subject: Subject) -> tuple[GuessRow, ...]:
    """Every input of the spread, in its order."""
    spread = subject.figures.spread
    if spread is None:
        return ()
    assumed = {input_of(item.key) for item in subject.figures.assumed}
    return tuple(_row(subject, one, one.input in assumed) for one in spread.inputs)


def _row(subject: Subject, one: InputFigures, assumed: bool) -> GuessRow:
    low, high = sorted((one.low, one.high))
    numbers, guess = subject.numbers, GUESSES[one.input]
    return GuessRow(
        name=guess.name.removeprefix("the ").removeprefix("its "),
        short=guess.short,
        give=_give(subject, one),
        assumed=assumed,
        low=low,
        high=high,
        low_text=numbers.number("percent", low, 0.0),
        high_text=numbers.number("percent", high, 0.0),
        breaks="" if one.breaks is None else _breaks(subject, one),
        near=_is_near(one),
    )


def _give(subject: Subject, one: InputFigures) -> str:
    if one.tolerance is None:
        return "either"
    if one.input == "temperature":
        return subject.numbers.figure("warming", one.tolerance)
    return subject.numbers.limit(_TOLERANCE.get(one.input, "percent"), one.tolerance)


def _breaks(subject: Subject, one: InputFigures) -> str:
    """Where it breaks: a share of today's as what is added to that, "−29 %"; any other with its unit alone."""
    assert one.breaks is not None
    value, above = break_value(subject, one)
    if " of " not in value:
        return value.partition(" at ")[0]
    share = one.breaks - 1.0
    shown = subject.numbers.figure("percent", abs(share), 0.0)
    return f"+{shown}" if above else f"{MINUS}{shown}"


def _is_near(one: InputFigures) -> bool:
    """Whether it breaks within its give or take."""
    if one.breaks is None or one.tolerance is None:
        return False
    if one.input in ADDED:
        return abs(one.breaks) <= one.tolerance
    factor = 1.0 + one.tolerance
    return 1.0 / factor <= one.breaks <= factor
