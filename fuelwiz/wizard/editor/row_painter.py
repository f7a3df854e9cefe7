"""Painting the rows of a form: label, field, unit, echo and tag, in the columns that fit the width."""

from __future__ import annotations

from rich.cells import cell_len
from textual.strip import Strip

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.edits import ALWAYS_WANTED
from fuelwiz.desk.field_text import FieldText
from fuelwiz.desk.log_read import COLUMNS
from fuelwiz.questions.catalogue import Choice, Question
from fuelwiz.record import record
from fuelwiz.session import NOT_IN_THE_LOG
from fuelwiz.terminal.palette import Role
from fuelwiz.wizard.editor.cells_painter import Focus, cells_strip, editing
from fuelwiz.wizard.form.form_rows import (
    AnyRow,
    CellsRow,
    ChoiceRow,
    DoRow,
    FieldRow,
    FoundRow,
    HeadRow,
    ItemRow,
    NoteRow,
    to_look_at_in,
)
from fuelwiz.wizard.form.picking import standing_answer
from fuelwiz.wizard.paint import Area, Row, clip, clip_words

LABEL = 3
NARROW_LIST = 66  # below it a run shows how many ends it has in place of which
_LIST_COLUMNS = ((25, 38, 48), (22, 35, 45), (22, 31, 39))
"""Of a list: where its second column and its figures begin, and where those end; wide, middle and narrow."""
TAG = "assumed"
COLUMN_END = 16  # cells behind the head of a column: its unit, and whether it is guessed
MAY_STAY_EMPTY = "may stay empty"
NEEDED = "needed"
NEEDED_WITH = {"wiring.supply": "needed with wire"}
"""What may stay empty alone, as the rest of its section needs it."""
LONGEST_UNFIT = 12
WANTED = " is wanted"
"""What a narrow row leaves out of a refusal, so that what is wanted stands there whole."""
TAKEN_BESIDE = {"pump.kind": "lower of both"}
"""What is taken where it is none of a question's answers."""


@record
class FormColumns:
    """Where the parts of a row stand; 0 for what has no room."""

    bracket: int
    field: int
    unit: int
    echo: int
    tag: int

    @property
    def text(self) -> int:
        """Where the text of a field begins."""
        return self.bracket + 1


WIDE = FormColumns(bracket=23, field=13, unit=39, echo=51, tag=63)
SHORT = FormColumns(bracket=20, field=8, unit=31, echo=0, tag=0)
MIDDLE = FormColumns(bracket=20, field=11, unit=34, echo=0, tag=44)


def columns_for(width: int) -> FormColumns:
    """The columns of a form of that width."""
    return WIDE if width >= 76 else MIDDLE if width >= 54 else SHORT


def row_strip(row: AnyRow, desk: Desk, area: Area, focus: Focus | None, cell: int = 0) -> Strip:
    """One row of the form; `focus` where the pointer is on it, `cell` the one that has to be in sight."""
    match row:
        case FieldRow():
            return _field(row, desk, area, focus)
        case ChoiceRow():
            return _choice(row, desk, area, focus)
        case CellsRow():
            return cells_strip(labeled(area, row.label, focus), row, desk, focus, cell)
        case HeadRow():
            return _columns(area.row(), row.columns, role="muted")
        case NoteRow():
            text = row.text if cell_len(row.text) <= area.width - LABEL else row.short
            return area.row().put(LABEL, area.look.fold(text), "muted").strip()
        case ItemRow():
            return _item(row, desk, area, focus)
        case FoundRow():
            return _found(row, area, focus)
        case DoRow():
            line = _pointed(area, focus)
            text = clip_words(area.look.fold(row.text), area.width - LABEL - 1, area.look.fold("…"))
            return line.put(LABEL, text, "focus" if focus else "muted", focus is not None).strip()


def _item(row: ItemRow, desk: Desk, area: Area, focus: Focus | None) -> Strip:
    """An entry of a list, marked where something inside is to be put right."""
    look = to_look_at_in(desk, row)
    name, *rest = row.columns
    columns = (f"{area.look.mark('look here')} {name}" if look else name, *rest)
    role: Role = "fault" if look else "text"
    figure: Role = "muted" if row.is_guessed and not look else role
    return _columns(_pointed(area, focus), columns, role=role, figures=figure, focused=focus is not None)


