"""The path: the fuel's way down the page, a part a line, with what comes out there at the goal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from fuelwiz.advice.blocks import Block, FuelPath, Heading, Paragraph, PathPlace, PathSign
from fuelwiz.advice.blocks import PathLine as PathStop
from fuelwiz.advice.limits.returning import regulator_makes_most
from fuelwiz.advice.part_words import (
    filter_in_words,
    first_words,
    injectors_in_words,
    pump_in_words,
    regulator_in_words,
    strainer_in_words,
)
from fuelwiz.advice.phrases import clock, vapour_need
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import PATH
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.printable import NO_BREAK
from fuelwiz.session import Run
from fuelwiz.session import given as is_given
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.part_figures import PathPart
from fuelwiz.sizing.vocabulary import Limit
from fuelwiz.terms import FITTINGS, HOSES

OPEN_ENDS = ("entrance", "exit")
"""What is no part that one buys."""
Stem = Literal["", "│", "├"]


class PathLine(NamedTuple):
    """One part: how it hangs on the way, its name, what was given, its velocity, and what comes out at the goal.

    `limits` are those that it causes; `assumed` where it rests on a value that was not given; `gap` where nothing is
    known of it yet; `short` is what was given in fewer words.
    """

    stem: Stem
    name: str
    given: str
    velocity: str = ""
    at_the_goal: str = ""
    limits: tuple[Limit, ...] = ()
    assumed: bool = False
    gap: bool = False
    short: str = ""


def path(subject: Subject, _words: Words) -> Iterator[Block]:
    """The way at the pick."""
    yield Heading(PATH)
    if not subject.has_runs:
        yield Paragraph(not_known_sentence(subject, "line"))
        return
    lines = path_lines(subject, subject.pick, subject.figures.path)
    yield FuelPath(tuple(_drawn(subject, line) for line in lines))


PLACES: dict[Stem, PathPlace] = {"": "stop", "│": "between", "├": "branch"}
SIGNS: dict[str, PathSign] = {
    "tank": "tank",
    "surge pot": "tank",
    "strainer": "strainer",
    "pump": "pump",
    "filter": "filter",
    "rail": "rail",
    "injectors": "injectors",
    "regulator": "regulator",
}
"""The sign of what is no run, by its name."""


def _drawn(subject: Subject, line: PathLine) -> PathStop:
    """A line as it is drawn; its velocity with the unit, as no head stands above it."""
    speed = f"{line.velocity}{NO_BREAK}{subject.numbers.unit('velocity')}" if line.velocity else ""
    return PathStop(
        part=SIGNS.get(line.name, "run"),
        name=line.name,
        given=line.given,
        speed=speed,
        comes_out=line.at_the_goal,
        place=PLACES[line.stem],
        mark="no" if line.limits else None,
        assumed=line.assumed,
        gap=line.gap,
    )


def path_lines(subject: Subject, size: SizeFigures, parts: Sequence[PathPart]) -> tuple[PathLine, ...]:
    """The way at one size of feed, with the parts as they are at that size."""
    ahead = [part for part in parts if part.kind in ("strainer", "suction")]
    after = [part for part in parts if part.kind not in ("strainer", "suction")]
    return (
        _tank(subject),
        *(_part(subject, size, part) for part in ahead),
        *([] if subject.session.inlet is not None else [_gap("│", "strainer", "pump inlet")]),
        _pump(subject, size),
        *(_part(subject, size, part) for part in after),
        *([] if subject.has_runs else [_gap("│", "feed line", "feed line")]),
        _rail(subject),
        *_injectors(subject),
        *_home(subject),
    )


def _gap(stem: Stem, name: str, what: str) -> PathLine:
    return PathLine(stem, name, f"not given yet: {what}", gap=True, short="not given yet")


def _tank(subject: Subject) -> PathLine:
    tank, heat, numbers = subject.session.tank, subject.figures.heat, subject.numbers
    temperature = numbers.figure("temperature", subject.session.fuel.temperature)
    held = [temperature]
    if tank.volume is not None:
        held = [
            numbers.figure("volume", tank.volume),
            f"{numbers.figure('percent', tank.fill)} full",
            temperature,
        ]
    power = numbers.figure("power", subject.figures.demand.crank_power_W)
    lasts = "" if heat is None else f"lasts {clock(heat.lasts_s)} at {power}"
    assumed = "fuel.temperature" in subject.assumed
    return PathLine("", "tank", ", ".join(held), at_the_goal=lasts, assumed=assumed)


def _pump(subject: Subject, size: SizeFigures) -> PathLine:
    pump, numbers = subject.session.pump, subject.numbers
    if pump is None or not subject.has_pump:
        target = subject.figures.pump_target
        wanted = ""
        if target is not None:
            flow = numbers.figure("flow", target.flow_m3_s)
            wanted = f"look for {flow} at {numbers.about('pressure', target.rise_Pa)}"
        return _gap("", "pump", "pump")._replace(at_the_goal=wanted)
    facts = [pump_in_words(pump)]
    if size.pump_volts_V is not None:
        facts.append(numbers.figure("volts", size.pump_volts_V))
    if size.pump_current_A is not None:
        facts.append(numbers.figure("amps", size.pump_current_A))
    must, could = size.pump_rise_Pa, None if size.ladder is None else size.ladder.could_make_Pa
    makes = "" if must is None else f"needs {numbers.about('pressure', must)}"
    if must is not None and could is not None:
        needed = numbers.number("pressure", must, could)
        makes = f"needs {needed}, has {numbers.figure('pressure', could, must)}"
    found = tuple(limit for limit in size.limits if limit in ("pump", "relief", "vapour"))
    if found == ("vapour",) and size.vapour_margin_Pa is not None:
        facts, makes = [*facts, makes], _above_boiling(subject, size.vapour_margin_Pa)
    return PathLine(
        "", "pump", ", ".join(facts), at_the_goal=makes, limits=found, assumed=subject.volts_assumed
    )


def _above_boiling(subject: Subject, margin_pa: float) -> str:
    """How near the fuel is to boiling at the pump, where that is what is wrong there."""
    if margin_pa < 0.0:
        return "fuel boils"
    figure, wanted = subject.numbers.pair("pressure", margin_pa, vapour_need(subject))
    return f"{figure} above boiling, of {wanted}"


def _part(subject: Subject, size: SizeFigures, part: PathPart) -> PathLine:
    lost = subject.numbers.figure("pressure", part.loss_Pa)
    match part.kind:
        case "strainer":
            return _strainer(subject, lost)
        case "suction":
            return _suction(subject, size, part, lost)
        case "filter":
            return _filter(subject, part, lost)
        case "run":
            return _feed_run(subject, size, part, lost)
        case "part":
            item = subject.session.feed.part[part.number]
            flow = subject.numbers.figure("flow", item.rated_flow)
            return PathLine("│", first_words(item.what) or "part", f"for {flow}", at_the_goal=lost)


def _strainer(subject: Subject, lost: str) -> PathLine:
    inlet = subject.session.inlet
    assert inlet is not None and inlet.strainer is not None
    given = strainer_in_words(subject, inlet.strainer)
    return PathLine("│", "strainer", given, at_the_goal=lost, assumed="inlet.strainer" in subject.assumed)


def _filter(subject: Subject, part: PathPart, lost: str) -> PathLine:
    given = filter_in_words(subject, subject.session.feed.filter[part.number])
    return PathLine("│", "filter", given, at_the_goal=lost, assumed="feed.filter" in subject.assumed)


def _suction(subject: Subject, size: SizeFigures, part: PathPart, lost: str) -> PathLine:
    inlet = subject.session.inlet
    assert inlet is not None and part.velocity_m_s is not None
    run = inlet.run[part.number]
    speed = subject.numbers.number("velocity", part.velocity_m_s)
    limits = tuple(limit for limit in size.limits if limit == "inlet")
    return _run(subject, run, "", speed, lost, limits, f"inlet.run.{part.number}")


def _run(
    subject: Subject,
    run: Run,
    size: str,
    speed: str,
    comes_out: str,
    limits: tuple[Limit, ...],
    path_of_run: str,
) -> PathLine:
    """A run of whatever line it is."""
    return PathLine(
        "│",
        run_name(subject, run, size),
        run_in_words(subject, run),
        speed,
        comes_out,
        limits,
        _is_assumed(subject, path_of_run),
        short=_run_in_few_words(subject, run),
    )


def _is_assumed(subject: Subject, path_of_run: str) -> bool:
    """Whether a run's length or kind of hose was not given, in whatever line it is."""
    return not all(is_given(subject.session, f"{path_of_run}.{key}") for key in ("length", "hose"))


