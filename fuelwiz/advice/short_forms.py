"""The answer and the next thing to do, in a form short enough for one line."""

from __future__ import annotations

from fuelwiz.advice.answer import goal_needs, refused_word
from fuelwiz.advice.limits import limit_phrase, short_why
from fuelwiz.advice.phrases import lost, spare, speed
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized, listed

HEADLINE_COLUMNS = 56
TO_DO_COLUMNS = 76
IDLE_ALONE = "Full power fine, idle not: the return line is too small."


def headline(build: Subject) -> str:
    """The answer in 56 columns or less."""
    forms = _forms(build)
    fitting = (form for form in forms if len(form) <= HEADLINE_COLUMNS)
    return next(fitting, f"{forms[-1][: HEADLINE_COLUMNS - 1]}…")


def _forms(build: Subject) -> list[str]:
    """The short forms of the answer, the fullest first."""
    if not build.has_runs:
        burns = build.numbers.figure("flow", build.figures.demand.volume_flow_m3_s)
        return [f"{goal_needs(build)}.", f"The goal needs {burns}."]
    if build.line is None or (build.has_pump and build.figures.recommended is None):
        return _no_size_works(build)
    return _chosen_refused(build) or _build_limit(build) or _no_pump(build) or _works(build)


def _no_size_works(build: Subject) -> list[str]:
    row = build.line
    if row is None:
        fixed = build.pick.fixed
        return ["The line you have does not work." if fixed else "No size tried works: try larger ones."]
    why = capitalized(short_why(build, row.limits[0]))
    return [f"{why}: {limit_phrase(build, row, row.limits[0])}.", f"{why}."]


def _chosen_refused(build: Subject) -> list[str]:
    line, pick = build.line, build.pick
    if build.figures.chosen is None or not pick.limits or line is None:
        return []
    figures = ", ".join(filter(None, (speed(build, line), spare(build, line))))
    refused = f"{pick.size}* {refused_word(build, pick)}. Fit {line.size}"
    return [f"{refused}: {figures}.", f"{refused}."]


def _build_limit(build: Subject) -> list[str]:
    limits = build.build_limits
    if limits == ("return",) and build.has_pump:
        return [IDLE_ALONE]
    return [f"{capitalized(short_why(build, limits[0]))}."] if limits else []


def _no_pump(build: Subject) -> list[str]:
    target = build.line.target_rise_Pa if build.line is not None else None
    if build.has_pump or target is None:
        return []
    flow = build.numbers.figure("flow", build.figures.demand.target_flow_m3_s)
    return [f"No pump yet: look for {flow} at {build.numbers.about('pressure', target)}."]


def _works(build: Subject) -> list[str]:
    row = build.pick
    lead = f"{row.size}* works" if build.figures.chosen is not None else f"Fit {row.size}"
    lead = "Your line works" if row.fixed else lead
    spared = f"{'probably ' if build.one_point else ''}{spare(build, row)}"
    fast = speed(build, row)
    return [f"{lead}: {fast}, {lost(build, row)}, {spared}.", f"{lead}: {fast}, {spared}.", f"{lead}."]


def to_do(build: Subject, remarks: list[Remark]) -> str:
    """What to do next, for a sheet: one line of 76 columns or less."""
    if not build.has_runs:
        return _not_given(build)
    return _most_urgent(build, remarks) or _comfortable(build) or _not_given(build) or _nothing_wrong(build)


def next_step(build: Subject, remarks: list[Remark]) -> str:
    """The same for the wizard, which can say on which step; never for a sheet."""
    if not build.has_runs:
        return _step_before_lines(build)
    urgent = _most_urgent(build, remarks)
    if urgent:
        return urgent
    if not build.has_pump:
        return "Next: enter a pump from its data sheet, or go on and choose one later."
    known = _comfortable(build) or _not_given(build)
    return known or f"{_nothing_wrong(build).removesuffix('.')}, then save the report (F7)."


def _most_urgent(build: Subject, remarks: list[Remark]) -> str:
    chosen, line = build.figures.row(build.figures.chosen), build.line
    if chosen is not None and chosen.limits and line is not None and line.bore_m > chosen.bore_m:
        return f"Change {chosen.size} to {line.size}."
    for severity in ("stop", "warning"):
        first = next((remark for remark in remarks if remark.severity == severity), None)
        if first is not None:
            halves = (first.do, first.what) if severity == "stop" else (first.what, first.do)
            return _one_line(*halves)
    return ""


def _one_line(*sentences: str) -> str:
    """The first of some sentences that fits one line; else the first, cut between words."""
    for sentence in sentences:
        if sentence and len(sentence) <= TO_DO_COLUMNS:
            return sentence
    longest = next(filter(None, sentences), "")
    return f"{longest[: TO_DO_COLUMNS - 1].rpartition(' ')[0].rstrip(',;:')}…"


def _step_before_lines(build: Subject) -> str:
    if "fuel.ethanol" in build.assumed:
        return "Next: finish this step, then Fuel; it changes the result most."
    if "pressure.base" in build.assumed or "pressure.boost" in build.assumed:
        return "Next: Pressure, then Pump and Lines."
    if build.session.pump is None:
        return "Next: Pump, from its data sheet; or go on to Lines and choose a pump later."
    return "Next: Lines, how far it is from tank to rail and in which hose."


def _comfortable(build: Subject) -> str:
    row = build.figures.row(build.figures.comfortable)
    if not build.has_pump or row is None or row.fixed or row.bore_m <= build.pick.bore_m:
        return ""
    edges = build.session.bands.feed
    if row.full_delivery_band is None:
        under = build.numbers.limit("velocity", edges[0])
        return f"{row.size} would be comfortable: under {under} at the goal."
    under = build.numbers.limit("velocity", edges[0] if row.full_delivery_band == "easy" else edges[1])
    return f"{row.size} would be comfortable: under {under} with all the pump delivers."


def _not_given(build: Subject) -> str:
    session = build.session
    given = {
        "pump": session.pump is not None,
        "feed line": build.has_runs,
        "inlet": session.inlet is not None,
        "return line": session.return_line is not None or not build.at_rail,
        "wiring": session.wiring is not None,
        "injectors": session.injectors is not None,
    }
    missing = [name for name, known in given.items() if not known]
    return f"Not given yet: {listed(missing)}." if missing else ""


def _nothing_wrong(build: Subject) -> str:
    if build.figures.next is not None and build.figures.next.works is False:
        return "This goal is met, the next one is not: read what it needs."
    return "No problems found: read the notes."
