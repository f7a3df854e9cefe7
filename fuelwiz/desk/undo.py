"""Undo and redo: one visit to a question at a time."""

from __future__ import annotations

from dataclasses import dataclass, field

from fuelwiz.desk.state import State
from fuelwiz.record import record

_MOST = 500


@record
class _Visit:
    path: str
    before: State


@dataclass(slots=True)
class UndoHistory:
    """The visits in which something was changed, and those that were taken back."""

    _done: list[_Visit] = field(default_factory=list)
    _undone: list[_Visit] = field(default_factory=list)
    _open: str | None = None
    _recorded: bool = False

    def visit(self, path: str) -> None:
        """The pointer enters a question; what is changed from here on is one visit."""
        self._open, self._recorded = path, False

    def record(self, path: str, before: State) -> None:
        """Something is changed: the first change of a visit records what the build was before."""
        if self._open is None or not _same_question(self._open, path):
            self.visit(path)
        if not self._recorded:
            self._done = [*self._done[1 - _MOST :], _Visit(self._open or path, before)]
            self._recorded = True
        self._undone.clear()

    def undo(self, now: State) -> tuple[str, State] | None:
        """The question of the last visit that changed anything, and what the build was before; None at the start."""
        return self._step(self._done, self._undone, now)

    def redo(self, now: State) -> tuple[str, State] | None:
        """The question of the last visit taken back, and what the build was after it; None at the end."""
        return self._step(self._undone, self._done, now)

    def _step(self, source: list[_Visit], target: list[_Visit], now: State) -> tuple[str, State] | None:
        self._open, self._recorded = None, False
        while source:
            visit = source.pop()
            if visit.before.same(now):
                continue
            target.append(_Visit(visit.path, now))
            return visit.path, visit.before
        return None


def _same_question(visited: str, changed: str) -> bool:
    return changed == visited or changed.startswith(f"{visited}.")
