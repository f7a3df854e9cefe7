"""What gives out first, in one sentence."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.figures import Ceiling

PARTS = {
    "pump": "the pump",
    "feed": "the feed line",
    "filter": "the filter",
    "inlet": "the suction line",
    "injectors": "the injectors",
}


def gives_out_first(build: Subject) -> str | None:
    """The part with the lowest ceiling, and the next one once it is changed; None where no part is known."""
    if not build.figures.ceilings:
        return None
    first, *rest = build.figures.ceilings
    verb = "give" if _plural(build, first) else "gives"
    sentence = f"{capitalized(_named(build, first))} {verb} out first, at {_power(build, first)}"
    if not rest:
        return f"{sentence}."
    them = "them" if _plural(build, first) else "it"
    return f"{sentence}; with {them} changed, {_named(build, rest[0])}, at {_power(build, rest[0])}."


def _plural(build: Subject, ceiling: Ceiling) -> bool:
    return ceiling.part == "injectors" or (ceiling.part == "pump" and build.pump_word == "pumps")


def _named(build: Subject, ceiling: Ceiling) -> str:
    return "the pumps" if ceiling.part == "pump" and _plural(build, ceiling) else PARTS[ceiling.part]


def _power(build: Subject, ceiling: Ceiling) -> str:
    told = build.numbers.figure("power", ceiling.max_power_W, build.figures.demand.crank_power_W)
    return f"{told} by rule of thumb" if ceiling.basis == "rule" else told
