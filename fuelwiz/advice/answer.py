"""The answer in one or two sentences: a settled size that is refused first, then reason, then what to do."""

from __future__ import annotations

from fuelwiz.advice.build_limits import build_limit, return_creeps
from fuelwiz.advice.no_cure import every_size_fails, no_line_cures
from fuelwiz.advice.phrases import GUESSED, limit_phrase, lost, spare, speed
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures


def answer(build: Subject) -> str:
    """What the build comes to, in one or two sentences, more only where the idle or a dead pump needs one."""
    if not build.has_runs:
        return _without_lines(build)
    if not build.has_pump:
        return _without_pump(build)
    if build.figures.recommended is None:
        return " ".join((no_line_cures(build), *_said_of_build(build)))
    settled = _settled_refused(build)
    if settled:
        return " ".join((settled, _line_to_fit(build, short=True), *_said_of_build(build)))
    if build.build_limits == ("return",):
        return " ".join((_full_power_holds(build), _idle_does_not(build), *_dead_pump(build)))
    return " ".join((*_said_of_build(build), _works(build), *_dead_pump(build)))


def short_goal(build: Subject) -> str:
    """The goal by name: "750 hp on E10 (assumed)"."""
    goal = build.numbers.figure("power", build.figures.demand.crank_power_W)
    wheels = " at the wheels" if build.session.goal.power_at == "wheels" else ""
    assumed = " (assumed)" if "fuel.ethanol" in build.assumed else ""
    return f"{goal}{wheels} on {build.fuel}{assumed}"


def _without_lines(build: Subject) -> str:
    burns = build.numbers.figure("flow", build.figures.demand.volume_flow_m3_s)
    goal = f"{short_goal(build)} burns {burns}. Which line works shows after Lines."
    return " ".join(filter(None, (_settled_refused(build), goal)))


def _settled_refused(build: Subject) -> str:
    row = build.figures.row(build.figures.chosen)
    if row is None or not row.limits:
        return ""
    return f"{row.size}, settled on (*), no longer works: {limit_phrase(build, row, row.limits[0])}."


def _without_pump(build: Subject) -> str:
    line, settled = build.line, _settled_refused(build)
    if line is None:
        return every_size_fails(build)
    look_for, said = _look_for(build, line), _said_of_build(build)
    if settled:
        return " ".join(
            (settled, f"{line.size} is the line to fit: {_figures(build, line)}.", *said, look_for)
        )
    return " ".join((*said, look_for, _chosen_or_fit(build, line)))


def _chosen_or_fit(build: Subject, line: SizeFigures) -> str:
    chosen = build.figures.row(build.figures.chosen)
    if line.fixed:
        return "The line as it is will do."
    if chosen is None or chosen is line:
        return f"{line.size} is the line to fit."
    if chosen.bore_m > line.bore_m:
        return f"{chosen.size}, settled on (*), will do, and so would {line.size}."
    return f"{chosen.size}, settled on (*), is {chosen.band}: {line.size} is the line to fit."


def _look_for(build: Subject, row: SizeFigures) -> str:
    assert row.target_rise_Pa is not None
    flow = build.numbers.figure("flow", build.figures.demand.target_flow_m3_s)
    rise = build.numbers.about("pressure", row.target_rise_Pa)
    return f"Look for a pump that gives {flow} at {rise} and the volts it will see."


def _figures(build: Subject, row: SizeFigures, *, short: bool = False) -> str:
    """Velocity, loss and what is to spare, as they follow a size."""
    told = [speed(build, row), None if short else lost(build, row), spare(build, row)]
    return ", ".join(filter(None, told)) + (GUESSED if build.one_point and row.margin is not None else "")


def _line_to_fit(build: Subject, *, short: bool = False) -> str:
    line = build.line
    assert line is not None
    return f"{line.size} is the line to fit: {_figures(build, line, short=short)}."


def _works(build: Subject) -> str:
    """The sentence of a build whose pick works, whatever else is wrong."""
    pick, line = build.pick, build.line
    assert line is not None
    if pick.fixed:
        return f"The line as it is works: {_figures(build, pick)}."
    if build.figures.chosen is None or pick is line:
        return _line_to_fit(build)
    if pick.bore_m > line.bore_m:
        return f"{pick.size}, settled on (*), works: {_figures(build, pick)}. {line.size} would do."
    chosen = f"{pick.size}, settled on (*), works but is not the best: {_figures(build, pick)}."
    return f"{chosen} {line.size} is the line to fit."


def _full_power_holds(build: Subject) -> str:
    spared = spare(build, build.pick)
    guessed = GUESSED if build.one_point else ""
    through = "" if build.pick.fixed else f" through {build.pick.size}"
    return f"Full power holds, {spared}{through}{guessed}."


def _idle_does_not(build: Subject) -> str:
    what, do = return_creeps(build)
    return f"Idle does not: {what} {do}"


def _said_of_build(build: Subject) -> list[str]:
    """One sentence on the first limit that no size of line changes."""
    return [" ".join(build_limit(build, limit)) for limit in build.build_limits[:1]]


def _dead_pump(build: Subject) -> list[str]:
    case = next((case for case in build.figures.stress if case.case == "one pump dead"), None)
    if case is None or case.margin is None or case.margin >= 0.0:
        return []
    less = build.numbers.figure("percent", -case.margin, 0.0)
    when = "boost" if build.session.pressure.boost > 0.0 else "power"
    return [f"One pump dead at full {when} gives {less} less than the engine burns: fit a pressure cut."]
