"""The answer in a form short enough for a small screen."""

from __future__ import annotations

from fuelwiz.advice.answer import short_goal
from fuelwiz.advice.no_cure import short_why
from fuelwiz.advice.phrases import limit_phrase, lost, spare, speed
from fuelwiz.advice.subject import Subject, capitalized

COLUMNS = 56


def headline(build: Subject) -> str:
    """The answer in 56 columns or less."""
    forms = _forms(build)
    return next((form for form in forms if len(form) <= COLUMNS), f"{forms[-1][: COLUMNS - 1]}…")


def _forms(build: Subject) -> list[str]:
    """The short forms of the answer, the fullest first."""
    if not build.has_runs:
        burns = build.numbers.figure("flow", build.figures.demand.volume_flow_m3_s)
        return [f"{short_goal(build)} burns {burns}.", f"The goal burns {burns}."]
    if build.line is None or (build.has_pump and build.figures.recommended is None):
        return _no_cure(build)
    return _settled_refused(build) or _build_limit(build) or _no_pump(build) or _works(build)


def _no_cure(build: Subject) -> list[str]:
    row = build.line
    if row is None:
        fixed = build.pick.fixed
        return ["The line as it is does not work." if fixed else "No size tried works: try larger ones."]
    phrase = limit_phrase(build, row, row.limits[0])
    return [f"No line cures this: {phrase}.", f"No line cures this: {short_why(build, row.limits[0])}."]


def _settled_refused(build: Subject) -> list[str]:
    line, pick = build.line, build.pick
    if build.figures.chosen is None or not pick.limits or line is None:
        return []
    told = ", ".join(filter(None, (speed(build, line), spare(build, line))))
    refused = f"{pick.size}* is refused. Fit {line.size}"
    return [f"{refused}: {told}.", f"{refused}."]


def _build_limit(build: Subject) -> list[str]:
    limits = build.build_limits
    return [f"{capitalized(_LIMITS[limits[0]])}."] if limits else []


def _no_pump(build: Subject) -> list[str]:
    target = build.line.target_rise_Pa if build.line is not None else None
    if build.has_pump or target is None:
        return []
    flow = build.numbers.figure("flow", build.figures.demand.target_flow_m3_s)
    return [f"No pump yet: look for {flow} at {build.numbers.about('pressure', target)}."]


def _works(build: Subject) -> list[str]:
    row = build.pick
    lead = f"{row.size}* works" if build.figures.chosen is not None else f"Fit {row.size}"
    lead = "The line works" if row.fixed else lead
    spared = f"{'probably ' if build.one_point else ''}{spare(build, row)}"
    fast = speed(build, row)
    return [f"{lead}: {fast}, {lost(build, row)}, {spared}.", f"{lead}: {fast}, {spared}.", f"{lead}."]


_LIMITS = {
    "kept run": "a run kept at its own size is too small",
    "injector pressure": "no pressure is left across the injectors",
    "injectors": "the injectors are too small",
    "return": "full power holds, idle does not: the return is small",
    "lift": "the lift pump gives less than the pot needs",
    "rating": "dead head is above a part's rated pressure",
    "fuse": "the wire is too thin for the fuse it needs",
}
