"""A question in the footer row: a line to type, or one letter to press."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.paint import Area, Row, clip

_END = "Enter accepts, Esc cancels"
_LEAST_BOX = 16


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

    def lines(self, area: Area) -> list[Strip]:
        """The prompt in as many rows as it takes: the question wrapped, and the box that one types into below it."""
        text = area.look.fold(self.text)
        if cell_len(text) + (0 if self.letters else len(_END) + _LEAST_BOX + 6) < area.width - 1:
            return [self.line(area)]
        rows = [Row(area.look, area.width, "bar").put(1, line, bold=True) for line in area.wrapped(text, 1)]
        if not self.letters:
            room = max(area.width - len(_END) - 7, _LEAST_BOX)
            box = Row(area.look, area.width, "bar").put(1, "[", "focus", True)
            box.put_field(2, room, self.editor).put(2 + room, "]", "focus", True)
            rows.append(box.put(4 + room, clip(_END, max(area.width - room - 5, 0)), "muted"))
        return [row.strip() for row in rows]

    def line(self, area: Area) -> Strip:
        """The prompt as the footer row."""
        row = Row(area.look, area.width, "bar")
        text = clip(area.look.fold(self.text), area.width - 2, area.look.fold("…"))
        row.put(1, text, bold=True)
        if self.letters:
            return row.strip()
        column = 2 + cell_len(text)
        end = _END
        room = max(area.width - column - len(end) - 6, 12)
        row.put(column, "[", "focus", True).put_field(column + 1, room, self.editor)
        row.put(column + 1 + room, "]", "focus", True)
        return row.put(column + 3 + room, clip(end, max(area.width - column - room - 4, 0)), "muted").strip()
