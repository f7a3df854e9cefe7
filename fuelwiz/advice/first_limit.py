"""Which part reaches its limit first, in one sentence."""

from __future__ import annotations

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


def first_limit(build: Subject) -> str | None:
    """The part with the lowest ceiling, and the next one once it is changed; None where no part is known.

    A ceiling by rule of thumb is said apart from those that are solved: it is no prediction of power.
    """
    ceilings = build.figures.ceilings
    if not ceilings:
        return None
    solved = [ceiling for ceiling in ceilings if ceiling.basis == "solved"]
    if not solved:
        return f"{_by_rule(build, ceilings[0])}."
    below = (
        [f"{_by_rule(build, ceilings[0])}; that is no hard limit."] if ceilings[0] is not solved[0] else []
    )
    return " ".join((_solved(build, solved), *below))


def part_name(build: Subject, ceiling: Ceiling) -> str:
    """A part with its article."""
    return "the pumps" if ceiling.part == "pump" and _is_plural(build, ceiling) else PARTS[ceiling.part]


def _solved(build: Subject, solved: list[Ceiling]) -> str:
    first, *rest = solved
    reach, their = ("reach", "their") if _is_plural(build, first) else ("reaches", "its")
    sentence = (
        f"{capitalized(part_name(build, first))} {reach} {their} limit first, at {_power(build, first)}"
    )
    return (
        f"{sentence}; then {part_name(build, rest[0])}, at {_power(build, rest[0])}."
        if rest
        else f"{sentence}."
    )


def _by_rule(build: Subject, ceiling: Ceiling) -> str:
    return f"By rule of thumb {part_name(build, ceiling)} is good for {_power(build, ceiling)}"


def _is_plural(build: Subject, ceiling: Ceiling) -> bool:
    return ceiling.part == "injectors" or (ceiling.part == "pump" and build.pump_word == "pumps")


def _power(build: Subject, ceiling: Ceiling) -> str:
    return build.numbers.figure("power", ceiling.max_power_W, build.figures.demand.crank_power_W)
