"""Whether all questions of a step are answered: what is assumed is not, and what was walked past is not."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.wizard.form.form_rows import AnyRow, CellsRow, ChoiceRow, DoRow, FieldRow, FoundRow, takes_focus
from fuelwiz.wizard.form.plan import Place, rows_of


def is_answered(desk: Desk, step: str) -> bool:
    """Whether every question that a step asks at once is answered, or left empty by whoever looked at it."""
    for row in rows_of(desk, Place(step), ""):
        if isinstance(row, DoRow) and row.act == "more":
            return True
        if takes_focus(row) and not _is_row_answered(desk, step, row):
            return False
    return True


def _is_row_answered(desk: Desk, step: str, row: AnyRow) -> bool:
    if isinstance(row, FoundRow):
        return True
    if isinstance(row, CellsRow):
        first = desk.text_in_field(row.cells[0].path)
        return bool(first.text) or row.line > 0
    if not isinstance(row, FieldRow | ChoiceRow):
        return step in desk.progress.from_file or row.question.key in desk.progress.visited
    field = desk.text_in_field(row.path)
    if field.assumed or field.refused:
        return False
    return bool(field.text) or step in desk.progress.from_file or row.path in desk.progress.visited
