"""The answer in a few sentences: a chosen size that is refused first, then the reason, then what to do."""

from __future__ import annotations

from fuelwiz.advice.limits import limit_phrase, size_stop, what_and_do
from fuelwiz.advice.limits.of_build import return_creeps
from fuelwiz.advice.phrases import GUESSED, lost, spare, speed, volts_seen
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures


def answer(build: Subject) -> str:
    """What the build comes to, in one or two sentences, more only where the idle or a dead pump needs one."""
    if not build.has_runs:
        return _joined(chosen_refused(build), f"{goal_needs(build)}. No feed line is given yet.")
    if not build.has_pump:
        return _without_pump(build)
    if build.figures.recommended is None:
        return _joined(_no_size_works(build), *_of_build(build))
    refused = chosen_refused(build)
    if refused:
        return _joined(refused, _line_to_fit(build, short=True), *_of_build(build))
    if build.build_limits == ("return",):
        return _joined(_full_power_is_fine(build), _idle_is_not(build), _pump_stopped(build))
    return _joined(*_of_build(build), _works(build), _pump_stopped(build))


def goal_needs(build: Subject) -> str:
    """The goal by name and what it burns: "750 hp on E10 (assumed) needs 78 gal/h"."""
    goal = build.numbers.figure("power", build.figures.demand.crank_power_W)
    wheels = " at the wheels" if build.session.goal.power_at == "wheels" else ""
    assumed = " (assumed)" if "fuel.ethanol" in build.assumed else ""
    burns = build.numbers.figure("flow", build.figures.demand.volume_flow_m3_s)
    return f"{goal}{wheels} on {build.fuel}{assumed} needs {burns}"


def refused_word(build: Subject, row: SizeFigures) -> str:
    """What is wrong with a refused size in a word: too small, where a larger one would do."""
    return "is too small" if build.is_too_small(row) else "does not work"


def chosen_refused(build: Subject) -> str:
    """The chosen size where it is refused, and why; nothing where it is not."""
    row = build.figures.row(build.figures.chosen)
    if row is None or not row.limits:
        return ""
    why = limit_phrase(build, row, row.limits[0])
    return f"Your {row.size} (*) {refused_word(build, row)}: {why}."


def no_size_tried_works(build: Subject) -> str:
    """No line works, the largest that was tried included."""
    row = build.figures.sizes[-1]
    why = limit_phrase(build, row, row.limits[0])
    if row.fixed:
        return f"The line you have does not work: {why}."
    return f"No size tried works, not even {row.size}: {why}. Try larger sizes, or two lines side by side."


def _joined(*sentences: str) -> str:
    return " ".join(filter(None, sentences))


def _without_pump(build: Subject) -> str:
    line, refused = build.line, chosen_refused(build)
    if line is None:
        return no_size_tried_works(build)
    look_for = _look_for(build, line)
    if refused:
        fit = f"{line.size} is the line to fit: {_figures(build, line)}."
        return _joined(refused, fit, *_of_build(build), look_for)
    return _joined(*_of_build(build), look_for, _chosen_or_fit(build, line))


def _chosen_or_fit(build: Subject, line: SizeFigures) -> str:
    chosen = build.figures.row(build.figures.chosen)
    if line.fixed:
        return "The line you have is big enough."
    if chosen is None or chosen is line:
        return f"{line.size} is the line to fit."
    if chosen.bore_m > line.bore_m:
        return f"Your {chosen.size} (*) is big enough, and {line.size} is too."
    return f"Velocity in your {chosen.size} (*) is {chosen.band}: {line.size} is the line to fit."


def _look_for(build: Subject, row: SizeFigures) -> str:
    assert row.target_rise_Pa is not None
    flow = build.numbers.figure("flow", build.figures.demand.target_flow_m3_s)
    rise = build.numbers.about("pressure", row.target_rise_Pa)
    return f"No pump yet: you need one that flows {flow} at {rise}, at the voltage it really gets."


