"""The pump to look for, and what the pump that is given does."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Heading, Pairs, Paragraph
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, size_label


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
    rows = tuple(_pump_given(subject))
    if rows:
        yield Pairs(rows)


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
    if figures.stages:
        power = numbers.figure("power", figures.stages[-1].power_W)
        yield "staging", f"all pumps must run from {power} up"
