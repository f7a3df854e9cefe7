"""Where the log of a build is: the file that is named, else the one that the session names beside its own."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.errors import LogError
from fuelwiz.printable import clean
from fuelwiz.session import Session


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
