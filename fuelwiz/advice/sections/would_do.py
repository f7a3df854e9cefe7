"""What would do: the pump to look for, and the return, wire and injectors that are enough."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import InjectorFigures, ReturnFigures, ReturnSize, WiringFigures


def pump_to_look_for(build: Subject, _words: Words) -> Iterator[Block]:
    """The flow and the pressure that a pump has to give at the pick, and what the pump that is given does."""
    yield Heading("Pump to look for")
    target = build.figures.pump_target
    if target is None:
        yield Paragraph("Not known yet: it takes a line, [[feed.run]].")
        return
    numbers = build.numbers
    flow, rise = numbers.figure("flow", target.flow_m3_s), numbers.figure("pressure", target.rise_Pa)
    through = "through the line as it is" if target.fixed else f"through {target.size}"
    yield Paragraph(f"One that gives {flow} at {rise} across it, {through}, at the volts it will see.")
    rows = tuple(_pump_given(build))
    if rows:
        yield Pairs(rows)


def _pump_given(build: Subject) -> Iterator[tuple[str, str]]:
    pump, figures, pick, numbers = build.session.pump, build.figures.pump, build.pick, build.numbers
    if pump is None or figures is None or pick.capacity_m3_s is None:
        return
    demand = build.figures.demand
    edges = (demand.volume_flow_m3_s, demand.target_flow_m3_s)
    many = "" if pump.count == 1 else f"{pump.count} in {pump.arrangement}, "
    gives = numbers.figure("flow", pick.capacity_m3_s, *edges)
    name = f"{pump.name}: " if pump.name else ""
    yield "the one given", f"{name}{many}{gives} in this system"
    free = numbers.figure("flow", figures.capacity_without_feed_loss_m3_s)
    yield "without line loss", free
    if figures.stages:
        power = numbers.figure("power", figures.stages[-1].power_W)
        yield "staging", f"all pumps must run from {power} up"


def return_that_would_do(build: Subject, _words: Words) -> Iterator[Block]:
    """Every size of return at idle."""
    yield Heading("Return line")
    line = build.figures.return_line
    if not build.at_rail:
        yield Paragraph("There is none: no regulator sits at the rail.")
    elif line is None:
        missing = (
            "[return_line] is not given" if build.session.return_line is None else "it takes pump and line"
        )
        yield Paragraph(f"Not known: {missing}.")
    else:
        yield _return_table(build, line)
        yield Paragraph(_smallest(build, line))


def _return_table(build: Subject, line: ReturnFigures) -> Table:
    unit = build.numbers.unit
    columns = (
        Column("Size"),
        Column("Flow at idle", unit("flow"), figures=True),
        Column("Velocity", unit("velocity"), figures=True),
        Column("Needs", unit("pressure"), figures=True),
        Column("Creep", unit("pressure"), figures=True),
        Column("Holds"),
    )
    chosen = build.session.return_line.chosen if build.session.return_line else None
    settled = None if chosen is None else chosen.text
    return Table(columns, tuple(_return_row(build, size, settled) for size in line.sizes))


def _return_row(build: Subject, size: ReturnSize, settled: str | None) -> tuple[Cell, ...]:
    numbers = build.numbers
    name = "as it is" if size.fixed else f"{size.size}*" if size.size == settled else size.size
    return row(
        name,
        numbers.number("flow", size.flow_m3_s),
        None if size.velocity_m_s is None else numbers.number("velocity", size.velocity_m_s),
        numbers.number("pressure", size.back_pressure_Pa, build.figures.pressure.idle_rail_Pa),
        numbers.number("pressure", size.creep_Pa, 0.0),
        Cell("yes", "yes") if size.holds else Cell("no", "no"),
    )


def _smallest(build: Subject, line: ReturnFigures) -> str:
    wants = build.numbers.figure("pressure", build.figures.pressure.idle_rail_Pa)
    if line.smallest_that_holds is None:
        return f"None of them holds the {wants} that the regulator wants at idle."
    if line.fixed:
        return f"It holds the {wants} that the regulator wants at idle."
    return (
        f"{line.smallest_that_holds} is the smallest that holds the {wants} that the regulator wants at idle."
    )


def wire_and_injectors(build: Subject, _words: Words) -> Iterator[Block]:
    """Wire, fuse and injectors: what is given, and the least that is enough."""
    yield Heading("Wire and fuse")
    wiring = build.figures.wiring
    if wiring is None:
        missing = "[wiring] is not given" if build.session.wiring is None else "it takes pump and line"
        yield Paragraph(f"Not known: {missing}.")
    else:
        yield Pairs(tuple(_wire(build, wiring)))
    yield Heading("Injectors")
    injectors = build.figures.injectors
    if injectors is None:
        missing = "[injectors] is not given" if build.session.injectors is None else "it takes a line"
        yield Paragraph(f"Not known: {missing}.")
    else:
        yield Pairs(tuple(_injectors(build, injectors)))


def _wire(build: Subject, wiring: WiringFigures) -> Iterator[tuple[str, str]]:
    numbers = build.numbers
    loses = numbers.figure("volts", wiring.loss_V)
    yield "at the pump", f"{numbers.figure('volts', wiring.pump_volts_V)}, {loses} below the supply"
    if wiring.current_A is None or wiring.peak_current_A is None:
        yield "current", "not known: pump.current is not given"
        return
    peak = numbers.figure("amps", wiring.peak_current_A)
    yield "each circuit", f"{numbers.figure('amps', wiring.current_A)} at full power, {peak} at most"
    yield "fuse", "none is large enough" if wiring.fuse_A is None else numbers.limit("amps", wiring.fuse_A)
    if wiring.ampacity_A is not None:
        yield (
            "wire may carry",
            numbers.figure("amps", wiring.ampacity_A, *([wiring.fuse_A] if wiring.fuse_A else [])),
        )
    if build.session.wiring is not None and build.session.wiring.length is None:
        yield "smallest wire", "not known: wiring.length is not given"
    else:
        yield "smallest wire", wiring.smallest_wire or "none is thick enough: more circuits, or a shorter way"


def _injectors(build: Subject, injectors: InjectorFigures) -> Iterator[tuple[str, str]]:
    numbers, given = build.numbers, build.session.injectors
    assert given is not None
    rated = numbers.figure("injector", given.rated_flow)
    at = numbers.figure("pressure", given.rated_pressure)
    yield "given", f"{injectors.count} of {rated} each, rated at {at}"
    if injectors.duty is None or injectors.smallest_rating_m3_s is None:
        yield "duty", "none: no pressure is left across them"
        return
    duty, most = numbers.pair("percent", injectors.duty, given.duty_limit)
    yield "duty at the goal", f"{duty}, {most} is the limit"
    least = numbers.figure("injector", injectors.smallest_rating_m3_s, given.rated_flow)
    yield "smallest", f"{injectors.count} of {least} each, rated at {at}, would do"
