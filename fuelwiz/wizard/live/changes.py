"""What one change buys, a line each, and under them what the highlighted one is and does."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.answer.lines import fitting
from fuelwiz.advice.sections.changes import (
    HARDLY,
    HELPS,
    ChangeRow,
    change_cells,
    change_columns,
    change_explained,
    change_rows,
    ways_out,
)
from fuelwiz.advice.sections.unknown import slow_part_unknown
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.wizard.block_view import labeled_lines
from fuelwiz.wizard.paint import Area, Row, clip, put_works

if TYPE_CHECKING:
    from fuelwiz.advice.blocks import Column
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.vocabulary import Change
    from fuelwiz.terminal.palette import Ground
    from fuelwiz.wizard.look import Look

POINTER, WHAT = 1, 3
GAP = 2
WIDE_FROM = 76
LEAST_EXPLAINED = 2  # lines that the highlighted change gets at least
WORDS = 11
WIDEST_FIGURE = 5
TRY = ("try", "Enter tries it as a what-if")
TRY_BEHIND_F6 = ("try", "F6, then Enter: as a what-if")


@record
class _Columns:
    """The heads of the figures, and the cell that each ends before."""

    heads: tuple[str, ...]
    ends: tuple[int, ...]
    room: int  # cells for the name of a change


def change_lines(
    result: Result, at: int, area: Area, focused: bool = False, *, can_try: bool = True
) -> list[Strip]:
    """The changes in the area's rows, those around the highlighted one where not all fit."""
    subject = Subject(result.session, result.figures)
    rows = change_rows(subject)
    if not rows:
        return area.paragraph(slow_part_unknown(subject), rows=area.rows)
    at = min(at, len(rows) - 1)
    columns = _columns(change_columns(subject), area.width)
    how_to_try = [] if not can_try else [TRY if focused else TRY_BEHIND_F6]
    under = _explained(subject, rows[at], columns, area, how_to_try)
    table, own = _table(subject, rows, at, columns, area, focused)
    most = max(area.rows - min(len(under), LEAST_EXPLAINED), 1)
    lines = _around(table[1:], own - 1, most - 1)
    head = _head(rows, columns, area, f", of {len(rows)}") if len(lines) < len(table) - 1 else table[0]
    shown = [head, *lines]
    if area.rows > len(shown) + len(under):
        shown.append(area.row().strip())
    return [*shown, *under][: area.rows]


def offered_changes(result: Result) -> tuple[Change, ...]:
    """The changes in the order of the lines."""
    return tuple(row.change for row in change_rows(Subject(result.session, result.figures)))


def _columns(columns: Sequence[Column], width: int) -> _Columns:
    heads = [column.head if width >= WIDE_FROM else column.short or column.title for column in columns]
    ends: list[int] = []
    end = width - 1
    for head in reversed(heads):
        ends.insert(0, end)
        end -= max(cell_len(head), WIDEST_FIGURE) + GAP
    return _Columns(tuple(heads), tuple(ends), end - WHAT)


def _table(
    subject: Subject, rows: Sequence[ChangeRow], at: int, columns: _Columns, area: Area, focused: bool
) -> tuple[list[Strip], int]:
    """The head, and the lines of the changes with those that hardly help under a title; where the own one stands."""
    lines, own = [_head(rows, columns, area)], 1
    for index, one in enumerate(rows):
        if index > 0 and rows[index - 1].helps and not one.helps:
            lines.append(area.row().put(WHAT, HARDLY, "muted").strip())
        ground: Ground = "background" if index != at else "chosen" if focused else "row"
        line = area.row(ground)
        if index == at:
            own = len(lines)
            line.put(POINTER, area.look.mark("pointer"), "focus" if focused else "text", True)
        lines.append(_line(subject, one, columns, line))
    return lines, own


def _head(rows: Sequence[ChangeRow], columns: _Columns, area: Area, of: str = "") -> Strip:
    """The heads of the columns; `of` is how many changes there are, where not all are shown."""
    head = area.row().put(WHAT, f"{HELPS if rows[0].helps else HARDLY}{of}", "muted")
    for text, end in zip(columns.heads, columns.ends, strict=True):
        head.put_right(end, text, "muted")
    return head.strip()


def _line(subject: Subject, one: ChangeRow, columns: _Columns, line: Row) -> Strip:
    strong = line.ground != "background"
    forms = [line.look.fold(form) for form in (one.what, one.short, one.short.partition(",")[0])]
    line.put(WHAT, clip(fitting(forms, columns.room), columns.room, line.look.fold("…")), bold=strong)
    cells = change_cells(subject, one)
    for text, end in zip(cells[:2], columns.ends[:2], strict=True):
        line.put_right(end, text or line.look.mark("unknown"), bold=strong)
    for text, end in zip(cells[2:], columns.ends[2:], strict=True):
        if text is None:  # it does not apply then, as on paper
            line.put_right(end, line.look.mark("unknown"), "muted", strong)
        else:
            put_works(line, end, text, strong)
    return line.strip()


def _fits(one: ChangeRow, columns: _Columns, look: Look) -> bool:
    """Whether the whole of what a change is stands in its line."""
    return cell_len(look.fold(one.what)) <= columns.room


def _around(lines: list[Strip], own: int, most: int) -> list[Strip]:
    first = max(min(own - most // 2, len(lines) - most), 0)
    return lines[first : first + max(most, 0)]


def _explained(
    subject: Subject,
    one: ChangeRow,
    columns: _Columns,
    area: Area,
    how_to_try: Sequence[tuple[str, str]],
) -> list[Strip]:
    """What the highlighted change is, where its line has no room for it, and does; how to try it, and the way out."""
    what, *does = change_explained(subject, one.change)
    pairs = [*does, *how_to_try, *ways_out(subject)]
    if not _fits(one, columns, area.look):
        pairs.insert(0, what)
    lines: list[Strip] = []
    for label, text in pairs:
        lines += labeled_lines(label, area.wrapped(text, WORDS), area)
    return lines
