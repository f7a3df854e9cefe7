"""Who has a build open: a lock beside its file that tells who, where and since when, and ends with its owner.

The system holds the lock for a process and gives it up when the process dies. Where a disk cannot do that, and
for an owner on another machine, what the lock says of its owner is all that is known.
"""

from __future__ import annotations

import json
import os
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.files import hold, read_whole
from fuelwiz.printable import clean
from fuelwiz.store.drafts import hidden_name
from fuelwiz.store.sitting import Sitting

LOCK = ".lock"

_MOST_BYTES = 4096
_TRIES = 20
_PAUSE_S = 0.01
_PATIENCE_S = 5.0


@dataclass(slots=True)
class Lock:
    """A build that is held by one sitting."""

    place: Path
    handle: int

    def release(self) -> None:
        """Let go of the build; what somebody else has put in the lock's place stays."""
        with suppress(OSError):
            if _is_at(self.place, self.handle):
                self.place.unlink()
        with suppress(OSError):
            os.close(self.handle)


def lock_of(build: Path) -> Path:
    """Where the lock of a build stands."""
    return build.with_name(hidden_name(build.name, LOCK))


def take(build: Path, sitting: Sitting, *, by_force: bool = False) -> Lock | Sitting | None:
    """Hold a build for a sitting.

    Args:
        build: its file.
        sitting: who holds it from now on.
        by_force: whether the lock of an owner on another machine is taken over too.

    Returns:
        The lock; who has it; or None where nothing can be locked: a folder that cannot be written, a strange file.
    """
    place = lock_of(build)
    for _ in range(_TRIES):
        try:
            handle = os.open(place, _flags(os.O_RDWR | os.O_CREAT | os.O_EXCL), 0o644)
        except FileExistsError:
            owner = _owner_or_gone(place, by_force)
            if owner is not None:
                return owner if isinstance(owner, Sitting) else None
            time.sleep(_PAUSE_S)
            continue
        except (OSError, ValueError):
            return None
        if _is_written(handle, place, sitting):
            return Lock(place, handle)
        os.close(handle)
    return None


def owner_of(build: Path) -> Sitting | None:
    """Who has a build open in another process, or may have; None where nobody has."""
    found = owner_at(lock_of(build))
    return found if found is not None and found.may_still_run else None


def refuse_where_open(path: Path) -> None:
    """Stops what would take a file away from somebody who has it open.

    Raises:
        OutputError: it says who that is.
    """
    owner = owner_of(path)
    if owner is not None:
        raise OutputError(f"{clean(path.name)}: is open elsewhere, {owner.words}")


def _is_written(handle: int, place: Path, sitting: Sitting) -> bool:
    """Whether the lock is this sitting's: held, still in its place, and told who has it."""
    if hold(handle) is False or not _is_at(place, handle):
        return False
    with suppress(OSError):
        os.write(handle, (json.dumps(sitting.as_plain()) + "\n").encode("utf-8"))
    return True


def _owner_or_gone(place: Path, by_force: bool) -> Sitting | bool | None:
    """Who holds the lock that is there; None once it is gone, or was a dead owner's and is taken away; False for
    what is no lock.
    """
    try:
        handle = os.open(place, _flags(os.O_RDONLY))
    except FileNotFoundError:
        return None
    except (OSError, ValueError):
        return owner_at(place) or False
    try:
        held_here = hold(handle)
        owner = owner_at(place)
        if owner is None:
            # Just made and not told yet, or damaged: nobody holds the second.
            if held_here is False:
                return None
        elif held_here is False or (owner.may_still_run and not (by_force and held_here)):
            return owner
        if not _is_at(place, handle):
            return None
        try:
            place.unlink()
        except OSError:
            return owner or False
        return None
    finally:
        os.close(handle)


def owner_at(place: Path) -> Sitting | None:
    """Whom a lock names; None where it names nobody."""
    try:
        return Sitting.from_plain(json.loads(read_whole(place, _MOST_BYTES, follow=False)))
    except (OSError, ValueError, RecursionError):
        return None


def _flags(flags: int) -> int:
    return flags | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)


def _is_at(place: Path, handle: int) -> bool:
    """Whether an open file is the one of that name."""
    try:
        return os.path.samestat(os.fstat(handle), place.lstat())
    except OSError:
        return False


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """While this lasts nobody else who asks so writes in a folder: to look and to replace is one step.

    Raises:
        OutputError: somebody else has been writing there for seconds.
    """
    try:
        handle = os.open(folder, os.O_RDONLY)
    except (OSError, ValueError):
        yield  # a folder that cannot be opened: the write itself says what is wrong
        return
    try:
        end = time.monotonic() + _PATIENCE_S
        while hold(handle) is False:
            if time.monotonic() > end:
                raise OutputError("Somebody else is saving in this folder: try again.")
            time.sleep(_PAUSE_S)
        yield
    finally:
        os.close(handle)
