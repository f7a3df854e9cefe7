"""What stands on the terminal, cell by cell, so that only what differs from it is ever sent.

Textual sends a line whenever it may have changed: several times at a start and at every change of mode. Here its
frames only say how the screen should look; what is sent is the difference from what the terminal was sent before.
So frames that follow one another quickly, or wait for a slow line, become one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import repeat

from rich.cells import cell_len
from rich.color import ColorSystem
from rich.console import Console
from rich.segment import Segment
from rich.style import Style
from textual._compositor import ChopsUpdate, CompositorUpdate, LayoutUpdate

from fuelwiz.wizard.look import CURSOR

Cell = tuple[str, Style]
Line = list[Cell]

PLAIN = Style.null()
BLANK: Cell = (" ", PLAIN)
GAP = 7  # cells alike between two changes that cost less than to move the cursor
ERASE = "\x1b[K"
CLEAR = "\x1b[0m\x1b[2J"
SHOW_CURSOR, HIDE_CURSOR = "\x1b[?25h", "\x1b[?25l"


class Frames:
    """The screen as it should look, and as the terminal has it."""

    def __init__(self) -> None:
        self._wanted: list[Line] = []
        self._sent: list[Line] = []
        self._is_clear = True
        self.cursor: tuple[int, int] | None = None
        """Where one types, column and row, in what was sent last; None where nowhere."""

    def forget(self, width: int, height: int) -> None:
        """Another size, or a terminal that others have written on: all of it is sent again."""
        self._wanted = [_fit(line, width) for line in self._wanted[:height]]
        self._wanted += [[BLANK] * width for _ in range(height - len(self._wanted))]
        self._sent = [[BLANK] * width for _ in range(height)]
        self._is_clear = False
        self.cursor = None

    def take(self, update: CompositorUpdate) -> None:
        """Take what Textual would send into the screen as it should look."""
        if isinstance(update, LayoutUpdate):
            for y, strips in enumerate(update.strips, update.region.y):
                self._put(y, update.region.x, (segment for strip in strips for segment in strip))
        elif isinstance(update, ChopsUpdate):
            for y, start, end in update.spans:
                for x, strip in update.chops[y].items():
                    if strip is not None and x < end and x + strip.cell_length > start:
                        self._put(y, x, strip)

    def _put(self, y: int, x: int, segments: Iterable[Segment]) -> None:
        if not 0 <= y < len(self._wanted):
            return
        line = self._wanted[y]
        for text, style, _ in segments:
            cells = _cells(text, style or PLAIN)[: max(len(line) - x, 0)]
            line[x : x + len(cells)] = cells
            x += len(cells)

    def difference(self, colors: ColorSystem | None) -> str:
        """What to send so that the terminal shows the screen as it should look; from then on it counts as sent."""
        out = _Output(colors)
        for y, (sent, wanted) in enumerate(zip(self._sent, self._wanted, strict=True)):
            if sent != wanted:
                for start, end in _spans(sent, wanted):
                    out.cells(y, start, wanted[start:end], to_the_end=end == len(wanted))
                self._sent[y] = list(wanted)
        cursor = self._cursor_place()
        shown = (
            ""
            if (cursor is None) == (self.cursor is None)
            else HIDE_CURSOR
            if cursor is None
            else SHOW_CURSOR
        )
        self.cursor = cursor
        clear, self._is_clear = "" if self._is_clear else CLEAR, True
        return clear + out.finished() + shown

    def _cursor_place(self) -> tuple[int, int] | None:
        """Where one types, if anywhere."""
        for y, line in enumerate(self._wanted):
            for x, (_, style) in enumerate(line):
                if style._meta is not None and is_cursor(style):
                    return x, y
        return None


class Ready(CompositorUpdate):
    """A text for the terminal, in Textual's hands."""

    def __init__(self, text: str) -> None:
        self._text = text

    def render_segments(self, console: Console) -> str:
        """The text to send."""
        return self._text


class _Output:
    """A text for the terminal, its style said where it changes."""

    def __init__(self, colors: ColorSystem | None) -> None:
        self._colors = colors
        self._parts: list[str] = []
        self._style = PLAIN

    def cells(self, y: int, x: int, cells: Sequence[Cell], *, to_the_end: bool) -> None:
        """Put cells from a place on; plain blanks up to the end of a line are erased."""
        self._parts.append(f"\x1b[{y + 1};{x + 1}H")
        count = len(cells)
        if to_the_end:
            while count and cells[count - 1][0] == " " and not _shows_on_blank(cells[count - 1][1]):
                count -= 1
        if len(cells) - count < len(ERASE):
            count = len(cells)
        for text, style in cells[:count]:
            self._to(style)
            self._parts.append(text)
        if count < len(cells):
            self._to(PLAIN)
            self._parts.append(ERASE)

    def _to(self, style: Style) -> None:
        if style is not self._style:
            before, after = _codes(self._style, self._colors), _codes(style, self._colors)
            if before != after:
                self._parts.append(f"\x1b[0;{after}m" if after else "\x1b[0m")
            self._style = style

    def finished(self) -> str:
        """All of it, with no style left behind."""
        self._to(PLAIN)
        return "".join(self._parts)


def _spans(sent: Line, wanted: Line) -> list[tuple[int, int]]:
    """The cells that differ, from and to, those with little between them as one."""
    spans: list[tuple[int, int]] = []
    for x, (old, new) in enumerate(zip(sent, wanted, strict=True)):
        if old == new:
            continue
        if spans and x - spans[-1][1] < GAP:
            spans[-1] = (spans[-1][0], x + 1)
        else:
            spans.append((x, x + 1))
    return [_whole(wanted, start, end) for start, end in spans]


def _whole(line: Line, start: int, end: int) -> tuple[int, int]:
    """A span that parts no wide sign."""
    while start > 0 and line[start][0] == "":
        start -= 1
    while end < len(line) and line[end][0] == "":
        end += 1
    return start, end


def _cells(text: str, style: Style) -> Line:
    """A text by its cells; the second one of a wide sign is empty."""
    if cell_len(text) == len(text):
        return list(zip(text, repeat(style), strict=False))
    cells: Line = []
    for sign in text:
        width = cell_len(sign)
        if width:
            cells += [(sign, style), *[("", style)] * (width - 1)]
        elif cells:
            cells[-1] = (cells[-1][0] + sign, style)
    return cells


def _fit(line: Line, width: int) -> Line:
    return line[:width] + [BLANK] * (width - len(line))


@lru_cache(maxsize=1024)
def is_cursor(style: Style) -> bool:
    """Whether a cell has the cursor of a field: the terminal's own stands there in place of a painted one."""
    return bool(style.meta.get(CURSOR))


@lru_cache(maxsize=1024)
def _shows_on_blank(style: Style) -> bool:
    return bool(style.bgcolor or style.reverse or style.underline)


@lru_cache(maxsize=1024)
def _codes(style: Style, colors: ColorSystem | None) -> str:
    """The numbers that make a style, without the sequence around them."""
    if style._meta is not None and is_cursor(style):
        style = style + Style(reverse=False)
    head, _, _ = style.render("\0", color_system=colors).partition("\0")
    return head.removeprefix("\x1b[").removesuffix("m")
