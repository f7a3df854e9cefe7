"""A part of the screen that paints its own lines and sends the terminal only what changed of them."""

from __future__ import annotations

from collections.abc import Callable
from itertools import repeat, zip_longest

from rich.cells import cell_len
from rich.style import Style
from textual.events import Resize
from textual.geometry import Region
from textual.screen import Screen
from textual.strip import Strip
from textual.widget import Widget

from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.screen_layout import Box


class Painted(Widget):
    """Holds its lines; `painted` makes them, `repaint` compares them with those that stand there."""

    def __init__(self, look: Look, *, id: str | None = None) -> None:
        super().__init__(id=id)
        self.look = look
        self._lines: list[Strip] = []
        self._painted_size: tuple[int, int] | None = None

    @property
    def area(self) -> Area:
        """What there is to draw on."""
        return Area(self.look, self.size.width, self.size.height)

    def painted(self, area: Area) -> list[Strip]:
        """The lines as they should stand now."""
        raise NotImplementedError

    def render_line(self, y: int) -> Strip:
        """One line, as it was painted; a part whose size has just changed is painted now."""
        self._paint_at_size()
        if y < len(self._lines):
            return self._lines[y]
        return Strip.blank(self.size.width, self.look.style("text"))

    def take_look(self, look: Look) -> None:
        """Draw for another background."""
        self.look = look
        self._painted_size = None
        self.refresh()

    def on_resize(self, event: Resize) -> None:
        """Paint anew at the new size."""
        self._paint_at_size()
        self.refresh()

    def _paint_at_size(self) -> None:
        size = self.size.width, self.size.height
        if size != self._painted_size and all(size):
            self._painted_size = size
            self._lines = self.painted(self.area)

    def repaint(self) -> None:
        """Paint all lines anew and refresh the cells that differ; without room, as soon as there is some."""
        if not self.size.width or not self.size.height:
            self._painted_size = None
            return
        self._painted_size = self.size.width, self.size.height
        before, self._lines = self._lines, self.painted(self.area)
        spans = [changed_span(old, new) for old, new in zip_longest(before, self._lines)]
        changed = [Region(span[0], y, span[1] - span[0], 1) for y, span in enumerate(spans) if span]
        if changed:
            self.refresh(*changed)


Painter = Callable[[Area], list[Strip]]


class LinesView(Painted):
    """Draws what a function paints."""

    def __init__(self, look: Look, name: str, painter: Painter) -> None:
        super().__init__(look, id=name)
        self._painter = painter

    def painted(self, area: Area) -> list[Strip]:
        """What the function paints, in the area's rows."""
        return area.filled(self._painter(area))


def fill(screen: Screen[None], part: Painted) -> None:
    """Put one part over the whole of a screen, on the ground of the theme."""
    screen.styles.background = part.look.screen_background
    part.styles.width = part.styles.height = "100%"


def place(widget: Widget, box: Box) -> None:
    """Put a part of the screen in a box; one without room is not shown."""
    widget.display = box.is_shown
    if box.is_shown:
        widget.styles.offset = (box.x, box.y)
        widget.styles.width = box.width
        widget.styles.height = box.height


def changed_span(old: Strip | None, new: Strip | None) -> tuple[int, int] | None:
    """The cells from the first to the last that differ between two lines; None where they are alike."""
    if old is None or new is None:
        return 0, max(strip.cell_length for strip in (old, new) if strip is not None)
    if old == new:
        return None
    before, after = _cells(old), _cells(new)
    if len(before) != len(after):
        return 0, max(len(before), len(after))
    first = next((at for at, pair in enumerate(zip(before, after, strict=True)) if pair[0] != pair[1]), None)
    if first is None:
        return None
    last = next(at for at in range(len(after) - 1, -1, -1) if before[at] != after[at])
    return first, last + 1


def _cells(strip: Strip) -> list[tuple[str, Style | None]]:
    """Each cell of a line with its style; a wide character holds its second cell with an empty text."""
    cells: list[tuple[str, Style | None]] = []
    for text, style, _ in strip:
        if cell_len(text) == len(text):
            cells += zip(text, repeat(style), strict=False)
        else:
            for mark in text:
                cells += [(mark, style), *[("", style)] * (cell_len(mark) - 1)]
    return cells
