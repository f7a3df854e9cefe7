"""Ceilings: the power that each part alone is good for, and what passes or fails without one."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.first_limit import PARTS
from fuelwiz.advice.next_words import next_name
from fuelwiz.advice.phrases import dead_head_at_most, dead_head_guessed
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import CEILINGS
from fuelwiz.advice.sections.return_line import no_return_at_the_tank
from fuelwiz.advice.sections.unknown import not_known, not_known_sentence
from fuelwiz.advice.subject import Subject, with_article
from fuelwiz.facts import NEAR
from fuelwiz.sizing.figures import Ceiling
from fuelwiz.sizing.vocabulary import CeilingBasis, Limit

NOT_AS_TODAY = (
    "What a part is good for is at today's boost; at the next goal it is solved again, at the boost then."
)
BASES: tuple[tuple[CeilingBasis, str], ...] = (("solved", "Solved"), ("rule", "By rule of thumb"))


ALIKE_PA = 1.0


class Group(NamedTuple):
    """Ceilings of one kind: whether they were solved, and their title."""

    basis: CeilingBasis
    title: str
    ceilings: tuple[Ceiling, ...]


def ceilings(subject: Subject, words: Words) -> Iterator[Block]:
    """The power at which each part alone reaches its limit, then the parts that pass or fail."""
    yield Heading(CEILINGS)
    if words.first_limit is None:
        yield Paragraph(ceilings_unknown(subject))
    else:
        yield Paragraph(words.first_limit)
        yield from (_ceiling_table(subject, group) for group in ceiling_groups(subject))
        if next_differs(subject):
            yield Paragraph(NOT_AS_TODAY, quiet=True)
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
    several = ceiling.part == "pump" and not ceiling.by_line and subject.pump_word == "pumps"
    return "pumps" if several else part_label(ceiling)


def part_label(ceiling: Ceiling) -> str:
    """A part as a label; the line by what ends the power, as it has a ceiling by rule of thumb as well."""
    return "line drop" if ceiling.by_line else PARTS[ceiling.part].removeprefix("the ")


def ceiling_figure(subject: Subject, ceiling: Ceiling) -> str:
    """What a part is good for, without its unit, on its own side of every goal."""
    return subject.numbers.number("power", ceiling.max_power_W, *(power for _, power in goals_of(subject)))


def goals_of(subject: Subject) -> list[tuple[str, float]]:
    """The goal, and the next one where today's ceilings hold for it too, each with its crank power in W."""
    goals = [("goal", subject.figures.demand.crank_power_W)]
    following = subject.next
    return (
        goals if following is None or next_differs(subject) else [*goals, ("next", following.crank_power_W)]
    )


def next_differs(subject: Subject) -> bool:
    """Whether the next goal comes with another boost or induction: its power then says nothing of today's ceilings."""
    following, figures = subject.next, subject.figures
    if following is None:
        return False
    more_power = following.crank_power_W / figures.demand.crank_power_W
    more_fuel = following.target_flow_m3_s / figures.demand.target_flow_m3_s
    boosted = abs(following.boost_Pa - subject.session.pressure.boost) > ALIKE_PA
    return boosted or abs(more_fuel / more_power - 1.0) > NEAR


def ceilings_then(subject: Subject) -> str | None:
    """What the parts that are solved are good for at the next goal; None where today's figures say that too."""
    following = subject.next
    if following is None or not next_differs(subject):
        return None
    numbers, power = subject.numbers, following.crank_power_W
    parts = [
        f"{ceiling_name(subject, item)} {numbers.number('power', item.max_power_W, power)}"
        for item in following.ceilings
        if item.basis == "solved"
    ]
    if not parts:
        return None
    goal = next_name(subject, following, whole=False)
    return f"Next, {goal}: {', '.join(parts)} {numbers.unit('power')}."


def _ceiling_table(subject: Subject, group: Group) -> Table:
    figures, following, numbers = subject.figures, subject.next, subject.numbers
    goal_w = figures.demand.crank_power_W
    columns = [
        Column(group.title),
        Column("Good for", numbers.unit("power"), figures=True),
        Column(f"Goal {numbers.figure('power', goal_w)}"),
    ]
    if following is not None:
        columns.append(Column(f"Next {next_name(subject, following, whole=False)}"))
    rows = []
    for item in group.ceilings:
        today = _against(subject, item, goal_w, figures.pick.margin, figures.verdict.limits)
        cells: list[Cell | str | None] = [ceiling_name(subject, item), ceiling_figure(subject, item), today]
        if following is not None:
            then = next((one for one in following.ceilings if one.part == item.part), None)
            power_w, limits = following.crank_power_W, following.limits
            cells.append(None if then is None else _against(subject, then, power_w, following.margin, limits))
        rows.append(row(*cells))
    return Table(tuple(columns), tuple(rows))


def _against(
    subject: Subject, item: Ceiling, goal_w: float, margin: float | None, limits: tuple[Limit, ...]
) -> Cell:
    """What a part has to spare at a goal; no tick beside a pump that lacks its reserve there."""
    share, numbers, reserve = item.max_power_W / goal_w - 1.0, subject.numbers, subject.session.goal.reserve
    if share < 0.0:
        return Cell(f"{numbers.figure('percent', -share, 0.0)} short", "no")
    refused = (
        item.part == "pump"
        and not item.by_line
        and "pump" in limits
        and margin is not None
        and margin < reserve
    )
    if refused and share < reserve:
        spare, wanted = numbers.pair("percent", share, reserve)
        return Cell(f"{spare} to spare, you want {wanted}", "no")
    return Cell(f"{numbers.figure('percent', share, 0.0)} to spare", "yes")


def _return_at_idle(subject: Subject) -> Item:
    line, idle = subject.figures.return_line, subject.figures.pressure.idle_rail_Pa
    if subject.session.pressure.regulator == "none":
        return Item("Return at idle: there is no return, as there is no regulator.", "note")
    if no_return_at_the_tank(subject):
        return Item("Return at idle: there is no return line, as the regulator sits at the tank.", "note")
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
        guessed = dead_head_guessed(subject)
        most = dead_head_at_most(subject.numbers, pump.dead_head_Pa, guessed=guessed)
        guess = " (a guess)" if guessed else ""
        return Item(f"Dead head: {most}{guess} with the line blocked; no part has its rating given.", "note")
    most, rating = subject.numbers.pair("pressure", pump.dead_head_Pa, pump.lowest_rating_Pa)
    holds = pump.dead_head_Pa <= pump.lowest_rating_Pa
    return Item(
        f"Dead head: {most} with the line blocked, the weakest part is rated {rating}:"
        f" {'OK' if holds else 'too weak'}.",
        "yes" if holds else "no",
    )
