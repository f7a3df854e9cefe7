"""The folder of builds: what is in it, and what can be done to a file as a whole.

Nothing here overwrites a file, and what is deleted goes into a bin.
"""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any

from fuelwiz.errors import Fault, OutputError, SessionError
from fuelwiz.file_limits import LONGEST_NAME, MOST_BYTES, SUFFIX
from fuelwiz.files import read_whole, reason, write_atomically
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.store.bin import bring_back, put_in_bin
from fuelwiz.store.build_file import LEFT_OVER, BuildFile, draft_entry, glance, read_build_file, unread
from fuelwiz.store.drafts import changed_ns, drafts_away, is_draft, read_draft
from fuelwiz.store.left_overs import sweep
from fuelwiz.store.lock import refuse_where_open
from fuelwiz.store.moving import free_names, move_what_goes_along, os_errors_as_output_errors, put_new
from fuelwiz.store.refuge import refuges

__all__ = [
    "BuildFile",
    "bring_back",
    "copy",
    "entries",
    "file_name",
    "put_in_bin",
    "rename",
    "unsaved",
]

_LONGEST_STEM = 60
_RESERVED = re.compile(r"con|prn|aux|nul|com\d|lpt\d")


def entries(folder: Path) -> list[BuildFile]:
    """The builds of a folder, last changed on top; a file that cannot be read is an entry that says why.

    Raises:
        SessionError: the folder cannot be read; one that is not there yet holds nothing.
    """
    names = _names(folder)
    drafts = list(filter(is_draft, names))
    return _in_order(read_build_file(folder / name, drafts) for name in names if _is_build(name))


def unsaved(folder: Path) -> list[BuildFile]:
    """The drafts of builds that have no file, the last kept first, and any that is damaged.

    Raises:
        SessionError: the folder cannot be read.
    """
    return _unsaved(folder, _names(folder))


def _unsaved(folder: Path, names: set[str]) -> list[BuildFile]:
    beside = [
        entry
        for name in filter(is_draft, names)
        if (entry := draft_entry(folder / name)) and (entry.fault or not _is_of(folder / name, names))
    ]
    away = [entry for draft in drafts_away(folder) if (entry := draft_entry(draft.place))]
    return _in_order([*beside, *away])


def _is_of(place: Path, names: set[str]) -> bool:
    """Whether a draft is of a build whose file is there."""
    draft = read_draft(place)
    build = None if draft is None else draft.build
    return build is not None and build.name in names


@record
class Listing:
    """What is in a folder of builds by name and time: the last changed on top, drafts by themselves above all."""

    drafts: list[BuildFile]
    builds: list[BuildFile]
    names_of_drafts: list[str]

    def read(self, entry: BuildFile) -> BuildFile:
        """A build of it with what its file says."""
        return read_build_file(entry.path, self.names_of_drafts)

    def glance(self, entry: BuildFile) -> BuildFile:
        """The same as far as it takes no time: what is unusual stays a name."""
        return glance(entry.path, self.names_of_drafts)


def listing(folder: Path) -> Listing:
    """What is in a folder, without looking into the files of builds; what dead writers left there is taken away.

    Raises:
        SessionError: the folder cannot be read.
    """
    names = _names(folder)
    for refuge in refuges():
        sweep(refuge, _names(refuge))
    stuck = [
        BuildFile(folder / name, changed_ns(folder / name), {}, LEFT_OVER, has_draft=False)
        for name in sweep(folder, names)
    ]
    drafts = [name for name in names if is_draft(name) and os.path.lexists(folder / name)]
    builds = _in_order(unread(folder / name) for name in names if _is_build(name))
    return Listing(_unsaved(folder, {*filter(_is_build, names), *drafts}), [*builds, *stuck], drafts)


def _in_order(builds: Iterable[BuildFile]) -> list[BuildFile]:
    return sorted(builds, key=lambda entry: (-entry.changed, entry.path.name))


