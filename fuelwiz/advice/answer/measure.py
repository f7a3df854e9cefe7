"""What to measure, and how sure the answer is: the fourth line of the answer."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from fuelwiz.advice.answer.lines import Forms, line
from fuelwiz.advice.assumed import matters_most
from fuelwiz.advice.case_sentences import boils_today
from fuelwiz.advice.findings.pump import GUESSED_OVER_PA
from fuelwiz.advice.guesses import GUESSES, break_value, keeps_up
from fuelwiz.terms import key_in_words

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.sizing.slow_figures import InputFigures, LimitShare, SpreadFigures

WORTH_SAYING = 0.02
TENTHS = 10
ONE_POINT = "The pump is a guess from one point."


def measure(subject: Subject) -> Forms | None:
    """The guess that matters most and where it would break; until that is known, the assumed value that does."""
    spread = subject.figures.spread
    guessed = _from_one_point(subject)
    if spread is None:
        return line(*guessed) if guessed else _most_assumed(subject)
    lead = _limit_that_may_come(subject, spread)
    if lead is not None:
        return _may_come(subject, lead, spread)
    if guessed:
        return line(f"{guessed[0]} {nine_in_ten(subject, spread)}.", *guessed)
    first = spread.inputs[0] if spread.inputs else None
    if first is not None and first.breaks is not None and first.limit is not None:
        return _where_it_breaks(subject, first)
    sure = f"{nine_in_ten(subject, spread)}"
    if first is None:
        return line(f"{sure}.")
    measured = GUESSES[first.input].name
    return line(
        f"{sure}; measure {measured} first, it moves this most.", f"{sure}; measure {measured}.", f"{sure}."
    )


def _from_one_point(subject: Subject) -> Forms:
    """That the pump's curve is a guess, and which figure of it to ask for; empty where more of it is known."""
    rise = subject.pick.pump_rise_Pa
    if not subject.one_point or not subject.has_pump or rise is None:
        return ()
    if _is_known_at(subject, rise):
        return (
            "A guess beyond one point of the pump's curve; ask for the maker's table.",
            "A guess beyond one point of the pump's curve.",
        )
    at = subject.numbers.about("pressure", rise)
    return (
        f"A guess from one point of the pump's curve; ask for its flow at {at}.",
        f"A guess from one point; ask for the pump's flow at {at}.",
        f"A guess; ask for the pump's flow at {at}.",
    )


def _is_known_at(subject: Subject, rise_pa: float) -> bool:
    """Whether the one point is where the goal needs the pump."""
    pump = subject.session.pump
    points = [curve.points[0] for curve in pump.curve if len(curve.points) == 1] if pump else []
    return any(abs(pressure - rise_pa) <= GUESSED_OVER_PA for pressure, _ in points)


def _most_assumed(subject: Subject) -> Forms | None:
    key = matters_most(subject.figures.assumed)
    if key is None:
        return None
    noun = key_in_words(key)
    return line(f"Measure or look up first: {noun}, now assumed.", f"Measure first: {noun}.")


def nine_in_ten(subject: Subject, spread: SpreadFigures) -> str:
    """The margin that nine in ten draws stay within."""
    numbers, margin = subject.numbers, spread.margin
    low, high = numbers.number("percent", margin.low, 0.0), numbers.figure("percent", margin.high, 0.0)
    if margin.high < 0.0:
        return f"9 in 10: {numbers.number('percent', -margin.high)} to {numbers.figure('percent', -margin.low)} short"
    if margin.low < 0.0:
        return f"9 in 10: {numbers.figure('percent', -margin.low, 0.0)} short to {high} to spare"
    return f"9 in 10: {low} to {high} to spare"


def in_words(share: float) -> str:
    """A share as a fraction: "1 in 4", "9 in 10", never a bare percentage."""
    if share < 1.0 / TENTHS:
        return f"1 in {round(1.0 / share)}"
    parts = [
        (abs(over / under - share), under, over) for under in range(2, TENTHS + 1) for over in range(1, under)
    ]
    _, under, over = min(parts)
    return f"{over} in {under}"


def _limit_that_may_come(subject: Subject, spread: SpreadFigures) -> LimitShare | None:
    """The limit that today has not and that most draws meet, where limits beside a lack of fuel are met often."""
    if 1.0 - spread.chance < spread.short + WORTH_SAYING:
        return None
    today = set(subject.figures.verdict.limits)
    if not boils_today(subject):
        today.discard("vapour")
    new = [item for item in spread.limits if item.limit not in today and item.limit != "pump"]
    worst = max(new, key=lambda item: item.share, default=None)
    return worst if worst is not None and worst.share >= WORTH_SAYING else None


def _may_come(subject: Subject, lead: LimitShare, spread: SpreadFigures) -> Forms:
    happens = keeps_up(subject, lead.limit).fails
    chance = in_words(lead.share)
    guess = _to_blame(lead, spread.inputs)
    what = "" if guess is None else f"; measure {GUESSES[guess.input].name}"
    whole = f"{chance}: {happens}{what}"
    whole = f"{whole[:1].upper()}{whole[1:]}"
    short = f"{chance}: {happens}."
    short = short[:1].upper() + short[1:]
    guessed = [f"{said} {ONE_POINT}" for said in (f"{whole}.", short)] if subject.one_point else []
    return line(*guessed, f"{whole}. {nine_in_ten(subject, spread)}.", f"{whole}.", short)


def _to_blame(lead: LimitShare, inputs: Sequence[InputFigures]) -> InputFigures | None:
    """The guess that brings a limit about."""
    own = next((item for item in inputs if lead.limit == "vapour" == item.input), None)
    return own or next((item for item in inputs if item.limit == lead.limit), None)


def _where_it_breaks(subject: Subject, guess: InputFigures) -> Forms:
    assert guess.breaks is not None and guess.limit is not None
    name = GUESSES[guess.input].name
    value, above = break_value(subject, guess)
    words = keeps_up(subject, guess.limit)
    works = subject.figures.verdict.works is not False or guess.limit not in subject.figures.verdict.limits
    good_below = above if works else not above
    side = "under" if good_below else "over"
    verb = words.holds if works else words.would_hold
    whole = f"Measure: {name}; {verb} while it is {side} {value}"
    return line(
        f"{whole}.",
        f"Measure: {name}; {verb} {side} {value}.",
        f"Measure: {name} ({side} {value}).",
        f"Measure: {name}.",
    )
