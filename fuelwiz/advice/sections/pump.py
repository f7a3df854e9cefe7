"""The pump to look for, and what the pump that is given does."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.phrases import point_name, volt_moves
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.stages import point_words, switch_points
from fuelwiz.advice.subject import Subject, capitalized, size_label
from fuelwiz.sizing.part_figures import Stage


def pump_to_look_for(subject: Subject, _words: Words) -> Iterator[Block]:
    """The flow and the pressure that a pump has to give at the pick, and what the pump that is given does."""
    yield Heading("Pump to look for")
    target = subject.figures.pump_target
    if target is None:
        yield Paragraph(not_known_sentence(subject, "line"))
        return
    numbers = subject.numbers
    flow, rise = numbers.figure("flow", target.flow_m3_s), numbers.figure("pressure", target.rise_Pa)
    yield Paragraph(
        f"One that flows {flow} at {rise} across it, through {size_label(target.size)},"
        " at the voltage it really gets."
    )
    yield from _hardest(subject)
    rows = tuple(_pump_given(subject))
    if rows:
        yield Pairs(rows)
    yield from stages(subject)


def _hardest(subject: Subject) -> Iterator[Block]:
    """What the tightest point of the pull asks for, where that is not the goal."""
    target = subject.figures.pump_target
    if target is None or target.hardest is None or target.hardest.at is None:
        return
    numbers, hardest, at = subject.numbers, target.hardest, target.hardest.at
    flow, rise = numbers.figure("flow", hardest.flow_m3_s), numbers.figure("pressure", hardest.rise_Pa)
    yield Paragraph(f"{capitalized(point_name(subject, at))} it is {flow} at {rise}: that asks most.")


def _pump_given(subject: Subject) -> Iterator[tuple[str, str]]:
    pump, figures, pick = subject.session.pump, subject.figures.pump, subject.pick
    if pump is None or figures is None or pick.capacity_m3_s is None:
        return
    demand, numbers = subject.figures.demand, subject.numbers
    edges = (demand.volume_flow_m3_s, demand.target_flow_m3_s)
    many = "" if pump.count == 1 else f"{pump.count} in {pump.arrangement}, "
    gives = numbers.figure("flow", pick.capacity_m3_s, *edges)
    name = f"{pump.name}: " if pump.name else ""
    yield "your pump", f"{name}{many}{gives} in this system"
    yield "without line loss", numbers.figure("flow", figures.capacity_without_feed_loss_m3_s)
    volt = volt_moves(subject)
    if volt is not None:
        yield "volts", volt
    if figures.capacity_turbine_m3_s is not None and figures.capacity_displacement_m3_s is not None:
        turbine = numbers.figure("flow", figures.capacity_turbine_m3_s, *edges)
        displacement = numbers.figure("flow", figures.capacity_displacement_m3_s, *edges)
        yield (
            "by its kind",
            f"{turbine} if a turbine, {displacement} if a displacement pump; the lower counts",
        )
    if figures.stages:
        power = numbers.figure("power", figures.stages[-1].power_W)
        yield "staging", f"all pumps must run from {power} up"


def stages(subject: Subject) -> Iterator[Block]:
    """Where each further pump is switched on and off; nothing without stages."""
    figures, numbers = subject.figures.pump, subject.numbers
    if figures is None or not figures.stages:
        return
    columns = (
        Column("Pumps", whole=True),
        Column("Enough to", numbers.unit("power"), figures=True),
        Column("Next one on at"),
        Column("Off at"),
    )
    yield Table(columns, tuple(_stage_row(subject, stage) for stage in figures.stages))
    yield Paragraph(
        "A stage comes in 10\u00a0% before it is needed and goes out 10\u00a0% before that again: common practice.",
        quiet=True,
    )


def _stage_row(subject: Subject, stage: Stage) -> tuple[Cell, ...]:
    on, off = switch_points(subject, stage)
    return row(
        str(stage.pumps),
        subject.numbers.number("power", stage.power_W),
        point_words(subject, on),
        point_words(subject, off),
    )
