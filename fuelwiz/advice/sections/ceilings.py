"""Ceilings: the power that each part alone is good for, and what passes or fails without one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.first_limit import PARTS
from fuelwiz.advice.phrases import dead_head_guessed
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known, not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized, with_article
from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.vocabulary import CeilingBasis

NAME = "Ceilings"
BASES: tuple[tuple[CeilingBasis, str], ...] = (("solved", "Solved"), ("rule", "By rule of thumb"))


class Group(NamedTuple):
    """Ceilings of one kind: whether they were solved, and their title."""

    basis: CeilingBasis
    title: str
    ceilings: tuple[Ceiling, ...]


def ceilings(subject: Subject, words: Words) -> Iterator[Block]:
    """The power at which each part alone reaches its limit, then the parts that pass or fail."""
    yield Heading(NAME)
    if words.first_limit is None:
        yield Paragraph(ceilings_unknown(subject))
    else:
        yield Paragraph(words.first_limit)
        yield from (_ceiling_table(subject, group) for group in ceiling_groups(subject))
    yield Paragraph("Pass or fail:")
    yield Listing((_return_at_idle(subject), _wire(subject), _relief(subject), _dead_head(subject)))


def ceilings_unknown(subject: Subject) -> str:
    """What the ceilings wait for."""
    return not_known_sentence(subject, "line", "pump")


def ceiling_groups(subject: Subject) -> list[Group]:
    """The ceilings that were solved, then those by rule of thumb."""
    groups = (
        Group(basis, title, tuple(item for item in subject.figures.ceilings if item.basis == basis))
        for basis, title in BASES
    )
    return [group for group in groups if group.ceilings]


def ceiling_name(subject: Subject, ceiling: Ceiling) -> str:
    """The part that a ceiling belongs to, as a label."""
    several = ceiling.part == "pump" and subject.pump_word == "pumps"
    return "pumps" if several else PARTS[ceiling.part].removeprefix("the ")


def ceiling_figure(subject: Subject, ceiling: Ceiling) -> str:
    """What a part is good for, without its unit, on its own side of every goal."""
    return subject.numbers.number("power", ceiling.max_power_W, *(power for _, power in goals_of(subject)))


def goals_of(subject: Subject) -> list[tuple[str, float]]:
    """The goal, and the next one where there is one, each with its crank power in W."""
    goals = [("goal", subject.figures.demand.crank_power_W)]
    following = subject.next
    return goals if following is None else [*goals, ("next", following.crank_power_W)]


def _ceiling_table(subject: Subject, group: Group) -> Table:
    goals = goals_of(subject)
    columns = (
        Column(group.title),
        Column("Good for", subject.numbers.unit("power"), figures=True),
        *(Column(f"{capitalized(name)} {subject.numbers.figure('power', power)}") for name, power in goals),
    )
    rows = (
        row(
            ceiling_name(subject, item),
            ceiling_figure(subject, item),
            *(_against(subject, item.max_power_W, power) for _, power in goals),
        )
        for item in group.ceilings
    )
    return Table(columns, tuple(rows))


def _against(subject: Subject, power_w: float, goal_w: float) -> Cell:
    share = power_w / goal_w - 1.0
    figure = subject.numbers.figure("percent", abs(share), 0.0)
    return Cell(f"{figure} to spare", "yes") if share >= 0.0 else Cell(f"{figure} short", "no")


def _return_at_idle(subject: Subject) -> Item:
    line, idle = subject.figures.return_line, subject.figures.pressure.idle_rail_Pa
    if subject.session.pressure.regulator == "none":
        return Item("Return at idle: there is no return, as there is no regulator.", "note")
    if line is None:
        return Item(f"Return at idle: {not_known(subject, 'return line', 'line', 'pump')}.", "note")
    name = "the return" if line.fixed else f"{with_article(line.size)} return"
    if line.holds:
        backs_up, holds = subject.numbers.pair("pressure", line.back_pressure_Pa, idle)
        return Item(f"Return at idle: {name} backs up to {backs_up}, the regulator holds {holds}: OK.", "yes")
    backs_up = subject.numbers.figure("pressure", line.back_pressure_Pa, idle)
    creep = subject.numbers.figure("pressure", line.creep_Pa, 0.0)
    return Item(
        f"Return at idle: {name} backs up to {backs_up}, the regulator should hold"
        f" {subject.numbers.number('pressure', idle)}: rail pressure creeps {creep} high.",
        "no",
    )


def _wire(subject: Subject) -> Item:
    wiring = subject.figures.wiring
    if wiring is None or wiring.peak_current_A is None or wiring.ampacity_A is None:
        return Item(f"Wire: {_missing_for_wire(subject)}.", "note")
    amps = subject.numbers.figure("amps", wiring.ampacity_A, *([wiring.fuse_A] if wiring.fuse_A else []))
    if wiring.fuse_A is None:
        peak = subject.numbers.figure("amps", wiring.peak_current_A)
        return Item(f"Wire: good for {amps}, but no fuse is large enough for {peak}.", "no")
    fuse = subject.numbers.limit("amps", wiring.fuse_A)
    enough = wiring.fuse_A <= wiring.ampacity_A
    return Item(
        f"Wire: good for {amps}, the circuit needs a {fuse} fuse: {'OK' if enough else 'too thin'}.",
        "yes" if enough else "no",
    )


def _missing_for_wire(subject: Subject) -> str:
    wiring = subject.session.wiring
    if wiring is not None and subject.has_runs and wiring.wire is None:
        return "not known yet (needs the size of the wire)"
    return not_known(subject, "wiring", "line", "pump", "current")


def _relief(subject: Subject) -> Item:
    pump, rise = subject.session.pump, subject.pick.pump_rise_Pa
    if pump is not None and pump.relief is None:
        return Item("Relief valve: not known yet (needs the pressure at which it opens).", "note")
    if pump is None or pump.relief is None or rise is None:
        return Item(f"Relief valve: {not_known(subject, 'pump', 'line')}.", "note")
    needed, relief = subject.numbers.pair("pressure", rise, pump.relief)
    if rise <= pump.relief:
        return Item(
            f"Relief valve: {needed} is needed, it is set to {relief} and stays shut: OK.",
            "yes",
        )
    return Item(
        f"Relief valve: {needed} is needed, it opens at {relief}, before the goal is met.",
        "no",
    )


def _dead_head(subject: Subject) -> Item:
    pump = subject.figures.pump
    if pump is None:
        return Item(f"Dead head: {not_known(subject, 'pump', 'line')}.", "note")
    if pump.dead_head_Pa is None:
        return Item("Dead head: not known, the pump's table does not come down to no flow.", "note")
    if pump.lowest_rating_Pa is None:
        most = subject.numbers.figure("pressure", pump.dead_head_Pa)
        guess = " (a guess)" if dead_head_guessed(subject) else ""
        return Item(f"Dead head: {most}{guess} with the line blocked; no part has its rating given.", "note")
    most, rating = subject.numbers.pair("pressure", pump.dead_head_Pa, pump.lowest_rating_Pa)
    holds = pump.dead_head_Pa <= pump.lowest_rating_Pa
    return Item(
        f"Dead head: {most} with the line blocked, the weakest part is rated {rating}:"
        f" {'OK' if holds else 'too weak'}.",
        "yes" if holds else "no",
    )
