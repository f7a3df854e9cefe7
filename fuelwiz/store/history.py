"""How a build was before its last change: kept at each save, so that the list can say what changed."""

from __future__ import annotations

import tomllib
from contextlib import suppress
from pathlib import Path
from typing import Any

from fuelwiz.document.changes import Change, changes
from fuelwiz.errors import OutputError
from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.files import BYTE_ORDER_MARK, Access, read_whole, write_atomically
from fuelwiz.store.moving import HISTORY

_NO_CHANGE = ("format", "record", "show_units")


def keep(path: Path, new_text: str) -> None:
    """Keeps the file as it stands, where what is about to be saved changes the build.

    To be called right before a save. A folder that cannot be written keeps nothing: the save will say so.

    Args:
        path: the build's file.
        new_text: what is going to stand in it.
    """
    before, now = _plain_of(path), _parsed(new_text)
    if before is None or now is None or not _changes(before, now):
        return
    copy = _copy_of(path)
    with suppress(OSError, ValueError, OutputError):
        if copy.parent.is_symlink() or copy.is_symlink():
            return  # whoever put it there chose what would be written over
        copy.parent.mkdir(exist_ok=True)
        text = read_whole(path, MOST_BYTES).decode("utf-8")
        write_atomically(copy, text, follow=False, access=Access.of(path))


def last_change(path: Path) -> tuple[Change, ...]:
    """What was changed last in a build, in the order of the file; empty where that is not known."""
    copy = _copy_of(path)
    before = None if copy.parent.is_symlink() else _plain_of(copy, follow=False)
    now = _plain_of(path)
    return () if before is None or now is None else _changes(before, now)


def changed_outside(text_before: str | None, path: Path) -> tuple[Change, ...]:
    """What a file says otherwise than a text that was read from it before."""
    before, now = _parsed(text_before or ""), _plain_of(path)
    return () if before is None or now is None else _changes(before, now)


def _copy_of(path: Path) -> Path:
    return path.parent / HISTORY / path.name


def _plain_of(path: Path, *, follow: bool = True) -> dict[str, Any] | None:
    try:
        return _parsed(read_whole(path, MOST_BYTES, follow=follow).decode("utf-8"))
    except (OSError, ValueError):
        return None


def _parsed(text: str) -> dict[str, Any] | None:
    try:
        return tomllib.loads(text.removeprefix(BYTE_ORDER_MARK))
    except (ValueError, RecursionError):
        return None


def _changes(before: dict[str, Any], now: dict[str, Any]) -> tuple[Change, ...]:
    old, new = ({key: value for key, value in one.items() if key not in _NO_CHANGE} for one in (before, now))
    return changes(old, new, into_absent=False)
