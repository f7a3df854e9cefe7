"""The log of a run: pressure across the injectors, wanted and measured, and flow against capacity, by engine speed."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.advice.log_words import bin_texts, speed_of, speed_sentence
from fuelwiz.advice.sections.headings import LOG_OF_A_RUN
from fuelwiz.advice.sections.logged import log_of
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.axes import Frame, Point
from fuelwiz.report.page.pictures.shapes import Dot, Kind, Picture, Shape, Stroke, Word, legend
from fuelwiz.units import from_si

WIDTH, HALF, HEIGHT = 360, 206, 428
LEAST_BINS = 2
HEADROOM = 0.15
ZOOMED = 0.8
"""The axis of pressures begins at so much of the lowest: a fall of a few percent has to be seen."""

Line = tuple[str, Sequence[Point], Kind]
"""A name, a figure at each engine speed, and a look."""


def logged_picture(subject: Subject) -> Picture | None:
    """Two frames, one above the other, with the same engine speeds; None with fewer than two steps of it."""
    run = log_of(subject)
    log = None if run is None else run.figures
    if log is None or len(log.bins) < LEAST_BINS:
        return None
    numbers = subject.numbers
    pressure, flow = from_si(1.0, numbers.unit("pressure")), from_si(1.0, numbers.unit("flow"))
    at = [speed_of(one, number) for number, one in enumerate(log.bins, 1)]
    wanted = [one.target_Pa * pressure for one in log.bins]
    across = [one.injector_Pa * pressure for one in log.bins]
    taken = [one.flow_m3_s * flow for one in log.bins]
    could = [
        (where, one.capacity_m3_s * flow)
        for where, one in zip(at, log.bins, strict=True)
        if one.capacity_m3_s is not None
    ]
    pairs = list(zip(at, taken, strict=True))
    sags = [one.sags for one in log.bins]
    pressures: list[Line] = [
        ("wanted", _points(at, wanted), "other"),
        ("measured", _points(at, across), "focus"),
    ]
    flows: list[Line] = [("the pump could", could, "pump")] if could else []
    flows.append(("the engine takes", pairs, "focus"))
    speed = "rpm" if log.bins[0].rpm_low is not None else "pull"
    low = ZOOMED * min(*wanted, *across)
    shapes = [
        *_frame(24.0, at, low, pressures, sags, (speed, numbers.unit("pressure"))),
        *_frame(24.0 + HALF, at, 0.0, flows, sags, (speed, numbers.unit("flow"))),
    ]
    texts = "; ".join(bin_texts(subject, one, number) for number, one in enumerate(log.bins))
    description = f"Pressure in {numbers.unit('pressure')}, flow in {numbers.unit('flow')}: {texts}."
    return Picture(
        "log", LOG_OF_A_RUN, description, speed_sentence(subject, log), WIDTH, HEIGHT, tuple(shapes)
    )


def _points(at: Sequence[float], figures: Sequence[float]) -> list[Point]:
    return list(zip(at, figures, strict=True))


def _frame(
    top: float,
    at: Sequence[float],
    low: float,
    lines: Sequence[Line],
    sags: Sequence[bool],
    units: tuple[str, str],
) -> list[Shape]:
    """One frame with its lines and their names under it; a step that sags is marked on the last line."""
    most = max(up for _, points, _ in lines for _, up in points)
    frame = Frame(46, top, WIDTH - 62, HALF - 82, at[0], at[-1], low, most + HEADROOM * (most - low))
    shapes: list[Shape] = [*frame.axes(*units)]
    shapes += [Stroke(frame.curve(points), kind) for _, points, kind in lines]
    _, points, kind = lines[-1]
    shapes += [
        Dot(*frame.place(*point), "fails" if sagging else kind, diamond=sagging)
        for point, sagging in zip(points, sags, strict=True)
    ]
    under = top + HALF - 36
    shapes += legend([(name, kind) for name, _, kind in lines], 8, under, WIDTH - 16)
    if any(sags):
        shapes += [
            Dot(WIDTH - 60, under - 4, "fails", diamond=True),
            Word(WIDTH - 49, under, "sags", "muted"),
        ]
    return shapes
