"""Where the pointer of a form is: its rows, the place in them, and the ways from one to the next."""

from __future__ import annotations

from typing import Literal

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.steps import step_of
from fuelwiz.questions.catalogue import STEPS, Question
from fuelwiz.wizard.form.form_rows import AnyRow, CellsRow, DoRow, cells_of, path_of, takes_focus
from fuelwiz.wizard.form.paint import Focus
from fuelwiz.wizard.form.plan import POINTS_A_ROW, Place, rows_of
from fuelwiz.wizard.line_edit import LineEdit

Reaction = Literal["", "moved", "edited", "next_step", "paste", "changes"]


class Walk:
    """The questions of a build, one step or one entry of a list at a time."""

    def __init__(self, desk: Desk, step: str = "goal") -> None:
        self.desk = desk
        self.place = Place(step)
        self.points_a_row = POINTS_A_ROW
        self.width = 80
        self.rows: list[AnyRow] = []
        self.at = 0
        self.cell = 0
        self.editor = LineEdit()
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
            self.editor = LineEdit.at_end(field.text) if field.refused else LineEdit.marked(field.text)
        else:
            self.editor = LineEdit()

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
