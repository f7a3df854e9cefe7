"""Keys that came before a build could take them: they are held, and given back in their order."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from textual.events import Key, Paste

Early = Key | Paste


class EarlyKeys:
    """What was typed while a build was loading, or before what is asked first was answered."""

    def __init__(self, held: Iterable[Early] = ()) -> None:
        self._held = list(held)

    def hold(self, event: Early) -> None:
        """Keep one."""
        self._held.append(event)

    def taken(self) -> list[Early]:
        """All of them, for another screen; none is left."""
        held, self._held = self._held, []
        return held

    def give_back(self, post: Callable[[Early], object]) -> None:
        """Hand them on; each was held back once, and would else be given to nobody."""
        for event in self.taken():
            event.prevent_default(False)
            post(event)
