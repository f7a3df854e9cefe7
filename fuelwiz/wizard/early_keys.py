"""Keys that came before a build could take them: they are held, and taken in their order before any that follow."""

from __future__ import annotations

from collections.abc import Iterable

from textual.events import Key, Paste

Early = Key | Paste


class EarlyKeys:
    """What was typed while a build was loading, or before what is asked first was answered."""

    def __init__(self, held: Iterable[Early] = (), opened_by: str = "") -> None:
        self._held = list(held)
        self._opened_by = opened_by
        self._is_early = True

    def hold(self, event: Early) -> bool:
        """Keep one, where it is still early; whether it is. The key that opened the build means it once."""
        if self._is_early and not self._is_repeated(event):
            self._held.append(event)
        return self._is_early

    def _is_repeated(self, event: Early) -> bool:
        return not self._held and isinstance(event, Key) and event.key == self._opened_by

    def taken(self) -> list[Early]:
        """All of them, for the build or another screen; from now on it is no longer early."""
        held, self._held, self._is_early = self._held, [], False
        return held
