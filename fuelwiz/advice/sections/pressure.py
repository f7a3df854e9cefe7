"""What the goal needs in fuel and pressure, and where the pump's pressure goes, step by step."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import LADDER
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, size_label
from fuelwiz.sizing.figures import Ladder, SizeFigures

FUEL = "Fuel and rail"


class Step(NamedTuple):
    """One step of the ladder: a pressure, from where it begins to where it ends on the common scale."""

    name: str
    short: str
    figure: str
    low_Pa: float
    high_Pa: float


class Total(NamedTuple):
    """What the steps come to, or what the pump could make; `enough` where it can be judged."""

    name: str
    figure: str
    pressure_Pa: float
    enough: bool | None


def fuel_and_rail(subject: Subject, _words: Words) -> Iterator[Block]:
    """What the goal burns, the pressure in the rail, and what the pump gets."""
    yield Heading(FUEL)
    yield Pairs(tuple(_demand(subject)))


def _demand(subject: Subject) -> Iterator[tuple[str, str]]:
    demand, numbers, pressure = subject.figures.demand, subject.numbers, subject.figures.pressure
    reserve = subject.session.goal.reserve
    burns = numbers.figure("flow", demand.volume_flow_m3_s)
    if reserve > 0.0:
        with_reserve = numbers.figure("flow", demand.target_flow_m3_s)
        burns = f"{burns} at the goal, {with_reserve} with {numbers.limit('percent', reserve)} in reserve"
    yield "fuel needed", burns
    assumed = "" if subject.session.engine.bsfc is not None else " (assumed)"
    where = " at the crank" if subject.session.goal.power_at == "wheels" else ""
    yield "fuel use", f"{numbers.figure('bsfc', demand.bsfc_kg_J)}{where}{assumed}"
    across = f", {numbers.figure('pressure', pressure.injector_Pa, 0.0)} across the injectors"
    if subject.session.engine.injection == "direct":
        across = ", at the inlet of the high-pressure pump"
    yield "rail pressure", f"{numbers.figure('pressure', pressure.rail_Pa)}{across}"
    if demand.air_flow_kg_s is not None:
        yield "air", f"{numbers.figure('air', demand.air_flow_kg_s)}"
    pick = subject.pick
    if pick.pump_volts_V is not None:
        volts = numbers.figure("volts", pick.pump_volts_V) + (" (assumed)" if subject.volts_assumed else "")
        amps = None if pick.pump_current_A is None else numbers.figure("amps", pick.pump_current_A)
        yield "at the pump", volts if amps is None else f"{volts}, {amps} for each pump"


def ladder(subject: Subject, _words: Words) -> Iterator[Block]:
    """What makes up the pressure that the pump must make at the goal."""
    yield Heading(LADDER)
    pick = subject.pick
    if pick.ladder is None or pick.pump_rise_Pa is None:
        yield Paragraph(ladder_unknown(subject))
        return
    columns = (
        Column(f"At the goal, through {size_label(pick.size)}"),
        Column("Pressure", subject.numbers.unit("pressure"), figures=True),
    )
    steps = [row(step.name, step.figure) for step in ladder_steps(subject, pick.ladder)]
    totals = [
        row(total.name, Cell(total.figure, None if total.enough is None else "yes" if total.enough else "no"))
        for total in ladder_totals(subject, pick)
    ]
    yield Table(columns, (*steps, *totals))
    yield Paragraph(ladder_sentence(subject, pick))


def ladder_unknown(subject: Subject) -> str:
    """What the ladder waits for."""
    return not_known_sentence(subject, "line")


def ladder_steps(subject: Subject, of: Ladder, *, merged: bool = False) -> list[Step]:
    """The steps from the rail back to the tank, those of nothing left out; `merged` makes one of all losses."""
    losses = [
        ("filters", "filter", of.filters_Pa),
        ("friction in the line", "line", of.friction_Pa),
        ("ends and fittings", "fittings", of.fittings_Pa),
        ("other parts", "parts", of.parts_Pa),
        ("climb", "climb", of.rise_Pa),
        ("inlet", "inlet", of.inlet_Pa),
    ]
    if merged:
        losses = [("losses", "losses", sum(loss for _, _, loss in losses))]
    steps, reached = [], 0.0
    for name, short, step in (
        ("base pressure", "base", of.base_Pa),
        ("boost", "boost", of.boost_Pa),
        *losses,
    ):
        figure = subject.numbers.number("pressure", step)
        ends = sorted((reached, reached + step))
        reached += step
        if figure.strip("0."):
            steps.append(Step(name, short, figure, ends[0], ends[1]))
    return steps


def ladder_totals(subject: Subject, size: SizeFigures) -> list[Total]:
    """What the pump must make through a size, and what it could make there."""
    must, number = size.pump_rise_Pa, subject.numbers.number
    if must is None or size.ladder is None:
        return []
    could = size.ladder.could_make_Pa
    if could is None:
        return [Total("must make", number("pressure", must), must, None)]
    return [
        Total("must make", number("pressure", must, could), must, None),
        Total("could make", number("pressure", could, must), could, could >= must),
    ]


def ladder_sentence(subject: Subject, size: SizeFigures) -> str:
    """The ladder in a sentence."""
    numbers = subject.numbers
    if size.pump_rise_Pa is None or size.ladder is None:
        return ladder_unknown(subject)
    must, could = size.pump_rise_Pa, size.ladder.could_make_Pa
    if could is None:
        return f"At the goal a pump must make {numbers.figure('pressure', must)}."
    gap = numbers.figure("pressure", abs(could - must), 0.0)
    return (
        f"At the goal the pump must make {numbers.figure('pressure', must, could)} and could make"
        f" {numbers.number('pressure', could, must)}: {gap} {'to spare' if could >= must else 'short'}."
    )


def curves_unknown(subject: Subject) -> str:
    """What the pump's curve against the system waits for."""
    return not_known_sentence(subject, "line", "pump")


def curves_marks(subject: Subject, *, pull: str, laws: bool) -> str:
    """What else is in the picture: points of the pull, and each law of volts where the kind is not known.

    Args:
        subject: the build.
        pull: what its points look like; empty where none is in the picture.
        laws: whether both laws are drawn.
    """
    sentences = f"The {pull} are the points of the pull." if pull else ""
    pump = subject.figures.pump
    if laws and pump is not None:
        turbine, displacement = pump.capacity_turbine_m3_s, pump.capacity_displacement_m3_s
        if turbine is not None and displacement is not None:
            goal = subject.figures.demand.volume_flow_m3_s
            lower = subject.numbers.number("flow", turbine, goal)
            other = subject.numbers.figure("flow", displacement, goal)
            kinds = f"as a turbine they would meet at {lower}, as a displacement pump at {other}"
            sentences += f" The kind of pump is not known: {kinds}; the lower counts."
    return sentences.strip()


def curves_sentence(subject: Subject, size: str, crossing: tuple[float, float] | None, mark: str) -> str:
    """Where the pump's curve meets what a size asks of it.

    Args:
        subject: the build.
        size: the size that is asked about.
        crossing: flow in m3/s and pressure in Pa where they meet.
        mark: what stands there in the picture.
    """
    numbers, goal = subject.numbers, subject.figures.demand.volume_flow_m3_s
    if crossing is None:
        return f"Pump and {size} do not meet. The goal needs {numbers.figure('flow', goal)}."
    flow, pressure = crossing
    met = f"{numbers.figure('flow', flow, goal)} at {numbers.about('pressure', pressure)}"
    return f"Pump and {size} meet at {mark}: {met}. The goal needs {numbers.number('flow', goal, flow)}."