def _feed_run(subject: Subject, size: SizeFigures, part: PathPart, lost: str) -> PathLine:
    run, numbers = subject.session.feed.run[part.number], subject.numbers
    edges = subject.session.bands.feed
    speed = "" if part.velocity_m_s is None else numbers.number("velocity", part.velocity_m_s, *edges)
    kept = run.size is not None or run.bore is not None
    found: tuple[Limit, ...] = tuple(
        limit for limit in size.limits if limit in ("velocity", "delivery", "sag")
    )
    if kept and not size.fixed:
        found = tuple(limit for limit in subject.figures.verdict.limits if limit == "kept run")
    return _run(subject, run, size.size, speed, lost, found, f"feed.run.{part.number}")


def run_name(subject: Subject, run: Run, size: str) -> str:
    """A run by its size and hose: "-8 PTFE"."""
    if run.bore is not None:
        return f"{subject.numbers.figure('bore', run.bore)} {HOSES[run.hose]}"
    return f"{run.size.text if run.size is not None else size} {HOSES[run.hose]}"


def run_in_words(subject: Subject, run: Run) -> str:
    """A run by its length, its ends and what it is."""
    ends = [f"{count} {FITTINGS[kind]}" for kind, count in _fittings(run)]
    return ", ".join([subject.numbers.limit("length", run.length), *_many(run), *ends])


