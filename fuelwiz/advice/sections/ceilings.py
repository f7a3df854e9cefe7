"""What gives out first, and what passes or fails without a ceiling in power."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.ceilings import PARTS
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject, with_article
from fuelwiz.sizing.figures import Ceiling

BASES = (("solved", "Solved"), ("rule", "By rule of thumb"))


def ceilings(build: Subject, words: Words) -> Iterator[Block]:
    """The power at which each part alone gives out, then the parts that pass or fail."""
    yield Heading("What gives out first")
    if words.gives_out_first is None:
        yield Paragraph("Not known yet: it takes a line, [[feed.run]], and a pump, [pump].")
    else:
        yield Paragraph(words.gives_out_first)
        for basis, title in BASES:
            found = [item for item in build.figures.ceilings if item.basis == basis]
            if found:
                yield _ceiling_table(build, title, found)
    yield Paragraph("What has no ceiling in power, but passes or fails:")
    yield Listing((_return_at_idle(build), _wire(build), _relief(build), _dead_head(build)))


def _ceiling_table(build: Subject, title: str, found: list[Ceiling]) -> Table:
    goal, following = build.figures.demand.crank_power_W, build.figures.next
    goals = [goal] if following is None else [goal, following.crank_power_W]
    names = [f"against {build.numbers.figure('power', goal)}"]
    if following is not None:
        names.append(f"against the next, {build.numbers.figure('power', following.crank_power_W)}")
    columns = (
        Column(title),
        Column("Good for", build.numbers.unit("power"), figures=True),
        *(Column(name) for name in names),
    )
    return Table(columns, tuple(_ceiling_row(build, item, goals) for item in found))


def _ceiling_row(build: Subject, item: Ceiling, goals: list[float]) -> tuple[Cell, ...]:
    name = "the pumps" if item.part == "pump" and build.pump_word == "pumps" else PARTS[item.part]
    return row(
        name.removeprefix("the "),
        build.numbers.number("power", item.max_power_W, *goals),
        *(_against(build, item.max_power_W, goal) for goal in goals),
    )


def _against(build: Subject, power_w: float, goal_w: float) -> Cell:
    share = power_w / goal_w - 1.0
    told = build.numbers.figure("percent", abs(share), 0.0)
    return Cell(f"{told} to spare", "yes") if share >= 0.0 else Cell(f"{told} short", "no")


def _return_at_idle(build: Subject) -> Item:
    line, idle = build.figures.return_line, build.figures.pressure.idle_rail_Pa
    if not build.at_rail:
        return Item("Return at idle: there is no return, as no regulator sits at the rail.", "note")
    if line is None:
        missing = (
            "[return_line] is not given" if build.session.return_line is None else "it takes pump and line"
        )
        return Item(f"Return at idle: not known, {missing}.", "note")
    name = "the return" if line.fixed else f"{with_article(line.size)} return"
    needs, wants = build.numbers.pair("pressure", line.back_pressure_Pa, idle)
    if line.holds:
        return Item(
            f"Return at idle: {name} needs {needs} where the regulator wants {wants}: it holds.", "yes"
        )
    needs = build.numbers.figure("pressure", line.back_pressure_Pa, idle)
    wants = build.numbers.number("pressure", idle)
    creep = build.numbers.figure("pressure", line.creep_Pa, 0.0)
    return Item(
        f"Return at idle: {name} needs {needs} where the regulator wants {wants}:"
        f" the rail creeps {creep} high.",
        "no",
    )


def _wire(build: Subject) -> Item:
    wiring = build.figures.wiring
    if wiring is None or wiring.peak_current_A is None or wiring.ampacity_A is None:
        return Item(f"Wire: not known, {_missing_for_wire(build)}.", "note")
    amps = build.numbers.figure("amps", wiring.ampacity_A, *([wiring.fuse_A] if wiring.fuse_A else []))
    if wiring.fuse_A is None:
        peak = build.numbers.figure("amps", wiring.peak_current_A)
        return Item(f"Wire: no fuse is large enough for {peak}, and it may carry {amps}.", "no")
    fuse = build.numbers.limit("amps", wiring.fuse_A)
    enough = wiring.fuse_A <= wiring.ampacity_A
    told = (
        f"Wire: it may carry {amps}, its circuit takes a {fuse} fuse: {'enough' if enough else 'too thin'}."
    )
    return Item(told, "yes" if enough else "no")


def _missing_for_wire(build: Subject) -> str:
    wiring, pump = build.session.wiring, build.session.pump
    if wiring is None:
        return "[wiring] is not given"
    if pump is None or not build.has_runs:
        return "it takes pump and line"
    return "pump.current is not given" if not pump.current else "wiring.wire is not given"


def _relief(build: Subject) -> Item:
    pump, rise = build.session.pump, build.pick.pump_rise_Pa
    if pump is None or pump.relief is None or rise is None:
        missing = "there is no pump yet" if pump is None else "pump.relief is not given"
        missing = "it takes a line" if pump is not None and pump.relief is not None else missing
        return Item(f"The pump's relief: not known, {missing}.", "note")
    needed, relief = build.numbers.pair("pressure", rise, pump.relief)
    opens = "it stays shut" if rise <= pump.relief else "it opens before the goal is met"
    return Item(
        f"The pump's relief: {needed} must be made, it is set to {relief}: {opens}.",
        "yes" if rise <= pump.relief else "no",
    )


def _dead_head(build: Subject) -> Item:
    pump = build.figures.pump
    if pump is None:
        return Item("Pressure with the outlet shut: not known, it takes pump and line.", "note")
    if pump.dead_head_Pa is None:
        return Item(
            "Pressure with the outlet shut: not known, the pump's flow never ends on its sheet.", "note"
        )
    if pump.lowest_rating_Pa is None:
        most = build.numbers.figure("pressure", pump.dead_head_Pa)
        return Item(f"Pressure with the outlet shut: {most}; no part's pressure_rating is given.", "note")
    most, rating = build.numbers.pair("pressure", pump.dead_head_Pa, pump.lowest_rating_Pa)
    holds = pump.dead_head_Pa <= pump.lowest_rating_Pa
    return Item(
        f"Pressure with the outlet shut: {most}, the lowest rating of a part is {rating}:"
        f" {'within it' if holds else 'above it'}.",
        "yes" if holds else "no",
    )
