"""The rows of a form: what each is, apart from how it is painted."""

from __future__ import annotations

from dataclasses import dataclass

from fuelwiz.questions.catalogue import Question


@dataclass(frozen=True, slots=True)
class FormCell:
    """A place to type in: the path that it answers, and a short name where a row has several."""

    path: str
    name: str = ""


@dataclass(frozen=True, slots=True)
class FormRow:
    """A line of the form about one question."""

    question: Question


@dataclass(frozen=True, slots=True)
class FieldRow(FormRow):
    """One value to type; a question with choices offers them beside it."""

    path: str

    @property
    def cells(self) -> tuple[FormCell, ...]:
        """The one place to type in."""
        return (FormCell(self.path),)


@dataclass(frozen=True, slots=True)
class ChoiceRow(FormRow):
    """One of a few answers to pick."""

    path: str


@dataclass(frozen=True, slots=True)
class CellsRow(FormRow):
    """Several small values side by side: points of a curve, counts of fittings."""

    cells: tuple[FormCell, ...]
    label: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class ItemRow(FormRow):
    """An entry of a list, opened with Enter; `heads` stand over the first one of a list."""

    list_path: str
    index: int
    columns: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class HeadRow(FormRow):
    """What stands over the columns of a list; takes no focus."""

    columns: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class DoRow(FormRow):
    """Something to do with Enter: add an entry, show more questions, go back."""

    act: str
    text: str
    list_path: str = ""


AnyRow = FieldRow | ChoiceRow | CellsRow | ItemRow | HeadRow | DoRow


def takes_focus(row: AnyRow) -> bool:
    """Whether the pointer stops at a row."""
    return not isinstance(row, HeadRow)


def cells_of(row: AnyRow) -> tuple[FormCell, ...]:
    """The places to type in of a row."""
    return row.cells if isinstance(row, FieldRow | CellsRow) else ()


def path_of(row: AnyRow, cell: int = 0) -> str:
    """The path that a row's place answers; the question's key where there is none."""
    cells = cells_of(row)
    if cells:
        return cells[min(cell, len(cells) - 1)].path
    return row.path if isinstance(row, ChoiceRow) else row.question.key
