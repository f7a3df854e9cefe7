"""The log of a build as it was last read, and the build that it was held against."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.record import record

if TYPE_CHECKING:
    from fuelwiz.measured.figures import LogFigures
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures


@record
class LogRead:
    """What a log showed of a session; of a build that was changed since it shows nothing sure."""

    session: Session
    figures: LogFigures


def reader(folder: Path, session: Session, figures: Figures) -> Callable[[], LogRead]:
    """What reads the log that a session names, beside its file; the disk may be slow.

    Raises:
        LogError: when it is called: no log is named, or it cannot be read.
    """

    def read() -> LogRead:
        from fuelwiz.measured.log.place import log_path
        from fuelwiz.measured.log.run import read_log

        return LogRead(session, read_log(log_path(folder / "build", session, None), session, figures))

    return read
