"""The lines around the questions: the build on top, the steps, and the keys at the bottom."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.record import record
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area, Row, clip, pad

if TYPE_CHECKING:
    from fuelwiz.desk.steps import StepState


@record
class StepMark:
    """A step as its line shows it: its name, a short one, and how it stands."""

    name: str
    short: str
    state: StepState


@record
class Headline:
    """What the top line says of the build."""

    name: str
    facts: str
    assumed: int
    kept: str
    units: str


MOVE = Action("move", ("up", "down"), "", "and Down choose", "")
BACK = Action("back", ("escape",), "", "back", "")
"""Both are told by the screens that choose from a list, or are left again; each takes the keys itself."""

_STATE_MARK: dict[StepState, str] = {"untouched": "untouched", "done": "done", "look": "look here"}
_STATE_ROLE: dict[StepState, Role] = {"untouched": "muted", "done": "text", "look": "fault"}
FIRST_STEPS = 5
LEAST_OF_A_NAME = 6
NUMBER_WORDS = [
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
]


def top_line(head: Headline, area: Area) -> Strip:
    """The build's name and its facts, how much is assumed, when the draft was kept, and the units."""
    parts = [f"{head.assumed} assumed" if head.assumed else "", head.kept, head.units]
    line = Row(area.look, area.width, "bar")
    right = "   ".join(part for part in parts if part)
    room = area.width - cell_len(right) - 4
    name = clip(area.look.fold(head.name), max(room, 8), area.look.fold("…"))
    line.put(1, name, bold=True)
    left = room - cell_len(name) - 2
    if left > 8:
        line.put(
            1 + cell_len(name) + 3, clip(area.look.fold(head.facts), left - 1, area.look.fold("…")), "muted"
        )
    return line.put_right(area.width - 1, right, "muted").strip()


def steps_row(steps: Sequence[StepMark], current: int, area: Area, name: str) -> Strip:
    """The steps in one line: names of one half, marks of the other; in a narrow one the current name alone.

    A narrow screen has no top line, so that the name of the build stands here, as far as there is room.
    """
    line = area.row()
    if area.width < 76:
        return _narrow_steps(steps, current, line, name)
    first = current < FIRST_STEPS or len(steps) <= FIRST_STEPS
    named = range(min(FIRST_STEPS, len(steps))) if first else range(FIRST_STEPS, len(steps))
    other = [i for i in range(len(steps)) if i not in named]
    column = 1
    if not first:
        column = _marks(steps, other, line, column) + 1
    gap = 2 if sum(cell_len(steps[i].short) + 6 for i in named) + column <= area.width else 0
    if first and _with_short_names(steps, current, named, other, line):
        return line.strip()
    for i in named:
        column = _step(steps[i], i == current, line, column) + gap
    if first and other:
        text = f"then {'·' * len(other)} {number_word(len(other))} more"
        start = area.width - 1 - cell_len(text)
        if start > column:
            line.put(start, "then ", "muted")
            _marks(steps, other, line, start + 5)
            line.put(start + 5 + len(other), f" {number_word(len(other))} more", "muted")
    return line.strip()


def _with_short_names(
    steps: Sequence[StepMark], current: int, named: Sequence[int], other: Sequence[int], line: Row
) -> bool:
    """All steps by name, those of the other half by the beginning of theirs; false where there is no room."""
    short = [_beginning(steps[i].short) for i in other]
    width = sum(cell_len(text) + 2 for text in short) - 1
    if not other or 2 + sum(cell_len(steps[i].short) + 4 for i in named) + width > line.width:
        return False
    column = 1
    for i in named:
        column = _step(steps[i], i == current, line, column)
    column = line.width - width
    for i, text in zip(other, short, strict=True):
        _marks(steps, [i], line, column)
        line.put(column + 1, text, "muted")
        column += cell_len(text) + 2
    return True


def _beginning(name: str) -> str:
    """A short name cut further; one of two things has the beginning of both."""
    return name if cell_len(name) <= 5 else "/".join(part[:3] for part in name.split("/"))


def number_word(number: int) -> str:
    """A number in words, as far as sentences write them out."""
    return NUMBER_WORDS[number] if number < len(NUMBER_WORDS) else str(number)


def _narrow_steps(steps: Sequence[StepMark], current: int, line: Row, name: str) -> Strip:
    step = steps[current]
    line.put(1, f"{current + 1} of {len(steps)} ", "muted")
    start = _step(step, True, line, 10) + 1
    end = line.width - 1
    column = end - len(steps) - (1 if len(steps) > FIRST_STEPS else 0)
    room = column - start - 2
    if room >= LEAST_OF_A_NAME:
        line.put(start, clip(line.look.fold(name), room, line.look.fold("…")), "muted")
    column = _marks(steps, list(range(min(FIRST_STEPS, len(steps)))), line, column)
    if len(steps) > FIRST_STEPS:
        _marks(steps, list(range(FIRST_STEPS, len(steps))), line, column + 1)
    return line.strip()


