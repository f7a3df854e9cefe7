"""The answer in a few sentences: a chosen size that is refused first, then the reason, then what to do."""

from __future__ import annotations

from fuelwiz.advice.limits import limit_phrase, size_stop, what_and_do
from fuelwiz.advice.limits.of_build import return_creeps
from fuelwiz.advice.phrases import GUESSED, lost, spare, speed, volts_seen
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures


def answer(subject: Subject) -> str:
    """What the build comes to, in one or two sentences, more only where the idle or a dead pump needs one."""
    if not subject.has_runs:
        return _joined(chosen_refused(subject), f"{goal_needs(subject)}. No feed line is given yet.")
    if not subject.has_pump:
        return _without_pump(subject)
    if subject.figures.recommended is None:
        return _joined(_no_size_works(subject), *_of_build(subject))
    refused = chosen_refused(subject)
    if refused:
        return _joined(refused, _line_to_fit(subject, short=True), *_of_build(subject))
    if subject.build_limits == ("return",):
        return _joined(_full_power_is_fine(subject), _idle_is_not(subject), _pump_stopped(subject))
    return _joined(*_of_build(subject), _works(subject), _pump_stopped(subject))


def goal_needs(subject: Subject) -> str:
    """The goal by name and what it burns: "750 hp on E10 (assumed) needs 78 gal/h"."""
    goal = subject.numbers.figure("power", subject.figures.demand.crank_power_W)
    wheels = " at the wheels" if subject.session.goal.power_at == "wheels" else ""
    assumed = " (assumed)" if "fuel.ethanol" in subject.assumed else ""
    burns = subject.numbers.figure("flow", subject.figures.demand.volume_flow_m3_s)
    return f"{goal}{wheels} on {subject.fuel}{assumed} needs {burns}"


def refused_word(subject: Subject, row: SizeFigures) -> str:
    """What is wrong with a refused size in a word: too small, where a larger one would do."""
    return "is too small" if subject.is_too_small(row) else "does not work"


def chosen_refused(subject: Subject) -> str:
    """The chosen size where it is refused, and why; nothing where it is not."""
    row = subject.figures.row(subject.figures.chosen)
    if row is None or not row.limits:
        return ""
    why = limit_phrase(subject, row, row.limits[0])
    return f"Your {row.size} (*) {refused_word(subject, row)}: {why}."


def no_size_tried_works(subject: Subject) -> str:
    """No line works, the largest that was tried included."""
    row = subject.figures.sizes[-1]
    why = limit_phrase(subject, row, row.limits[0])
    if row.fixed:
        return f"The line you have does not work: {why}."
    return f"No size tried works, not even {row.size}: {why}. Try larger sizes, or two lines side by side."


def _joined(*sentences: str) -> str:
    return " ".join(filter(None, sentences))


def _without_pump(subject: Subject) -> str:
    line, refused = subject.line, chosen_refused(subject)
    if line is None:
        return no_size_tried_works(subject)
    look_for = _look_for(subject, line)
    if refused:
        fit = f"{line.size} is the line to fit: {_figures(subject, line)}."
        return _joined(refused, fit, *_of_build(subject), look_for)
    return _joined(*_of_build(subject), look_for, _chosen_or_fit(subject, line))


def _chosen_or_fit(subject: Subject, line: SizeFigures) -> str:
    chosen = subject.figures.row(subject.figures.chosen)
    if line.fixed:
        return "The line you have is big enough."
    if chosen is None or chosen is line:
        return f"{line.size} is the line to fit."
    if chosen.bore_m > line.bore_m:
        return f"Your {chosen.size} (*) is big enough, and {line.size} is too."
    return f"Velocity in your {chosen.size} (*) is {chosen.band}: {line.size} is the line to fit."


def _look_for(subject: Subject, row: SizeFigures) -> str:
    assert row.target_rise_Pa is not None
    flow = subject.numbers.figure("flow", subject.figures.demand.target_flow_m3_s)
    rise = subject.numbers.about("pressure", row.target_rise_Pa)
    return f"No pump yet: you need one that flows {flow} at {rise}, at the voltage it really gets."


