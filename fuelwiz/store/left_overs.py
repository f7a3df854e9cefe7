"""What a killed program leaves in a folder of builds: taken away where that harms nobody, else told."""

from __future__ import annotations

import os
import re
import stat
import time
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from fuelwiz.files import UNFINISHED, hold
from fuelwiz.store.drafts import is_draft
from fuelwiz.store.lock import LOCK, owner_at

_UNFINISHED = re.compile(rf"\..*\.[0-9a-f]{{8}}{re.escape(UNFINISHED)}\Z", re.DOTALL)
_YOUNG_S = 60.0
"""A younger one may have been made this moment and not be held yet."""


def is_left_over(name: str) -> bool:
    """Whether a file is by its name one that a write begins with."""
    return _UNFINISHED.fullmatch(name) is not None


def sweep(folder: Path, names: Iterable[str]) -> list[str]:
    """Takes away what dead writers left in a folder; the names of what is old and cannot be taken away.

    Args:
        folder: the folder of builds.
        names: what is in it.
    """
    left = []
    for name in names:
        place = folder / name
        if is_left_over(name):
            if _is_abandoned(place) and not _removed(place):
                left.append(name)
        elif (is_draft(name) and _is_empty(place) and _is_abandoned(place)) or _is_dead_lock(place):
            _removed(place)
    return left


def _is_abandoned(place: Path) -> bool:
    """Whether a plain file is old by any clock, and held by nobody."""
    with suppress(OSError, ValueError):
        status = place.lstat()
        if stat.S_ISREG(status.st_mode) and abs(time.time() - status.st_mtime) > _YOUNG_S:
            return not _is_held(place)
    return False


def _is_held(place: Path) -> bool:
    try:
        handle = os.open(place, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
    except OSError:
        return False
    try:
        return hold(handle) is False
    finally:
        os.close(handle)


def _is_empty(place: Path) -> bool:
    with suppress(OSError):
        return place.lstat().st_size == 0
    return False


def _is_dead_lock(place: Path) -> bool:
    if not (place.name.startswith(".") and place.name.endswith(LOCK)):
        return False
    owner = owner_at(place)
    return (
        owner is not None and not owner.may_still_run and owner.process != os.getpid() and not _is_held(place)
    )


def _removed(place: Path) -> bool:
    try:
        place.unlink()
    except OSError:
        return False
    return True
