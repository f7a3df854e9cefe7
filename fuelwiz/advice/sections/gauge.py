"""Gauge pressures: what to expect on a gauge."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.cautions import GAUGE
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.headings import GAUGE_PRESSURES
from fuelwiz.advice.sections.unknown import not_known
from fuelwiz.advice.subject import Subject
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.vocabulary import GaugeState
from fuelwiz.units import from_si

STATES: dict[GaugeState, str] = {
    "hose off": "idling, vacuum hose off and plugged",
    "idle": "idling",
    "full power": "full power at the goal",
}


def gauge_pressures(subject: Subject, _words: Words) -> Iterator[Block]:
    """What a gauge shows at the rail, and behind the pump."""
    unit = subject.numbers.unit("pressure")
    columns = (
        Column("Engine"),
        Column("At the rail", unit, figures=True),
        Column("Behind the pump", unit, figures=True),
    )
    readings = subject.figures.gauge
    yield Heading(GAUGE_PRESSURES)
    yield Table(
        columns,
        tuple(
            row(STATES[reading.when], _shown(subject, reading.rail_Pa), _shown(subject, reading.pump_Pa))
            for reading in readings
        ),
    )
    if any(reading.rail_Pa is None for reading in readings):
        yield Paragraph("– at the rail: the pump cannot hold pressure there.")
    elif any(reading.pump_Pa is None for reading in readings):
        yield Paragraph(f"Behind the pump: {not_known(subject, 'line', 'pump')}.")
    lean = subject.pick.rail_at_goal_Pa
    held = subject.figures.pressure.rail_Pa - (subject.pick.rail_sag_Pa or 0.0)
    if lean is not None and lean < held - 1.0:
        wanted = subject.numbers.figure("pressure", held, lean)
        yield Paragraph(
            f"At full power the rail should be at {wanted}: the pump is too small, so the mixture goes lean."
        )
    yield from _return_check(subject)
    yield Paragraph(GAUGE, quiet=True)


def _return_check(subject: Subject) -> Iterator[Block]:
    """What comes back with the engine off: the quickest check of pump, wiring and regulator there is."""
    check, numbers = subject.figures.return_check, subject.numbers
    if check is None:
        return
    flow = f"{numbers.figure('flow', check.flow_m3_s)} ({_a_minute(check.flow_m3_s)})"
    pumps = "pump" if check.pumps == 1 else f"{check.pumps} pumps"
    pressure = numbers.figure("pressure", check.pressure_Pa)
    volts = numbers.figure("volts", check.volts_V)
    yield Paragraph(f"Engine off, charger, {pumps} on: {flow} return at {pressure}, {volts}.")


def _a_minute(flow_m3_s: float) -> str:
    """A flow as a can and a watch tell it, in either unit system."""
    return f"{from_si(flow_m3_s, 'L/min'):.1f}{NO_BREAK}L/min"


def _shown(subject: Subject, pressure_pa: float | None) -> str | None:
    return None if pressure_pa is None else subject.numbers.number("pressure", pressure_pa)