def _no_size_works(subject: Subject) -> str:
    """No size cures what is wrong: what it is, why, what to do; with it the line to fit."""
    line = subject.line
    row = line or subject.pick
    if line is None and not row.line_works:
        return no_size_tried_works(subject)
    limit = row.limits[0]
    what, do = size_stop(subject, row, limit)
    if limit == "pump":
        what = _pump_falls_short(subject, row)
    fit = "" if line is None or line.fixed else f"{line.size} is the line to fit."
    return _joined(what, do, fit)


def _pump_falls_short(subject: Subject, row: SizeFigures) -> str:
    demand = subject.figures.demand
    assert row.capacity_m3_s is not None
    edges = (demand.volume_flow_m3_s, demand.target_flow_m3_s)
    needs = subject.numbers.figure("flow", demand.volume_flow_m3_s, row.capacity_m3_s)
    target = subject.numbers.number("flow", demand.target_flow_m3_s, row.capacity_m3_s)
    flows = subject.numbers.number("flow", row.capacity_m3_s, *edges)
    pump_is, flows_now = "pump is", "this pump flows"
    if subject.pump_word == "pumps":
        pump_is, flows_now = "pumps are", "these pumps flow"
    wanted = f", {target} with reserve" if subject.session.goal.reserve > 0.0 else ""
    through = "this line" if row.fixed else row.size
    guessed = GUESSED if subject.one_point else ""
    return (
        f"The {pump_is} too small: the goal needs {needs}{wanted}; through {through} {flows_now} {flows}"
        f" at {volts_seen(subject, row)}{guessed}."
    )


def _figures(subject: Subject, row: SizeFigures, *, short: bool = False) -> str:
    """Velocity, loss and what is to spare, as they follow a size."""
    parts = [speed(subject, row), None if short else lost(subject, row), spare(subject, row)]
    return ", ".join(filter(None, parts)) + (GUESSED if subject.one_point and row.margin is not None else "")


def _line_to_fit(subject: Subject, *, short: bool = False) -> str:
    line = subject.line
    assert line is not None
    return f"{line.size} is the line to fit: {_figures(subject, line, short=short)}."


def _works(subject: Subject) -> str:
    """The sentence of a build whose pick works, whatever else is wrong."""
    pick, line = subject.pick, subject.line
    assert line is not None
    if pick.fixed:
        return f"The line you have works: {_figures(subject, pick)}."
    if subject.figures.chosen is None or pick is line:
        return _line_to_fit(subject)
    if pick.bore_m > line.bore_m:
        return f"Your {pick.size} (*) works: {_figures(subject, pick)}. {line.size} is enough."
    works = f"Your {pick.size} (*) works, but its velocity is {pick.band}: {_figures(subject, pick)}."
    return f"{works} {line.size} is the line to fit."


def _full_power_is_fine(subject: Subject) -> str:
    guessed = GUESSED if subject.one_point else ""
    through = "" if subject.pick.fixed else f" through {subject.pick.size}"
    return f"Full power is fine, {spare(subject, subject.pick)}{through}{guessed}."


def _idle_is_not(subject: Subject) -> str:
    what, do = return_creeps(subject)
    return f"Idle is not: {what} {do}"


def _of_build(subject: Subject) -> list[str]:
    """One sentence on the first limit that no size of line changes."""
    return [" ".join(what_and_do(subject, limit)) for limit in subject.build_limits[:1]]


def _pump_stopped(subject: Subject) -> str:
    """What a pump that stops would do, and what guards the engine then; nothing where the others carry on."""
    case = subject.case("one pump dead")
    if case is None or case.margin is None or case.margin >= 0.0:
        return ""
    short = subject.numbers.figure("percent", -case.margin, 0.0)
    boosted = subject.session.pressure.boost > 0.0
    when, drops = ("full boost", "drops boost or spark") if boosted else ("full power", "cuts the spark")
    return (
        f"If one pump stops at {when}, fuel is {short} short: fit a cut-off that {drops}"
        " when fuel pressure falls."
    )
