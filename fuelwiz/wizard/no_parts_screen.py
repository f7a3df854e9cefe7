"""What is said where there is no parts file yet: how one is made, and where it is looked for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Resize
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.advice.parts_file_words import how_to_make_one
from fuelwiz.printable import shown_name
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.block_view import block_lines
from fuelwiz.wizard.chrome import footer_line
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.screen_layout import Box

AGAIN = Action("again", ("enter",), "", "look again", "")
OTHER = Action("other", ("f",), "", "another file", "")
READ_ON = Action("read_on", ("pagedown",), "", "read on", "")
BACK = Action("back", ("escape",), "", "back", "")


class NoPartsScreen(Screen[None]):
    """Stands on top of a build until a key; Enter looks whether there is a file by now."""

    def __init__(self, folder: Path, again: Callable[[], None], other: Callable[[], None]) -> None:
        super().__init__()
        self.folder, self.again, self.other = folder, again, other
        self.scrolled = 0

    def compose(self) -> ComposeResult:
        """Title, text, and the keys."""
        look = cast("Program", self.app).look
        yield LinesView(look, "top", self._title)
        yield LinesView(look, "page", self._page)
        yield LinesView(look, "footer", self._footer)

    def on_mount(self) -> None:
        """The whole screen is painted, its ground too."""
        self.styles.background = cast("Program", self.app).look.screen_background

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size."""
        width, height = self.size
        place(self.query_one("#top"), Box(0, 0, width, 1))
        place(self.query_one("#page"), Box(0, 1, width, height - 2))
        place(self.query_one("#footer"), Box(0, height - 1, width, 1))
        self.call_after_refresh(self.repaint)

    def on_key(self, event: Key) -> None:
        """Every key: it looks again, asks for a name, scrolls, or goes back."""
        event.stop()
        event.prevent_default()
        page = max(self.size.height - 3, 1)
        if event.key in ("pagedown", "down", "pageup", "up"):
            step = page if event.key.startswith("page") else 1
            self.scrolled += step if event.key.endswith("down") else -step
            self.repaint()
        elif event.key in ("escape", "enter", "f"):
            self.app.pop_screen()
            following = {"enter": self.again, "f": self.other}.get(event.key)
            if following is not None:
                following()

    def repaint(self) -> None:
        """Paint what differs from what stands there."""
        for view in self.query(LinesView):
            view.repaint()

    def _title(self, area: Area) -> list[Strip]:
        return [area.row("bar").put(1, "Parts that do the job", bold=True).strip()]

    def _lines(self, area: Area) -> list[Strip]:
        blocks = how_to_make_one(shown_name(str(self.folder)))
        return [line for block in blocks for line in block_lines(block, area)]

    def _page(self, area: Area) -> list[Strip]:
        lines = self._lines(area)
        self.scrolled = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self.scrolled : self.scrolled + area.rows]

    def _footer(self, area: Area) -> list[Strip]:
        return [footer_line([AGAIN, READ_ON, OTHER], BACK, area)]
