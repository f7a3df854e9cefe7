"""A screen to read: a title, lines that scroll up and down, and the keys."""

from __future__ import annotations

from textual.events import Key
from textual.strip import Strip

from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import BACK, footer_line
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.page_screen import PageScreen
from fuelwiz.wizard.paint import Area

SCROLL = Action("scroll", ("up", "down", "pageup", "pagedown"), "", "and Down, PgUp, PgDn scroll", "")


class ScrollingScreen(PageScreen):
    """Stands on top of another screen until Esc; never scrolls sideways."""

    def __init__(self) -> None:
        super().__init__()
        self.scrolled = 0
        self._top = 0  # the line that stands first, at the size that the window has now
        self._count = 0

    def lines(self, area: Area) -> list[Strip]:
        """All there is to read, at the width of an area."""
        raise NotImplementedError

    def take(self, key: str) -> None:
        """Do what a key of this screen alone does."""

    def footer_lines(self, area: Area) -> list[Strip]:
        """The keys that scroll, and Esc."""
        return [footer_line([SCROLL], BACK, area)]

    def on_key(self, event: Key) -> None:
        """Every key: it scrolls, goes back, or is one of this screen's own."""
        event.stop()
        event.prevent_default()
        if hand_on(self, event):
            return
        page = max(self.size.height - 3, 1)
        moves = {"up": -1, "down": 1, "pageup": -page, "pagedown": page, "home": -self.scrolled, "end": 10**6}
        if event.key == "escape":
            self.app.pop_screen()
        elif event.key in moves:
            self.scrolled = self._top + moves[event.key]
            self.repaint()
            self.scrolled = self._top
        else:
            self.take(event.key)

    def page_lines(self, area: Area) -> list[Strip]:
        """The lines in sight; a window that is larger for a while, or narrower, does not lose the place."""
        lines = self.lines(area)
        if self._count and len(lines) != self._count:
            self.scrolled = round(self.scrolled * len(lines) / self._count)
        self._count = len(lines)
        self._top = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self._top : self._top + area.rows]
