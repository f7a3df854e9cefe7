"""A part of the screen that paints its own lines and sends the terminal only what changed of them."""

from __future__ import annotations

from itertools import zip_longest

from textual.events import Resize
from textual.geometry import Region
from textual.strip import Strip
from textual.widget import Widget

from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.panes.live import _changed_span


class Painted(Widget):
    """Holds its lines; `painted` makes them, `repaint` compares them with those that stand there."""

    def __init__(self, look: Look, *, id: str) -> None:  # noqa: A002  Textual's own name
        super().__init__(id=id)
        self.look = look
        self._lines: list[Strip] = []

    @property
    def area(self) -> Area:
        """What there is to draw on."""
        return Area(self.look, self.size.width, self.size.height)

    def painted(self, area: Area) -> list[Strip]:
        """The lines as they should stand now."""
        raise NotImplementedError

    def render_line(self, y: int) -> Strip:
        """One line, as it was painted."""
        if y < len(self._lines):
            return self._lines[y]
        return Strip.blank(self.size.width, self.look.style("text"))

    def on_resize(self, event: Resize) -> None:
        """Paint anew at the new size."""
        self._lines = self.painted(self.area)
        self.refresh()

    def repaint(self) -> None:
        """Paint all lines anew and refresh the cells that differ."""
        if not self.size.width or not self.size.height:
            return
        before, self._lines = self._lines, self.painted(self.area)
        spans = [_changed_span(old, new) for old, new in zip_longest(before, self._lines)]
        changed = [Region(span[0], y, span[1] - span[0], 1) for y, span in enumerate(spans) if span]
        if changed:
            self.refresh(*changed)
