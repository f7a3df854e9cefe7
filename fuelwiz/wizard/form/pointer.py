"""Where the pointer of a form is among its rows, and the ways from one place to the next."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.desk.composites import field_of
from fuelwiz.questions.catalogue import Question
from fuelwiz.wizard.form.form_rows import AnyRow, CellsRow, DoRow, FoundRow, cells_of, path_of, takes_focus


class Pointer:
    """A row of those that show, and a cell of it."""

    def __init__(self) -> None:
        self.rows: Sequence[AnyRow] = ()
        self.at = 0
        self.cell = 0

    @property
    def row(self) -> AnyRow:
        """The row under the pointer."""
        return self.rows[self.at]

    @property
    def question(self) -> Question:
        """What that row asks."""
        return self.row.question

    @property
    def path(self) -> str:
        """The path that the pointer's place answers."""
        return path_of(self.row, self.cell)

    def position(self) -> tuple[int, int]:
        """Which question of how many the pointer is at or past, from 1."""
        asked = [i for i, row in enumerate(self.rows) if takes_focus(row) and _counts(row)]
        return max(1, sum(i <= self.at for i in asked)), max(1, len(asked))

    def show(self, rows: Sequence[AnyRow]) -> None:
        """Other rows; the pointer stays at its path where that still shows."""
        path = self.path if self.rows else ""
        self.rows = rows
        place = self.find(path) if path else None
        if place is not None:
            self.at, self.cell = place
        else:
            self.at = min(self.at, len(rows) - 1)
            self._off_heads()

    def find(self, path: str) -> tuple[int, int] | None:
        """The row and cell that answer a path; None where none does."""
        for i, row in enumerate(self.rows):
            paths = [cell.path for cell in cells_of(row)] or [path_of(row)]
            if path in paths and takes_focus(row):
                return i, paths.index(path)
        return None

    def find_field(self, field: str) -> tuple[int, int] | None:
        """The row and cell of a question that is answered in that field; None where none is."""
        for i, row in enumerate(self.rows):
            fields = [field_of(cell.path) for cell in cells_of(row)] or [field_of(path_of(row))]
            if field in fields and takes_focus(row):
                return i, fields.index(field)
        return None

    def first_place_of(self, key: str) -> tuple[int, int] | None:
        """The first place that asks a question and takes focus; None where none does."""
        asking = (i for i, row in enumerate(self.rows) if _asks(row, key) and takes_focus(row))
        return next(((i, 0) for i in asking if not shows_more(self.rows[i])), None)

    def put(self, row: int, cell: int = 0) -> None:
        """Put the pointer on a row and a cell of it, as far as there are any."""
        self.at = min(max(row, 0), len(self.rows) - 1)
        self._off_heads()
        self.cell = min(max(cell, 0), max(len(cells_of(self.row)) - 1, 0))

    def _off_heads(self) -> None:
        while not takes_focus(self.rows[self.at]) and self.at + 1 < len(self.rows):
            self.at += 1

    def next_row(self, way: int) -> int | None:
        """The row below or above that takes focus."""
        row = self.at + way
        while 0 <= row < len(self.rows) and not takes_focus(self.rows[row]):
            row += way
        return row if 0 <= row < len(self.rows) else None

    def next_place(self, way: int) -> tuple[int, int] | None:
        """The place that Tab goes to: in a table down the lines of a point, then the first of the next."""
        cells = cells_of(self.row)
        if isinstance(self.row, CellsRow) and self.row.lines > 1:
            line = self.row.line + way
            if 0 <= line < self.row.lines:
                return self.at + way, self.cell
            if 0 <= self.cell + way < len(cells):
                return self.at - way * (self.row.lines - 1), self.cell + way
        elif 0 <= self.cell + way < len(cells):
            return self.at, self.cell + way
        row = self.next_row(way)
        if row is None:
            return None
        return row, 0 if way > 0 else len(cells_of(self.rows[row])) - 1

    def row_past_table(self) -> int | None:
        """The first row below that is not of the same table."""
        table = _table_of(self.row)
        below = range(self.at, len(self.rows))
        return next(
            (i for i in below if _table_of(self.rows[i]) != table and takes_focus(self.rows[i])), None
        )


def shows_more(row: AnyRow) -> bool:
    """Whether a row leads to further questions."""
    return isinstance(row, DoRow) and row.act == "more"


def _asks(row: AnyRow, key: str) -> bool:
    return row.question.key == key or _table_of(row) == key


def _table_of(row: AnyRow) -> str:
    return row.table if isinstance(row, CellsRow) else ""


def _counts(row: AnyRow) -> bool:
    """Whether a row counts as a question: what asks something, and what leads to further questions."""
    return not isinstance(row, DoRow | FoundRow) or (isinstance(row, DoRow) and row.act == "more")
