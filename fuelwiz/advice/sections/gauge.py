"""Pressures to expect on a gauge."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Column, Heading, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.vocabulary import GaugeState

STATES: dict[GaugeState, str] = {
    "hose off": "idling, vacuum hose off and plugged",
    "idle": "idling",
    "full power": "full power at the goal",
}


def gauge_pressures(build: Subject, _words: Words) -> Iterator[Block]:
    """What a gauge shows at the rail, and behind the pump."""
    unit = build.numbers.unit("pressure")
    columns = (
        Column("Engine"),
        Column("At the rail", unit, figures=True),
        Column("Behind the pump", unit, figures=True),
    )
    readings = build.figures.gauge
    yield Heading("Pressures to expect on a gauge")
    yield Table(
        columns,
        tuple(
            row(STATES[reading.when], _shown(build, reading.rail_Pa), _shown(build, reading.pump_Pa))
            for reading in readings
        ),
    )
    if any(reading.rail_Pa is None for reading in readings):
        yield Paragraph("The pump does not hold the pressure where there is a dash at the rail.")
    elif any(reading.pump_Pa is None for reading in readings):
        yield Paragraph("Behind the pump is known once there is a pump and a line.")
    lean = build.pick.rail_at_goal_Pa
    held = build.figures.pressure.rail_Pa - (build.pick.rail_sag_Pa or 0.0)
    if lean is not None and lean < held - 1.0:
        wanted = build.numbers.figure("pressure", held, lean)
        yield Paragraph(
            f"At full power the rail should be at {wanted}: the pump is short, the mixture goes lean."
        )


def _shown(build: Subject, pressure_pa: float | None) -> str | None:
    return None if pressure_pa is None else build.numbers.number("pressure", pressure_pa)
