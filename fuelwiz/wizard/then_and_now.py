"""A build and a changed copy of it in four lines: what each comes to, and what was changed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.advice.blocks import UNKNOWN
from fuelwiz.desk.change_words import diff
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_numbers import pretty
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.field_text import one_line
from fuelwiz.document.changes import Change
from fuelwiz.printable import NO_BREAK
from fuelwiz.record import record
from fuelwiz.report.measures import MEASURES, Measure, Side, sides_of
from fuelwiz.wizard.live.looked_at import looked_at
from fuelwiz.wizard.paint import Area, Row, clip, clip_words
from fuelwiz.wizard.screen_layout import NARROW_BELOW

ROWS = 4
LABELS = 9
GAP = 2
LONGEST_VALUE = 24
LONGEST_WRONG, LONGEST_WRONG_NARROW = 28, 17
WRONG = "wrong"
LONGEST_ENDING = 40
NOTHING_YET = "nothing yet: try another goal, boost or pump"
NOT_SHOWN = {"name", "notes"}
# By what they are called in the comparison, and in this strip; the last ones go where room is short.
SHOWN = (
    ("works", "works"),
    ("what is wrong", "wrong"),
    ("spare", "spare"),
    ("power at the goal", "goal"),
    ("fuel needed", "burns"),
    ("feeds", "feeds"),
    ("line loss", "loss"),
    ("velocity", "velocity"),
    ("size judged", "at"),
    ("pump must make", "pump must make"),
    ("first limit", "first limit"),
)


@record
class Pair:
    """One measure of both builds, under its name."""

    head: str
    then: str
    now: str

    @property
    def width(self) -> int:
        """The cells that it takes."""
        return max(cell_len(self.head), cell_len(self.then), cell_len(self.now))


def then_and_now(before: Desk, after: Desk, area: Area, highlighted: str = "") -> list[Strip]:
    """Heads, then, now, and what was changed; a size that is only highlighted changes nothing."""
    longest = LONGEST_WRONG if area.width >= NARROW_BELOW else LONGEST_WRONG_NARROW
    pairs_counted = [
        _counted(pair, longest) if pair.head == WRONG else pair for pair in measured(before, after)
    ]
    pairs = list(_that_fit(pairs_counted, area.width - LABELS - 2))
    heads, then = area.row("bar").put(1, "what if", bold=True), area.row().put(1, "then", "muted")
    now = area.row().put(1, "now", bold=True)
    column = 1 + LABELS
    for pair in pairs:
        heads.put(column, pair.head, "muted")
        then.put(column, pair.then)
        changed = pair.now != pair.then
        now.put(column, pair.now, "focus" if changed else "text", changed)
        column += pair.width + GAP
    return [
        heads.strip(),
        then.strip(),
        now.strip(),
        _changed_line(before, after, _nothing_yet(after, highlighted), area.row()).strip(),
    ]


def measured(before: Desk, after: Desk) -> list[Pair]:
    """The measures of both, in the units of the first; a dash for what has no answer yet."""
    results = [desk.result for desk in (before, after)]
    sides = iter(sides_of([result for result in results if result is not None]) if any(results) else ())
    then, now = (None if result is None else next(sides) for result in results)
    measures = {measure.name: measure for measure in MEASURES}
    return [Pair(head, _shown(measures[name], then), _shown(measures[name], now)) for name, head in SHOWN]


def _counted(pair: Pair, longest: int) -> Pair:
    """What is wrong in so many cells: the first of it, and how much more there is."""
    return replace(pair, then=_first_of(pair.then, longest), now=_first_of(pair.now, longest))


def _first_of(text: str, longest: int) -> str:
    names = text.split(", ")
    shown = len(names)
    while shown > 1 and cell_len(text) > longest:
        shown -= 1
        text = f"{', '.join(names[:shown])} + {len(names) - shown}"
    return text


def name_to_keep(before: Desk, after: Desk) -> str:
    """A name for what was tried: that of the build, and the one change or the one section that tells it from that."""
    changed = _changes(before, after)
    sections = {change.key.partition(".")[0].replace("_", " ") for change in changed}
    ending = ""
    if len(changed) == 1 and changed[0].now is not None:
        ending = f"{noun_of(changed[0].key)} {_value(changed[0].now)}"
    elif len(sections) == 1:
        ending = f"another {sections.pop()}"
    fits = 0 < len(ending) <= LONGEST_ENDING
    return f"{before.name}, {ending}" if fits else f"{before.name} what if"


def changed_words(before: Desk, after: Desk) -> list[str]:
    """What the second says differently, an entry each: what, what it was, what it is."""
    return [
        f"{noun_of(change.key)} {_from_to(_was(before, change), _value(change.now))}"
        for change in _changes(before, after)
    ]


def changed_nouns(before: Desk, after: Desk) -> list[str]:
    """What the second says differently, an entry each: what."""
    return [noun_of(change.key) for change in _changes(before, after)]


def _changes(before: Desk, after: Desk) -> list[Change]:
    return [change for change in diff(before.plain, after.plain) if change.key not in NOT_SHOWN]


def _from_to(was: str, now: str) -> str:
    """A change in short; what was taken and is now said comes to the same."""
    return f"{was} → {now}" if was != now else f"{now}, as before"


def _was(before: Desk, change: Change) -> str:
    """What was said, else what was taken for it."""
    if change.before is not None:
        return _value(change.before)
    try:
        field = before.text_in_field(change.key)
    except NoSuchField:
        return UNKNOWN
    return _value(f"{field.text} {field.unit}".strip()) if field.text else UNKNOWN


def _shown(measure: Measure, side: Side | None) -> str:
    return UNKNOWN if side is None else measure.shown(side) or UNKNOWN


def _value(value: Any) -> str:
    if value is None:
        return UNKNOWN
    text = pretty(one_line(value).replace("\n", " ")).replace(NO_BREAK, " ")
    return clip(text, LONGEST_VALUE, "…")


def _that_fit(pairs: Sequence[Pair], room: int) -> Iterator[Pair]:
    for pair in pairs:
        if pair.width > room:
            return
        room -= pair.width + GAP
        yield pair


def _nothing_yet(after: Desk, highlighted: str) -> str:
    """What is said where nothing was changed."""
    only = "" if after.result is None else looked_at(after.result, highlighted)
    return f"nothing yet: {only}" if only else NOTHING_YET


def _changed_line(before: Desk, after: Desk, nothing: str, row: Row) -> Row:
    """The changes as far as they fit, each of them whole; the rest by name alone, else how many more there are."""
    row.put(1, "changed", "muted")
    room = row.width - LABELS - 2
    changes, nouns = changed_words(before, after), changed_nouns(before, after)
    parts = range(len(changes) - 1, 0, -1)
    forms = ["; ".join(changes) or nothing]
    forms += [f"{'; '.join(changes[:shown])}; {', '.join(nouns[shown:])}" for shown in parts]
    forms += [f"{'; '.join(changes[:shown])}; {len(changes) - shown} more" for shown in parts]
    forms = [row.look.fold(form) for form in forms]
    text = next((form for form in forms if cell_len(form) <= room), forms[-1])
    return row.put(1 + LABELS, clip_words(text, room, row.look.fold("…")))
