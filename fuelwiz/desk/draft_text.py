"""The draft beside a build: all that is told, refused or not, kept until it is saved or given up."""

from __future__ import annotations

import json
from collections.abc import Iterable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from fuelwiz.desk.composites import CHOICE_QUESTIONS, COUNT_QUESTIONS, field_of
from fuelwiz.desk.exceptions import DraftError, NoSuchField
from fuelwiz.desk.field_specs import NOT_TYPED, place_exists, spec_at
from fuelwiz.desk.measuring import is_measured
from fuelwiz.desk.outside_data import known_entry, known_part
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.state import State
from fuelwiz.file_limits import LONGEST_TEXT, MOST_BYTES, MOST_DRAFT_BYTES
from fuelwiz.files import TooLarge, read_whole
from fuelwiz.printable import clean
from fuelwiz.questions import STEPS
from fuelwiz.record import record
from fuelwiz.store.sitting import Sitting

_MOST_LEVELS = 12
_STASHED = {
    "pump.figure": "pump.curve",
    "pump.curve": "pump.curve",
    "pump.sample": "pump.curve",
    "surge": "surge",
    "inlet.strainer": "inlet.strainer",
    "feed.filter": "feed.filter",
    "return_line.regulator": "return_line.regulator",
}


Table = tuple[str, str]


@record
class Contents:
    """What a draft holds: all that was told, the steps that were seen, the digest of the file that it began from.

    `table` is what stood on the page for a table of points, and the path that it was opened at.
    """

    state: State
    seen: frozenset[str]
    base: str | None
    table: Table


def written(
    state: State,
    seen: Iterable[str],
    base: str | None,
    *,
    sitting: Sitting | None = None,
    of: str | None = None,
    folder: str | None = None,
    table: Table = ("", ""),
) -> str:
    """The text of a draft.

    Args:
        state: what is told of the build.
        seen: the steps that were looked at.
        base: the digest of the file that it began from; None where there was none.
        sitting: whose it is.
        of: the name of the build's file; None for one that has none.
        folder: where that is.
        table: a path, and what stands on the page for a table of points there.
    """
    draft = {
        "draft": 1,
        "kept": datetime.now(UTC).isoformat(),
        "base": base,
        "of": of,
        "folder": folder,
        "sitting": None if sitting is None else sitting.as_plain(),
        "plain": state.plain,
        "raw": dict(state.raw),
        "picked": dict(state.picked),
        "aside": dict(state.stashed),
        "measured": dict(state.measured),
        "table": list(table) if table[1] else [],
        "seen": sorted(seen),
    }
    return json.dumps(draft, ensure_ascii=True, indent=1) + "\n"


def read(path: Path) -> Contents:
    """What a draft holds, as far as it can be used.

    Raises:
        DraftError: it cannot be read, or is no draft.
    """
    draft = _parsed(path)
    plain = known_part(draft.get("plain"))
    raw = _texts(draft.get("raw"), plain)
    picked = {key: text for key, text in _pairs(draft.get("picked")) if key in CHOICE_QUESTIONS}
    measured = {
        path: clean(text) for path, text in _pairs(draft.get("measured")) if is_measured(plain, path, text)
    }
    state = State(plain, raw, picked, _stashed(draft.get("aside")), measured=measured)
    base = draft.get("base")
    steps, table = _steps(draft.get("seen")), _table(draft.get("table"), plain)
    return Contents(state, steps, base if isinstance(base, str) else None, table)


def _parsed(path: Path) -> dict[str, Any]:
    try:
        draft = json.loads(read_whole(path, MOST_DRAFT_BYTES, follow=False).decode("utf-8"))
    except TooLarge:
        raise DraftError(f"{clean(path.name)}: is too large to be a draft") from None
    except (OSError, ValueError, RecursionError):
        raise DraftError(f"{clean(path.name)}: cannot be read as a draft") from None
    if not isinstance(draft, dict) or draft.get("draft") != 1 or _depth(draft) > _MOST_LEVELS:
        raise DraftError(f"{clean(path.name)}: is not a draft that this program can read")
    return draft


def _depth(data: Any) -> int:
    """How deep data are nested; counted level by level, so that no depth is too much."""
    level, depth = [data], 0
    while level and depth <= _MOST_LEVELS:
        depth += 1
        below = [value.values() if isinstance(value, dict) else value for value in level]
        level = [item for items in below for item in items if isinstance(item, dict | list)]
    return depth


def _texts(data: Any, plain: Plain) -> dict[str, str]:
    """The texts that stand in fields that there are."""
    return {path: clean(text[:LONGEST_TEXT]) for path, text in _pairs(data) if _is_field(path, plain)}


def _is_field(path: str, plain: Plain) -> bool:
    if path in COUNT_QUESTIONS:
        return True
    try:
        field = field_of(path)
        return spec_at(field).type not in NOT_TYPED and place_exists(plain, field)
    except NoSuchField:
        return False


def _pairs(data: Any) -> list[tuple[str, str]]:
    items = data.items() if isinstance(data, dict) else ()
    return [(key, text) for key, text in items if isinstance(text, str)]


def _stashed(data: Any) -> dict[str, Any]:
    items = data.items() if isinstance(data, dict) else ()
    fitting = {key: known_entry(_STASHED[key], value) for key, value in items if key in _STASHED}
    return {key: value for key, value in fitting.items() if value}


def _table(data: Any, plain: Plain) -> Table:
    if not (isinstance(data, list) and len(data) == 2 and all(isinstance(text, str) for text in data)):
        return "", ""
    path, text = data
    cells = (clean(cell, lines=True) for cell in text[:MOST_BYTES].split("\t"))
    return path if _is_field(path, plain) else "", "\t".join(cells)


def _steps(data: Any) -> frozenset[str]:
    names = {step.id for step in STEPS}
    return (
        frozenset(step for step in data if isinstance(step, str) and step in names)
        if isinstance(data, list)
        else frozenset()
    )
