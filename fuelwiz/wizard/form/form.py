"""The form of one build: what keys do to the place under the pointer; without a screen."""

from __future__ import annotations

from typing import Literal

from fuelwiz.desk.composites import CHOICE_QUESTIONS
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.lists import most_entries
from fuelwiz.desk.spoken_figures import understood
from fuelwiz.questions.catalogue import Choice
from fuelwiz.wizard.form.form_rows import (
    ADDS,
    CellsRow,
    ChoiceRow,
    DoRow,
    FieldRow,
    ItemRow,
    cells_of,
    entries,
    has_changes,
    is_to_answer,
    like_before,
    owned_by_enter,
    takes,
    to_look_at_in,
)
from fuelwiz.wizard.form.part_list import PARTS, with_part_key
from fuelwiz.wizard.form.pasted import TAKE_POINTS, is_free_text, is_table, one_line
from fuelwiz.wizard.form.picking import choice_beside, choice_by_text, none_of_them, standing_answer
from fuelwiz.wizard.form.placed_form import PlacedForm
from fuelwiz.wizard.form.spoken_point import take_spoken_point
from fuelwiz.wizard.line_edit import LineEdit

Reaction = Literal["", "moved", "edited", "next_step", "previous_step", "paste", "changes", "take", "more"]
"""What the screen has to do after a key."""


