"""How sure the answer is: a sentence, and a bar for each input from what it leaves at one end to the other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.sections.how_sure import (
    ALONE,
    GuessRow,
    given,
    guess_rows,
    sure_columns,
    sure_sentence,
)
from fuelwiz.advice.sections.unknown import slow_part_unknown
from fuelwiz.advice.subject import Subject
from fuelwiz.record import record
from fuelwiz.wizard.live.bars import bar_cells
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.terminal.palette import Role

MARK, NAME = 1, 3
GAP = 2
LEAST_BAR, WANTED_BAR, MOST_BAR = 8, 12, 24
LEAST_NAME = 14
WORD_FROM = 76  # cells from which "assumed" stands beside the give or take


@record
class _Columns:
    """Where the columns stand: words by their first cell, numbers by the cell that they end before."""

    short: bool  # whether the names are the short ones
    name: int  # cells of one
    give: int
    low: int
    bar: int
    room: int  # cells of the bar
    high: int
    breaks: int


@record
class _Scale:
    """The margins at both ends of the bars."""

    low: float
    high: float

    def cells(self, low: float, high: float, room: int) -> tuple[int, int]:
        """The first cell of a bar and the one behind its last."""
        return bar_cells(low - self.low, high - self.low, self.high - self.low, room)


def sure_lines(result: Result, area: Area) -> list[Strip]:
    """The sentence and the bars, in more lines than the area has where there are many inputs."""
    subject = Subject(result.session, result.figures)
    spread = subject.figures.spread
    if spread is None:
        return area.paragraph(slow_part_unknown(subject), rows=area.rows)
    rows = guess_rows(subject)
    columns = _columns(rows, area)
    scale = _Scale(min(one.low for one in rows), max(one.high for one in rows))
    return [
        *area.paragraph(sure_sentence(subject, spread)),
        _head(columns, area),
        *(_line(one, columns, scale, area) for one in rows),
        *area.paragraph(ALONE, role="muted"),
    ]


def _columns(rows: Sequence[GuessRow], area: Area) -> _Columns:
    """The names give way first, all of them to their short forms, then the bars."""
    gives = max([cell_len(_give(one, area)) for one in rows] + [len(_heads(area)[1])])
    figures = max(len(text) for one in rows for text in (one.low_text, one.high_text))
    breaks = max([cell_len(area.look.fold(one.breaks)) for one in rows] + [len(_heads(area)[3])])
    fixed = NAME + gives + 2 * (figures + 1) + breaks + 3 * GAP + 1
    most = max(area.width - fixed - WANTED_BAR, LEAST_NAME)
    short = max(cell_len(one.name) for one in rows) > most
    name = min(max(cell_len(_name(one, short=short)) for one in rows), most)
    room = max(min(area.width - fixed - name, MOST_BAR), LEAST_BAR)
    low = NAME + name + GAP + gives + GAP + figures
    bar = low + 1
    high = bar + room + 1 + figures
    return _Columns(short, name, NAME + name + GAP, low, bar, room, high, high + GAP)


def _name(one: GuessRow, *, short: bool) -> str:
    return one.short if short else one.name


def _heads(area: Area) -> tuple[str, str, str, str]:
    """The heads as they fit; the two ends of the bars share one."""
    guess, give, spare, _, breaks = sure_columns()
    wide = area.width >= WORD_FROM
    return guess.title, give.title if wide else give.short, spare.title if wide else spare.short, breaks.title


def _give(one: GuessRow, area: Area) -> str:
    return area.look.fold(given(one) if area.width >= WORD_FROM else one.give)


def _head(columns: _Columns, area: Area) -> Strip:
    guess, give, spare, breaks = _heads(area)
    line = area.row().put(NAME, guess, "muted").put(columns.give, give, "muted")
    line.put(
        max(columns.bar + (columns.room - len(spare)) // 2, columns.give + len(give) + 1), spare, "muted"
    )
    return line.put(columns.breaks, breaks, "muted").strip()


def _line(one: GuessRow, columns: _Columns, scale: _Scale, area: Area) -> Strip:
    look, line = area.look, area.row()
    role: Role = "muted" if one.assumed else "text"
    if one.near:
        line.lay(MARK, look.mark("look here"), look.chip("fault", bold=True))
    elif one.assumed:
        line.put(MARK, look.mark("not sure"), "muted")
    line.put(NAME, clip(look.fold(_name(one, short=columns.short)), columns.name, look.fold("…")), role)
    line.put(columns.give, _give(one, area), role)
    line.put_right(columns.low, one.low_text)
    first, end = scale.cells(one.low, one.high, columns.room)
    line.put(columns.bar, look.mark("track") * first, "muted")
    line.put(columns.bar + first, look.mark("bar") * (end - first), "fault" if one.near else "muted")
    line.put(columns.bar + end, look.mark("track") * (columns.room - end), "muted")
    line.put_right(columns.high, one.high_text)
    breaks = clip(look.fold(one.breaks), area.width - columns.breaks - 1, look.fold("…"))
    return line.put(columns.breaks, breaks, "fault" if one.near else "text").strip()
