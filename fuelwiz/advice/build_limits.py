"""What is wrong with the build whatever the size of line: what and how much, and what to do."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.advice.subject import Subject, capitalized, with_article

WhatAndDo = tuple[str, str]


def build_limit(build: Subject, limit: str) -> WhatAndDo:
    """One limit of the build: a sentence on what is so, one on what to do."""
    return _LIMITS[limit](build)


def return_creeps(build: Subject) -> WhatAndDo:
    """The return that cannot let go of the idle flow, to follow "Idle does not hold"."""
    line = build.figures.return_line
    assert line is not None
    idle = build.figures.pressure.idle_rail_Pa
    name = "this return" if line.fixed else f"{with_article(line.size)} return"
    needs = build.numbers.about("pressure", line.back_pressure_Pa, idle)
    creep = build.numbers.about("pressure", line.creep_Pa, 0.0)
    wants = build.numbers.number("pressure", idle)
    smallest = line.smallest_that_holds
    cure = "No return size tried holds: try larger ones, or run fewer pumps at idle."
    if smallest is not None:
        cure = f"{capitalized(smallest)} is the smallest return that holds."
    return f"{name} needs {needs} where the regulator wants {wants}, so the rail creeps {creep} high.", cure


def _kept_run(build: Subject) -> WhatAndDo:
    kept = [run.what for run in build.session.feed.run if run.size is not None or run.bore is not None]
    name = f" ({kept[0]})" if len(kept) == 1 and kept[0] else ""
    edges = build.session.bands.feed
    most = build.numbers.limit("velocity", edges[2])
    flowing = ""
    if build.at_rail and build.has_pump:
        flowing = f", or over {build.numbers.limit('velocity', edges[3])} with the return flow on top"
    return (
        f"A run of the feed kept at its own size{name} is too small: over {most}{flowing}.",
        "Fit it as large as the rest of the line.",
    )


def _injector_pressure(build: Subject) -> WhatAndDo:
    pressure = build.figures.pressure
    boost, rail = build.session.pressure.boost, pressure.rail_Pa
    held = build.numbers.figure("pressure", rail, boost)
    against = build.numbers.figure("pressure", boost, rail)
    return (
        f"Nothing is left across the injectors: {held} in the rail, {against} of boost.",
        "Let the regulator follow the manifold, or raise the base pressure.",
    )


def _injectors(build: Subject) -> WhatAndDo:
    injectors, given = build.figures.injectors, build.session.injectors
    assert injectors is not None and given is not None
    if injectors.duty is None or injectors.smallest_rating_m3_s is None:
        return "The injectors get no pressure and cannot spray.", "Raise the rail pressure above the boost."
    duty, most = build.numbers.pair("percent", injectors.duty, given.duty_limit)
    rating = build.numbers.figure("injector", injectors.smallest_rating_m3_s, given.rated_flow)
    at = build.numbers.figure("pressure", given.rated_pressure)
    return (
        f"The injectors are too small: {duty} duty at the goal, {most}\u00a0% is the limit.",
        f"{injectors.count} of {rating} each, rated at {at}, would do.",
    )


def _return(build: Subject) -> WhatAndDo:
    what, do = return_creeps(build)
    return f"Idle does not hold: {what}", do


def _lift(build: Subject) -> WhatAndDo:
    surge, given = build.figures.surge, build.session.surge
    assert surge is not None and surge.lift_needed_m3_s is not None
    assert given is not None and given.lift_flow is not None
    gives, needs = build.numbers.pair("flow", given.lift_flow, surge.lift_needed_m3_s)
    return (
        f"The lift pump is short: it gives {gives}, the pot needs {needs}.",
        "Fit a larger lift pump, or send the return into the pot."
        if given.return_to == "tank"
        else "Fit a larger lift pump.",
    )


def _rating(build: Subject) -> WhatAndDo:
    pump = build.figures.pump
    assert pump is not None and pump.dead_head_Pa is not None and pump.lowest_rating_Pa is not None
    dead_head, rating = build.numbers.pair("pressure", pump.dead_head_Pa, pump.lowest_rating_Pa)
    return (
        f"With the outlet shut the {build.pump_word} can make {dead_head}; a part is rated for {rating}.",
        "Fit parts that are rated higher, or a pump whose relief opens lower.",
    )


def _fuse(build: Subject) -> WhatAndDo:
    wiring = build.figures.wiring
    assert wiring is not None and wiring.peak_current_A is not None
    if wiring.fuse_A is None or wiring.ampacity_A is None:
        peak = build.numbers.figure("amps", wiring.peak_current_A)
        return (
            f"No fuse is large enough: one circuit may draw {peak}.",
            "Give each pump a circuit of its own.",
        )
    fuse = build.numbers.limit("amps", wiring.fuse_A)
    ampacity = f"may carry {build.numbers.figure('amps', wiring.ampacity_A, wiring.fuse_A)}"
    if wiring.ampacity_A <= 0.0:
        ampacity = "is thinner than any that is rated"
    return (
        f"The wire is too thin: its circuit takes a {fuse} fuse, it {ampacity}.",
        f"{wiring.smallest_wire} would do."
        if wiring.smallest_wire
        else "Fit thicker wire, or more circuits.",
    )


_LIMITS: dict[str, Callable[[Subject], WhatAndDo]] = {
    "kept run": _kept_run,
    "injector pressure": _injector_pressure,
    "injectors": _injectors,
    "return": _return,
    "lift": _lift,
    "rating": _rating,
    "fuse": _fuse,
}
