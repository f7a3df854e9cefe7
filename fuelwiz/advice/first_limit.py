"""Which part reaches its limit first, in one sentence."""

from __future__ import annotations

from fuelwiz.advice.phrases import kept_run_chokes, kept_run_name
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.vocabulary import CeilingPart

PARTS: dict[CeilingPart, str] = {
    "pump": "the pump",
    "feed": "the feed line",
    "filter": "the filter",
    "inlet": "the suction line",
    "injectors": "the injectors",
}


def first_limit(subject: Subject) -> str | None:
    """The part with the lowest ceiling, and the next one once it is changed; None where no part is known.

    A ceiling by rule of thumb is said apart from those that are solved: it is no prediction of power.
    """
    ceilings = subject.figures.ceilings
    if not ceilings:
        return None
    solved = [ceiling for ceiling in ceilings if ceiling.basis == "solved"]
    if not solved:
        return f"{_by_rule(subject, ceilings[0])}."
    below = (
        [f"{_by_rule(subject, ceilings[0])}; that is no hard limit."] if ceilings[0] is not solved[0] else []
    )
    return " ".join((_solved(subject, solved), *below))


def part_name(subject: Subject, ceiling: Ceiling) -> str:
    """A part with its article; the line where the drop through it ends what the pump could do."""
    if ceiling.by_line:
        return f"{line_to_blame(subject)} (rail pressure drops too far)"
    return "the pumps" if ceiling.part == "pump" and is_plural(subject, ceiling) else PARTS[ceiling.part]


def _solved(subject: Subject, solved: list[Ceiling]) -> str:
    first, *rest = solved
    reach, their = ("reach", "their") if is_plural(subject, first) else ("reaches", "its")
    sentence = (
        f"{capitalized(part_name(subject, first))} {reach} {their} limit first, at {_power(subject, first)}"
    )
    return (
        f"{sentence}; then {part_name(subject, rest[0])}, at {_power(subject, rest[0])}."
        if rest
        else f"{sentence}."
    )


def _by_rule(subject: Subject, ceiling: Ceiling) -> str:
    return f"By rule of thumb {part_name(subject, ceiling)} is good for {_power(subject, ceiling)}"


def line_to_blame(subject: Subject) -> str:
    """The feed line where its drop ends the power; of it the run that keeps a size of its own where that one chokes."""
    return kept_run_name(subject).rstrip(",") if kept_run_chokes(subject, subject.pick) else "the feed line"


def is_plural(subject: Subject, ceiling: Ceiling) -> bool:
    """Whether a part is spoken of as several."""
    if ceiling.by_line:
        return False
    return ceiling.part == "injectors" or (ceiling.part == "pump" and subject.pump_word == "pumps")


def _power(subject: Subject, ceiling: Ceiling) -> str:
    return subject.numbers.figure("power", ceiling.max_power_W, subject.figures.demand.crank_power_W)
