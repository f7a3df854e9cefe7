"""A screen to read: a title, lines that scroll up and down, and the keys."""

from __future__ import annotations

from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Resize
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import footer_line
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.screen_layout import Box

SCROLL = Action("scroll", ("up", "down", "pageup", "pagedown"), "", "and Down, PgUp, PgDn scroll", "")
BACK = Action("back", ("escape",), "", "back", "")


class ScrollingScreen(Screen[None]):
    """Stands on top of another screen until Esc; never scrolls sideways."""

    title_text = ""

    def __init__(self) -> None:
        super().__init__()
        self.scrolled = 0
        self._top = 0  # the line that stands first, at the size that the window has now
        self._count = 0

    def lines(self, area: Area) -> list[Strip]:
        """All there is to read, at the width of an area."""
        raise NotImplementedError

    def note(self) -> str:
        """What stands at the right of the title."""
        return ""

    def compose(self) -> ComposeResult:
        """Title, lines, and the keys."""
        look = cast("Program", self.app).look
        yield LinesView(look, "top", self._title)
        yield LinesView(look, "page", self._page)
        yield LinesView(look, "footer", lambda area: [footer_line([SCROLL], BACK, area)])

    def on_mount(self) -> None:
        """The ground of the theme lies under everything."""
        self.styles.background = cast("Program", self.app).look.screen_background

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size."""
        width, height = self.size
        place(self.query_one("#top"), Box(0, 0, width, 1))
        place(self.query_one("#page"), Box(0, 1, width, height - 2))
        place(self.query_one("#footer"), Box(0, height - 1, width, 1))
        self.call_after_refresh(self.repaint)

    def on_key(self, event: Key) -> None:
        """Every key: it scrolls, or goes back."""
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

    def repaint(self) -> None:
        """Paint what differs from what stands there."""
        for view in self.query(LinesView):
            view.repaint()

    def _title(self, area: Area) -> list[Strip]:
        row = area.row("bar").put(1, self.title_text, bold=True)
        return [row.put_right(area.width - 1, self.note(), "muted").strip()]

    def _page(self, area: Area) -> list[Strip]:
        """The lines in sight; a window that is larger for a while, or narrower, does not lose the place."""
        lines = self.lines(area)
        if self._count and len(lines) != self._count:
            self.scrolled = round(self.scrolled * len(lines) / self._count)
        self._count = len(lines)
        self._top = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self._top : self._top + area.rows]
