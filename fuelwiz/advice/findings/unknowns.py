"""What was left out, and what is therefore not known; what the program does not cover."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.numbers import NO_BREAK
from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject

MOVES_MOST = (
    "fuel.ethanol",
    "engine.induction",
    "pressure.boost",
    "pump.volts",
    "engine.bsfc",
    "pressure.base",
    "pressure.regulator",
    "feed.run.0.length",
    "fuel.temperature",
    "goal.reserve",
)
IN_WORDS = {
    "fuel.ethanol": "the ethanol in the fuel",
    "engine.induction": "how the engine gets its air",
    "pressure.boost": "the boost",
    "pump.volts": "the volts at the pump",
    "engine.bsfc": "what the engine takes for each unit of power",
    "pressure.base": "the base pressure",
    "pressure.regulator": "where the regulator sits",
    "feed.run.0.length": "the length of the line",
    "fuel.temperature": "the fuel's temperature",
    "goal.reserve": "the reserve",
}


def unknown_remarks(build: Subject) -> Iterator[Remark]:
    """Notes, the gravest gap first."""
    yield from _sections(build)
    yield from _ratings(build)
    yield from _assumed(build)
    yield from _not_covered(build)


def _sections(build: Subject) -> Iterator[Remark]:
    session = build.session
    if session.pump is None:
        yield Remark("note", "pump", "No pump yet: spare, volts, heat, return and stress are not known.")
    if not session.feed.run:
        yield Remark(
            "note", "feed.run", "No line yet: its loss, and so what a pump must make, are not known."
        )
    elif not session.feed.filter:
        yield Remark("note", "feed.filter", "No filter is given, so none is counted.", "Most cars need one.")
    if session.inlet is None:
        yield Remark(
            "note", "inlet", "The pump's inlet is not given: whether the fuel boils there is not known."
        )
    elif session.pump is not None and session.pump.place == "outside" and not session.inlet.run:
        yield Remark("note", "inlet.run", "The suction line is not given: its velocity is not known.")
    if session.return_line is None and build.at_rail:
        yield Remark("note", "return_line", "The return line is not given: whether idle holds is not known.")
    if session.injectors is None:
        yield Remark("note", "injectors", "The injectors are not given: whether they keep up is not known.")
    if session.wiring is None and session.pump is not None:
        yield Remark("note", "wiring", "The wiring is not given: wire and fuse are not looked at.")


def _ratings(build: Subject) -> Iterator[Remark]:
    pump = build.figures.pump
    if pump is None or pump.dead_head_Pa is None or pump.lowest_rating_Pa is not None:
        return
    most = build.numbers.figure("pressure", pump.dead_head_Pa)
    yield Remark(
        "note",
        "feed.run.pressure_rating",
        f"With the outlet shut the {build.pump_word} can make {most}.",
        "No part's pressure rating is given: check that hose, ends and filter are rated above that.",
    )


def _assumed(build: Subject) -> Iterator[Remark]:
    taken = [key for key, value in build.assumed.items() if value != "not given"]
    if not taken:
        return
    most = next((key for key in MOVES_MOST if key in taken), taken[0])
    count = "One answer is" if len(taken) == 1 else f"{len(taken)} answers are"
    named = IN_WORDS.get(most, "the kind of hose")
    yield Remark(
        "note",
        most,
        f"{count} assumed, above all {named} ({_taken(build, most)}).",
        "Put in your own where you know it.",
    )


def _taken(build: Subject, key: str) -> str:
    """What is taken for a key, in the units that the session shows."""
    session, numbers = build.session, build.numbers
    shown = {
        "pressure.boost": lambda: numbers.limit("pressure", session.pressure.boost),
        "pressure.base": lambda: numbers.limit("pressure", session.pressure.base),
        "pressure.idle_vacuum": lambda: numbers.limit("pressure", session.pressure.idle_vacuum),
        "engine.bsfc": lambda: numbers.figure("bsfc", build.figures.demand.bsfc_kg_J),
        "fuel.temperature": lambda: numbers.figure("temperature", session.fuel.temperature),
        "feed.run.0.length": lambda: numbers.limit("length", session.feed.run[0].length),
    }
    return shown[key]() if key in shown else build.assumed[key].replace(" ", NO_BREAK)


def _not_covered(_build: Subject) -> Iterator[Remark]:
    yield Remark(
        "note",
        "pump.place",
        "Not covered: engine-driven pumps, and the high-pressure side of direct injection.",
    )