def _run_in_few_words(subject: Subject, run: Run) -> str:
    """The same with its ends counted."""
    count = sum(count for _, count in _fittings(run))
    fitted = [f"{count} {'end' if count == 1 else 'ends'}"] if count else []
    return ", ".join([subject.numbers.limit("length", run.length), *_many(run), *fitted])


def _fittings(run: Run) -> list[tuple[str, int]]:
    return [(kind, count) for kind, count in run.fittings.items() if count and kind not in OPEN_ENDS]


def _many(run: Run) -> list[str]:
    return [f"{run.side_by_side} side by side"] if run.side_by_side > 1 else []


def _rail(subject: Subject) -> PathLine:
    numbers, pressure = subject.numbers, subject.figures.pressure
    base, boost = subject.session.pressure.base, subject.session.pressure.boost
    given = f"{numbers.number('pressure', base)} base"
    follows = subject.session.pressure.reference == "manifold" and subject.session.engine.injection == "port"
    if boost > 0.0 and follows:
        given = f"{numbers.number('pressure', base)} + {numbers.limit('pressure', boost)} of boost"
    limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "injector pressure")
    return PathLine(
        "",
        "rail",
        given,
        at_the_goal=numbers.figure("pressure", pressure.rail_Pa),
        limits=limits,
        assumed="pressure.base" in subject.assumed or "pressure.boost" in subject.assumed,
    )


def _injectors(subject: Subject) -> Iterator[PathLine]:
    given, figures, numbers = subject.session.injectors, subject.figures.injectors, subject.numbers
    if subject.session.engine.injection == "direct":
        yield PathLine("├", "high-pressure pump", "direct injection", at_the_goal="not judged")
    elif given is None or figures is None:
        yield _gap("├", "injectors", "injectors")
    else:
        rated = injectors_in_words(subject, given, figures.count)
        limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "injectors")
        there = ""
        if figures.duty is not None:
            duty, most = numbers.pair("percent", figures.duty, given.duty_limit)
            there = f"{duty} open, of {most}"
        yield PathLine("├", "injectors", rated, at_the_goal=there, limits=limits)


def _home(subject: Subject) -> Iterator[PathLine]:
    """The regulator and the way back."""
    session, line, numbers = subject.session, subject.figures.return_line, subject.numbers
    if session.pressure.regulator == "none":
        return
    if session.return_line is None:
        yield _gap("│", "return", "return line")
        return
    regulator = session.return_line.regulator
    rated = regulator_in_words(subject, regulator)
    lost = "" if line is None else f"{numbers.figure('pressure', line.regulator_loss_Pa)} at idle"
    taken = "return_line.regulator" in subject.assumed
    limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "return")
    at_regulator = regulator_makes_most(subject) or not session.return_line.run
    yield PathLine("│", "regulator", rated, "", lost, limits if at_regulator else (), taken)
    for number, run in enumerate(session.return_line.run):
        size = "" if line is None else line.size
        last = number == len(session.return_line.run) - 1
        speed = there = ""
        if line is not None and last:
            idle = subject.figures.pressure.idle_rail_Pa
            back = numbers.number("pressure", line.back_pressure_Pa, idle)
            there = f"{back} of {numbers.figure('pressure', idle, line.back_pressure_Pa)} at idle"
            if not line.holds:
                held = numbers.number("pressure", idle, line.back_pressure_Pa)
                there = f"{numbers.figure('pressure', line.back_pressure_Pa, idle)} at idle, not {held}"
            speed = "" if line.velocity_m_s is None else numbers.number("velocity", line.velocity_m_s)
        found = limits if last and not at_regulator else ()
        yield _run(subject, run, size, speed, there, found, f"return_line.run.{number}")
    goes = "surge pot" if session.surge is not None and session.surge.return_to == "surge" else "tank"
    yield PathLine("", goes, "")
