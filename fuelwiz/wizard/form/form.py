"""The form of one build: where the pointer is, what is being typed, and what keys do; without a screen."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from fuelwiz.desk.desk import Desk
from fuelwiz.questions.catalogue import STEPS, Question
from fuelwiz.session.model import field_at
from fuelwiz.wizard.editor import Editor
from fuelwiz.wizard.form.entries import entries
from fuelwiz.wizard.form.paint import Focus
from fuelwiz.wizard.form.plan import POINTS_A_ROW, Place, rows_of
from fuelwiz.wizard.form.rows import (
    AnyRow,
    CellsRow,
    ChoiceRow,
    DoRow,
    FieldRow,
    ItemRow,
    cells_of,
    path_of,
    takes_focus,
)

Reaction = Literal["", "moved", "edited", "next_step", "paste", "changes"]
FREE_TEXT = ("text", "note")


class Form:
    """The questions of a build, one step or one entry of a list at a time."""

    def __init__(self, desk: Desk, step: str = "goal") -> None:
        self.desk = desk
        self.place = Place(step)
        self.points_a_row = POINTS_A_ROW
        self.width = 80
        self.rows: list[AnyRow] = []
        self.at = 0
        self.cell = 0
        self.editor = Editor()
        self.note = ""
        self._insisted = False
        self.go_to_step(step)

    @property
    def row(self) -> AnyRow:
        """The row under the pointer."""
        return self.rows[self.at]

    @property
    def question(self) -> Question:
        """What the row under the pointer asks."""
        return self.row.question

    @property
    def path(self) -> str:
        """The path that the pointer's place answers."""
        return path_of(self.row, self.cell)

    @property
    def step_number(self) -> int:
        """The number of the step, from 0."""
        return next(i for i, step in enumerate(STEPS) if step.id == self.place.step)

    @property
    def focus(self) -> Focus:
        """The pointer, for painting."""
        return Focus(self.cell, self.editor)

    def position(self) -> tuple[int, int]:
        """Which question of how many the pointer is at or past, from 1."""
        asked = [i for i, row in enumerate(self.rows) if takes_focus(row) and not isinstance(row, DoRow)]
        return max(1, sum(i <= self.at for i in asked)), max(1, len(asked))

    def go_to_step(self, step: str) -> None:
        """Show a step from its first question on."""
        self.place = Place(step)
        self.rebuild()
        self.focus_on(0)

    def go_to_path(self, path: str) -> None:
        """Show the question that answers a path, in whichever step or entry it is."""
        from fuelwiz.desk.steps import step_of

        for more in (False, True):
            self.place = Place(step_of(path), more=more)
            self.rebuild()
            if self._find(path):
                return
        self.go_to_step(step_of(path))

    def rebuild(self) -> None:
        """Lay the rows out anew after a change; the pointer stays at its path where that is still asked."""
        path = self.path if self.rows else ""
        self.rows = rows_of(self.desk, self.place, self.points_a_row)
        if not (path and self._find(path, quietly=True)):
            self.at = min(self.at, len(self.rows) - 1)
            self._off_heads(1)

    def _find(self, path: str, *, quietly: bool = False) -> bool:
        for i, row in enumerate(self.rows):
            cells = cells_of(row)
            paths = [cell.path for cell in cells] or [path_of(row)]
            if path in paths and takes_focus(row):
                if quietly:
                    self.at, self.cell = i, paths.index(path)
                else:
                    self.focus_on(i, paths.index(path))
                return True
        return False

    def focus_on(self, row: int, cell: int = 0) -> None:
        """Put the pointer on a row, and into one of its places."""
        self.at = min(max(row, 0), len(self.rows) - 1)
        self._off_heads(1)
        self.cell = min(max(cell, 0), max(len(cells_of(self.row)) - 1, 0))
        self.note, self._insisted = "", False
        self.desk.visit(self.path)
        self._load()

    def _off_heads(self, way: int) -> None:
        while not takes_focus(self.rows[self.at]) and 0 <= self.at + way < len(self.rows):
            self.at += way

    def _load(self) -> None:
        """What stands in the place under the pointer, marked so that typing replaces it."""
        if cells_of(self.row):
            field = self.desk.text_in_field(self.path)
            self.editor = Editor.at_end(field.text) if field.refused else Editor.marked(field.text)
        else:
            self.editor = Editor()

    def move(self, way: int) -> Reaction:
        """To the next or previous place; at the end to the next step."""
        target = self._neighbour(way)
        if target is None:
            return "next_step" if way > 0 else ""
        self.focus_on(*target)
        return "moved"

    def move_row(self, way: int) -> Reaction:
        """To the row below or above, the same place of it where there is one."""
        row = self._row_after(self.at, way)
        if row is None:
            return "next_step" if way > 0 else ""
        self.focus_on(row, self.cell)
        return "moved"

    def _row_after(self, row: int, way: int) -> int | None:
        row += way
        while 0 <= row < len(self.rows) and not takes_focus(self.rows[row]):
            row += way
        return row if 0 <= row < len(self.rows) else None

    def _neighbour(self, way: int) -> tuple[int, int] | None:
        """The place that Tab goes to: in points pressure, then its flow, then the next pressure."""
        cells = cells_of(self.row)
        if self.path.endswith((".0", ".1")) and isinstance(self.row, CellsRow):
            column = int(self.path[-1])
            if (column == 0) == (way > 0):
                return self.at + way, self.cell
            if 0 <= self.cell + way < len(cells):
                return self.at - way, self.cell + way
        elif 0 <= self.cell + way < len(cells):
            return self.at, self.cell + way
        row = self._row_after(self.at, way)
        if row is None:
            return None
        return row, 0 if way > 0 else len(cells_of(self.rows[row])) - 1

    def key(self, key: str, character: str | None) -> Reaction:
        """What a key does that is not one of the screen's own."""
        if key == "enter":
            return self._enter()
        if isinstance(self.row, ChoiceRow):
            return self._choose(key)
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

    def _choose(self, key: str) -> Reaction:
        if key not in ("left", "right", "space"):
            return ""
        self._cycle(-1 if key == "left" else 1)
        return "edited"

    def _cycle(self, way: int) -> None:
        choices = [choice.value for choice in self.question.choices]
        field = self.desk.text_in_field(self.path)
        said = f"{field.text} {field.unit}".strip()
        current = next((i for i, value in enumerate(choices) if value in (said, field.text)), None)
        first = 0 if way > 0 else len(choices) - 1
        new = first if current is None else (current + way) % len(choices)
        self.desk.choose(self.path, choices[new])
        self.note = self.question.choices[new].note
        self.rebuild()
        self._load()

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

    def _set(self, editor: Editor) -> Reaction:
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
