"""What was changed in a build, in the words of its questions."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from fuelwiz.desk.field_numbers import pretty, split_or_whole
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.plain import Plain
from fuelwiz.document.changes import Change, changes
from fuelwiz.printable import clean
from fuelwiz.store.history import last_change

_MOST = 3
_LONGEST = 40


def last_change_words(path: Path) -> str:
    """The last change of the build in a file; empty where it is not known."""
    return change_words(last_change(path))


def change_words(changes: tuple[Change, ...]) -> str:
    """Changes as one sentence says them: "power 690 to 750 hp, boost 18 to 22 psi"."""
    texts = list(change_lines(changes))
    more = len(texts) - _MOST
    shown = texts if more <= 1 else [*texts[:_MOST], f"and {more} more"]
    return ", ".join(shown)


def change_lines(changes: tuple[Change, ...]) -> tuple[str, ...]:
    """Each change as a line of its own."""
    return tuple(dict.fromkeys(map(_one, changes)))


def _one(change: Change) -> str:
    named = noun_of(change.key)
    before, now = _value(change.before), _value(change.now)
    if change.now is None:
        return f"{named} taken out"
    if change.before is None:
        return f"{named} now {pretty(now)}" if now else f"{named} added"
    if not before or not now:
        return f"{named} changed"
    number, unit = split_or_whole(before)
    same_unit = unit and split_or_whole(now)[1] == unit
    return f"{named} {number if same_unit else pretty(before)} to {pretty(now)}"


def _value(value: Any) -> str:
    """A plain value as a sentence says it; empty for one that is no single value."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, str | int | float):
        return ""
    text = " ".join(clean(str(value)).replace("_", " ").split())
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 1]}…"


def diff(before: Plain, after: Plain) -> tuple[Change, ...]:
    """What two builds say differently, key by key."""
    return changes(before, after, into_absent=True)
