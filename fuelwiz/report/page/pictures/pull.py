"""The pull: what the engine burns and what the pumps send, by engine speed."""

from __future__ import annotations

from fuelwiz.advice.sections.headings import PULL
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.axes import Frame
from fuelwiz.report.page.pictures.shapes import Dot, Kind, Picture, Shape, Stroke, legend
from fuelwiz.sizing.figures import PullFigures
from fuelwiz.units import from_si

WIDTH, HEIGHT = 360, 256
LEAST_POINTS = 2


def pull_picture(subject: Subject) -> Picture | None:
    """Both flows through the points that have a speed; None with fewer than two."""
    points = sorted(
        ((point.rpm, point) for point in subject.figures.pull if point.rpm is not None),
        key=lambda pair: pair[0],
    )
    speeds = [rpm for rpm, _ in points]
    if len(points) < LEAST_POINTS or speeds[0] == speeds[-1]:
        return None
    numbers = subject.numbers
    flow = from_si(1.0, numbers.unit("flow"))
    burnt = [(float(rpm), point.flow_m3_s * flow) for rpm, point in points]
    sent = [
        (float(rpm), point.capacity_m3_s * flow) for rpm, point in points if point.capacity_m3_s is not None
    ]
    top = 1.15 * max(up for _, up in (*burnt, *sent))
    frame = Frame(38, 24, WIDTH - 54, HEIGHT - 104, speeds[0], speeds[-1], 0.0, top)
    shapes: list[Shape] = [*frame.axes("rpm", numbers.unit("flow"))]
    curves: list[tuple[list[tuple[float, float]], Kind]] = [(sent, "pump"), (burnt, "focus")]
    for curve, kind in curves:
        shapes.append(Stroke(tuple(frame.place(*point) for point in curve), kind))
        shapes += [Dot(*frame.place(*point), kind) for point in curve]
    names: list[tuple[str, Kind]] = [("burnt", "focus")]
    if sent:
        names.append(("the pump sends", "pump"))
    shapes += legend(names, 8, HEIGHT - 26, WIDTH - 16)
    flows = "; ".join(f"{rpm} rpm {_flows(subject, point)}" for rpm, point in points)
    sentence = "What the engine burns at full power, and what the pump could send there."
    return Picture(
        "pull", PULL, f"In {numbers.unit('flow')}: {flows}.", sentence, WIDTH, HEIGHT, tuple(shapes)
    )


def _flows(subject: Subject, point: PullFigures) -> str:
    number = subject.numbers.number
    burnt = f"burns {number('flow', point.flow_m3_s)}"
    if point.capacity_m3_s is None:
        return burnt
    return f"{burnt}, sent {number('flow', point.capacity_m3_s, point.flow_m3_s)}"
