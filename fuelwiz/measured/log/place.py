"""Where the log of a build is: the file that is named, else the one that the session names beside its own."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from fuelwiz.errors import LogError
from fuelwiz.files import Seen, plain_files
from fuelwiz.printable import clean
from fuelwiz.session import Session

ENDINGS = (".csv", ".tsv")
MOST_LOOKED_AT = 5000
"""So many entries of a folder: nobody looks through more."""


def log_path(build: Path, session: Session, named: str | None) -> Path:
    """The path of the log.

    Args:
        build: path of the session file.
        session: what it holds.
        named: the log that was asked for; None for the session's own.

    Raises:
        LogError: none is named anywhere.
    """
    if named is not None:
        return Path(named)
    if not session.log.file:
        raise LogError(f'{clean(str(build))}: names no log: give one, or say [log] file = "pull.csv"')
    return build.parent / session.log.file


def logs_at_hand(folders: Iterable[Path]) -> list[Seen]:
    """The files that may be logs in some folders, last changed on top, each once."""
    found: dict[Path, Seen] = {}
    for folder in folders:
        for seen in plain_files(folder, ENDINGS, MOST_LOOKED_AT):
            found.setdefault(seen.path.resolve(), seen)
    return sorted(found.values(), key=lambda seen: -seen.changed)


def as_named(path: Path, folder: Path) -> str:
    """What a build whose file lies in a folder calls a log: its name where it lies beside it, else its whole path."""
    try:
        whole, beside = path.resolve(), folder.resolve()
    except (OSError, ValueError, RuntimeError):
        return str(path)
    return str(whole.relative_to(beside)) if whole.is_relative_to(beside) else str(whole)
