"""A line of text under a cursor: what editing keys do to it."""

from __future__ import annotations

from fuelwiz.file_limits import LONGEST_TEXT
from fuelwiz.record import record


@record
class LineEdit:
    """A text and the place of the cursor in it, from 0 to its length.

    `selected` says that all of it is marked: the next sign typed replaces it, any editing key keeps it.
    """

    text: str = ""
    cursor: int = 0
    selected: bool = False

    @classmethod
    def at_end(cls, text: str) -> LineEdit:
        """A text with the cursor behind it."""
        return cls(text, len(text))

    @classmethod
    def marked(cls, text: str) -> LineEdit:
        """A text that the next sign replaces."""
        return cls(text, len(text), selected=bool(text))

    def insert(self, typed: str) -> LineEdit:
        """Put signs in at the cursor, as far as there is room, or in place of what is marked."""
        if self.selected:
            return LineEdit().insert(typed)
        typed = typed[: max(0, LONGEST_TEXT - len(self.text))]
        return LineEdit(self.text[: self.cursor] + typed + self.text[self.cursor :], self.cursor + len(typed))

    def key(self, name: str) -> LineEdit | None:
        """What an editing key makes of it; None for a key that edits nothing."""
        if self.selected and name in ("backspace", "delete", "ctrl+d"):
            return LineEdit()
        match name:
            case "left":
                return LineEdit(self.text, max(0, self.cursor - 1))
            case "right":
                return LineEdit(self.text, min(len(self.text), self.cursor + 1))
            case "home" | "ctrl+a":
                return LineEdit(self.text, 0)
            case "end" | "ctrl+e":
                return LineEdit(self.text, len(self.text))
            case "backspace":
                return self._without(max(0, self.cursor - 1), self.cursor)
            case "delete" | "ctrl+d":
                return self._without(self.cursor, min(len(self.text), self.cursor + 1))
            case "ctrl+u":
                return self._without(0, self.cursor)
            case "ctrl+k":
                return self._without(self.cursor, len(self.text))
            case "ctrl+w":
                return self._without(self._word_start(), self.cursor)
        return None

    def _without(self, start: int, end: int) -> LineEdit:
        return LineEdit(self.text[:start] + self.text[end:], start)

    def _word_start(self) -> int:
        before = self.text[: self.cursor].rstrip()
        return before.rfind(" ") + 1

    def window(self, width: int) -> tuple[str, int]:
        """The part of the text that a field of that width shows, and the column of the cursor in it."""
        start = max(0, self.cursor - width + 1)
        return self.text[start : start + width], self.cursor - start
