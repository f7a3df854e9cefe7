"""Where a form is: at a step or in one entry of a list, and on which of its rows; without a screen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.field_questions import changed_on_a_day
from fuelwiz.desk.steps import step_of
from fuelwiz.questions.catalogue import STEPS, Question, catalogue
from fuelwiz.wizard.form.form_rows import AnyRow, ItemRow, cells_of, entry_of
from fuelwiz.wizard.form.part_list import PARTS
from fuelwiz.wizard.form.plan import Place, rows_of
from fuelwiz.wizard.form.pointer import Pointer, shows_more
from fuelwiz.wizard.line_edit import LineEdit


class PlacedForm:
    """The questions that show, the one under the pointer, and the ways to others."""

    def __init__(self, desk: Desk, step: str = "goal") -> None:
        self.desk = desk
        self.place = Place(step)
        self.pointer = Pointer()
        self.editor = LineEdit()
        self.note = ""
        self.unfit = ""  # what is typed at a choice and is none of its answers
        self.insisted = False
        self.begun = ""  # the first letter of a question that is looked for
        self._left = ""  # where the pointer was last
        self._opened: set[str] = set()
        self.go_to_step(step)

    @property
    def row(self) -> AnyRow:
        """The row under the pointer."""
        return self.pointer.row

    @property
    def question(self) -> Question:
        """What the row under the pointer asks."""
        return self.pointer.question

    @property
    def path(self) -> str:
        """The path that the pointer's place answers."""
        return self.pointer.path

    @property
    def step_number(self) -> int:
        """The number of the step, from 0."""
        return next(i for i, step in enumerate(STEPS) if step.id == self.place.step)

    def go_to_step(self, step: str, *, at_end: bool = False) -> None:
        """Show a step from its first question on, or at its last one; units are passed by once there is a power."""
        self.place = Place(step, more=step in self._opened)
        self.rebuild()
        begun = step == "goal" and self.desk.is_given("goal.power")
        self.focus_on(len(self.pointer.rows) - 1 if at_end else int(begun))

    def go_to_path(self, path: str) -> None:
        """Show the question that answers a path, in whichever step or entry it is."""
        step = step_of(path)
        for find in (lambda: self.pointer.find(path), lambda: self.pointer.find_field(path)):
            if self._found_in(step, find):
                return
        entry = entry_of(self.desk, path)
        if entry is None:
            self.go_to_step(step)
            return
        self.place = Place(step, more=step in self._opened)
        self.open_entry(*entry, path)

    def go_to_question(self, key: str) -> None:
        """Show a question of a step, its further ones too where it is among them."""
        step = catalogue()[key].step
        if not self._found_in(step, lambda: self.pointer.first_place_of(key)):
            self.go_to_step(step)

    def _found_in(self, step: str, find: Callable[[], tuple[int, int] | None]) -> bool:
        """Show the place of a step that is looked for, behind *more* too; false where there is none."""
        for more in (step in self._opened, True):
            self.place = Place(step, more=more)
            self.rebuild()
            place = find()
            if place is not None:
                self._opened |= {step} if more else set()
                self.focus_on(*place)
                return True
        return False

    def rebuild(self) -> None:
        """Lay the rows out anew after a change; the pointer stays at its path where that is still asked."""
        typed_in = self.path if self.pointer.rows else ""
        self.pointer.show(rows_of(self.desk, self.place, typed_in))

    def focus_on(self, row: int, cell: int = 0) -> None:
        """Put the pointer on a row, and into one of its places."""
        self.pointer.put(row, cell)
        self._drop_emptied()
        self.note, self.insisted = "", False
        self.desk.visit(self.path)
        self._load()

    def _drop_emptied(self) -> None:
        """An answer of a bad day that was left empty goes, and its row with it."""
        left, self._left = self._left, self.path
        is_one = changed_on_a_day(left) and left != self.path and left in self.desk.refused
        if is_one and not self.desk.text_in_field(left).text.strip():
            self.desk.unsure(left)
            self.rebuild()

    def _load(self) -> None:
        """What stands in the place under the pointer, marked so that typing replaces it; a list is gone on with."""
        self.unfit = ""
        if cells_of(self.row):
            field = self.desk.text_in_field(self.path)
            stays = bool(field.refused) or self.path == PARTS
            self.editor = LineEdit.at_end(field.text) if stays else LineEdit.marked(field.text)
        else:
            self.editor = LineEdit()

    def toggle_more(self) -> None:
        """Show or hide the further questions of the step."""
        if self.place.in_entry:
            return
        self.place = replace(self.place, more=not self.place.more)
        self._opened ^= {self.place.step}
        self.rebuild()
        rows = self.pointer.rows
        first = next((i for i, row in enumerate(rows) if shows_more(row)), 0)
        self.focus_on(first + 1 if self.place.more and first + 1 < len(rows) else first)

    @property
    def is_past_more(self) -> bool:
        """Whether the pointer is among the further questions of the step, or beyond them."""
        return self.place.more and any(map(shows_more, self.pointer.rows[: self.pointer.at]))

    def open_entry(self, list_path: str, index: int, path: str = "") -> None:
        """Show one entry of a list in place of the step, from its first question on or at a path."""
        self._show_place(replace(self.place, list_path=list_path, index=index))
        self.focus_on(*(self.pointer.find(path) or (0, 0)))

    def close_entry(self) -> None:
        """Back from an entry to the step, the pointer on the entry's row."""
        list_path, index = self.place.list_path, self.place.index
        self._show_place(replace(self.place, list_path="", index=0))
        rows = self._item_rows(list_path)
        if not rows and not self.place.more:
            self.toggle_more()
            rows = self._item_rows(list_path)
        self.focus_on(rows[min(index, len(rows) - 1)] if rows else self.pointer.at)

    def _show_place(self, place: Place) -> None:
        """Other rows altogether: the path under the pointer is none of theirs."""
        self.place = place
        self.pointer.rows = ()
        self.rebuild()

    def _item_rows(self, list_path: str) -> list[int]:
        rows = enumerate(self.pointer.rows)
        return [i for i, row in rows if isinstance(row, ItemRow) and row.list_path == list_path]
