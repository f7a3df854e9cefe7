"""The pump's curve against what the system asks of it, zoomed on where the two meet."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.sections.pressure import curves_marks, curves_sentence, curves_unknown
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.sizing.figures import Plot
from fuelwiz.units import from_si
from fuelwiz.wizard.live.canvas import Canvas, Curve
from fuelwiz.wizard.live.scale import ROWS_A_TICK, between, places_of, step_of

if TYPE_CHECKING:
    from fuelwiz.advice.numbers import Numbers
    from fuelwiz.advice.result import Result
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.paint import Area

AXIS = 6  # cells of the pressures and their axis
LEAST_ROWS = 7
LEAST_HEIGHT = 5  # of the curves alone; under it the sentence gives way
AXIS_ROWS = 2


@record
class _View:
    """The part of the picture that is shown, in the units shown."""

    left: float
    right: float
    bottom: float
    top: float
    tick: float  # pressure from one tick to the next

    def across(self, flow: float) -> float:
        """Where a flow stands, from 0 at the left to 1 at the right."""
        return (flow - self.left) / (self.right - self.left)

    def holds(self, flow: float, pressure: float) -> bool:
        """Whether that point is in sight."""
        return self.left <= flow < self.right and self.bottom < pressure < self.top

    def curve(self, flows: Sequence[float], pressures: Sequence[float]) -> Curve:
        """A curve through these points, as a function of the place across."""

        def height(across: float) -> float | None:
            pressure = between(flows, pressures, self.left + across * (self.right - self.left))
            return None if pressure is None else (pressure - self.bottom) / (self.top - self.bottom)

        return height


def curve_lines(data: Plot | None, result: Result, highlighted: str, area: Area) -> list[Strip]:
    """The picture in the area's rows, and under it what it says in words."""
    subject = Subject(result.session, result.figures)
    if data is None or highlighted not in data.systems:
        return area.paragraph(curves_unknown(subject), rows=area.rows)
    if area.rows < LEAST_ROWS:
        return area.paragraph(f"The curves need {LEAST_ROWS} rows: F6, or a taller window.", rows=area.rows)
    numbers = subject.numbers
    shown = _shown_in(data, numbers)
    names = _neighbors(list(data.systems), highlighted)
    view = _view(shown, highlighted, names, area.rows - AXIS_ROWS)
    sentence = _in_words(subject, data, shown, view, highlighted, area)
    height = area.rows - AXIS_ROWS - len(sentence)
    view = _view(shown, highlighted, names, height)
    alike = tuple(name for name in names if _are_alike(shown, view, highlighted, name, height))
    apart = [name for name in names if name not in alike]
    ends = [" ".join((name, *alike)) if name == highlighted else name for name in apart]
    canvas = Canvas(area.look, area.width - AXIS - 2 - max(map(cell_len, ends)), height)
    _draw(canvas, shown, view, highlighted, apart)
    _name_goal(canvas, view, shown.goal_flow, f"goal {numbers.number('flow', data.goal_flow)}")
    labels = _right_labels(canvas, shown, view, apart, highlighted)
    lines = [_plot_line(canvas, row, view, labels.get(row), alike, area) for row in range(height)]
    return [*lines, *_flow_axis(canvas, view, numbers, area), *sentence]


def _in_words(
    subject: Subject, data: Plot, shown: Plot, view: _View, highlighted: str, area: Area
) -> list[Strip]:
    """What is seen, in as many words as leave the picture its height."""
    seen = any(view.holds(*point) for point in shown.pull)
    marks = area.look.mark("pull point") if seen else ""
    met = curves_sentence(subject, highlighted, data.crossing, area.look.mark("crossing"))
    more = curves_marks(subject, pull=marks, laws=data.by_turbine is not None)
    for sentence in (f"{met} {more}".strip(), met):
        lines = area.paragraph(sentence)
        if area.rows - AXIS_ROWS - len(lines) >= LEAST_HEIGHT:
            return lines
    return []


