"""The page that finds questions, actions or builds by a few words of them."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Paste
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import BACK, MOVE, footer_line
from fuelwiz.wizard.form.finding import Findable, Offer, found
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.paint import Area, clip
from fuelwiz.wizard.painted import LinesView, fill
from fuelwiz.wizard.program import Program

GO = Action("go", ("enter",), "", "go there", "")
ABOVE, BELOW = 2, 1


class FindScreen(Screen[None]):
    """Stands on top of a build until something is chosen, or Esc."""

    def __init__(
        self, findable: Sequence[Findable], take: Callable[[Findable], None], offer: Offer | None = None
    ) -> None:
        super().__init__()
        self.offer = offer or Offer()
        self._findable = findable
        self._take = take
        self._at = 0
        self.editor = LineEdit.at_end(self.offer.begun)
        self.hits = self._found(self.offer.begun)

    def compose(self) -> ComposeResult:
        """One painted part, as large as the screen."""
        yield LinesView(cast("Program", self.app).look, "find", self._lines)

    def on_mount(self) -> None:
        """Fill the window."""
        fill(self, self.query_one(LinesView))

    def _lines(self, area: Area) -> list[Strip]:
        title = self.offer.title
        room = max(area.width - len(title) - 8, 8)
        top = area.row("bar").put(1, title, "focus", True)
        start = len(title) + 3
        most = room if self.offer.typed is not None else min(room, 40)
        lines = [
            top.put(start, "[").put_field(start + 1, most, self.editor).put(0, "]").strip(),
            area.row().strip(),
        ]
        says = self.hits[self._at].says if self.hits else ""
        said = area.paragraph(says, 5, "muted") if says else []
        rows = max(area.rows - ABOVE - BELOW - len(said), 1)
        first = min(max(self._at - rows + 1, 0), max(len(self.hits) - rows, 0))
        for index, hit in enumerate(self.hits[first : first + rows], first):
            lines += [self._hit(hit, area, index == self._at), *(said if index == self._at else ())]
        if not self.hits:
            lines += area.paragraph(self.offer.nothing, 3)
        lines = area.high(area.rows - BELOW).filled(lines)
        return [*lines, footer_line([replace(GO, say=self.offer.go), MOVE], BACK, area)]

    def _hit(self, hit: Findable, area: Area, is_at: bool) -> Strip:
        line = area.row("row" if is_at else "background")
        line.put(1, area.look.mark("pointer") if is_at else " ", "focus", True)
        more = area.look.fold("…")
        room = area.width - len(hit.beside) - 6
        line.put(3, clip(area.look.fold(hit.text), room, more), bold=is_at)
        return line.put_right(area.width - 1, hit.beside, "muted").strip()

    def on_key(self, event: Key) -> None:
        """Every key: it moves, types, takes, or goes back."""
        event.stop()
        event.prevent_default()
        if hand_on(self, event):
            return
        page = max(self.size.height - ABOVE - BELOW - 1, 1)
        moves = {"up": -1, "down": 1, "pageup": -page, "pagedown": page}
        if event.key in ("escape", "ctrl+p", "ctrl+q", "ctrl+c"):
            self.app.pop_screen()
        elif event.key == "enter":
            self._go()
        elif event.key in moves:
            self._at = min(max(self._at + moves[event.key], 0), max(len(self.hits) - 1, 0))
        else:
            self._typed(self.editor.key(event.key), event.character if event.is_printable else None)
        self.repaint()

    def on_paste(self, event: Paste) -> None:
        """Pasted text goes into the field."""
        event.stop()
        self._typed(None, "".join(sign for sign in event.text if sign.isprintable()))
        self.repaint()

    def _typed(self, edited: LineEdit | None, signs: str | None) -> None:
        edited = self.editor.insert(signs) if edited is None and signs else edited
        if edited is None:
            return
        if edited.text != self.editor.text:
            self.hits, self._at = self._found(edited.text), 0
        self.editor = edited

    def _found(self, text: str) -> list[Findable]:
        """What has the words of a text; where nothing has, it may want the letter that opened the list before it."""
        hits = found(self._findable, text)
        return (
            hits if hits or not self.offer.opened_by else found(self._findable, self.offer.opened_by + text)
        )

    def _go(self) -> None:
        text, typed = self.editor.text.strip(), self.offer.typed
        if typed is not None and (os.sep in text or (text and not self.hits)):
            self.app.pop_screen()
            typed(text)
        elif self.hits:
            hit = self.hits[self._at]
            self.app.pop_screen()
            self._take(hit)

    def repaint(self) -> None:
        """Paint what differs from what stands there."""
        if self.is_mounted and self.is_current:
            self.query_one(LinesView).repaint()
