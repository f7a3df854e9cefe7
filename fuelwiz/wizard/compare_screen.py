"""Builds side by side on the screen: what they were told differently, what each comes to, which is better."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, cast

from rich.cells import cell_len
from textual.app import ComposeResult
from textual.events import Key, Resize
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.advice.blocks import Block, Heading, Sheet
from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import footer_line
from fuelwiz.wizard.paint import Area, Row, clip
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.screen_layout import Box

if TYPE_CHECKING:
    from fuelwiz.report.differences import Told

TITLE = "Builds side by side"
RECKONING = "Reckoning the builds …"
NEEDS_TWO = "It takes two builds that can be read to stand side by side."
_BETTER = re.compile(r"(\((?:better|best)\))")

SCROLL = Action("scroll", ("up", "down", "pageup", "pagedown"), "", "and Down, PgUp, PgDn scroll", "")
BACK = Action("back", ("escape",), "", "back", "")


class CompareScreen(Screen[None]):
    """Two builds or more, from their files or ready ones; scrolls up and down, never sideways."""

    def __init__(self, builds: Sequence[Path | Told]) -> None:
        super().__init__()
        self.told: list[Told] = []
        self.unread: list[str] = []
        self.scrolled = 0
        self._builds = builds
        self._ready = False
        self._sheet: tuple[int, Sheet] | None = None

    def compose(self) -> ComposeResult:
        """Title, what there is to read, and the keys."""
        look = cast("Program", self.app).look
        yield LinesView(look, "top", self._title)
        yield LinesView(look, "comparison", self._page)
        yield LinesView(look, "footer", lambda area: [footer_line([SCROLL], BACK, area)])

    def on_mount(self) -> None:
        """Stand first, reckon then."""
        self.call_after_refresh(self._reckon)

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size."""
        width, height = self.size
        place(self.query_one("#top"), Box(0, 0, width, 1))
        place(self.query_one("#comparison"), Box(0, 1, width, height - 2))
        place(self.query_one("#footer"), Box(0, height - 1, width, 1))
        self.call_after_refresh(self._repaint)

    def on_key(self, event: Key) -> None:
        """Every key: it scrolls, or goes back."""
        event.stop()
        event.prevent_default()
        page = max(self.size.height - 3, 1)
        moves = {
            "up": -1,
            "down": 1,
            "pageup": -page,
            "pagedown": page,
            "home": -self.scrolled,
            "end": len(self._lines()),
        }
        if event.key == "escape":
            self.app.pop_screen()
        elif event.key in moves:
            self.scrolled += moves[event.key]
            self._repaint()

    @property
    def fit(self) -> int:
        """How many builds stand side by side at this width."""
        from fuelwiz.report.compare import builds_that_fit

        return builds_that_fit(self.size.width)

    def _reckon(self) -> None:
        for build in self._builds:
            if not isinstance(build, Path):
                self.told.append(build)
                continue
            try:
                self.told.append(judged(build))
            except FuelwizError as error:
                self.unread += str(error).splitlines()
        self._ready = True
        self._repaint()

    def _repaint(self) -> None:
        for view in self.query(LinesView):
            view.repaint()

    def _title(self, area: Area) -> list[Strip]:
        row = area.row("bar").put(1, TITLE, bold=True)
        right = f"{self.fit} fit at this width"
        return [row.put_right(area.width - 1, right, "muted").strip()]

    def _page(self, area: Area) -> list[Strip]:
        lines = self._painted_lines(area)
        self.scrolled = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self.scrolled : self.scrolled + area.rows]

    def _painted_lines(self, area: Area) -> list[Strip]:
        if not self._ready:
            return area.paragraph(RECKONING, 1)
        faults = [line for fault in self.unread for line in area.paragraph(fault, 1, "fault")]
        if len(self.told) < 2:
            return [*faults, *area.paragraph(NEEDS_TWO, 1)]
        return [*faults, *(_painted(line, is_head, area) for line, is_head in self._lines())]

    def _lines(self) -> list[tuple[str, bool]]:
        """The comparison in lines, each with whether it is a heading."""
        if len(self.told) < 2:
            return []
        from fuelwiz.report.compare import comparison

        width = self.size.width
        if self._sheet is None or self._sheet[0] != width:
            self._sheet = width, comparison(self.told, width)
        return list(_sheet_lines(self._sheet[1].blocks, width - 2))


def judged(path: Path) -> Told:
    """A session file, what it holds, and what it comes to.

    Raises:
        SessionError: the file cannot be used.
    """
    from fuelwiz.advice import result
    from fuelwiz.document.file import load
    from fuelwiz.report.differences import Told
    from fuelwiz.sizing import assess

    document, session = load(path)
    return Told(path.name, document.plain, result(session, assess(session)))


def _sheet_lines(blocks: Sequence[Block], width: int) -> Iterator[tuple[str, bool]]:
    """The blocks in lines with an empty one between them; a heading stands right above what it heads."""
    from fuelwiz.report.text import block_lines
    from fuelwiz.report.text_look import TextLook

    look = TextLook(width=width)
    before: Block | None = None
    for block in blocks:
        if before is not None and not isinstance(before, Heading):
            yield "", False
        if isinstance(block, Heading):
            yield block.text, True
        else:
            yield from ((line, False) for line in block_lines(block, look))
        before = block


def _painted(line: str, is_head: bool, area: Area) -> Strip:
    """A line of the comparison; what is better stands out."""
    row = area.row()
    text = clip(area.look.fold(line), area.width - 2)
    if is_head:
        return row.put(1, text, "focus", True).strip()
    return _with_better(row, text).strip()


def _with_better(row: Row, text: str) -> Row:
    column = 1
    for piece in _BETTER.split(text):
        better = _BETTER.fullmatch(piece) is not None
        row.put(column, piece, "easy" if better else "text", better)
        column += cell_len(piece)
    return row