def _marks(steps: Sequence[StepMark], which: Sequence[int], line: Row, column: int) -> int:
    for i in which:
        line.put(column, line.look.mark(_STATE_MARK[steps[i].state]), _STATE_ROLE[steps[i].state])
        column += 1
    return column


def _step(step: StepMark, current: bool, line: Row, column: int) -> int:
    mark = line.look.mark(_STATE_MARK[step.state])
    line.put(column, "[" if current else " ", "focus")
    line.put(column + 1, mark, _STATE_ROLE[step.state], current)
    line.put(column + 2, f" {step.short}", "focus" if current else "text", current)
    column += 3 + cell_len(step.short)
    line.put(column, "]" if current else " ", "focus")
    return column + 1


def steps_column(steps: Sequence[StepMark], current: int, area: Area) -> list[Strip]:
    """The steps one below the other, with their full names where there is room."""
    wide = area.width >= 24
    lines = [area.row("bar").put(1, "First answer", "muted").strip()]
    for i, step in enumerate(steps):
        if i == FIRST_STEPS:
            lines += [area.row("bar").strip(), area.row("bar").put(1, "If you like", "muted").strip()]
        line = area.row("bar")
        if i == current:
            line.put(1, area.look.mark("pointer"), "focus", True)
        line.put(3, area.look.mark(_STATE_MARK[step.state]), _STATE_ROLE[step.state], True)
        name = step.name if wide else step.short
        line.put(5, name, "focus" if i == current else "text", i == current)
        lines.append(line.strip())
    blank = area.row("bar").strip()
    return (lines + [blank] * area.rows)[: area.rows]


def footer_line(actions: Sequence[Action], last: Action, area: Area, message: str = "") -> Strip:
    """The keys that matter now, the one thing to do first; those that do not fit go, the last never goes.

    `message` stands in their place until the next key.
    """
    line = Row(area.look, area.width, "bar")
    end = f"{last.shown_key} {last.say}"
    room = area.width - 1
    if message:
        line.put(1, clip(area.look.fold(message), room - cell_len(end) - 3, area.look.fold("…")), bold=True)
        _key(last, line, room - cell_len(end))
        return line.strip()
    column = 1
    for action in actions:
        width = cell_len(f"{action.shown_key} {action.say}")
        if column + width + 2 + cell_len(end) > room:
            break
        column = _key(action, line, column) + 2
    _key(last, line, column)
    return line.strip()


def _key(action: Action, line: Row, column: int) -> int:
    line.put(column, action.shown_key, bold=True)
    column += cell_len(action.shown_key)
    line.put(column, f" {action.say}", "muted")
    return column + 1 + cell_len(action.say)


def step_marks(look: Look) -> str:
    """What the marks before the steps mean."""
    done, untouched, look_here = (look.mark(_STATE_MARK[state]) for state in ("done", "untouched", "look"))
    return f"Steps: {done} answered, {untouched} some assumed or empty, {look_here} to put right"


def keys_page(actions: Sequence[Action], area: Area, marks: str = "") -> list[Strip]:
    """Every action with its keys and the letter that does it now; in two columns where one is too short.

    `marks` says what marks on the screen mean, under the keys.
    """
    if marks:
        said = area.paragraph(marks, 1, "muted")
        page = keys_page(actions, area.high(area.rows - len(said)))
        return [*page, *said]
    lines = [area.row().put(1, "All keys: press a letter; Esc closes", "focus", True).strip()]
    if area.width < 100 and len(actions) < area.rows:
        cells = [_key_cell(action, area.width, area.look) for action in actions]
        return area.filled([*lines, *(area.row().put(1, cell).strip() for cell in cells)])
    column = area.width // 2
    cells = [_key_cell(action, column, area.look) for action in actions]
    half = (len(cells) + 1) // 2
    lines += [
        area.row().put(1, pad(left, column - 1)).put(column, right).strip()
        for left, right in zip(cells[:half], [*cells[half:], ""], strict=False)
    ]
    return area.filled(lines)


def _key_cell(action: Action, width: int, look: Look) -> str:
    """Letter, keys and words of an action; in a short line its first key and its two or three words."""
    from fuelwiz.wizard.actions import key_name

    if width < 50:
        text = f"{pad(key_name(action.keys[0]) if action.keys else '', 9)} {action.say}"
    else:
        text = f"{pad(', '.join(key_name(key) for key in action.keys), 17)} {action.text}"
    return clip(look.fold(f"{action.letter or ' '}  {text}"), width - 2, look.fold("…"))
