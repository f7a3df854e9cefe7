"""Stress: one line a bad day, with what is left of the pump and what gives out first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.wizard.look import Role
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import StressFigures

MARK = 1
CASE = 3
LONGEST_CASE = 18


def stress_lines(result: Result, area: Area, whole: bool = False) -> list[Strip]:
    """The header and every case, in more lines than the area has where the cases are many.

    What happens is cut to one line each where else it would not fit, unless `whole` is asked for.
    """
    cases = result.figures.stress
    if not cases:
        waits = "once pump and lines are known." if result.figures.pump is None else "in a moment."
        return area.paragraph(f"What a bad day does to it shows {waits}")
    numbers = Numbers.of(result.session)
    name = min(max(cell_len(case.case) for case in cases), LONGEST_CASE)
    spare_head = "Spare, %" if area.width >= 76 else "%"
    spare = CASE + name + max(len(spare_head) + 1, 5)
    works = spare + 7
    head = area.row().put(CASE, "Case", "muted").put_right(spare, spare_head, "muted")
    header = head.put_right(works, "Works", "muted").put(works + 2, "What happens", "muted").strip()
    told = [area.wrapped(what, works + 2) for what in result.words.stress]
    if not whole and sum(len(lines) for lines in told) >= area.rows:
        short = (_short(what, case) for what, case in zip(result.words.stress, cases, strict=True))
        told = [area.wrapped(text, works + 2, 1) for text in short]
    lines = [header]
    for case, what in zip(cases, told, strict=True):
        lines += _case_lines(case, what, (spare, works), numbers, area)
    if len(lines) < area.rows:
        lines += area.paragraph(
            "The reserve is there for such days: here it is not asked for.", CASE, "muted"
        )
    return lines


def _short(what: str, case: StressFigures) -> str:
    """What fails, or where nothing does, what changes: the columns beside it say the rest."""
    changes, colon, fails = what.partition(": ")
    return f"{fails[:1].upper()}{fails[1:]}" if colon and case.works is False else changes


def _case_lines(
    case: StressFigures, what: list[str], ends: tuple[int, int], numbers: Numbers, area: Area
) -> list[Strip]:
    spare, works = ends
    margin = area.look.mark("unknown") if case.margin is None else numbers.number("percent", case.margin, 0.0)
    mark, role, word = _verdict(case, area)
    lines = []
    for at, text in enumerate(what or [""]):
        line = area.row()
        if at == 0:
            line.put(MARK, mark, role, True).put(CASE, clip(case.case, LONGEST_CASE))
            line.put_right(spare, margin).put_right(works, word, role)
        lines.append(line.put(works + 2, text, "muted").strip())
    return lines


def _verdict(case: StressFigures, area: Area) -> tuple[str, Role, str]:
    if case.works is None:
        return " ", "muted", area.look.mark("unknown")
    return (" ", "text", "yes") if case.works else (area.look.mark("look here"), "fault", "no")
