"""The log that a build names, read and held against it; one that cannot be read says why."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from fuelwiz.errors import LogError
from fuelwiz.measured.figures import LoggedRun
from fuelwiz.measured.log.layout import Head
from fuelwiz.measured.log.place import log_path
from fuelwiz.measured.log.run import read_log
from fuelwiz.measured.log.table import Watch, read_heads
from fuelwiz.printable import clean
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures


def logged_run(
    build: Path, session: Session, figures: Figures, watch: Watch | None = None
) -> LoggedRun | None:
    """What the log of a build shows of it; None where the build names none.

    Args:
        build: path of the session file, which the log lies beside.
        session: the build.
        figures: what the build comes to.
        watch: told how much of the file has been read.
    """
    if not session.log.file:
        return None
    path = log_path(build, session, None)
    name = clean(path.name)
    try:
        return LoggedRun(name, _day_of(path), read_log(path, session, figures, watch))
    except LogError as error:
        return LoggedRun(name, _day_of(path), None, str(error).removeprefix(f"{clean(str(path))}: "))


def heads_of_log(build: Path, session: Session) -> tuple[Head, ...]:
    """The heads of the log that a build names; none where it cannot be read."""
    try:
        return read_heads(log_path(build, session, None))
    except LogError:
        return ()


def _day_of(path: Path) -> str:
    """The day a file was last changed; nothing where there is none."""
    try:
        return date.fromtimestamp(path.stat().st_mtime).isoformat()
    except (OSError, ValueError, OverflowError):
        return ""
