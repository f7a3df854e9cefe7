"""A question in the footer row: a line to type, or one letter to press."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.paint import Area, Row, clip


@dataclass(slots=True)
class Prompt:
    """What is asked in the footer. With `letters` one key answers; else a line is typed and Enter takes it."""

    text: str
    done: Callable[[str], None]
    letters: str = ""
    editor: LineEdit = LineEdit()  # noqa: RUF009  frozen, so it may be shared

    def key(self, key: str, character: str | None) -> bool:
        """Take a key; true where the prompt is over."""
        if key == "escape":
            return True
        if self.letters:
            if character and character.lower() in self.letters:
                self.done(character.lower())
                return True
            return False
        if key == "enter":
            if self.editor.text.strip():
                self.done(self.editor.text.strip())
            return True
        editor = self.editor.key(key)
        if editor is None and character and character.isprintable():
            editor = self.editor.insert(character)
        self.editor = editor or self.editor
        return False

    def paste(self, text: str) -> None:
        """Put pasted text in."""
        kept = "".join(sign for sign in text if sign.isprintable())
        if not self.letters and kept:
            self.editor = self.editor.insert(kept)

    def line(self, area: Area) -> Strip:
        """The prompt as the footer row."""
        row = Row(area.look, area.width, "bar")
        text = clip(area.look.fold(self.text), area.width - 2, area.look.fold("…"))
        row.put(1, text, bold=True)
        if self.letters:
            return row.strip()
        column = 2 + cell_len(text)
        end = "Enter takes it, Esc leaves it"
        room = max(area.width - column - len(end) - 6, 12)
        shown, cursor = self.editor.window(room)
        style = area.look.style("text", "field")
        shown = area.look.fold(shown) + " " * max(room - cell_len(shown), 0)
        row.put(column, "[", "focus", True)
        row.lay(column + 1, shown[:cursor], style)
        row.lay(column + 1 + cursor, shown[cursor : cursor + 1] or " ", style + area.look.cursor)
        row.lay(column + 2 + cursor, shown[cursor + 1 :], style)
        row.put(column + 1 + room, "]", "focus", True)
        return row.put(column + 3 + room, clip(end, max(area.width - column - room - 4, 0)), "muted").strip()
