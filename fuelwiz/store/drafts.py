"""Where drafts stand: beside the file of their build, or under a number of their own where it has none."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.files import reason
from fuelwiz.printable import clean

SUFFIX = ".toml"
DRAFT = ".draft"

_UNNAMED = ".unnamed-"
_MOST_UNNAMED = 1000


def is_draft(name: str) -> bool:
    """Whether a file is a draft by its name."""
    return name.startswith(".") and name.endswith(DRAFT)


def draft_of(path: Path) -> Path:
    """Where the draft of a build is kept."""
    return path.with_name(f".{path.name}{DRAFT}")


def build_of(place: Path) -> Path | None:
    """The file of the build that a draft is of, by the draft's own name; None for a build without a file."""
    name = place.name
    if name.startswith(_UNNAMED) or not (name.startswith(".") and name.endswith(SUFFIX + DRAFT)):
        return None
    return place.with_name(name[1 : -len(DRAFT)])


def newer_draft(path: Path) -> Path | None:
    """The draft of a build that was kept after its file was last written, or that has no file."""
    place = draft_of(path)
    changed = changed_ns(place)
    return place if changed and changed > changed_ns(path) else None


def changed_ns(path: Path) -> int:
    """When a file was last changed, in ns since 1970; 0 where there is none."""
    try:
        return path.stat().st_mtime_ns
    except (OSError, ValueError):
        return 0


def new_draft_place(folder: Path) -> Path:
    """A place for the draft of a build that has no file yet; nobody else gets the same.

    Raises:
        OutputError: nothing can be written there.
    """
    name = clean(str(folder))
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for number in range(1, _MOST_UNNAMED):
            place = folder / f"{_UNNAMED}{number}{DRAFT}"
            with suppress(FileExistsError):
                os.close(os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666))
                return place
    except OSError as error:
        raise OutputError(f"{name}: no draft can be kept: {reason(error)}") from None
    raise OutputError(f"{name}: there are too many drafts already")
