"""The form of one build: what keys do to the place under the pointer; without a screen."""

from __future__ import annotations

from dataclasses import replace

from fuelwiz.questions.catalogue import Choice
from fuelwiz.session import field_at
from fuelwiz.wizard.form.entries import entries
from fuelwiz.wizard.form.form_rows import (
    AnyRow,
    CellsRow,
    ChoiceRow,
    DoRow,
    FieldRow,
    ItemRow,
    cells_of,
    takes_focus,
)
from fuelwiz.wizard.form.walk import Reaction, Walk
from fuelwiz.wizard.line_edit import LineEdit

FREE_TEXT = ("text", "note")


class Form(Walk):
    """The questions of a build, one step or one entry of a list at a time, and what is typed into them."""

    def key(self, key: str, character: str | None) -> Reaction:
        """What a key does that is not one of the screen's own."""
        if key == "enter":
            return self._enter()
        if isinstance(self.row, ChoiceRow):
            return self._choose(key, character)
        if cells_of(self.row):
            return self._edit(key, character)
        return ""

    def _enter(self) -> Reaction:
        row = self.row
        if isinstance(row, ItemRow):
            return self.open_entry(row.list_path, row.index)
        if isinstance(row, DoRow):
            return self._do(row)
        if cells_of(row) and self.desk.text_in_field(self.path).refused and not self._insisted:
            self._insisted = True
            return "moved"
        is_point = isinstance(row, CellsRow) and row.question.key.endswith(("points", "current"))
        if is_point and not self.editor.text.strip():
            return self._past_points()
        target = self._neighbour(1)
        if target is not None and _shows_more(self.rows[target[0]]) and not self.place.more:
            return "next_step"
        return self.move(1)

    def _past_points(self) -> Reaction:
        """Enter on an empty point ends the table."""
        key = self.question.key
        beyond = next(
            (
                i
                for i in range(self.at, len(self.rows))
                if self.rows[i].question.key != key and takes_focus(self.rows[i])
            ),
            None,
        )
        if beyond is None:
            return "next_step"
        self.focus_on(beyond)
        return "moved"

    def _do(self, row: DoRow) -> Reaction:
        if row.act == "more":
            self.toggle_more()
            return "edited"
        if row.act == "close":
            self.close_entry()
            return "edited"
        if row.act == "add_change":
            return "changes"
        index = self.desk.add(row.list_path, {})
        self.open_entry(row.list_path, index)
        return "edited"

    def toggle_more(self) -> None:
        """Show or hide the further questions of the step."""
        if self.place.in_entry:
            return
        self.place = replace(self.place, more=not self.place.more)
        self.rebuild()
        first = next(
            (i for i, row in enumerate(self.rows) if isinstance(row, DoRow) and row.act == "more"), 0
        )
        self.focus_on(first + 1 if self.place.more and first + 1 < len(self.rows) else first)

    def open_entry(self, list_path: str, index: int) -> Reaction:
        """Show one entry of a list in place of the step."""
        self.place = replace(self.place, list_path=list_path, index=index)
        self.rows = []
        self.rebuild()
        self.focus_on(0)
        return "edited"

    def close_entry(self) -> None:
        """Back from an entry to the step, the pointer on the entry's row."""
        list_path, index = self.place.list_path, self.place.index
        self.place = replace(self.place, list_path="", index=0)
        self.rows = []
        self.rebuild()
        rows = [
            i for i, row in enumerate(self.rows) if isinstance(row, ItemRow) and row.list_path == list_path
        ]
        if not rows and not self.place.more:
            self.toggle_more()
            rows = [
                i
                for i, row in enumerate(self.rows)
                if isinstance(row, ItemRow) and row.list_path == list_path
            ]
        self.focus_on(rows[min(index, len(rows) - 1)] if rows else self.at)

    def remove_entry(self) -> bool:
        """Take out the entry under the pointer, or the one that is open."""
        row = self.row
        if self.place.in_entry:
            list_path, index = self.place.list_path, self.place.index
            self.close_entry()
        elif isinstance(row, ItemRow):
            list_path, index = row.list_path, row.index
        else:
            return False
        if index >= len(entries(self.desk, list_path)):
            return False
        self.desk.remove(list_path, index)
        self.rebuild()
        self.focus_on(self.at)
        return True

    def _choose(self, key: str, character: str | None) -> Reaction:
        if key in ("left", "right", "space"):
            self._cycle(-1 if key == "left" else 1)
            return "edited"
        return self._pick(character) if character and character.isalnum() else ""

    def _pick(self, letter: str) -> Reaction:
        """The next answer with a word that begins with a letter, or with a figure in it."""
        choices = self.question.choices
        now = self.desk.text_in_field(self.path).text
        at = next((i for i, choice in enumerate(choices) if choice.value == now), -1)
        for i in range(at + 1, at + 1 + len(choices)):
            choice = choices[i % len(choices)]
            words = choice.say.lower().replace("(", " ").split()
            if any(
                word.startswith(letter.lower()) or (letter.isdigit() and letter in word) for word in words
            ):
                self._take(choice)
                return "edited"
        return ""

    def _cycle(self, way: int) -> None:
        choices = [choice.value for choice in self.question.choices]
        field = self.desk.text_in_field(self.path)
        said = f"{field.text} {field.unit}".strip()
        current = next((i for i, value in enumerate(choices) if value in (said, field.text)), None)
        first = 0 if way > 0 else len(choices) - 1
        new = first if current is None else (current + way) % len(choices)
        self._take(self.question.choices[new])

    def _take(self, choice: Choice) -> None:
        self.desk.choose(self.path, choice.value)
        self.rebuild()
        self._load()
        self.note = choice.note

    def _edit(self, key: str, character: str | None) -> Reaction:
        if self._offers_choices() and self._at_edge(key):
            self._cycle(-1 if key == "left" else 1)
            return "edited"
        if isinstance(self.row, CellsRow) and self._at_edge(key):
            way = -1 if key == "left" else 1
            if 0 <= self.cell + way < len(self.row.cells):
                self.focus_on(self.at, self.cell + way)
                return "moved"
        editor = self.editor.key(key)
        if editor is None:
            if character is None or not character.isprintable():
                return ""
            editor = self.editor.insert(character)
        return self._set(editor)

    def _offers_choices(self) -> bool:
        return isinstance(self.row, FieldRow) and bool(self.question.choices)

    def _at_edge(self, key: str) -> bool:
        """Whether an arrow would leave the text, or the text is still marked as a whole."""
        if key == "left":
            return self.editor.selected or self.editor.cursor == 0
        return key == "right" and (self.editor.selected or self.editor.cursor == len(self.editor.text))

    def _set(self, editor: LineEdit) -> Reaction:
        changed = editor.text != self.editor.text
        self.editor = editor
        if not changed:
            return "moved"
        self.note, self._insisted = "", False
        self.desk.type(self.path, editor.text)
        self.rebuild()
        return "edited"

    def paste(self, text: str) -> Reaction:
        """Put pasted text in; several lines into a cell of points are a table."""
        lines = text.strip().splitlines()
        if len(lines) > 1 and self.takes_points():
            return "paste"
        if not cells_of(self.row):
            return ""
        joined = " ".join(line.strip() for line in lines)
        kept = "".join(sign for sign in joined if sign.isprintable())
        return self._set(self.editor.insert(kept)) if kept else ""

    def takes_points(self) -> bool:
        """Whether a table of points may be pasted where the pointer is."""
        return self.question.key in ("pump.curve.points", "pump.current", "pump.known", "pump.curve.voltage")

    def asks_text(self) -> bool:
        """Whether the place under the pointer takes free text, where `?` is a letter."""
        if not cells_of(self.row):
            return False
        try:
            return field_at(self.question.key).type in FREE_TEXT
        except KeyError:
            return False

    def unsure(self) -> Reaction:
        """Leave the question to its fallback, and say which and why."""
        if not (cells_of(self.row) or isinstance(self.row, ChoiceRow)):
            return ""
        self.note = self.desk.unsure(self.path)
        note = self.note
        self.rebuild()
        self._load()
        self.note = note
        return "edited"


def _shows_more(row: AnyRow) -> bool:
    return isinstance(row, DoRow) and row.act == "more"
