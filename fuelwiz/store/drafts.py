"""Drafts: each belongs to one sitting, stands beside its build, and is nobody else's to remove or to write over."""

from __future__ import annotations

import hashlib
import json
import os
import re
import secrets
import tomllib
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fuelwiz.errors import OutputError
from fuelwiz.file_limits import MOST_BYTES, MOST_DRAFT_BYTES
from fuelwiz.files import (
    BYTE_ORDER_MARK,
    Access,
    cut_to_bytes,
    move,
    put_in_place,
    read_whole,
    reason,
    write_atomically,
)
from fuelwiz.printable import clean
from fuelwiz.store.sitting import Sitting

SUFFIX = ".toml"
DRAFT = ".draft"

_UNNAMED = ".unnamed-"
_NUMBERED = 1000
_LONGEST_STEM = 180
_ID = re.compile(r"\.[0-9a-f]{8}\Z")
_NOT_TOLD = ("record", "format")


def is_draft(name: str) -> bool:
    """Whether a file is a draft by its name."""
    return name.startswith(".") and name.endswith(DRAFT)


def hidden_name(name: str, ending: str) -> str:
    """The name of what stands beside a file, hidden; a very long one is cut, with a digest of the whole."""
    if len(os.fsencode(name)) > _LONGEST_STEM:
        digest = hashlib.sha256(os.fsencode(name)).hexdigest()[:16]
        name = f"{cut_to_bytes(name, _LONGEST_STEM // 2)}-{digest}{SUFFIX}"
    return f".{name}{ending}"


def draft_of(path: Path) -> Path:
    """Where the first draft of a build stands; one more, of another sitting, has an id in its name."""
    return path.with_name(hidden_name(path.name, DRAFT))


def build_name(name: str) -> str | None:
    """The name of the build's file that a draft is of, by the draft's own; None for a build without a file."""
    stem = name[1 : -len(DRAFT)]
    stem = _ID.sub("", stem) if _ID.sub("", stem).endswith(SUFFIX) else stem
    return stem if is_draft(name) and stem.endswith(SUFFIX) and not name.startswith(_UNNAMED) else None


@dataclass(frozen=True, slots=True)
class Draft:
    """A draft as it stands on the disk: what it tells, and by what it is known again. `plain` is None for damaged."""

    place: Path
    mark: tuple[int, int, int, int]
    plain: dict[str, Any] | None

    @property
    def sitting(self) -> Sitting | None:
        """Whose it is; None where it does not say."""
        return Sitting.from_plain((self.plain or {}).get("sitting"))

    @property
    def build(self) -> Path | None:
        """The file of its build; None for a build without a file."""
        name = build_name(self.place.name)
        said = (self.plain or {}).get("of")
        if name is None:
            return None
        if isinstance(said, str) and "/" not in said and hidden_name(said, DRAFT) == f".{name}{DRAFT}":
            name = said
        return self.place.with_name(name)

    def says_more_than(self, file: dict[str, Any] | None) -> bool:
        """Whether it says something else than what its build's file says; None for a file that cannot be read."""
        told = (self.plain or {}).get("plain")
        if not isinstance(told, dict) or self.plain is None:
            return False
        beside = (self.plain.get(key) for key in ("raw", "picked", "aside"))
        return file is None or any(beside) or _told(told) != _told(file)


def _told(plain: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in plain.items() if key not in _NOT_TOLD and value not in ({}, [])}


def read_draft(place: Path) -> Draft | None:
    """A draft as it stands there; None where there is nothing."""
    mark = mark_of(place)
    if mark is None:
        return None
    try:
        plain = json.loads(read_whole(place, MOST_DRAFT_BYTES, follow=False).decode("utf-8"))
    except (OSError, ValueError, RecursionError):
        plain = None
    is_one = isinstance(plain, dict) and isinstance(plain.get("plain"), dict)
    return Draft(place, mark, plain if is_one else None)


def drafts_of(path: Path, names: Iterable[str] | None = None) -> list[Draft]:
    """The drafts of a build, the last kept first.

    Args:
        path: the build's file.
        names: the names in its folder, where they are known.
    """
    if names is None:
        try:
            names = os.listdir(path.parent)
        except (OSError, ValueError):
            return []
    wanted = draft_of(path).name[1 : -len(DRAFT)]
    found = (
        read_draft(path.with_name(name)) for name in names if is_draft(name) and build_name(name) == wanted
    )
    drafts = [draft for draft in found if draft is not None]
    return sorted(drafts, key=lambda draft: (-draft.mark[2], draft.place.name))


