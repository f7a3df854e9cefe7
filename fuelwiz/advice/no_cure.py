"""What is said where no size of line cures what is wrong: that first, then why, then what to look at."""

from __future__ import annotations

from fuelwiz.advice.phrases import GUESSED, limit_phrase, volts_seen
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.sizing.figures import SizeFigures


def no_line_cures(build: Subject) -> str:
    """The whole of it, in two or three sentences."""
    line = build.line
    row = line or build.pick
    if line is None and not row.line_works:
        return every_size_fails(build)
    first = row.limits[0]
    why = short_why(build, first)
    then = "" if line is None or line.fixed else f"; {line.size} is the line to fit"
    return f"No line cures this: {why}. {_reason(build, row, first)} {_do_first(build, row, first)}{then}."


def short_why(build: Subject, limit: str) -> str:
    """What is wrong, in a few words."""
    if limit == "pump":
        return "the pumps are short" if build.pump_word == "pumps" else "the pump is short"
    return _SHORT_WHY[limit]


_SHORT_WHY = {
    "relief": "the pump's relief opens too early",
    "vapour": "the fuel is too near boiling",
    "inlet": "the suction line is too small",
}


def _reason(build: Subject, row: SizeFigures, limit: str) -> str:
    if limit != "pump":
        return capitalized(limit_phrase(build, row, limit)) + "."
    demand = build.figures.demand
    assert row.capacity_m3_s is not None
    edges = (demand.volume_flow_m3_s, demand.target_flow_m3_s)
    burns = build.numbers.figure("flow", demand.volume_flow_m3_s, row.capacity_m3_s)
    target = build.numbers.number("flow", demand.target_flow_m3_s, row.capacity_m3_s)
    gives = build.numbers.number("flow", row.capacity_m3_s, *edges)
    subject = "these pumps give" if build.pump_word == "pumps" else "this pump gives"
    wanted = f", {target} with reserve" if build.session.goal.reserve > 0.0 else ""
    through = f"through {row.size}" if not row.fixed else "through this line"
    guessed = GUESSED if build.one_point else ""
    return (
        f"The goal burns {burns}{wanted}; {through} {subject} {gives} at {volts_seen(build, row)}{guessed}."
    )


def _do_first(build: Subject, row: SizeFigures, limit: str) -> str:
    if limit == "pump":
        if row.pump_volts_V is not None and row.pump_volts_V < ASSUMED_VOLTS:
            return "Look at the wiring first"
        if build.volts_assumed:
            return "Measure the volts at the pump first"
        return "It takes a bigger pump, or one more"
    return {
        "relief": "A pump whose relief opens higher is needed",
        "vapour": "Cool the fuel, or let it run down to the pump",
        "inlet": "Fit a larger suction line",
    }[limit]


def every_size_fails(build: Subject) -> str:
    """No line works, the largest that was tried included."""
    row = build.figures.sizes[-1]
    if row.fixed:
        return f"The line as it is does not work: {limit_phrase(build, row, row.limits[0])}."
    failed = f"even {row.size} is refused: {limit_phrase(build, row, row.limits[0])}"
    return f"No size tried works: {failed}. Try larger sizes, or two lines side by side."
