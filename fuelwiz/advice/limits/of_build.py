"""What can be wrong with a build whatever its feed line, in words: a record for each limit, in the verdict's order."""

from __future__ import annotations

from fuelwiz.advice.limits import cure_places
from fuelwiz.advice.limits.record import BuildLimitWords, WhatAndDo
from fuelwiz.advice.limits.returning import return_cure
from fuelwiz.advice.phrases import dead_head_guessed, kept_run_name, point_name
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.advice.wire_words import smallest_wire
from fuelwiz.session import Wiring


def _kept_run(subject: Subject) -> WhatAndDo:
    name = kept_run_name(subject)
    edges = subject.session.bands.feed
    most = subject.numbers.limit("velocity", edges[2])
    flowing = ""
    if subject.at_rail and subject.has_pump:
        flowing = f", or over {subject.numbers.limit('velocity', edges[3])} with the return flow on top"
    return (
        f"{capitalized(name)} is too small, whatever the rest of the line: over {most}{flowing}.",
        "Change that run: fit it as large as the rest of the line.",
    )


def _injector_pressure(subject: Subject) -> WhatAndDo:
    pressure = subject.figures.pressure
    boost, rail = subject.session.pressure.boost, pressure.rail_Pa
    held = subject.numbers.figure("pressure", rail, boost)
    against = subject.numbers.figure("pressure", boost, rail)
    do = "Raise the base pressure."
    if subject.session.pressure.reference != "manifold":
        do = "Let the regulator follow the manifold, or raise the base pressure."
    return f"No pressure is left across the injectors: {held} in the rail, {against} of boost.", do


def _injectors(subject: Subject) -> WhatAndDo:
    injectors, given = subject.figures.injectors, subject.session.injectors
    assert injectors is not None and given is not None
    if injectors.duty is None or injectors.smallest_rating_m3_s is None:
        return "The injectors get no pressure and cannot spray.", "Raise the rail pressure above the boost."
    found, where = _highest_duty(subject, injectors.duty)
    duty, most = subject.numbers.pair("percent", found, given.duty_limit)
    if where:
        return (
            f"The injectors are too small: {duty} duty {where} (limit {most}\u00a0%).",
            "You need larger ones, or less power there.",
        )
    rating = subject.numbers.figure("injector", injectors.smallest_rating_m3_s, given.rated_flow)
    at = subject.numbers.figure("pressure", given.rated_pressure)
    return (
        f"The injectors are too small: {duty} duty at the goal (limit {most}\u00a0%).",
        f"You need {injectors.count} of {rating} each, rated at {at}.",
    )


def _highest_duty(subject: Subject, at_the_goal: float) -> tuple[float, str]:
    """The highest duty of goal and pull, and the point that it is at; no name for the goal."""
    duties = [(point.duty or 0.0, at) for at, point in enumerate(subject.figures.pull)]
    highest, at = max(duties, default=(0.0, 0))
    return (highest, point_name(subject, at)) if highest > at_the_goal else (at_the_goal, "")


def return_creeps(subject: Subject) -> WhatAndDo:
    """The return that is too small for the idle flow, to follow "At idle" or "Idle is not:"."""
    line = subject.figures.return_line
    assert line is not None
    idle = subject.figures.pressure.idle_rail_Pa
    name = "the return line you have" if line.fixed else f"the {line.size} return line"
    needs = subject.numbers.about("pressure", line.back_pressure_Pa, idle)
    creep = subject.numbers.about("pressure", line.creep_Pa, 0.0)
    holds = subject.numbers.number("pressure", idle)
    what = f"{name} backs up to {needs}; the regulator should hold {holds}, so rail pressure creeps {creep} high."
    return what, return_cure(subject)


def _return(subject: Subject) -> WhatAndDo:
    what, do = return_creeps(subject)
    return f"At idle {what}", do