def _found(row: FoundRow, area: Area, focus: Focus | None) -> Strip:
    """What was measured: what can be taken there stands out, and what is not as it should be."""
    line = _pointed(area, focus)
    role: Role = "focus" if focus else "fault" if row.is_odd else "text" if row.proposal else "muted"
    text = clip(area.look.fold(row.text), area.width - LABEL - 1, area.look.fold("…"))
    return line.put(LABEL, text, role, focus is not None).strip()


def _pointed(area: Area, focus: Focus | None) -> Row:
    line = area.row("row" if focus else "background")
    if focus:
        line.put(1, area.look.mark("pointer"), "focus", True)
    return line


def labeled(area: Area, label: str, focus: Focus | None) -> Row:
    """A row that begins with a label, behind the pointer where it is there."""
    line = area.row()
    if focus:
        line.put(1, area.look.mark("pointer"), "focus", True)
    return line.put(LABEL, clip(area.look.fold(label), 18), bold=focus is not None)


def _field(row: FieldRow, desk: Desk, area: Area, focus: Focus | None) -> Strip:
    line, at = labeled(area, row.question.label, focus), columns_for(area.width)
    field = desk.text_in_field(row.path)
    wide = _field_width(row, field, at, area.width)
    if focus:
        editing(line, at.bracket, wide, focus.editor, field)
    else:
        text = field.text or ("·" if not field.assumed else "")
        role: Role = "fault" if field.refused else "muted" if field.assumed or not field.text else "text"
        line.put(at.text, clip(area.look.fold(text), wide, area.look.fold("…")), role)
    if wide > at.unit - at.text:
        return _end_of_text(line, row, field, at.text + wide)
    if field.refused:
        room = area.width - at.unit - 1
        reasons = [
            area.look.fold(f"! {text}") for text in (field.refused, field.refused.removesuffix(WANTED))
        ]
        reason = next((form for form in reasons if cell_len(form) <= room), reasons[-1])
        shown = clip(reason, room, area.look.fold("…"))
        return line.put(at.unit, shown, "fault", True).strip()
    tag = _tag(row.question, field, _picked(row.question, field))
    tag_at = at.tag or area.width - cell_len(tag)
    beyond = at.echo or (tag_at if field.assumed or field.is_missing else at.tag or area.width)
    line.put(at.unit, clip(area.look.fold(field.unit), max(beyond - at.unit - 1, 4)), "muted")
    if at.echo:
        line.put(at.echo, clip(area.look.fold(field.echo), at.tag - at.echo - 1), "muted")
    if (at.tag or field.assumed or field.is_missing) and (
        field.assumed or tag_at + cell_len(tag) <= area.width
    ):
        line.put(tag_at, area.look.fold(tag), "muted")
    return line.strip()


def _end_of_text(line: Row, row: FieldRow, field: FieldText, end: int) -> Strip:
    """What stands behind a long text: for a column of a log its unit, and whether it is guessed."""
    if row.question.key.startswith(COLUMNS):
        line.put(end + 2, clip(line.look.fold(field.echo), COLUMN_END - len(TAG) - 2), "muted")
        picked = _picked(row.question, field)
        absent = picked.say if picked is not None and picked.value == NOT_IN_THE_LOG else ""
        line.put_right(line.width - 1, TAG if field.assumed else absent, "muted")
    return line.strip()


def _field_width(row: FieldRow, field: FieldText, at: FormColumns, width: int) -> int:
    """A text without a unit may run over the columns of unit and echo."""
    texts = ("name", "notes", "feed.sizes", "return_line.sizes", "bands.feed", "bands.inlet")
    key = row.question.key
    if (
        key in texts or key.startswith(("fitted.", "log.")) or key.endswith((".what", ".name"))
    ) and not field.refused:
        return width - at.text - 2 - (COLUMN_END if key.startswith(COLUMNS) else 0)
    if field.unit or field.refused or field.assumed:
        return at.field
    return max(at.field, min(cell_len(field.text) + 1, (at.echo or width) - at.text - 2))


def _picked(question: Question, field: FieldText) -> Choice | None:
    """The choice that stands in a field whose question offers some."""
    texts = (f"{field.text} {field.unit}".strip(), field.text)
    return next((c for c in question.choices if c.value in texts), None)


