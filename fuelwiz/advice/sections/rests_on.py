"""What of a build was measured and when, and what still rests on a sheet or on a guess."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.assumed import by_effect
from fuelwiz.advice.blocks import Item
from fuelwiz.advice.proposal_words import value_now
from fuelwiz.advice.subject import Subject, listed
from fuelwiz.session import given
from fuelwiz.terms import key_in_words

if TYPE_CHECKING:
    from fuelwiz.measured.figures import Measured, Taken

SEEN = 0.005
"""An effect under half a point of spare is not worth a figure."""


def taken_items(subject: Subject, found: Measured) -> list[Item]:
    """Each value of the build that was measured, with what measured it and when."""
    return [Item(_taken(subject, one)) for one in found.taken if one.key in _IN_WORDS or one.key == "pull"]


_IN_WORDS = ("pump.health", "pump.volts", "pressure.base", "engine.bsfc", "wiring.connections")
"""Keys that can be measured."""


def _taken(subject: Subject, one: Taken) -> str:
    if one.key == "pull":
        what = f"{len(subject.session.pull)} further points of full power"
    else:
        what = f"{key_in_words(one.key)} {value_now(subject, one.key)}"
    return f"In the build: {what}, by {one.reason}, {one.when}."


def rests_on(subject: Subject, found: Measured) -> str:
    """What nobody has measured yet, in two sentences: by a sheet, and by a guess."""
    sheets, guesses = list(_by_sheet(subject, found)), list(_by_guess(subject))
    by_sheet = f"Still by a sheet: {listed(sheets)}." if sheets else ""
    by_guess = f"Still a guess: {listed(guesses)}." if guesses else ""
    return f"{by_sheet} {by_guess}".strip()


def _by_sheet(subject: Subject, found: Measured) -> Iterator[str]:
    """Figures of parts that were typed from a sheet and that nothing on the car has borne out."""
    session = subject.session
    pump, line = session.pump, session.return_line
    if pump is not None:
        if not _flow_is_measured(found):
            yield "flow of the pump"
        if pump.current and all(one.item != "current" for one in found.gauge):
            yield "amps of the pump"
    if given(session, "feed.filter") and session.feed.filter:
        yield "loss of the filter"
    if line is not None and given(session, "return_line.regulator"):
        yield "loss of the regulator"
    if session.injectors is not None:
        yield "flow of the injectors"


def _flow_is_measured(found: Measured) -> bool:
    """Whether a bench, or a log in which the pressure sagged, says what the pump sends."""
    by_bench = found.bench is not None and found.bench.factor is not None
    return by_bench or any(one.key == "pump.health" for one in found.taken)


def _by_guess(subject: Subject) -> Iterator[str]:
    """What is assumed and moves the answer, what moves it most first."""
    for item in by_effect(subject.figures.assumed):
        if item.effect is not None and item.effect >= SEEN:
            yield key_in_words(item.key)
