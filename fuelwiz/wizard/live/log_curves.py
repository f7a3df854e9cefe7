"""The log of a run: pressure across the injectors, and flow against capacity, by engine speed; then its table."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.log_words import flow_sentence, pressure_sentence, pump_sentence, speed_of, speed_table
from fuelwiz.advice.sections.logged import ONE_STEP, log_of, refused_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.units import from_si
from fuelwiz.wizard.block_view import block_lines
from fuelwiz.wizard.live.chart import LEAST_ROWS, Chart, Series
from fuelwiz.wizard.live.layout import BESIDE_FROM

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.measured.figures import LogFigures
    from fuelwiz.wizard.paint import Area

LEAST_BINS = 2
GAP = 2
MOST_ROWS = 12
ZOOMED = 0.98  # of the lowest pressure: a fall of a few percent has to be seen
NO_LOG = "The build names no log. Its file is asked for in Measured; F8 lists those that are at hand."
NOT_READ = "The log has not been held against the build as it is: F8 in Measured, at the log, reads it."


def log_lines(result: Result, area: Area) -> list[Strip]:
    """What it shows in words, the two pictures and the table, in more lines than the area has where it is small."""
    if not result.session.log.file:
        return area.paragraph(NO_LOG)
    if result.log is None:
        return area.paragraph(NOT_READ)
    subject = Subject(result.session, result.figures, result.measured)
    run = log_of(subject)
    if run is None or run.figures is None:
        return area.paragraph(refused_sentence(result.log))
    log = run.figures
    sentence = area.paragraph(pressure_sentence(subject, log))
    blank = area.row().strip()
    return [
        *sentence,
        *_pictures(subject, log, area, area.rows - len(sentence)),
        *area.paragraph(flow_sentence(subject, log)),
        blank,
        *block_lines(speed_table(subject, log), area),
        blank,
        *area.paragraph(pump_sentence(subject, log.pump)),
    ]


def _pictures(subject: Subject, log: LogFigures, area: Area, room: int) -> list[Strip]:
    """Side by side, else one above the other; as high as the room lets them be."""
    if len(log.bins) < LEAST_BINS:
        return area.paragraph(ONE_STEP)
    charts = _charts(subject, log)
    beside = area.width >= BESIDE_FROM
    rows = min(max(room - 2 if beside else (room - 2) // 2, LEAST_ROWS), MOST_ROWS)
    if beside:
        width = (area.width - GAP - 1) // 2
        lines = [area.row() for _ in range(rows)]
        for number, chart in enumerate(charts):
            chart.draw(lines, number * (width + GAP), width)
        return [line.strip() for line in lines]
    found = []
    for chart in charts:
        lines = [area.row() for _ in range(rows)]
        chart.draw(lines, 0, area.width - 1)
        found += [line.strip() for line in lines]
    return found


def _charts(subject: Subject, log: LogFigures) -> tuple[Chart, Chart]:
    """Pressure across the injectors, wanted and measured; flow that the engine takes, and what the pump could send."""
    numbers = subject.numbers
    pressure, flow = from_si(1.0, numbers.unit("pressure")), from_si(1.0, numbers.unit("flow"))
    across = [speed_of(one, number) for number, one in enumerate(log.bins, 1)]
    sags = [one.sags for one in log.bins]
    wanted = Series("wanted", [one.target_Pa * pressure for one in log.bins], ".", "muted", dashed=True)
    read = Series("measured", [one.injector_Pa * pressure for one in log.bins], "o", "focus", marked=sags)
    taken = Series("taken", [one.flow_m3_s * flow for one in log.bins], "o", "focus", marked=sags)
    could = [one.capacity_m3_s * flow for one in log.bins if one.capacity_m3_s is not None]
    flows = [taken]
    if len(could) == len(log.bins):
        flows.insert(0, Series("pump could", could, ".", "text", dashed=True))
    speed = "rpm" if log.bins[0].rpm_low is not None else "pull"
    low = ZOOMED * min(*wanted.up, *read.up)
    return (
        Chart((wanted, read), across, numbers.unit("pressure"), speed, low),
        Chart(flows, across, numbers.unit("flow"), speed, ZOOMED * min(*taken.up, *could)),
    )
