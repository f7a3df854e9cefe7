"""The log of a build as it was last read: its heads, and what it shows of the build as it is now."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.errors import LogError
from fuelwiz.record import record

if TYPE_CHECKING:
    from fuelwiz.measured.figures import LogFigures, LoggedRun
    from fuelwiz.measured.log.columns import Taken
    from fuelwiz.measured.log.layout import Head
    from fuelwiz.measured.log.table import Watch
    from fuelwiz.session import Column, LogColumns, Session
    from fuelwiz.sizing.figures import Figures

COLUMNS = "log.columns."
MOST_KEPT = 6


class Heads(tuple["Head", ...]):
    """The heads of one reading; another reading's are others, as comparing a thousand at each key takes too long."""

    __slots__ = ()

    def __eq__(self, other: object) -> bool:
        return self is other

    def __hash__(self) -> int:
        return id(self)


NO_HEADS = Heads()


@record
class LogRead:
    """A log that was read, and the build that it was held against."""

    session: Session
    run: LoggedRun
    heads: Heads


class LogOnDesk:
    """The log of the build on a desk; nothing until somebody has it read."""

    def __init__(self) -> None:
        self._reads: tuple[tuple[str, LogRead], ...] = ()
        self._shown: tuple[Session | None, LoggedRun | None] = (None, None)

    def hold(self, read: LogRead) -> None:
        """It was read; what it showed of the build before a change is kept for the way back."""
        from fuelwiz.session import inputs_digest

        self._reads = ((inputs_digest(read.session), read), *self._reads)[:MOST_KEPT]
        self._shown = (None, None)

    def shows(self, session: Session | None) -> LoggedRun | None:
        """What it shows of a build; None where that differs from those it was held against in what counts."""
        if session is None:
            return None
        if self._shown[0] is not session:
            self._shown = (session, self._found(session))
        return self._shown[1]

    def _found(self, session: Session) -> LoggedRun | None:
        """What the last reading shows that was of such a build."""
        if not self._reads:
            return None
        from fuelwiz.session import inputs_digest

        inputs = inputs_digest(session)
        shown = (_shown(read, session) for held, read in self._reads if held == inputs)
        return next((one for one in shown if one is not None), None)

    def heads(self, session: Session | None) -> Heads:
        """The heads of the file that a build names, as far as they are known."""
        if session is None:
            return NO_HEADS
        named = (read for _, read in self._reads if read.session.log.file == session.log.file)
        return next((read.heads for read in named), NO_HEADS)

    def guess(self, path: str, session: Session | None) -> Head | None:
        """The head that a column's question is left to; None where nothing speaks for one."""
        heads = self.heads(session)
        if session is None or not heads or not path.startswith(COLUMNS):
            return None
        at = _guesses(heads, _named(session.log.columns)).get(path.removeprefix(COLUMNS))
        return None if at is None else heads[at]


def _named(columns: LogColumns) -> tuple[tuple[str, Column], ...]:
    return tuple((key, getattr(columns, key)) for key in sorted(columns.model_fields_set))


@lru_cache(maxsize=8)
def _guesses(heads: Heads, named: tuple[tuple[str, Column], ...]) -> dict[str, int]:
    from fuelwiz.measured.log.columns import guess_rest

    return guess_rest(dict(named), heads)


def _shown(read: LogRead, session: Session) -> LoggedRun | None:
    """What a reading of a build with the same figures shows; None where another file or column is meant now."""
    if read.session.log.file != session.log.file:
        return None
    if read.session.log.columns == session.log.columns:
        return read.run
    figures = read.run.figures
    columns = _taken(read.heads, session.log.columns)
    if (
        figures is None
        or columns is None
        or _places(columns) != _places(_taken(read.heads, read.session.log.columns))
    ):
        return None
    if read.session.log.columns.barometer != session.log.columns.barometer and "barometer" not in {
        one.key for one in columns
    }:
        return None
    return replace(read.run, figures=_with_columns(figures, columns))


def _taken(heads: Heads, columns: LogColumns) -> tuple[Taken, ...] | None:
    from fuelwiz.measured.log.columns import columns_of

    try:
        return columns_of(columns, heads)
    except LogError:
        return None


def _places(columns: tuple[Taken, ...] | None) -> list[tuple[str, int, str]] | None:
    return None if columns is None else [(one.key, one.at, one.unit) for one in columns]


def _with_columns(figures: LogFigures, columns: tuple[Taken, ...]) -> LogFigures:
    """The same figures of the same columns, some of which are no longer guessed."""
    from fuelwiz.measured.figures import ColumnTaken

    taken = tuple(ColumnTaken(one.key, one.head, one.unit, one.guessed) for one in columns)
    return replace(figures, columns=taken)


def reader(
    folder: Path, session: Session, figures: Figures, watch: Watch | None = None
) -> Callable[[], LogRead]:
    """What reads the log that a session names, beside its file; the disk may be slow, and the file long.

    Args:
        folder: of the build's file.
        session: the build, which names a log.
        figures: what it comes to.
        watch: told how much of the file has been read; what it raises ends the reading.
    """

    def read() -> LogRead:
        from fuelwiz.measured.log.of_build import heads_of_log, logged_run

        build = folder / "build"
        heads = heads_of_log(build, session)
        run = logged_run(build, session, figures, watch)
        assert run is not None
        return LogRead(session, run, Heads(heads))

    return read
