"""The path: the fuel's way down the page, a part a line, with what comes out there at the goal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.advice.blocks import Block, FuelPath, Heading, Paragraph, PathPlace, PathSign
from fuelwiz.advice.blocks import PathLine as PathStop
from fuelwiz.advice.part_words import (
    filter_assumed,
    filter_in_words,
    first_words,
    injectors_in_words,
    pump_in_words,
    strainer_assumed,
    strainer_in_words,
)
from fuelwiz.advice.phrases import clock, least_spare, point_name, vapour_need
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import PATH
from fuelwiz.advice.sections.path_back import regulator_at_the_tank, way_back
from fuelwiz.advice.sections.path_line import PathLine, Stem, gap
from fuelwiz.advice.sections.path_runs import run_line
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.part_figures import PathPart
from fuelwiz.sizing.vocabulary import Limit


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
    filters = subject.session.feed.filter
    at_pump = [part for part in parts if part.kind == "filter" and filters[part.number].place == "pump"]
    after = [part for part in parts if part not in ahead and part not in at_pump]
    return (
        _tank(subject),
        *(_part(subject, size, part) for part in ahead),
        *([] if subject.session.inlet is not None else [gap("│", "strainer", "pump inlet")]),
        _pump(subject, size),
        *(_part(subject, size, part) for part in at_pump),
        *regulator_at_the_tank(subject),
        *(_part(subject, size, part) for part in after),
        *([] if subject.has_runs else [gap("│", "feed line", "feed line")]),
        _rail(subject, size),
        *_injectors(subject),
        *way_back(subject),
    )


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
        return gap("", "pump", "pump")._replace(at_the_goal=wanted)
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
        makes = f"{makes}{_lacks(subject, size)}"
    found = tuple(limit for limit in size.limits if limit in ("pump", "relief", "vapour"))
    if found == ("vapour",) and size.vapour_margin_Pa is not None:
        facts, makes = [*facts, makes], _above_boiling(subject, size.vapour_margin_Pa)
    return PathLine(
        "", "pump", ", ".join(facts), at_the_goal=makes, limits=found, assumed=subject.volts_assumed
    )


def _lacks(subject: Subject, size: SizeFigures) -> str:
    """What is wrong where pressure is enough at the goal: what one wants to spare, or the fuel at another point."""
    found = least_spare(size)
    if "pump" not in size.limits or found is None or size.margin is None or size.margin < 0.0:
        return ""
    margin, at = found
    where = "" if at is None else f" {point_name(subject, at)}"
    return f", {'short' if margin < 0.0 else 'reserve short'}{where}"


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
    return PathLine("│", "strainer", given, at_the_goal=lost, assumed=strainer_assumed(subject))


def _filter(subject: Subject, part: PathPart, lost: str) -> PathLine:
    given = filter_in_words(subject, subject.session.feed.filter[part.number])
    return PathLine("│", "filter", given, at_the_goal=lost, assumed=filter_assumed(subject, part.number))


def _suction(subject: Subject, size: SizeFigures, part: PathPart, lost: str) -> PathLine:
    inlet = subject.session.inlet
    assert inlet is not None and part.velocity_m_s is not None
    run = inlet.run[part.number]
    speed = subject.numbers.number("velocity", part.velocity_m_s)
    limits = tuple(limit for limit in size.limits if limit == "inlet")
    return run_line(subject, run, "", speed, lost, limits, f"inlet.run.{part.number}")


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
    return run_line(subject, run, size.size, speed, lost, found, f"feed.run.{part.number}")


def _rail(subject: Subject, size: SizeFigures) -> PathLine:
    """What the rail has at the goal: with the regulator at the tank, what the line leaves of the pressure it holds."""
    numbers, pressure = subject.numbers, subject.figures.pressure
    base, boost = subject.session.pressure.base, subject.session.pressure.boost
    given = f"{numbers.number('pressure', base)} base"
    follows = subject.session.pressure.reference == "manifold" and subject.session.engine.injection == "port"
    if boost > 0.0 and follows:
        given = f"{numbers.number('pressure', base)} + {numbers.limit('pressure', boost)} of boost"
    limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "injector pressure")
    set_to, has = pressure.rail_Pa, pressure.rail_Pa - (size.rail_sag_Pa or 0.0)
    whole = numbers.figure("pressure", set_to)
    there = numbers.number("pressure", has)
    return PathLine(
        "",
        "rail",
        given,
        at_the_goal=whole if there == numbers.number("pressure", set_to) else f"{there} of {whole}",
        limits=limits,
        assumed="pressure.base" in subject.assumed or "pressure.boost" in subject.assumed,
    )


def _injectors(subject: Subject) -> Iterator[PathLine]:
    given, figures, numbers = subject.session.injectors, subject.figures.injectors, subject.numbers
    if subject.session.engine.injection == "direct":
        yield PathLine("├", "high-pressure pump", "direct injection", at_the_goal="not judged")
    elif given is None or figures is None:
        yield gap("├", "injectors", "injectors")
    else:
        rated = injectors_in_words(subject, given, figures.count)
        limits = tuple(limit for limit in subject.figures.verdict.limits if limit == "injectors")
        there = ""
        if figures.duty is not None:
            duty, most = numbers.pair("percent", figures.duty, given.duty_limit)
            there = f"{duty} open, of {most}"
        yield PathLine("├", "injectors", rated, at_the_goal=there, limits=limits)
