"""The draft beside a build: all that is told, refused or not, kept until it is saved or given up."""

from __future__ import annotations

import json
import os
from collections.abc import Iterable
from contextlib import suppress
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
from fuelwiz.errors import OutputError
from fuelwiz.files import write_atomically
from fuelwiz.printable import clean
from fuelwiz.questions import STEPS

SUFFIX = ".draft"
UNNAMED = ".unnamed-"

_MOST_BYTES = 512 * 1024
_MOST_LEVELS = 12
_MOST_UNNAMED = 1000
_LONGEST_TEXT = 4000
_ASIDE = {
    "pump.figure": "pump.curve",
    "pump.curve": "pump.curve",
    "pump.sample": "pump.curve",
    "surge": "surge",
    "inlet.strainer": "inlet.strainer",
}


@dataclass(frozen=True, slots=True)
class Draft:
    """A draft as it stands in a folder: of which build, when it was kept, and why it cannot be read, if so."""

    path: Path
    build: Path | None
    name: str
    kept: datetime | None
    fault: str | None = None


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


def new_place(folder: Path) -> Path:
    """A place for the draft of a build that has no file yet; nobody else gets the same.

    Raises:
        OutputError: nothing can be written there.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for number in range(1, _MOST_UNNAMED):
            path = folder / f"{UNNAMED}{number}{SUFFIX}"
            with suppress(FileExistsError):
                os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666))
                return path
    except OSError as error:
        raise OutputError(
            f"{clean(str(folder))}: no draft can be kept: {(error.strerror or str(error)).lower()}"
        ) from None
    raise OutputError(f"{clean(str(folder))}: there are too many drafts already")


def write(path: Path, text: str) -> None:
    """Puts a draft in its place at one stroke; OutputError where it cannot be written."""
    write_atomically(path, text)


def build_of(path: Path) -> Path | None:
    """The file of the build that a draft is of, by the draft's own name; None for a build without a file."""
    name = path.name
    if name.startswith(UNNAMED) or not (name.startswith(".") and name.endswith(f".toml{SUFFIX}")):
        return None
    return path.with_name(name[1 : -len(SUFFIX)])


def drafts_in(folder: Path) -> list[Draft]:
    """The drafts in a folder, the last kept first; one that cannot be read says why."""
    try:
        names = sorted(name for name in os.listdir(folder) if name.startswith(".") and name.endswith(SUFFIX))
    except OSError:
        return []
    found = [_draft(folder / name) for name in names]
    return sorted((one for one in found if one is not None), key=_when, reverse=True)


def _draft(path: Path) -> Draft | None:
    build = build_of(path)
    if build is None and not path.name.startswith(UNNAMED):
        return None
    called = clean(build.name.removesuffix(".toml")) if build else "Unnamed build"
    try:
        contents = read(path)
    except DraftError as error:
        return Draft(path, build, called, None, str(error))
    own = contents.state.plain.get("name", "").strip()
    return Draft(path, build, clean(own) or called, contents.kept)


def _when(draft: Draft) -> float:
    return draft.kept.timestamp() if draft.kept else 0.0


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
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
        if len(content) > _MOST_BYTES:
            raise DraftError(f"{clean(path.name)}: is larger than any draft")
        told = json.loads(content.decode("utf-8"))
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
