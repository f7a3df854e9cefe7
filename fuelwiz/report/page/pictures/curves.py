"""Pump against system: what the pumps make and what each size asks for, by flow."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.advice.sections.pressure import curves_marks, curves_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.report.page.pictures.axes import Frame
from fuelwiz.report.page.pictures.shapes import Dot, Kind, Picture, Shape, Stroke, Word, legend
from fuelwiz.sizing.figures import Plot
from fuelwiz.units import from_si

HEADING = "Pump against system"
WIDTH, HEIGHT = 360, 296
HEADROOM = 1.6

Curve = tuple[str, Sequence[float], Kind]
"""A name, a pressure at each flow, and a look."""


def curves_picture(subject: Subject, plot: Plot) -> Picture:
    """The curves around the pick, the goal, the points of the pull, and where pumps and system meet."""
    size, numbers = subject.pick.size, subject.numbers
    flow, pressure = from_si(1.0, numbers.unit("flow")), from_si(1.0, numbers.unit("pressure"))
    frame = _frame(plot, size, flow, pressure)

    def line(pressures: Sequence[float]) -> tuple[tuple[float, float], ...]:
        return frame.curve([(q * flow, p * pressure) for q, p in zip(plot.flows, pressures, strict=True)])

    shapes: list[Shape] = [*frame.axes(numbers.unit("flow"), numbers.unit("pressure"))]
    pumps, systems = _pumps(plot), _systems(plot, size)
    shapes += [Stroke(line(pressures), kind) for _, pressures, kind in (*systems, *pumps)]
    goal, _ = frame.place(plot.goal_flow * flow, frame.bottom)
    shapes.append(Stroke(((goal, frame.y), (goal, frame.y + frame.height)), "goal"))
    shapes.append(Word(goal, frame.y - 8, f"goal {numbers.number('flow', plot.goal_flow)}", "text", "middle"))
    marked = [(point, False) for point in plot.pull] + ([(plot.crossing, True)] if plot.crossing else [])
    for (at, rise), diamond in marked:
        if frame.inside(at * flow, rise * pressure):
            shapes.append(Dot(*frame.place(at * flow, rise * pressure), "focus", diamond))
    names = [(name, kind) for name, _, kind in (*pumps, *systems)]
    shapes += legend(names, 8, frame.y + frame.height + 52, WIDTH - 16)
    sentence = curves_sentence(subject, size, plot.crossing, "◆")
    more = curves_marks(subject, pull="dots" if plot.pull else "", laws=plot.by_turbine is not None)
    return Picture(
        "curves",
        HEADING,
        f"{sentence} {more}".strip(),
        f"{sentence} {more}".strip(),
        WIDTH,
        HEIGHT,
        tuple(shapes),
    )


def _pumps(plot: Plot) -> list[Curve]:
    """The pumps by name; by each law of volts where their kind is not known."""
    if plot.by_turbine is None or plot.by_displacement is None:
        return [("pump", plot.pump_pressures, "pump")]
    return [
        ("if a turbine", plot.by_turbine, "pump"),
        ("if a displacement pump", plot.by_displacement, "could"),
    ]


def _systems(plot: Plot, size: str) -> list[Curve]:
    """The sizes by name, the one that is judged to stand out."""
    return [
        (f"through {name}", asked, "focus" if name == size else "other")
        for name, asked in plot.systems.items()
    ]


def _frame(plot: Plot, size: str, flow: float, pressure: float) -> Frame:
    """All flows, and pressures from none to well above where pump and system meet."""
    asked = plot.systems[size]
    nearest = min(range(len(plot.flows)), key=lambda at: abs(plot.flows[at] - plot.goal_flow))
    seen = [asked[nearest], *(rise for _, rise in plot.pull), *([plot.crossing[1]] if plot.crossing else [])]
    top = HEADROOM * max(seen) * pressure
    return Frame(38, 24, WIDTH - 50, HEIGHT - 106, 0.0, plot.flows[-1] * flow, 0.0, top)
