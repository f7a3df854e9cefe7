"""What was left out, and what is therefore not known; what the program does not cover."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.assumed import count_in_words, matters_most, moves_spare, values_assumed
from fuelwiz.advice.phrases import dead_head_at_most, dead_head_guessed
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.thresholds import RATED_AT_PA
from fuelwiz.terms import key_in_words


def unknown_remarks(subject: Subject) -> Iterator[Remark]:
    """Notes, the gravest gap first."""
    yield from _sections(subject)
    yield from _ratings(subject)
    yield from _assumed(subject)
    yield from _not_covered(subject)


def _sections(subject: Subject) -> Iterator[Remark]:
    session = subject.session
    if session.pump is None:
        yield Remark(
            "note", "pump", "No pump yet: spare flow, volts, heat, return and bad days are not known."
        )
    if not session.feed.run:
        yield Remark(
            "note", "feed.run", "No feed line yet: its loss, and so what a pump needs, is not known."
        )
    elif not session.feed.filter:
        yield Remark(
            "note",
            "feed.filter",
            "There is no filter.",
            "Injectors need one.",
        )
    if session.inlet is None:
        yield Remark("note", "inlet", "The pump inlet is not given: whether fuel boils there is not known.")
    elif session.pump is not None and session.pump.place == "outside" and not session.inlet.run:
        yield Remark("note", "inlet.run", "The suction line is not given: its velocity is not known.")
    if session.return_line is None and subject.at_rail:
        yield Remark("note", "return_line", "The return line is not given: whether idle works is not known.")
    if session.injectors is None and session.engine.injection == "port":
        yield Remark(
            "note",
            "injectors",
            "The injectors are not given: whether they keep up is not known.",
            _injectors_to_look_for(subject),
        )
    if session.wiring is None and session.pump is not None:
        yield Remark("note", "wiring", "The wiring is not given: wire and fuse are not checked.")


def _injectors_to_look_for(subject: Subject) -> str:
    injectors = subject.figures.injectors
    if injectors is None or injectors.smallest_rating_m3_s is None:
        return ""
    each = subject.numbers.figure("injector", injectors.smallest_rating_m3_s)
    at = subject.numbers.figure("pressure", RATED_AT_PA)
    return f"Look for {injectors.count} of {each} or more, rated at {at}."


def _ratings(subject: Subject) -> Iterator[Remark]:
    pump = subject.figures.pump
    if pump is None or pump.dead_head_Pa is None or pump.lowest_rating_Pa is not None:
        return
    guessed = dead_head_guessed(subject)
    most = dead_head_at_most(subject.numbers, pump.dead_head_Pa, guessed=guessed)
    about = "about " if guessed else ""
    how = ", a guess beyond the pump's table" if guessed else ""
    yield Remark(
        "warning" if guessed else "note",
        "feed.run.pressure_rating",
        f"With the line blocked (dead head) the {subject.pump_word} can reach {about}{most}{how}.",
        "No part's pressure rating is given: check that hose, ends and filter are rated above that.",
        elsewhere=True,
    )


def _assumed(subject: Subject) -> Iterator[Remark]:
    left_out = subject.figures.assumed
    most = matters_most(left_out)
    if most is None:
        return
    only = len(values_assumed(left_out)) == 1
    named = f"{key_in_words(most)} ({_taken(subject, most)}){'' if only else ' matters most'}"
    if not only and not moves_spare(left_out, most):
        named = "none of them moves the flow to spare"
    yield Remark(
        "note",
        most,
        f"{capitalized(count_in_words(left_out))}: {named}.",
        "Enter your own if you know it.",
    )


def _taken(subject: Subject, key: str) -> str:
    """What is taken for a key, in the units that the session shows."""
    session, numbers = subject.session, subject.numbers
    shown = {
        "pressure.boost": lambda: numbers.limit("pressure", session.pressure.boost),
        "pressure.base": lambda: numbers.limit("pressure", session.pressure.base),
        "pressure.idle_vacuum": lambda: numbers.limit("pressure", session.pressure.idle_vacuum),
        "engine.bsfc": lambda: numbers.figure("bsfc", subject.figures.demand.bsfc_kg_J),
        "fuel.temperature": lambda: numbers.figure("temperature", session.fuel.temperature),
        "feed.run.0.length": lambda: numbers.limit("length", session.feed.run[0].length),
    }
    return shown[key]() if key in shown else subject.assumed[key].replace(" ", NO_BREAK)


def _not_covered(_subject: Subject) -> Iterator[Remark]:
    yield Remark(
        "note",
        "pump.place",
        "Not covered: engine-driven pumps and the high-pressure side of direct injection.",
    )
