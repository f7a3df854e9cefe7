"""The draft beside a build: all that is told, refused or not, kept until it is saved or given up."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from fuelwiz.desk.composites import COUNTED, PICKED, field_of
from fuelwiz.desk.errors import DraftError, NoSuchField
from fuelwiz.desk.fields import NOT_TYPED, place_exists, spec_at
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.reading import known_entry, known_part
from fuelwiz.desk.state import State
from fuelwiz.file_limits import MOST_DRAFT_BYTES
from fuelwiz.files import TooLarge, read_whole
from fuelwiz.printable import clean
from fuelwiz.questions import STEPS

_MOST_LEVELS = 12
_LONGEST_TEXT = 4000
_ASIDE = {
    "pump.figure": "pump.curve",
    "pump.curve": "pump.curve",
    "pump.sample": "pump.curve",
    "surge": "surge",
    "inlet.strainer": "inlet.strainer",
}


@dataclass(frozen=True, slots=True)
class Contents:
    """What a draft holds: all that was told, the steps that were seen, the digest of the file that it began from."""

    state: State
    seen: frozenset[str]
    base: str | None
    kept: datetime | None


def draft_text(state: State, seen: Iterable[str], base: str | None) -> str:
    """The text of a draft."""
    told = {
        "draft": 1,
        "kept": datetime.now(UTC).isoformat(),
        "base": base,
        "plain": state.plain,
        "raw": dict(state.raw),
        "picked": dict(state.picked),
        "aside": dict(state.aside),
        "seen": sorted(seen),
    }
    return json.dumps(told, ensure_ascii=True, indent=1) + "\n"


def read(path: Path) -> Contents:
    """What a draft holds, as far as it can be used.

    Raises:
        DraftError: it cannot be read, or is no draft.
    """
    told = _parsed(path)
    plain = known_part(told.get("plain"))
    raw = _texts(told.get("raw"), plain)
    picked = {key: text for key, text in _pairs(told.get("picked")) if key in PICKED}
    state = State(plain, raw, picked, _aside(told.get("aside")))
    base = told.get("base")
    return Contents(
        state, _steps(told.get("seen")), base if isinstance(base, str) else None, _time(told.get("kept"))
    )


def _parsed(path: Path) -> dict[str, Any]:
    try:
        told = json.loads(read_whole(path, MOST_DRAFT_BYTES).decode("utf-8"))
    except TooLarge:
        raise DraftError(f"{clean(path.name)}: is larger than any draft") from None
    except (OSError, ValueError, RecursionError):
        raise DraftError(f"{clean(path.name)}: cannot be read as a draft") from None
    if not isinstance(told, dict) or told.get("draft") != 1 or _depth(told) > _MOST_LEVELS:
        raise DraftError(f"{clean(path.name)}: is no draft that this program can read")
    return told


def _depth(told: Any) -> int:
    """How deep data are nested; counted level by level, so that no depth is too much."""
    level, depth = [told], 0
    while level and depth <= _MOST_LEVELS:
        depth += 1
        below = [value.values() if isinstance(value, dict) else value for value in level]
        level = [item for items in below for item in items if isinstance(item, dict | list)]
    return depth


def _texts(told: Any, plain: Plain) -> dict[str, str]:
    """The texts that stand in fields that there are."""
    return {path: clean(text[:_LONGEST_TEXT]) for path, text in _pairs(told) if _is_field(path, plain)}


def _is_field(path: str, plain: Plain) -> bool:
    if path in COUNTED:
        return True
    try:
        field = field_of(path)
        return spec_at(field).type not in NOT_TYPED and place_exists(plain, field)
    except NoSuchField:
        return False


def _pairs(told: Any) -> list[tuple[str, str]]:
    items = told.items() if isinstance(told, dict) else ()
    return [(key, text) for key, text in items if isinstance(text, str)]


def _aside(told: Any) -> dict[str, Any]:
    items = told.items() if isinstance(told, dict) else ()
    fitting = {key: known_entry(_ASIDE[key], value) for key, value in items if key in _ASIDE}
    return {key: value for key, value in fitting.items() if value}


def _steps(told: Any) -> frozenset[str]:
    names = {step.id for step in STEPS}
    return (
        frozenset(step for step in told if isinstance(step, str) and step in names)
        if isinstance(told, list)
        else frozenset()
    )


def _time(told: Any) -> datetime | None:
    try:
        kept = datetime.fromisoformat(told) if isinstance(told, str) else None
    except ValueError:
        return None
    return kept if kept is not None and kept.tzinfo is not None else None