class Form(PlacedForm):
    """The questions of a build, one step or one entry of a list at a time, and what is typed into them."""

    def move(self, way: int) -> Reaction:
        """To the next or previous place; past the ends to the next or previous step."""
        if self._take_sentence():
            return "edited"
        target = self.pointer.next_place(way)
        if target is None:
            return self._past_end(way)
        self.focus_on(*target)
        return "moved"

    def move_row(self, way: int) -> Reaction:
        """To the row below or above, the same place of it where there is one."""
        if self._take_sentence():
            return "edited"
        row = self.pointer.next_row(way)
        if row is None:
            return self._past_end(way)
        self.focus_on(row, self.pointer.cell)
        return "moved"

    def _past_end(self, way: int) -> Reaction:
        """Past the ends of an entry there is nothing: it is left by its last row."""
        if self.place.in_entry:
            return ""
        return "next_step" if way > 0 else "previous_step"

    def key(self, key: str, character: str | None) -> Reaction:
        """What a key does that is not one of the screen's own."""
        if key == "enter":
            return self._enter()
        if takes(self.row, character):
            return "take"
        if isinstance(self.row, DoRow):
            return self._letter(self.row, character or "")
        if isinstance(self.row, ChoiceRow):
            return self._choose(key, character)
        if cells_of(self.row):
            return self._edit(key, character)
        return ""

    def _letter(self, row: DoRow, letter: str) -> Reaction:
        """The one that adds; where a question is to be picked, any letter begins the word that is looked for."""
        if row.act == "add":
            return self._add(row) if letter == ADDS else ""
        if row.act != "add_change" or not letter.isalpha():
            return ""
        self.begun = "" if letter == ADDS else letter
        return "changes"

    def _enter(self) -> Reaction:
        row = self.row
        if isinstance(row, ItemRow):
            look = to_look_at_in(self.desk, row)
            self.open_entry(row.list_path, row.index, look.path if look else "")
            return "edited"
        if isinstance(row, DoRow):
            return self._do(row)
        if self._take_sentence():
            return "edited"
        if cells_of(row) and not self.insisted and self._is_wanting():
            self.insisted = True
            return "moved"
        if isinstance(row, CellsRow) and row.table and row.line == 0 and not self.editor.text.strip():
            return self._past_points()
        if self.unfit and not self.insisted:
            self.insisted = True
            return "moved"
        owned = owned_by_enter(row) and self.own()
        reaction = self.move(1)
        return "edited" if owned and reaction == "moved" else reaction

    def _is_wanting(self) -> bool:
        """Whether the text under the pointer is refused, or the other half of one figure is not there yet."""
        field = self.desk.text_in_field(self.path)
        return bool(field.refused) or (field.is_missing and isinstance(self.row, FieldRow))

    def own(self) -> bool:
        """Make what stands under the pointer the builder's own, where it is a fallback; whether it was one."""
        field = self.desk.text_in_field(self.path) if is_to_answer(self.row) else None
        if field is None or not field.assumed or not field.text or self.desk.only_looks:
            return False
        if isinstance(self.row, ChoiceRow):
            if field.text not in self.question.answers:
                return False
            self.desk.choose(self.path, field.text)
        else:
            self.desk.type(self.path, f"{field.text} {field.unit}".strip())
        self.rebuild()
        self._load()
        return True

    def _past_points(self) -> Reaction:
        """Enter on an empty point ends the table."""
        beyond = self.pointer.row_past_table()
        if beyond is None:
            return self._past_end(1)
        self.focus_on(beyond)
        return "moved"

    def _do(self, row: DoRow) -> Reaction:
        if row.act == "more":
            self.toggle_more()
            return "more"
        if row.act == "close":
            self.close_entry()
            return "edited"
        if row.act == "add_change":
            self.begun = ""
            return self.move(1) if has_changes(self.desk, row) else "changes"
        return self._add(row) if row.question.more else self.move(1)

    def _add(self, row: DoRow) -> Reaction:
        """One entry more; where the list is asked for at once Enter goes on, so that only a letter adds."""
        most = most_entries(row.list_path)
        if len(entries(self.desk, row.list_path)) >= most:
            self.note = f"The list is full: {most} are the most."
            return "moved"
        index = self.desk.add(row.list_path, like_before(self.desk, row.list_path))
        self.open_entry(row.list_path, index)
        length = f"{row.list_path}.{index}.length"
        if index and self.pointer.find(length) is not None:
            taken = self.desk.text_in_field(length)
            self.note = f"Taken as {taken.text} {taken.unit} long until you type its length. Esc goes back."
        return "edited"

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
        self.focus_on(self.pointer.at)
        return True

    def _choose(self, key: str, character: str | None) -> Reaction:
        typed = self.editor.text
        if key in ("left", "right") or (key == "space" and not typed):
            self._cycle(-1 if key == "left" else 1)
            return "edited"
        if key == "backspace" and typed:
            return self._pick(typed[:-1])
        return self._pick(self._begun_with(character)) if character and character.isprintable() else ""

    def _begun_with(self, character: str) -> str:
        """What is typed with one letter more; a single wrong one before it is dropped where the rest is an answer."""
        typed = self.editor.text
        if not self.unfit or self._names_one(typed + character) or not self._was_right(typed[:-1]):
            return typed + character
        without = (f"{typed[:-1]}{character}", character)
        return next((text for text in without if self._names_one(text)), typed + character)

    def _was_right(self, text: str) -> bool:
        return not text or self._names_one(text)

    def _names_one(self, text: str) -> bool:
        given = self.desk.text_in_field(self.path).text
        return choice_by_text(self.question.choices, given, text) is not None

    def _pick(self, text: str) -> Reaction:
        """The answer that a text names; one that names none says so, and what stood before it stands again."""
        if not self.editor.text:
            self.desk.visit(self.path)
        self.note, self.unfit = "", ""
        choice = choice_by_text(self.question.choices, self.desk.text_in_field(self.path).text, text)
        if not self.takes_typed(text):
            if choice is not None:
                self._take(choice)
            else:
                self.desk.choose(self.path, None)
                self.note, self.unfit = none_of_them(self.path, text) if text else "", text
        self.rebuild()
        self.editor, self.insisted = LineEdit.at_end(text), False
        return "edited"

    def takes_typed(self, text: str) -> bool:
        """Whether a text says more than the answers on offer, a blend by its share."""
        asked = CHOICE_QUESTIONS.get(self.path)
        try:
            if asked is None or asked.put_typed is None:
                return False
            self.desk.type(self.path, text)
        except NoSuchField:
            return False
        return True

    def _cycle(self, way: int) -> None:
        field = self.desk.text_in_field(self.path)
        given = (f"{field.text} {field.unit}".strip(), standing_answer(self.desk, self.path))
        self._take(choice_beside(self.question.choices, given, way))

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
            cell = self.pointer.cell + way
            if 0 <= cell < len(self.row.cells):
                self.focus_on(self.pointer.at, cell)
                return "moved"
        if self.path == PARTS and not self.desk.text_in_field(PARTS).refused:
            editor = with_part_key(self.editor, key, character)
            if editor is not None:
                return self._set(editor)
        editor = self.editor.key(key)
        if editor is None:
            if character is None or not character.isprintable():
                return ""
            if character == " " and self._begins() and not self.asks_text():
                return ""
            return self._set(self.editor.insert(character), typed=True)
        return self._set(editor)

    def _offers_choices(self) -> bool:
        """Whether an arrow picks another answer; of a list of parts it would drop those that stand there."""
        return isinstance(self.row, FieldRow) and bool(self.question.choices) and self.path != PARTS

    def _begins(self) -> bool:
        """Whether what is typed now is the first of a text: a blank would only wipe the figure that stands there."""
        return self.editor.selected or not self.editor.text

    def _at_edge(self, key: str) -> bool:
        """Whether an arrow would leave the text, or the text is still marked as a whole."""
        if key == "left":
            return self.editor.selected or self.editor.cursor == 0
        return key == "right" and (self.editor.selected or self.editor.cursor == len(self.editor.text))

    def _set(self, editor: LineEdit, *, typed: bool = False) -> Reaction:
        """Another text in the field; one typed over the same makes it the builder's own."""
        changed = typed or editor.text != self.editor.text
        self.editor = editor
        if not changed:
            return "moved"
        self.note, self.insisted = "", False
        self.desk.type(self.path, editor.text)
        self.rebuild()
        self.note = understood(self.path, editor.text)
        return "edited"

    def paste(self, text: str) -> Reaction:
        """Put pasted text in; several lines or points into a cell of points are a table."""
        if self._take_sentence(one_line(text)):
            return "edited"
        if self.opens_points() and not self.asks_text() and is_table(text):
            return "paste"
        if isinstance(self.row, ChoiceRow):
            return self._pick(one_line(text)) if one_line(text) else ""
        printable = one_line(text) if cells_of(self.row) else ""
        return self._set(self.editor.insert(printable)) if printable else ""

    def _take_sentence(self, said: str = "") -> bool:
        """Take a pump's figure said in one sentence, pasted or, where the field cannot take it, as it stands there."""
        if not said and not (cells_of(self.row) and self.desk.text_in_field(self.path).refused):
            return False
        understood = take_spoken_point(self.desk, self.path, said or self.editor.text)
        if not understood:
            return False
        self.rebuild()
        self._load()
        self.note = understood
        return True

    def takes_points(self) -> bool:
        """Whether a table of points may be pasted where the pointer is."""
        return self.question.key in TAKE_POINTS

    def opens_points(self) -> bool:
        """Whether the page for a table of points opens from here: all the pump's questions lead to its table."""
        return self.takes_points() or self.place.step == "pump"

    def asks_text(self) -> bool:
        """Whether the place under the pointer takes free text, where `?` is a letter."""
        return bool(cells_of(self.row)) and is_free_text(self.question.key)

    def unsure(self) -> Reaction:
        """Leave the question to its fallback, and say which and why."""
        if not is_to_answer(self.row):
            return ""
        self.note = self.desk.unsure(self.path)
        self.rebuild()
        self._load()
        return "edited"