def _shown_in(data: Plot, numbers: Numbers) -> Plot:
    """The same in the units that are shown."""
    flow = from_si(1.0, numbers.unit("flow"))
    pressure = from_si(1.0, numbers.unit("pressure"))

    def pressures(of: Sequence[float]) -> tuple[float, ...]:
        return tuple(each * pressure for each in of)

    return Plot(
        flows=tuple(each * flow for each in data.flows),
        pump_pressures=pressures(data.pump_pressures),
        systems={size: pressures(asked) for size, asked in data.systems.items()},
        goal_flow=data.goal_flow * flow,
        crossing=None if data.crossing is None else (data.crossing[0] * flow, data.crossing[1] * pressure),
        pull=tuple((at * flow, rise * pressure) for at, rise in data.pull),
        by_turbine=None if data.by_turbine is None else pressures(data.by_turbine),
        by_displacement=None if data.by_displacement is None else pressures(data.by_displacement),
    )


def _neighbors(sizes: list[str], highlighted: str) -> list[str]:
    """The highlighted size and those beside it."""
    at = sizes.index(highlighted)
    return sizes[max(at - 1, 0) : at + 2]


def _are_alike(data: Plot, view: _View, highlighted: str, name: str, rows: int) -> bool:
    """Whether a size's curve runs within a row of the highlighted one's, where dashes on it would only blur both."""
    row = (view.top - view.bottom) / rows
    flows = [view.left, *(flow for flow in data.flows if view.left < flow < view.right), view.right]
    pairs = ((between(data.flows, data.systems[size], at) for size in (highlighted, name)) for at in flows)
    apart = [abs(one - other) for one, other in pairs if one is not None and other is not None]
    return name != highlighted and max(apart, default=0.0) < row


def _view(data: Plot, highlighted: str, names: list[str], rows: int) -> _View:
    """Both axes zoomed on the crossing, or on the goal where there is none."""
    goal = data.goal_flow
    flow = data.crossing[0] if data.crossing else goal
    left = max(0.5 * min(goal, flow), data.flows[0])
    right = min(1.25 * max(goal, flow), data.flows[-1])
    asked = data.systems[highlighted]
    pressure = data.crossing[1] if data.crossing else between(data.flows, asked, goal) or asked[-1]
    wanted = [between(data.flows, asked, at) for at in (left, right)]
    wanted += [between(data.flows, data.systems[name], flow) for name in names]
    near = [each for each in wanted if each is not None and abs(each - pressure) < 0.5 * pressure]
    low, high = min([*near, 0.8 * pressure]), max([*near, 1.25 * pressure])
    tick, ticks = step_of(high - low, rows), rows / ROWS_A_TICK
    # Ticks stand at the middle of every second row from the first, so the top edge lies half a row above one.
    top_tick = ceil((low + high) / 2 / tick + ticks / 2 - 0.5) * tick
    half_row = tick / ROWS_A_TICK / 2
    return _View(left, right, top_tick + half_row - tick * ticks, top_tick + half_row, tick)


def _draw(canvas: Canvas, data: Plot, view: _View, highlighted: str, names: list[str]) -> None:
    look = canvas.look
    for name in names:
        if name != highlighted:
            canvas.draw(view.curve(data.flows, data.systems[name]), ".", "muted", dashed=True)
    pumps = [(name, view.curve(data.flows, pressures)) for name, pressures in _pumps(data)]
    for at, (_, pump) in enumerate(pumps):
        canvas.draw(pump, "od"[at], "text", dashed=at > 0)
    canvas.draw(view.curve(data.flows, data.systems[highlighted]), "=", "focus")
    marks = [(point, "pull point") for point in data.pull]
    if data.crossing is not None:
        marks.append((data.crossing, "crossing"))
    for (flow, pressure), mark in marks:
        if mark == "crossing" or view.holds(flow, pressure):
            column = min(int(view.across(flow) * canvas.width), canvas.width - 1)
            row = int((view.top - pressure) / (view.top - view.bottom) * canvas.height)
            canvas.write(column, row, look.mark(mark), "focus", over=True)
    for name, pump in pumps:
        _name_pump(canvas, pump, name)