def pending_drafts(path: Path, names: Iterable[str] | None = None) -> list[Draft]:
    """Those that say something else than the build's file, whatever any clock says."""
    drafts = drafts_of(path, names)
    if not drafts:
        return []
    file = _file_says(path)
    return [draft for draft in drafts if draft.says_more_than(file)]


def abandoned_draft(path: Path) -> Path | None:
    """The last draft of a build that nobody works at any more."""
    left = (draft for draft in pending_drafts(path) if not _is_at_work(draft))
    return next((draft.place for draft in left), None)


def _is_at_work(draft: Draft) -> bool:
    sitting = draft.sitting
    return sitting is not None and sitting.is_of_this_host and sitting.may_still_run


def _file_says(path: Path) -> dict[str, Any] | None:
    try:
        return tomllib.loads(read_whole(path, MOST_BYTES).decode("utf-8").removeprefix(BYTE_ORDER_MARK))
    except (OSError, ValueError, RecursionError):
        return None


def mark_of(place: Path) -> tuple[int, int, int, int] | None:
    """By what a file is known again as the one that it was; None where there is none."""
    try:
        status = place.lstat()
    except (OSError, ValueError):
        return None
    return status.st_dev, status.st_ino, status.st_mtime_ns, status.st_size


def build_of(place: Path) -> Path | None:
    """The file of the build that a draft is of, by the draft's name alone."""
    name = build_name(place.name)
    return None if name is None else place.with_name(name)


def changed_ns(path: Path) -> int:
    """When a file was last changed, in ns since 1970; 0 where there is none."""
    try:
        return path.stat().st_mtime_ns
    except (OSError, ValueError):
        return 0


@dataclass(slots=True)
class OwnDraft:
    """The draft that one sitting writes: in a place that was nobody's, and left alone once it is not its own."""

    folder: Path
    build: Path | None
    place: Path | None = None
    _mark: tuple[int, int, int, int] | None = None

    def write(self, text: str) -> Path:
        """Keep a text in place of the one before; where it is kept.

        Raises:
            OutputError: nothing can be written there.
        """
        if self.place is not None and self._is_own:
            access = None if self.build is None else Access.of(self.build)
            write_atomically(self.place, text, follow=False, access=access)
        else:
            self.place = self._kept_new(text)
        self._mark = mark_of(self.place)
        return self.place

    def remove(self) -> None:
        """Delete it, where it still is what was written here."""
        if self.place is not None and self._is_own:
            with suppress(OSError):
                self.place.unlink()

    @property
    def _is_own(self) -> bool:
        return self.place is not None and self._mark is not None and mark_of(self.place) == self._mark

    def _kept_new(self, text: str) -> Path:
        name = clean(str(self.folder))
        access = None if self.build is None else Access.of(self.build)
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            for place in _places(self.folder, self.build):
                if os.path.lexists(place):
                    continue
                with suppress(FileExistsError):
                    put_in_place(place, text.encode("utf-8"), access=access, move=move)
                    return place
        except (OSError, ValueError) as error:
            why = reason(error)
            raise OutputError(f"{name}: no draft can be kept: {why}", why) from None
        raise OutputError(f"{name}: no draft can be kept")


def remove_abandoned(draft: Draft) -> None:
    """Deletes a draft that was come back to, where nobody works at it or has changed it since."""
    sitting = draft.sitting
    is_free = sitting is None or (sitting.is_of_this_host and not sitting.may_still_run)
    if is_free and mark_of(draft.place) == draft.mark:
        with suppress(OSError):
            draft.place.unlink()


def _places(folder: Path, build: Path | None) -> Iterator[Path]:
    """Where a draft may stand: the plain name first, then names that are nobody's."""
    if build is not None:
        yield draft_of(build)
    else:
        yield from (folder / f"{_UNNAMED}{number}{DRAFT}" for number in range(1, _NUMBERED))
    for _ in range(_NUMBERED):
        own = secrets.token_hex(4)
        yield (
            folder / f"{_UNNAMED}{own}{DRAFT}"
            if build is None
            else build.with_name(hidden_name(build.name, f".{own}{DRAFT}"))
        )
