"""What waits for a pause in typing: the slower parts of the answer, and the draft."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from textual.timer import Timer

from fuelwiz.desk.desk import Desk

PAUSE_S = 0.2  # of typing, before the slower parts of the answer are calculated
LOOK_OVER_S = 0.02  # after the first answer, so that it goes out before the questions of all steps are read
SLICE_S = 0.006  # of what comes after those, between two looks at the keys
BREATH_S = 0.002  # from one such slice to the next
KEEP_S = 0.6  # after a change, before the draft is written


class Waiting(Protocol):
    """The screen of a build, as what waits sees it."""

    desk: Desk

    def set_timer(self, delay: float, callback: Callable[[], None]) -> Timer:
        """Call something after a while."""

    def look_over(self) -> None:
        """Find out what takes a look at every question."""

    def show_answer(self) -> None:
        """Show the answer as the desk has it now."""

    def keep_draft(self) -> None:
        """Write the draft, or take it away where nothing is unsaved any more."""


class Pauses:
    """The timers of a build's screen."""

    def __init__(self, screen: Waiting) -> None:
        self._screen = screen
        self._pause: Timer | None = None
        self._keep: Timer | None = None

    def begin(self) -> None:
        """Calculate the slower parts once typing pauses."""
        if self._pause is not None:
            self._pause.stop()
        self._pause = self._screen.set_timer(PAUSE_S, self._finish)

    def key_pressed(self) -> None:
        """A key puts off what waits; one that only goes elsewhere may tick a step too."""
        self.begin()

    def changed(self) -> None:
        """Something was typed: it is kept soon."""
        self.begin()
        if self._keep is None:
            self._keep = self._screen.set_timer(KEEP_S, self.keep)

    def keep(self) -> None:
        """Write the draft now; a folder that cannot be written is reported once and stops nothing."""
        if self._keep is not None:
            self._keep.stop()
            self._keep = None
        self._screen.keep_draft()

    def _finish(self) -> None:
        self._pause = None
        self._screen.look_over()
        if not self._screen.desk.complete:
            self._screen.desk.finish()
            self._screen.show_answer()
        self._fill_in_soon()

    def _fill_in_soon(self) -> None:
        desk = self._screen.desk
        if desk.result is not None and not desk.filled_in:
            self._pause = self._screen.set_timer(BREATH_S, self._fill_in)

    def _fill_in(self) -> None:
        """A slice of what takes longest; a key that comes first puts it off, what is typed drops it."""
        self._pause = None
        if self._screen.desk.fill_in(SLICE_S):
            self._screen.show_answer()
        self._fill_in_soon()
