"""Undo and redo: one visit to a question at a time."""

from __future__ import annotations

from dataclasses import dataclass, field

from fuelwiz.desk.state import State

_MOST = 500


@dataclass(frozen=True, slots=True)
class _Visit:
    path: str
    before: State


@dataclass(slots=True)
class Trail:
    """The visits in which something was changed, and those that were taken back."""

    _done: list[_Visit] = field(default_factory=list)
    _undone: list[_Visit] = field(default_factory=list)
    _open: str | None = None
    _noted: bool = False

    def visit(self, path: str) -> None:
        """A question is come to; what is changed from here on is one visit."""
        self._open, self._noted = path, False

    def note(self, path: str, before: State) -> None:
        """Something is changed: the first change of a visit notes what lay on the desk before."""
        if self._open is None or not _same_question(self._open, path):
            self.visit(path)
        if not self._noted:
            self._done = [*self._done[1 - _MOST :], _Visit(self._open or path, before)]
            self._noted = True
        self._undone.clear()

    def back(self, now: State) -> tuple[str, State] | None:
        """The question of the last visit that changed anything, and what lay there before; None at the start."""
        return self._step(self._done, self._undone, now)

    def forth(self, now: State) -> tuple[str, State] | None:
        """The question of the last visit taken back, and what lay there after it; None at the end."""
        return self._step(self._undone, self._done, now)

    def _step(self, source: list[_Visit], target: list[_Visit], now: State) -> tuple[str, State] | None:
        self._open, self._noted = None, False
        while source:
            visit = source.pop()
            if visit.before.same(now):
                continue
            target.append(_Visit(visit.path, now))
            return visit.path, visit.before
        return None


def _same_question(visited: str, changed: str) -> bool:
    return changed == visited or changed.startswith(f"{visited}.")