def _no_size_works(build: Subject) -> str:
    """No size cures what is wrong: what it is, why, what to do; with it the line to fit."""
    line = build.line
    row = line or build.pick
    if line is None and not row.line_works:
        return no_size_tried_works(build)
    limit = row.limits[0]
    what, do = size_stop(build, row, limit)
    if limit == "pump":
        what = _pump_falls_short(build, row)
    fit = "" if line is None or line.fixed else f"{line.size} is the line to fit."
    return _joined(what, do, fit)


def _pump_falls_short(build: Subject, row: SizeFigures) -> str:
    demand = build.figures.demand
    assert row.capacity_m3_s is not None
    edges = (demand.volume_flow_m3_s, demand.target_flow_m3_s)
    needs = build.numbers.figure("flow", demand.volume_flow_m3_s, row.capacity_m3_s)
    target = build.numbers.number("flow", demand.target_flow_m3_s, row.capacity_m3_s)
    flows = build.numbers.number("flow", row.capacity_m3_s, *edges)
    pump_is, subject = ("pump is", "this pump flows")
    if build.pump_word == "pumps":
        pump_is, subject = ("pumps are", "these pumps flow")
    wanted = f", {target} with reserve" if build.session.goal.reserve > 0.0 else ""
    through = "this line" if row.fixed else row.size
    guessed = GUESSED if build.one_point else ""
    return (
        f"The {pump_is} too small: the goal needs {needs}{wanted}; through {through} {subject} {flows}"
        f" at {volts_seen(build, row)}{guessed}."
    )


def _figures(build: Subject, row: SizeFigures, *, short: bool = False) -> str:
    """Velocity, loss and what is to spare, as they follow a size."""
    parts = [speed(build, row), None if short else lost(build, row), spare(build, row)]
    return ", ".join(filter(None, parts)) + (GUESSED if build.one_point and row.margin is not None else "")


def _line_to_fit(build: Subject, *, short: bool = False) -> str:
    line = build.line
    assert line is not None
    return f"{line.size} is the line to fit: {_figures(build, line, short=short)}."


def _works(build: Subject) -> str:
    """The sentence of a build whose pick works, whatever else is wrong."""
    pick, line = build.pick, build.line
    assert line is not None
    if pick.fixed:
        return f"The line you have works: {_figures(build, pick)}."
    if build.figures.chosen is None or pick is line:
        return _line_to_fit(build)
    if pick.bore_m > line.bore_m:
        return f"Your {pick.size} (*) works: {_figures(build, pick)}. {line.size} is enough."
    works = f"Your {pick.size} (*) works, but its velocity is {pick.band}: {_figures(build, pick)}."
    return f"{works} {line.size} is the line to fit."


def _full_power_is_fine(build: Subject) -> str:
    guessed = GUESSED if build.one_point else ""
    through = "" if build.pick.fixed else f" through {build.pick.size}"
    return f"Full power is fine, {spare(build, build.pick)}{through}{guessed}."


def _idle_is_not(build: Subject) -> str:
    what, do = return_creeps(build)
    return f"Idle is not: {what} {do}"


def _of_build(build: Subject) -> list[str]:
    """One sentence on the first limit that no size of line changes."""
    return [" ".join(what_and_do(build, limit)) for limit in build.build_limits[:1]]


def _pump_stopped(build: Subject) -> str:
    """What a pump that stops would do, and what guards the engine then; nothing where the others carry on."""
    case = build.case("one pump dead")
    if case is None or case.margin is None or case.margin >= 0.0:
        return ""
    short = build.numbers.figure("percent", -case.margin, 0.0)
    boosted = build.session.pressure.boost > 0.0
    when, drops = ("full boost", "drops boost or spark") if boosted else ("full power", "cuts the spark")
    return (
        f"If one pump stops at {when}, fuel is {short} short: fit a cut-off that {drops}"
        " when fuel pressure falls."
    )