def _is_build(name: str) -> bool:
    """Whether a file is a build by its name: drafts, bin and history begin with a dot."""
    return name.endswith(SUFFIX) and not name.startswith(".")


def _names(folder: Path) -> set[str]:
    try:
        return set(os.listdir(folder))
    except FileNotFoundError:
        return set()
    except NotADirectoryError:
        words = "is a file, not a folder of builds"
    except PermissionError:
        words = "may not be read: permission denied"
    except (OSError, ValueError) as error:
        words = f"cannot be read: {reason(error)}"
    raise SessionError(clean(str(folder)), (Fault("", words),))


def file_name(name: str) -> str:
    """The name of the file for a build of that name: "Hill-climb six" is kept in hill-climb-six.toml."""
    letters = unicodedata.normalize("NFC", clean(name).lower())
    stem = re.sub(r"[\W_]+", "-", letters).strip("-")[:_LONGEST_STEM].strip("-")
    if not stem or _RESERVED.fullmatch(stem):
        stem = f"build-{stem}".strip("-")
    return f"{stem}{SUFFIX}"


def copy(path: Path) -> Path:
    """Puts a copy of a build beside it, called "..., copy"; returns its file.

    Raises:
        OutputError: the file cannot be read, or the copy cannot be written.
    """
    entry = read_build_file(path)
    stem = path.name.removesuffix(SUFFIX)[:_LONGEST_STEM]
    with os_errors_as_output_errors(path):
        content = read_whole(path, MOST_BYTES)
        if "name" in entry.plain:
            content = _named(content, entry.plain, f"{entry.name[: LONGEST_NAME - 6]}, copy")
        for target in free_names(path.with_name(f"{stem}-copy{SUFFIX}")):
            with suppress(FileExistsError):
                put_new(target, content)
                return target
        raise FileExistsError


def rename(path: Path, new_name: str) -> Path:
    """Gives a build another name, and its file the name that goes with it; returns the file.

    The build keeps its place in the list: a name changes no figure.

    Raises:
        OutputError: the name is empty or taken, or the file cannot be read or written.
    """
    name = _allowed(new_name)
    refuse_where_open(path)
    if path.is_symlink():
        raise OutputError(f"{clean(path.name)}: is a link: rename the file that it leads to")
    entry = read_build_file(path)
    if entry.fault:
        raise OutputError(f"{entry.file_name}: cannot be renamed until it can be read: {entry.fault}")
    target = path.with_name(file_name(name))
    with os_errors_as_output_errors(path):
        content = _named(read_whole(path, MOST_BYTES), entry.plain, name)
    if _is_same(path, target):
        write_atomically(path, content.decode("utf-8"))
        target = path
    else:
        with os_errors_as_output_errors(target):
            put_new(target, content, like=path)
        with os_errors_as_output_errors(path):
            path.unlink()
        move_what_goes_along(path, target)
    with os_errors_as_output_errors(target):
        os.utime(target, ns=(entry.changed, entry.changed))
    return target


def _allowed(new_name: str) -> str:
    """A name that a build may have."""
    name = clean(new_name).strip()
    if not name:
        raise OutputError("enter a name for the build")
    if len(name) > LONGEST_NAME:
        raise OutputError(f"the name has {len(name)} characters; the limit is {LONGEST_NAME}")
    return name


def _is_same(path: Path, target: Path) -> bool:
    """Whether two names are those of one file; where case does not count, two spellings may be."""
    if path.name == target.name:
        return True
    try:
        return path.name.lower() == target.name.lower() and path.samefile(target)
    except OSError:
        return False


def _named(content: bytes, plain: dict[str, Any], name: str) -> bytes:
    """The content of a session file that gives the build that name, with all else as it stands."""
    from fuelwiz.document.merge import merge

    if plain.get("name") == name:
        return content
    return merge(content.decode("utf-8"), {**plain, "name": name}).encode("utf-8")
