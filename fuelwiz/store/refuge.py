"""Where a draft goes when the folder of its build takes none: private places of the user, looked into at each start."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

_PRIVATE = 0o700


def refuges() -> Iterator[Path]:
    """The folders that are there and private, the first the one that lasts longest."""
    return filter(_is_private, _candidates())


def made_refuges() -> Iterator[Path]:
    """The same, each made where it is missing."""
    for folder in _candidates():
        with suppress(OSError, ValueError):
            folder.parent.mkdir(parents=True, exist_ok=True)
            folder.mkdir(mode=_PRIVATE, exist_ok=True)
        if _is_private(folder):
            yield folder


def is_refuge(folder: Path) -> bool:
    """Whether a folder is one of them."""
    return any(folder == one for one in refuges())


def _candidates() -> Iterator[Path]:
    """The folder for what a program keeps between its runs (XDG Base Directory Specification), then a temporary one.

    Found without `platformdirs`, which takes longer to load than a draft to read.
    """
    with suppress(RuntimeError):  # a user without a home
        state = _named("XDG_STATE_HOME", "LOCALAPPDATA") or "~/.local/state"
        yield Path(state).expanduser() / "fuelwiz" / "drafts"
    user = os.geteuid() if hasattr(os, "geteuid") else "user"
    yield Path(_named("TMPDIR", "TEMP", "TMP") or "/tmp") / f"fuelwiz-{user}"


def _named(*variables: str) -> str | None:
    """What the first of these variables says that says anything."""
    return next(filter(None, map(os.environ.get, variables)), None)


def _is_private(folder: Path) -> bool:
    """Whether it is the user's own folder, that nobody else may look into or put anything into."""
    try:
        status = folder.lstat()
    except (OSError, ValueError):
        return False
    is_own = not hasattr(os, "geteuid") or (status.st_uid == os.geteuid() and not status.st_mode & 0o077)
    return stat.S_ISDIR(status.st_mode) and is_own
