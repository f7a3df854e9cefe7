"""The path: the fuel's way down the page, a part a line; in a what-if then and now side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.sections.path import path_lines
from fuelwiz.advice.sections.path_line import PathLine
from fuelwiz.advice.subject import Subject
from fuelwiz.printable import NO_BREAK
from fuelwiz.wizard.paint import Area, Row, clip, clip_words

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.part_figures import PathPart
    from fuelwiz.terminal.palette import Role
    from fuelwiz.wizard.look import Look

MARK, STOP, STEM, BRANCH = 1, 3, 4, 6
GAP = 2
NARROW_BELOW = 76
WIDEST_NAME, NARROW_NAME = 15, 10  # of those that make the column, and the same where room is short
LONGEST_NAME = 20  # a longer one is cut; one that is longer than the column moves what was given
USUAL_OUTCOME = 8  # cells of a loss with its unit; velocities stand before it, in a column where they can
LEAST_GIVEN = 12  # cells under which what was given makes room for itself: the velocity goes
ASSUMED = "assumed"
HAS = ", has "  # between what a pump needs to make and what it has

Parts = Sequence["PathPart"]


def way_lines(result: Result, size: str, parts: Parts, area: Area, *, whole: bool = False) -> list[Strip]:
    """The way at a size of line; where it is not to be `whole`, it has to do with the rows of the area.

    Whole it takes as many lines as what was given does; else a part has one line, and those that say nothing new are
    folded.
    """
    lines = _lines(result, size, parts)
    columns = _Columns(lines, area)
    drawn = [strip for line in lines for strip in columns.drawn(line, whole=True)]
    if whole or len(drawn) <= area.rows:
        return drawn
    drawn = []
    for group in _groups(len(lines), _folded(lines, area.rows)):
        if len(group) > 1:
            drawn.append(area.row().put(BRANCH, f"… {len(group)} more: F6", "muted").strip())
        else:
            drawn += columns.drawn(lines[group[0]])
    return drawn


def both_ways(then: tuple[Result, Parts], now: tuple[Result, Parts], size: str, area: Area) -> list[Strip]:
    """Then on the left, now on the right, each at its own size; what differs is marked, and stays where room lacks."""
    before = _lines(then[0], then[0].figures.verdict.size, then[1])
    after = _lines(now[0], size, now[1])
    half = area.width // 2
    names = min(max(_name_end(line, area.look) for line in (*before, *after)), BRANCH + LONGEST_NAME)
    pairs = list(zip_longest(before, after))
    differ = [pair for pair in pairs if pair[0] != pair[1]]
    shown = pairs if len(pairs) < area.rows or len(differ) == len(pairs) else differ
    is_looked_at = size != now[0].figures.verdict.size
    head = f"now, {size} looked at" if is_looked_at else "now"
    lines = [area.row().put(STOP, "then", "muted").put(half + STOP, head, bold=True).strip()]
    for left, right in shown:
        line = area.row()
        if left is not None:
            _half(line, left, 0, half, names, changed=False)
        if right is not None:
            _half(line, right, half, area.width - half - 1, names, changed=left != right)
        lines.append(line.strip())
    if shown is differ:
        lines.append(area.row().put(BRANCH, f"… {len(pairs) - len(differ)} alike", "muted").strip())
    return lines


def _lines(result: Result, size: str, parts: Parts) -> tuple[PathLine, ...]:
    """The way; a velocity has its unit, as no head above it could have."""
    subject = Subject(result.session, result.figures)
    unit = subject.numbers.unit("velocity")
    lines = path_lines(subject, result.figures.row(size) or subject.pick, parts)
    return tuple(
        line._replace(velocity=f"{line.velocity} {unit}") if line.velocity else line for line in lines
    )


def _folded(lines: Sequence[PathLine], rows: int) -> set[int]:
    """The lines to leave out so that the rest fit: of those without a limit, a guess or a gap, before the rail first."""
    quiet = [at for at, line in enumerate(lines) if not (line.limits or line.assumed or line.gap)]
    rail = max((at for at, line in enumerate(lines) if not line.stem and at < len(lines) - 1), default=0)
    between = [at for at in quiet if lines[at].stem]
    order = sorted(between, key=lambda at: (at > rail, -at)) + [at for at in quiet if not lines[at].stem]
    hidden: set[int] = set()
    for at in order:
        if len(_groups(len(lines), hidden)) <= rows:
            break
        hidden.add(at)
    return hidden


def _groups(count: int, hidden: set[int]) -> list[list[int]]:
    """The lines one by one, those that are hidden together where they follow one another."""
    groups: list[list[int]] = []
    for at in range(count):
        if at in hidden and groups and groups[-1][-1] in hidden:
            groups[-1].append(at)
        else:
            groups.append([at])
    return groups


class _Columns:
    """Where the columns of a way stand."""

    def __init__(self, lines: Sequence[PathLine], area: Area) -> None:
        self.area = area
        widest = WIDEST_NAME if area.width >= NARROW_BELOW else NARROW_NAME
        self.given = min(max(_name_end(line, area.look) for line in lines), BRANCH + widest) + GAP
        self.speed = area.width - 1 - USUAL_OUTCOME - GAP

    def drawn(self, line: PathLine, *, whole: bool = False) -> Iterator[Strip]:
        """A part in one line, or where the `whole` of what was given takes more, in those."""
        area, look = self.area, self.area.look
        role: Role = "muted" if line.assumed or line.gap else "text"
        row = area.row()
        name_end = min(_name_end(line, area.look), BRANCH + LONGEST_NAME)
        at = max(self.given, name_end + GAP)
        _put_name(row, line, 0, name_end, role)
        out = look.fold(_outcome(line, area))
        end = area.width - 1 - (cell_len(out) + GAP if out else 0)
        speed, speed_end = look.fold(line.velocity), min(self.speed, end)
        if speed and speed_end - cell_len(speed) - GAP - at >= LEAST_GIVEN:
            end = speed_end - cell_len(speed) - GAP
        else:
            speed = ""
        room = max(end - at, 1)
        facts = look.fold(_given(line)) if whole else _fitting(line, room, look)
        first = area.wrapped(facts, area.width - 1 - room)[0] if facts else ""
        row.put(at, first, role)
        if speed:
            row.put_right(speed_end, speed, role)
        row.put_right(area.width - 1, out, "fault" if line.limits else role, bool(line.limits))
        yield row.strip()
        rest = facts.removeprefix(first).strip()
        for text in area.wrapped(rest, self.given) if rest else ():
            more = area.row()
            if line.stem:
                more.put(STEM, look.mark("axis"), "muted")
            yield more.put(self.given, text, role).strip()


def _start(line: PathLine) -> int:
    return BRANCH if line.stem else STOP


def _name_end(line: PathLine, look: Look) -> int:
    return _start(line) + cell_len(look.fold(line.name))


def _put_name(row: Row, line: PathLine, left: int, end: int, role: Role, changed: bool = False) -> None:
    """The mark, the stem and the name of a part, up to a cell."""
    look = row.look
    if line.limits:
        row.lay(left + MARK, look.mark("no"), look.chip("too fast", row.ground, True))
    elif line.gap:
        row.put(left + MARK, look.mark("untouched"), "muted")
    elif line.assumed:
        row.put(left + MARK, look.mark("not sure"), "muted")
    if line.stem:
        row.put(left + STEM, look.fold(line.stem), "muted")
    room = end - left - _start(line)
    name = clip(look.fold(line.name), room, look.fold("…"))
    row.put(left + _start(line), name, "focus" if changed else role, changed or not line.stem)


def _outcome(line: PathLine, area: Area) -> str:
    """What comes out, behind a mark where it is the limit."""
    return (
        f"{area.look.mark('no')} {line.at_the_goal}" if line.limits and line.at_the_goal else line.at_the_goal
    )


def _given(line: PathLine) -> str:
    """What was given, with the word before it where it is assumed."""
    if line.assumed and line.given:
        return f"{ASSUMED}: {line.given}"
    return line.given


def _fitting(line: PathLine, room: int, look: Look) -> str:
    """What was given in the fullest form that takes so many cells.

    First its facts give way, those at its end before those at its beginning, then the word for what is assumed, which
    a mark says too.
    """
    facts = line.given.split(", ")
    heads = [f"{', '.join(facts[:end])} …" for end in range(len(facts) - 1, 0, -1)]
    forms = [line.given, *filter(None, [line.short]), *heads]
    if line.assumed and line.given:
        forms = [*(f"{ASSUMED}: {form}" for form in forms), *forms]
    shown = [look.fold(form) for form in forms]
    return next(
        (form for form in shown if cell_len(form) <= room), clip_words(shown[-1], room, look.fold("…"))
    )


def _short(text: str, room: int) -> str:
    """What comes out in fewer words: without when, then without what it is out of; a unit goes before what it has."""
    without_unit = text.rpartition(NO_BREAK)[0] if HAS in text else ""
    if without_unit and cell_len(without_unit) <= room < cell_len(text):
        return without_unit
    for end in (" at idle", " of ", HAS):
        if cell_len(text) > room:
            text = text.partition(end)[0]
    return text


def _half(row: Row, line: PathLine, left: int, width: int, names: int, *, changed: bool) -> None:
    """A part in half of a line: its name and what comes out; what is new is marked."""
    look = row.look
    out = look.fold(line.at_the_goal or line.given)
    role: Role = "muted" if line.assumed or line.gap else "text"
    _put_name(row, line, left, left + names, role, changed)
    if changed:
        out = f"{look.mark('pointer')} {out}"
    text = clip(_short(out, width - names - GAP), max(width - names - GAP, 0), look.fold("…"))
    row.put_right(left + width, text, "fault" if line.limits else "focus" if changed else role, changed)
