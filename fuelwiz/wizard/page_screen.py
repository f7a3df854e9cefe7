"""A screen of three parts that it paints itself: a title, a page, and the keys."""

from __future__ import annotations

from typing import cast

from textual.app import ComposeResult
from textual.events import Resize
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.screen_layout import Box


class PageScreen(Screen[None]):
    """Stands on top of another screen."""

    title_text = ""

    def page_lines(self, area: Area) -> list[Strip]:
        """What stands between title and keys, no more lines than there are rows."""
        raise NotImplementedError

    def footer_lines(self, area: Area) -> list[Strip]:
        """The keys, in one line."""
        raise NotImplementedError

    def note(self) -> str:
        """What stands at the right of the title."""
        return ""

    def compose(self) -> ComposeResult:
        """Title, page, and the keys."""
        look = cast("Program", self.app).look
        yield LinesView(look, "top", self._title)
        yield LinesView(look, "page", self.page_lines)
        yield LinesView(look, "footer", self.footer_lines)

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

    def repaint(self) -> None:
        """Paint what differs from what stands there."""
        for view in self.query(LinesView):
            view.repaint()

    def _title(self, area: Area) -> list[Strip]:
        row = area.row("bar").put(1, self.title_text, bold=True)
        return [row.put_right(area.width - 1, self.note(), "muted").strip()]
