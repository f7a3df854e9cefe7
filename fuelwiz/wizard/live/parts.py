"""What would do for the part that a step asks about: returns at idle, wires, injectors, each as a small table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result

CURRENT_UNKNOWN = (
    "What the wire loses is not counted yet: type the current that the pump draws, under more in Pump,"
    " or the volts measured at the pump. Until then the answer is too hopeful."
)
SIZE = 3
FIRST_END = 26
COLUMN = 14


@dataclass(frozen=True, slots=True)
class _Line:
    name: str
    cells: tuple[str, ...]
    does: bool
    given: bool


def part_lines(about: str, result: Result, area: Area) -> list[Strip] | None:
    """The table of a step's part and a sentence under it; None for a step that has none, or nothing known yet."""
    if about == "wiring" and result.session.wiring is not None and _current_unknown(result):
        return area.paragraph(CURRENT_UNKNOWN)
    make = {"inlet": _returns, "wiring": _wires, "injectors": _injectors}.get(about)
    found = make(result) if make is not None else None
    if found is None:
        return None
    heads, rows, said = found
    column = min(COLUMN, (area.width - FIRST_END - 8) // max(len(heads) - 2, 1))
    ends = [FIRST_END + column * i for i in range(len(heads) - 1)]
    head = area.row().put(SIZE, heads[0], "muted")
    for end, text in zip(ends, heads[1:], strict=True):
        head.put_right(end, text, "muted")
    lines = [head.put_right(ends[-1] + 7, "Does", "muted").strip()]
    for row in _around(rows, area.rows - 4):
        line = area.row("row" if row.given else "background")
        line.put(SIZE, row.name + ("*" if row.given else ""), bold=row.given)
        for end, text in zip(ends, row.cells, strict=True):
            line.put_right(end, text, bold=row.given)
        role: Role = "easy" if row.does else "fault"
        line.put_right(ends[-1] + 7, "yes" if row.does else "no", role, row.given)
        lines.append(line.strip())
    return [*lines, area.row().strip(), *area.paragraph(said)]


def _current_unknown(result: Result) -> bool:
    pump = result.session.pump
    return pump is not None and not pump.current and pump.volts is None


def _around(rows: Sequence[_Line], most: int) -> Sequence[_Line]:
    """As many rows as fit, around the given one, else around the first that does."""
    at = next((i for i, row in enumerate(rows) if row.given), None)
    if at is None:
        at = next((i for i, row in enumerate(rows) if row.does), 0)
    first = max(0, min(at - most // 2, len(rows) - most))
    return rows[first : first + max(most, 1)]


_Table = tuple[tuple[str, ...], list[_Line], str]


def _returns(result: Result) -> _Table | None:
    found = result.figures.return_line
    if found is None:
        return None
    numbers = Numbers.of(result.session)
    idle = result.figures.pressure.idle_rail_Pa
    heads = (
        "Return",
        f"Flow, {numbers.unit('flow')}",
        numbers.unit("velocity"),
        f"Needs, {numbers.unit('pressure')}",
    )
    rows = [
        _Line(
            row.size,
            (
                numbers.number("flow", row.flow_m3_s),
                "–" if row.velocity_m_s is None else numbers.number("velocity", row.velocity_m_s),
                numbers.number("pressure", row.back_pressure_Pa, idle),
            ),
            row.holds,
            row.size == found.size,
        )
        for row in found.sizes
    ]
    wants = numbers.figure("pressure", idle)
    if found.smallest_that_holds is None:
        said = f"The regulator wants {wants} at idle, and none of these lets go of the flow."
    else:
        said = f"The regulator wants {wants} at idle. {found.smallest_that_holds} is the smallest return that holds."
    return heads, rows, said


def _wires(result: Result) -> _Table | None:
    found = result.figures.wiring
    choices = result.figures.wire_choices
    if not choices or found is None or found.fuse_A is None or found.current_A is None:
        return None
    numbers = Numbers.of(result.session)
    heads = ("Wire, AWG", "Loses, V", "Carries, A", "Fuse, A")
    rows = [
        _Line(
            f"{row.gauge}",
            (
                f"{row.loss_V:.2f}",
                numbers.number("amps", row.ampacity_A, found.fuse_A),
                f"{found.fuse_A:g}",
            ),
            row.does,
            row.given,
        )
        for row in choices
    ]
    said = f"{numbers.figure('amps', found.current_A)} at work; half a volt at most is lost in the wire. "
    said += (
        "None of these does."
        if found.smallest_wire is None
        else f"{found.smallest_wire} is the thinnest that does."
    )
    return heads, rows, said


def _injectors(result: Result) -> _Table | None:
    said = result.session.injectors
    choices = result.figures.injector_choices
    found = result.figures.injectors
    if not choices or said is None or found is None or found.smallest_rating_m3_s is None:
        return None
    numbers = Numbers.of(result.session)
    heads = ("Injector", f"{numbers.unit('injector')}", "Duty, %", "At most, %")
    limit = numbers.limit("percent", said.duty_limit)
    rows = [
        _Line(
            f"{found.count} of",
            (
                numbers.number("injector", row.rating_m3_s),
                numbers.number("percent", row.duty, said.duty_limit),
                limit.split("\N{NO-BREAK SPACE}")[0],
            ),
            row.does,
            row.given,
        )
        for row in choices
    ]
    least = numbers.figure("injector", found.smallest_rating_m3_s)
    at = numbers.figure("pressure", said.rated_pressure)
    return heads, rows, f"{least} each, rated at {at}, is the least that does for the goal."
