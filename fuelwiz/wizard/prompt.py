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
        printable = "".join(sign for sign in text if sign.isprintable())
        if not self.letters and printable:
            self.editor = self.editor.insert(printable)

    def line(self, area: Area) -> Strip:
        """The prompt as the footer row."""
        row = Row(area.look, area.width, "bar")
        text = clip(area.look.fold(self.text), area.width - 2, area.look.fold("…"))
        row.put(1, text, bold=True)
        if self.letters:
            return row.strip()
        column = 2 + cell_len(text)
        end = "Enter accepts, Esc cancels"
        room = max(area.width - column - len(end) - 6, 12)
        row.put(column, "[", "focus", True).put_field(column + 1, room, self.editor)
        row.put(column + 1 + room, "]", "focus", True)
        return row.put(column + 3 + room, clip(end, max(area.width - column - room - 4, 0)), "muted").strip()