def _tag(question: Question, field: FieldText, picked: Choice | None) -> str:
    if field.assumed:
        return TAG
    if picked is not None:
        return picked.say
    if field.text:
        return ""
    return (
        NEEDED
        if question.key in ALWAYS_WANTED or field.is_missing
        else NEEDED_WITH.get(question.key, MAY_STAY_EMPTY)
    )


def _choice(row: ChoiceRow, desk: Desk, area: Area, focus: Focus | None) -> Strip:
    line, at = labeled(area, row.question.label, focus), columns_for(area.width)
    field = desk.text_in_field(row.path)
    choices = row.question.choices
    stands = standing_answer(desk, row.path)
    current = next((i for i, choice in enumerate(choices) if choice.value == stands), None)
    role: Role = "muted" if field.assumed or not field.text else "text"
    whole = "  ".join(f"(x) {choice.say}" for choice in choices)
    refused = (
        f"no answer: {clip(focus.unfit, LONGEST_UNFIT, '…')}" if focus and focus.unfit else field.refused
    )
    tag = area.look.fold(f"! {refused}") if refused else TAG if field.assumed or not field.text else ""
    beside = TAKEN_BESIDE.get(row.question.key, "") if current is None else ""
    room = area.width - at.text - 1
    longer = f"{tag}: {beside}" if beside and tag == TAG else tag
    if cell_len(whole) + (cell_len(longer) + 2 if longer else 0) <= room:
        column, tag = at.text, longer
        for i, choice in enumerate(choices):
            text = f"({'•' if i == current else ' '}) {choice.say}"
            line.put(column, text, "focus" if focus and i == current else role, i == current)
            column += cell_len(text) + 2
    else:
        say = choices[current].say if current is not None else field.text or beside or "not known"
        behind = cell_len(tag) + (1 if at.tag or refused else 0) if tag else 0
        text = f"< {clip(area.look.fold(say), room - behind - 4, area.look.fold('…'))} >"
        line.put(at.text, text, "focus" if focus else role, focus is not None)
        column = at.text + cell_len(text) + (2 if cell_len(text) + 1 + behind <= room else 1)
        number = f"{current + 1} of {len(choices)}" if current is not None else f"{len(choices)} answers"
        if column + len(number) + 2 + cell_len(tag) < area.width:
            line.put(column, number, "muted")
            column += len(number) + 2
    if tag:
        end = area.width - cell_len(
            tag
        )  # where the tags of the fields begin too that have no column of their own
        put_at = max(column, min(at.tag, end - 1) if at.tag else column if refused else end)
        line.put(put_at, clip(tag, area.width - put_at), "fault" if refused else "muted")
    return line.strip()


def _columns(
    line: Row, columns: tuple[str, ...], *, role: Role, figures: Role | None = None, focused: bool = False
) -> Strip:
    """A line of a list: what, hose, a figure to the right, and what is on it."""
    width = line.width
    name, hose, figure = (
        _LIST_COLUMNS[0] if width >= 76 else _LIST_COLUMNS[1] if width >= 54 else _LIST_COLUMNS[2]
    )
    more = line.look.fold("…")
    line.put(LABEL, clip(line.look.fold(columns[0]), name - LABEL - 1, more), role, focused)
    if not columns[2] and not columns[3]:
        rest = _whole_parts(line.look.fold(columns[1]), width - name - 1, more)
        return line.put(name, rest, role, focused).strip()
    line.put(name, clip(line.look.fold(columns[1]), hose - name, more), role, focused)
    length = clip(line.look.fold(columns[2]), figure - hose - 1, more)
    line.put_right(figure, length, figures or role, focused)
    if len(columns) > 4 and width < NARROW_LIST:
        return line.put_right(figure + 6, columns[4], role, focused).strip()
    rest = _whole_parts(line.look.fold(columns[3]), width - figure - 3, more)
    return line.put(figure + 2, rest, role, focused).strip()


def _whole_parts(text: str, room: int, more: str) -> str:
    """A list as far as its parts fit whole, where one does."""
    if cell_len(text) <= room:
        return text
    parts = text.split(", ")
    shown = [f"{', '.join(parts[:end])} {more}" for end in range(len(parts) - 1, 0, -1)]
    return next((one for one in shown if cell_len(one) <= room), clip_words(text, room, more))
