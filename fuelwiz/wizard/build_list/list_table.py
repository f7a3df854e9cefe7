"""The table of builds: one line a build, in the columns that fit the width."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from datetime import date

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.record import record
from fuelwiz.store.build_file import BuildFile
from fuelwiz.terminal.palette import Ground, Role
from fuelwiz.terms import VELOCITY_IS
from fuelwiz.wizard.build_list.judged import NONE_WORKS, Judged, Verdict
from fuelwiz.wizard.build_list.list_state import BuildList, day_of
from fuelwiz.wizard.paint import WORKS_CELLS, Area, Row, clip, put_works

MARK, POINTER, NAME = 0, 1, 3
NEW_BUILD = "+ new build"
_NAME_AT_MOST = 44
_UNKNOWN = Verdict("unknown", "", "muted", None)


@record
class ListColumns:
    """Where the columns stand: numbers and dates by the column they end before, all else by where it begins.

    A column that there is no room for is 0.
    """

    file: int
    goal: int
    fuel: int
    line: int
    verdict: int
    word: int
    spare: int
    works: int
    changed: int
    word_end: int

    @property
    def name_room(self) -> int:
        """How many cells there are for the name."""
        end = self.file - 2 if self.file else self.goal - 6
        return end - NAME


def columns_for(width: int) -> ListColumns:
    """The columns of a table in that many cells."""
    if width < 76:
        word = width - 9
        return ListColumns(0, word - 26, word - 24, word - 15, word - 3, word, 0, word - 5, 0, width - 1)
    changed = width - 1
    spare = changed - 13 if width >= 100 else 0
    end = spare - 9 if spare else changed - 12
    word = end - 10
    goal = word - 28
    file = 0
    if width >= 140:
        file = NAME + min(_NAME_AT_MOST, (goal - 8 - NAME) // 2) + 2
    return ListColumns(file, goal, goal + 2, word - 17, word - 3, word, spare, word - 5, changed, end)


def table_lines(builds: BuildList, today: date, area: Area) -> list[Strip]:
    """The header, and under it as many builds as fit, those around the pointer."""
    columns, rows = columns_for(area.width), builds.rows
    unit = common_unit(rows)
    lines = [_header(columns, unit, area)]
    for at in builds.window(area.rows - 1):
        ground: Ground = "background"
        if at == builds.at:
            ground = "row" if builds.typing else "chosen"
        line = area.row(ground)
        entry = rows[at] if at < len(rows) else None
        if entry is not None and entry.path in builds.marked:
            line.put(MARK, "•", "focus", True)
        if at == builds.at:
            line.put(POINTER, area.look.mark("pointer"), "focus", True)
        if entry is None:
            line.put(NAME, NEW_BUILD, "text" if at == builds.at else "muted")
            lines.append(line.strip())
            continue
        lines.append(_line(line, entry, builds.known(entry), columns, unit, today))
    return area.filled(lines)


def common_unit(entries: Iterable[BuildFile]) -> str:
    """The unit that the header of the goals may name: the one most of them are given in."""
    units = Counter(goal[1] for entry in entries if (goal := entry.goal) is not None)
    return units.most_common(1)[0][0] if units else "hp"


def _header(columns: ListColumns, unit: str, area: Area) -> Strip:
    line = area.row().put(NAME, "Build", "muted")
    if columns.file:
        line.put(columns.file, "File", "muted")
    line.put_right(columns.goal, f"Goal, {unit}" if area.width >= 76 else unit, "muted")
    line.put(columns.fuel, "Fuel", "muted").put(columns.line, "Line", "muted")
    line.put_right(columns.works, "Works", "muted")
    line.put(columns.verdict, VELOCITY_IS, "muted")
    if columns.spare:
        line.put_right(columns.spare, "Spare, %", "muted")
    if columns.changed:
        line.put_right(columns.changed, "Changed", "muted")
    return line.strip()


def _line(
    line: Row, entry: BuildFile, known: Judged | None, columns: ListColumns, unit: str, today: date
) -> Strip:
    fault = entry.fault or (known.fault if known is not None else "")
    strong = line.ground != "background"
    if fault:
        return _broken(line, entry, fault, columns, today, strong)
    _put_name(line, entry, columns.name_room, strong)
    if columns.file:
        room = columns.goal - 8 - columns.file
        line.put(columns.file, _clipped(line, "" if entry.is_draft else entry.file_name, room), "muted")
    line.put_right(columns.goal, _goal(entry, known, unit), bold=strong)
    fuel = (known.fuel if known is not None else entry.fuel) or line.look.mark("unknown")
    line.put(columns.fuel, _clipped(line, fuel, columns.line - columns.fuel - 1), bold=strong)
    size = (known.line if known is not None else entry.chosen) or line.look.mark("unknown")
    line.put(columns.line, _clipped(line, size, columns.works - WORKS_CELLS - columns.line - 1), bold=strong)
    _put_verdict(line, entry, known, columns, strong)
    if columns.changed:
        line.put_right(columns.changed, day_words(day_of(entry), today), "muted", strong)
    return line.strip()


def _put_verdict(
    line: Row, entry: BuildFile, known: Judged | None, columns: ListColumns, strong: bool
) -> None:
    """Works, and how fast the fuel is with its mark; until it is calculated, those of the record."""
    record = entry.record
    verdict = known.verdict if known is not None else _UNKNOWN
    works = known.verdict.works if known is not None else record.works if record is not None else None
    put_works(line, columns.works, None if works is None else "yes" if works else "no", strong)
    role: Role = verdict.role
    if verdict.mark is not None:
        mark = f"{line.look.mark(verdict.mark):<2}"
        line.lay(columns.verdict, mark, line.look.chip(role, line.ground, strong))
    room = columns.word_end - columns.word
    unknown = line.look.mark("unknown")
    word = verdict.word if cell_len(verdict.word) <= room else _shorter(verdict.word, unknown)
    line.put(columns.word, clip(word, room), role, strong)
    if columns.spare:
        recorded = record.margin.removesuffix("%").strip() if record is not None else ""
        spare = known.spare if known is not None else recorded
        line.put_right(columns.spare, _clipped(line, spare or unknown, 7), bold=strong)


def _shorter(word: str, unknown: str) -> str:
    """The first word of a verdict; where none works, there is no velocity to speak of."""
    return unknown if word == NONE_WORKS else word.split(maxsplit=1)[0]


def _broken(
    line: Row, entry: BuildFile, fault: str, columns: ListColumns, today: date, strong: bool
) -> Strip:
    """A file that is no build: its name and the first thing that is wrong."""
    changed = day_words(day_of(entry), today) if columns.changed else ""
    end = (columns.changed - cell_len(changed) - 1) if changed else columns.word_end
    name = _clipped(line, entry.name, columns.name_room)
    line.put(NAME, name, bold=strong)
    start = NAME + cell_len(name) + 2
    line.put(start, line.look.mark("look here"), "fault", True)
    line.put(start + 3, _clipped(line, fault, end - start - 3), "text" if strong else "muted", strong)
    if changed:
        line.put_right(columns.changed, changed, "muted", strong)
    return line.strip()


def _put_name(line: Row, entry: BuildFile, room: int, strong: bool) -> None:
    """The name, and whether there is a draft newer than what is shown."""
    tag = " draft" if entry.has_draft else ""
    name = _clipped(line, entry.name, room - len(tag))
    line.put(NAME, name, bold=strong)
    line.put(NAME + cell_len(name), tag, "muted", strong)


def _goal(entry: BuildFile, known: Judged | None, unit: str) -> str:
    """The goal without its unit where that stands in the header."""
    if entry.goal is not None:
        number, own = entry.goal
        return number if own == unit else f"{number} {own}"
    number, _, own = (known.goal if known is not None else "").partition("\N{NO-BREAK SPACE}")
    return number if own == unit else f"{number} {own}".strip()


def _clipped(line: Row, text: str, room: int) -> str:
    return clip(line.look.fold(text), max(room, 0), line.look.fold("…"))


def day_words(day: date | None, today: date) -> str:
    """A day as the list shows it: today, yesterday, or its date."""
    if day is None:
        return ""
    days = (today - day).days
    return "today" if days == 0 else "yesterday" if days == 1 else day.isoformat()