def _pumps(data: Plot) -> list[tuple[str, Sequence[float]]]:
    """The pumps by name; by each law of volts where their kind is not known."""
    if data.by_turbine is None or data.by_displacement is None:
        return [("pump", data.pump_pressures)]
    return [("turbine", data.by_turbine), ("displacement", data.by_displacement)]


def _name_pump(canvas: Canvas, pump: Curve, name: str) -> None:
    """Name a pump's curve beside where it enters the picture, or lower down where there is room."""
    for column, row in canvas.seen(pump):
        free = (at for at in range(column, canvas.width) if canvas.is_free(at, row))
        for place in (next(free, canvas.width) + 1, column - 1 - len(name)):
            if canvas.has_room(place, row, name):
                canvas.write(place, row, name, "text")
                return


def _name_goal(canvas: Canvas, view: _View, flow: float, name: str) -> None:
    """An upright line at the goal, named in the lowest row that has room for it."""
    column = int(view.across(flow) * canvas.width)
    for row in range(canvas.height):
        canvas.write(column, row, canvas.look.mark("goal"), "muted")
    for row in range(canvas.height - 1, -1, -1):
        if canvas.has_room(column + 1, row, name):
            canvas.write(column + 1, row, name, "muted")
            return


def _right_labels(
    canvas: Canvas, data: Plot, view: _View, names: list[str], highlighted: str
) -> dict[int, tuple[str, Role]]:
    """Which size ends in which row at the right edge; one that leaves the picture above is named there."""
    labels: dict[int, tuple[str, Role]] = {}
    for name in names:
        seen = canvas.seen(view.curve(data.flows, data.systems[name]))
        if not seen or seen[-1][0] < canvas.width - 1:
            if seen:
                _name_leaving(canvas, seen[-1], name, _role(name, highlighted))
            continue
        row = max([seen[-1][1], *(taken + 1 for taken in labels)])
        if row < canvas.height:
            labels[row] = name, _role(name, highlighted)
    return labels


def _name_leaving(canvas: Canvas, cell: tuple[int, int], name: str, role: Role) -> None:
    """Name a curve beside the cell where it leaves the picture, where there is room."""
    column, row = cell
    for place in ((column + 2, row), (column + 2, row + 1), (column - 2 - len(name), row)):
        if canvas.has_room(*place, name):
            canvas.write(*place, name, role)
            return


def _role(name: str, highlighted: str) -> Role:
    return "focus" if name == highlighted else "muted"


def _plot_line(
    canvas: Canvas, row: int, view: _View, label: tuple[str, Role] | None, alike: Sequence[str], area: Area
) -> Strip:
    """One row of the picture; behind the highlighted size's name those of the sizes whose curves run with its own."""
    line = area.row()
    if row % ROWS_A_TICK == 0:
        pressure = view.top - view.tick / ROWS_A_TICK * (row + 0.5)
        line.put_right(AXIS - 1, f"{pressure:.{places_of(view.tick)}f}", "muted")
    line.put(AXIS - 1, area.look.mark("axis"), "muted")
    canvas.lay_row(row, line, AXIS)
    if label is not None:
        line.put(AXIS + canvas.width + 1, *label)
        if label[1] == "focus" and alike:
            line.put(0, f" {' '.join(alike)}", "muted")
    return line.strip()


def _flow_axis(canvas: Canvas, view: _View, numbers: Numbers, area: Area) -> list[Strip]:
    """The axis of the flows, and under it its ticks and units."""
    axis = area.row().put_right(AXIS - 1, numbers.unit("pressure"), "muted")
    axis.put(AXIS - 1, area.look.mark("corner") + area.look.mark("rule") * canvas.width, "muted")
    unit = numbers.unit("flow")
    last = area.width - 2 - cell_len(unit)
    ticks = area.row()
    step = step_of(view.right - view.left, max(canvas.width // 5, 2))
    flow = ceil(view.left / step) * step
    while flow <= view.right:
        text = f"{flow:.{places_of(step)}f}"
        column = AXIS + int(view.across(flow) * canvas.width) - len(text) // 2
        if column >= AXIS and column + len(text) < last:
            ticks.put(column, text, "muted")
        flow += step
    return [axis.strip(), ticks.put_right(area.width - 1, unit, "muted").strip()]