def _lift(subject: Subject) -> WhatAndDo:
    surge, given = subject.figures.surge, subject.session.surge
    assert surge is not None and surge.lift_needed_m3_s is not None
    assert given is not None and given.lift_flow is not None
    gives, needs = subject.numbers.pair("flow", given.lift_flow, surge.lift_needed_m3_s)
    if surge.lift_margin is not None and surge.lift_margin >= 0.0:
        spare, wanted = subject.numbers.pair("percent", surge.lift_margin, subject.session.goal.reserve)
        needs = f"{needs} and {spare} is to spare, you want {wanted}\u00a0%"
    do = "Fit a larger lift pump."
    if given.return_to == "tank" and subject.at_rail:
        do = "Fit a larger lift pump, or send the return into the surge pot."
    return f"The lift pump is too small: it flows {gives}, the surge pot needs {needs}.", do


def _rating(subject: Subject) -> WhatAndDo:
    pump = subject.figures.pump
    assert pump is not None and pump.lowest_rating_Pa is not None
    if pump.dead_head_Pa is None:
        lowest = subject.numbers.figure("pressure", pump.lowest_rating_Pa)
        return (
            f"The pump's curve never falls to zero flow, no relief pressure is given, and a part is rated for {lowest}.",
            "Look for its relief pressure on the data sheet; never find it by blocking the line.",
        )
    dead_head, rating = subject.numbers.pair("pressure", pump.dead_head_Pa, pump.lowest_rating_Pa)
    word = subject.pump_word
    guess = " That pressure is a guess, beyond the pump's table." if dead_head_guessed(subject) else ""
    return (
        f"With the line blocked (dead head) the {word} can reach {dead_head}, but a part is rated for only"
        f" {rating}.{guess}",
        "Fit parts with a higher rating, or a pump with a lower relief pressure.",
    )


def _fuse(subject: Subject) -> WhatAndDo:
    wiring, given = subject.figures.wiring, subject.session.wiring
    assert wiring is not None and wiring.peak_current_A is not None and given is not None
    if wiring.fuse_A is None or wiring.ampacity_A is None:
        peak = subject.numbers.figure("amps", wiring.peak_current_A)
        do = (
            "Give each pump a circuit of its own."
            if _shares(subject, given)
            else "Fit a pump that draws less."
        )
        return f"No fuse is large enough: one circuit can draw {peak}.", do
    fuse = subject.numbers.limit("amps", wiring.fuse_A)
    ampacity = f"is good for {subject.numbers.figure('amps', wiring.ampacity_A, wiring.fuse_A)}"
    if wiring.ampacity_A <= 0.0:
        ampacity = "is thinner than any that is rated"
    do = "Fit thicker wire, or more circuits." if _shares(subject, given) else "Fit thicker wire."
    if wiring.smallest_wire:
        do = f"Fit {smallest_wire(subject, wiring)} or thicker."
    return f"The wire is too thin: its circuit needs a {fuse} fuse, the wire {ampacity}.", do


def _shares(subject: Subject, wiring: Wiring) -> bool:
    """Whether pumps share a circuit, so that more circuits would help."""
    pump = subject.session.pump
    return pump is not None and wiring.circuits < pump.count


BUILD_WORDS = (
    BuildLimitWords(
        "kept run",
        cure_places.kept_run,
        "one run of the feed line is too small",
        "a larger size for that run",
        _kept_run,
    ),
    BuildLimitWords(
        "injector pressure",
        cure_places.at("pressure.base"),
        "no pressure is left across the injectors",
        "more rail pressure above the boost",
        _injector_pressure,
    ),
    BuildLimitWords(
        "injectors",
        cure_places.at("injectors.rated_flow"),
        "the injectors are too small",
        "larger injectors",
        _injectors,
    ),
    BuildLimitWords(
        "return", cure_places.return_line, "the return line is too small", "a larger return line", _return
    ),
    BuildLimitWords(
        "lift", cure_places.at("surge.lift_flow"), "the lift pump is too small", "a larger lift pump", _lift
    ),
    BuildLimitWords(
        "rating",
        cure_places.weakest_part,
        "dead-head pressure is above a part's rating",
        "parts with a higher pressure rating",
        _rating,
    ),
    BuildLimitWords(
        "fuse",
        cure_places.at("wiring.wire"),
        "the wiring is too small for its current",
        "thicker wire or more circuits",
        _fuse,
    ),
)
