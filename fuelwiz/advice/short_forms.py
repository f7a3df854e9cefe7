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


def headline(subject: Subject) -> str:
    """The answer in 56 columns or less."""
    forms = _forms(subject)
    fitting = (form for form in forms if len(form) <= HEADLINE_COLUMNS)
    return next(fitting, f"{forms[-1][: HEADLINE_COLUMNS - 1]}…")


def _forms(subject: Subject) -> list[str]:
    """The short forms of the answer, the fullest first."""
    if not subject.has_runs:
        burns = subject.numbers.figure("flow", subject.figures.demand.volume_flow_m3_s)
        return [f"{goal_needs(subject)}.", f"The goal needs {burns}."]
    if subject.line is None or (subject.has_pump and subject.figures.recommended is None):
        return _no_size_works(subject)
    return _chosen_refused(subject) or _build_limit(subject) or _no_pump(subject) or _works(subject)


def _no_size_works(subject: Subject) -> list[str]:
    row = subject.line
    if row is None:
        fixed = subject.pick.fixed
        return ["The line you have does not work." if fixed else "No size tried works: try larger ones."]
    why = capitalized(short_why(subject, row.limits[0]))
    return [f"{why}: {limit_phrase(subject, row, row.limits[0])}.", f"{why}."]


def _chosen_refused(subject: Subject) -> list[str]:
    line, pick = subject.line, subject.pick
    if subject.figures.chosen is None or not pick.limits or line is None:
        return []
    figures = ", ".join(filter(None, (speed(subject, line), spare(subject, line))))
    refused = f"{pick.size}* {refused_word(subject, pick)}. Fit {line.size}"
    return [f"{refused}: {figures}.", f"{refused}."]


def _build_limit(subject: Subject) -> list[str]:
    limits = subject.build_limits
    if limits == ("return",) and subject.has_pump:
        return [IDLE_ALONE]
    return [f"{capitalized(short_why(subject, limits[0]))}."] if limits else []


def _no_pump(subject: Subject) -> list[str]:
    target = subject.line.target_rise_Pa if subject.line is not None else None
    if subject.has_pump or target is None:
        return []
    flow = subject.numbers.figure("flow", subject.figures.demand.target_flow_m3_s)
    return [f"No pump yet: look for {flow} at {subject.numbers.about('pressure', target)}."]


def _works(subject: Subject) -> list[str]:
    row = subject.pick
    lead = f"{row.size}* works" if subject.figures.chosen is not None else f"Fit {row.size}"
    lead = "Your line works" if row.fixed else lead
    spared = f"{'probably ' if subject.one_point else ''}{spare(subject, row)}"
    fast = speed(subject, row)
    return [f"{lead}: {fast}, {lost(subject, row)}, {spared}.", f"{lead}: {fast}, {spared}.", f"{lead}."]


def to_do(subject: Subject, remarks: list[Remark]) -> str:
    """What to do next, for a sheet: one line of 76 columns or less."""
    if not subject.has_runs:
        return _not_given(subject)
    return (
        _most_urgent(subject, remarks)
        or _comfortable(subject)
        or _not_given(subject)
        or _nothing_wrong(subject)
    )


def next_step(subject: Subject, remarks: list[Remark]) -> str:
    """The same for the wizard, which can say on which step; never for a sheet."""
    if not subject.has_runs:
        return _step_before_lines(subject)
    urgent = _most_urgent(subject, remarks)
    if urgent:
        return urgent
    if not subject.has_pump:
        return "Next: enter a pump from its data sheet, or go on and choose one later."
    known = _comfortable(subject) or _not_given(subject)
    return known or f"{_nothing_wrong(subject).removesuffix('.')}, then save the report (F7)."


def _most_urgent(subject: Subject, remarks: list[Remark]) -> str:
    chosen, line = subject.figures.row(subject.figures.chosen), subject.line
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


def _step_before_lines(subject: Subject) -> str:
    if "fuel.ethanol" in subject.assumed:
        return "Next: finish this step, then Fuel; it changes the result most."
    if "pressure.base" in subject.assumed or "pressure.boost" in subject.assumed:
        return "Next: Pressure, then Pump and Lines."
    if subject.session.pump is None:
        return "Next: Pump, from its data sheet; or go on to Lines and choose a pump later."
    return "Next: Lines, how far it is from tank to rail and in which hose."


def _comfortable(subject: Subject) -> str:
    row = subject.figures.row(subject.figures.comfortable)
    if not subject.has_pump or row is None or row.fixed or row.bore_m <= subject.pick.bore_m:
        return ""
    edges = subject.session.bands.feed
    if row.full_delivery_band is None:
        under = subject.numbers.limit("velocity", edges[0])
        return f"{row.size} would be comfortable: under {under} at the goal."
    under = subject.numbers.limit("velocity", edges[0] if row.full_delivery_band == "easy" else edges[1])
    return f"{row.size} would be comfortable: under {under} with all the pump delivers."


def _not_given(subject: Subject) -> str:
    session = subject.session
    given = {
        "pump": session.pump is not None,
        "feed line": subject.has_runs,
        "inlet": session.inlet is not None,
        "return line": session.return_line is not None or not subject.at_rail,
        "wiring": session.wiring is not None,
        "injectors": session.injectors is not None,
    }
    missing = [name for name, known in given.items() if not known]
    return f"Not given yet: {listed(missing)}." if missing else ""


def _nothing_wrong(subject: Subject) -> str:
    if subject.figures.next is not None and subject.figures.next.works is False:
        return "This goal is met, the next one is not: read what it needs."
    return "No problems found: read the notes."
