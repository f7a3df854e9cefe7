"""Drafts: each belongs to one sitting, stands beside its build, and is nobody else's to remove or to write over."""

from __future__ import annotations

import hashlib
import json
import os
import re
import tomllib
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any

from fuelwiz.file_limits import MOST_BYTES, MOST_DRAFT_BYTES, SUFFIX
from fuelwiz.files import (
    BYTE_ORDER_MARK,
    cut_to_bytes,
    read_whole,
)
from fuelwiz.record import record
from fuelwiz.store.refuge import is_refuge, refuges
from fuelwiz.store.sitting import Sitting

DRAFT = ".draft"

UNNAMED_DRAFT = ".unnamed-"
"""How the draft of a build without a file begins."""
_LONGEST_STEM = 180
_ID = re.compile(r"\.[0-9a-f]{8}\Z")
_NOT_COUNTED = ("record", "format")


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
    return stem if is_draft(name) and stem.endswith(SUFFIX) and not name.startswith(UNNAMED_DRAFT) else None


@record
class Draft:
    """A draft as it stands on the disk: what it tells, and by what it is known again.

    `plain` is None for a damaged one. One that `is_away` had to be kept elsewhere than beside its build.
    """

    place: Path
    mark: tuple[int, int, int, int]
    plain: dict[str, Any] | None
    is_away: bool = False

    @property
    def sitting(self) -> Sitting | None:
        """Whose it is; None where it does not say."""
        return Sitting.from_plain((self.plain or {}).get("sitting"))

    @property
    def build(self) -> Path | None:
        """The file of its build; None for a build without a file."""
        name = build_name(self.place.name)
        said = (self.plain or {}).get("of")
        if self.is_away:
            is_name = isinstance(said, str) and said == os.path.basename(said) and said not in ("", ".", "..")
            return self.folder / str(said) if is_name else None
        if name is None:
            return None
        if isinstance(said, str) and "/" not in said and hidden_name(said, DRAFT) == f".{name}{DRAFT}":
            name = said
        return self.place.with_name(name)

    @property
    def folder(self) -> Path:
        """The folder of its build."""
        said = (self.plain or {}).get("folder")
        return Path(said) if self.is_away and isinstance(said, str) and said else self.place.parent

    def says_more_than(self, file: dict[str, Any] | None) -> bool:
        """Whether it says something else than what its build's file says; None for a file that cannot be read."""
        kept = (self.plain or {}).get("plain")
        if not isinstance(kept, dict) or self.plain is None:
            return False
        beside = (self.plain.get(key) for key in ("raw", "picked", "aside", "table"))
        return file is None or any(beside) or _that_counts(kept) != _that_counts(file)


def _that_counts(plain: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in plain.items() if key not in _NOT_COUNTED and value not in ({}, [])}


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
    return Draft(place, mark, plain if is_one else None, is_refuge(place.parent))


def drafts_away(folder: Path) -> list[Draft]:
    """The drafts of a folder of builds that had to be kept elsewhere, as it took none, and say more than its files."""
    home = os.path.realpath(folder)
    found = []
    for refuge in refuges():
        with suppress(OSError):
            found += [read_draft(refuge / name) for name in os.listdir(refuge) if is_draft(name)]
    ours = [draft for draft in found if draft is not None and os.path.realpath(draft.folder) == home]
    return [draft for draft in ours if draft.says_more_than(_file_says(draft.build))]


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
    """The last draft of a build that nobody works at any more, wherever it had to be kept."""
    away = [draft for draft in drafts_away(path.parent) if draft.build and draft.build.name == path.name]
    left = [draft for draft in (*pending_drafts(path), *away) if not _is_at_work(draft)]
    return max(left, key=lambda draft: draft.mark[2]).place if left else None


def _is_at_work(draft: Draft) -> bool:
    sitting = draft.sitting
    return sitting is not None and sitting.is_of_this_host and sitting.may_still_run


def _file_says(path: Path | None) -> dict[str, Any] | None:
    if path is None:
        return None
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


def remove_abandoned(draft: Draft) -> None:
    """Deletes a draft that was come back to, where nobody works at it or has changed it since."""
    sitting = draft.sitting
    is_free = sitting is None or (sitting.is_of_this_host and not sitting.may_still_run)
    if is_free and mark_of(draft.place) == draft.mark:
        with suppress(OSError):
            draft.place.unlink()
