"""The bin of a folder of builds: what is deleted waits there under the time of its deletion."""

from __future__ import annotations

import os
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.file_limits import SUFFIX
from fuelwiz.files import move
from fuelwiz.printable import clean
from fuelwiz.store.drafts import is_draft
from fuelwiz.store.lock import refuse_where_open
from fuelwiz.store.moving import HISTORY, free_names, move_what_goes_along, os_errors_as_output_errors
from fuelwiz.store.refuge import is_refuge

BIN = ".bin"

_MOST_TRIES = 100


def put_in_bin(path: Path) -> Path:
    """Puts a build, with its draft and what is kept of its past, into the bin; returns its place there.

    Raises:
        OutputError: it is a folder, or cannot be moved.
    """
    if path.is_dir() and not path.is_symlink():
        raise OutputError(f"{clean(path.name)}: is a folder, and is left alone")
    if is_refuge(path.parent):
        raise OutputError("This draft could not be kept beside its build: open it to save or discard it.")
    refuse_where_open(path)
    with os_errors_as_output_errors(path):
        if not os.path.lexists(path):
            raise FileNotFoundError
        target = _new_place(path.parent / BIN) / path.name
        try:
            move(path, target)
        except OSError:
            target.parent.rmdir()
            raise
    move_what_goes_along(path, target)
    return target


def bring_back(folder: Path) -> Path | None:
    """Brings back what was put into the bin last; returns its file, None where the bin is empty.

    Where its name has been taken since, it comes back with a number.

    Raises:
        OutputError: it cannot be moved.
    """
    for place in _places(folder / BIN):
        deleted = _build_in(place)
        if deleted is None:
            continue
        target = _moved_to(folder / deleted.name, deleted)
        move_what_goes_along(deleted, target)
        for left in (place / HISTORY, place):
            with suppress(OSError):
                left.rmdir()
        return target
    return None


def _new_place(bin_folder: Path) -> Path:
    """A new folder of the bin, named by the time."""
    if bin_folder.is_symlink():
        raise OutputError(f"{BIN}: is a link, where the bin should be a folder: nothing is deleted")
    bin_folder.mkdir(exist_ok=True)
    for _ in range(_MOST_TRIES):
        place = bin_folder / f"{datetime.now(UTC):%Y-%m-%d_%H-%M-%S_%f}"
        with suppress(FileExistsError):
            place.mkdir()
            return place
    raise FileExistsError


def _places(bin_folder: Path) -> list[Path]:
    """What lies in the bin, the last first: a folder for each deletion."""
    try:
        if bin_folder.is_symlink():
            return []
        places = [one for one in bin_folder.iterdir() if one.is_dir() and not one.is_symlink()]
    except OSError:
        return []
    return sorted(places, key=lambda place: place.name, reverse=True)


def _build_in(place: Path) -> Path | None:
    """The build that lies in a place of the bin, or the draft where it had no file."""
    try:
        files = {one.name: one for one in place.iterdir() if one.is_symlink() or not one.is_dir()}
    except OSError:
        return None
    builds = [name for name in files if name.endswith(SUFFIX) and not name.startswith(".")]
    drafts = list(filter(is_draft, files))
    name = min(builds or drafts, default=None)
    return None if name is None else files[name]


def _moved_to(wanted: Path, source: Path) -> Path:
    """Moves a file to the path that is wanted, or to the next one that is free."""
    with os_errors_as_output_errors(source):
        for target in free_names(wanted):
            with suppress(FileExistsError):
                move(source, target)
                return target
        raise FileExistsError
