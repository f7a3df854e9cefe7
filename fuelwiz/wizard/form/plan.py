"""Which rows a step shows: from the catalogue, the model's lists and what the build says so far."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.desk.asked import is_asked, is_run_by_run
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.field_questions import question_of
from fuelwiz.desk.field_specs import AMPS
from fuelwiz.desk.log_read import COLUMNS
from fuelwiz.desk.measuring import STEP
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.desk.points.point_cells import FIRST_CURVE
from fuelwiz.questions.catalogue import Question, catalogue, step_questions
from fuelwiz.record import record
from fuelwiz.session import field_at
from fuelwiz.terms import FITTINGS
from fuelwiz.units import UnitSystem
from fuelwiz.wizard.form.form_rows import (
    HEADS,
    AnyRow,
    CellsRow,
    ChoiceRow,
    DoRow,
    FieldRow,
    FormCell,
    HeadRow,
    ItemRow,
    NoteRow,
    columns,
    entries,
    is_guessed,
)

POINTS_A_ROW = 5
PULL_POINTS = "a column for each, off a dyno sheet"
"""What stands over the table of a pull, whose lines are called as questions of the goal are."""
CAUTIONS = {
    "lines": (
        "Relieve the pressure before you open any fuel line.",
        "Relieve pressure before opening any line.",
    ),
    "wiring": (
        "Battery off first; fuse by it; no sparks near fuel.",
        "Battery off first; no sparks; fuse by it.",
    ),
    "summary": (
        "A design aid: makers' ratings and local codes come first.",
        "Makers' ratings, local codes come first.",
    ),
}
"""What is said above the questions of a step whose work can hurt, and the same for a narrow form."""
_FITTINGS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Hose ends", ("straight", "swept_45", "swept_90", "swept_180")),
    ("Also on it", ("forged_90", "tee_run", "tee_branch")),
    ("Into and out of", ("entrance", "exit")),
)
_LISTS = {
    "feed.run": ("feed.run", "+ add a run"),
    "feed.filters": ("feed.filter", "+ add a filter"),
    "feed.part": ("feed.part", "+ add a part"),
    "inlet.run": ("inlet.run", "+ add a suction run"),
    "return_line.run": ("return_line.run", "+ add a return run"),
    "return_line.part": ("return_line.part", "+ add a part"),
    "pump.curve": ("pump.curve", "+ add a voltage"),
    "pull": ("pull", "+ add a point"),
    "stress.case": ("stress.case", "+ press a to add a bad day of your own"),
    "bench": ("bench", "+ press a to add a bench test"),
    "gauge": ("gauge", "+ press a to add gauge readings"),
}
_IN_A_LIST = tuple(f"{path}." for path, _ in _LISTS.values())
_FIRST_CURVE = ("pump.curve.voltage", "pump.curve.points")
_TYPED_WORDS = (
    "feed.fitted",
    "return.fitted",
    "inlet.line",
    "pump.volts",
    "pressure.idle_vacuum",
)
_TABLE_LINES = {
    "points": (("Pressure", "pump.curve.points", "{points}.{n}.0"), ("Flow", "", "{points}.{n}.1")),
    "current": (("Pressure", "pump.current", "{points}.{n}.0"), ("Current", "", "{points}.{n}.1")),
    "pull": (
        ("Power", "pull.power", "pull.{n}.power"),
        ("Boost", "pull.boost", "pull.{n}.boost"),
        ("Engine speed", "pull.rpm", "pull.{n}.rpm"),
    ),
}
"""The lines of each kind of table: what stands before it, the question that it asks, the path of a cell."""
_AMPS_LINE = ("Current", "pump.current", f"{AMPS}.{{n}}")
_UNIT_OF_SPEED = "rpm"

ALL_COLUMNS = "the columns of a pull's log"


@record
class Place:
    """Where the form is: a step, whether its further questions show, and the list entry that is open, if any."""

    step: str
    more: bool = False
    list_path: str = ""
    index: int = 0

    @property
    def in_entry(self) -> bool:
        """Whether an entry of a list is open."""
        return bool(self.list_path)


def rows_of(desk: Desk, place: Place, typed_in: str) -> list[AnyRow]:
    """The rows to show at a place, in the order of asking; the question that is being typed in stays among them."""
    if place.in_entry:
        return list(_entry_rows(desk, place))
    asked = asked_in_step(desk, place.step, desk.system, typed_in)
    at_once = sorted((q for q in asked if _at_once(desk, q)), key=lambda q: q.key != "feed.run")
    further = [q for q in asked if not _at_once(desk, q)]
    rows = [row for q in at_once for row in _rows_of_question(desk, q)]
    if place.step in CAUTIONS:
        rows.insert(0, NoteRow(at_once[0], *CAUTIONS[place.step]))
    if further:
        text = f"more: {_named(further)}"
        rows.append(DoRow(further[0], "more", "hide the further questions" if place.more else text))
    if place.more:
        rows += [row for q in further for row in _rows_of_question(desk, q)]
    return rows


def asked_in_step(desk: Desk, step: str, system: UnitSystem, typed_in: str = "") -> list[Question]:
    """The questions of a step that the build is asked, behind *more* too; never those inside an entry of a list."""
    return [
        q
        for q in step_questions(step, system)
        if _is_of_step(q) and (q.key == typed_in or is_asked(desk, q.key))
    ]


def _named(questions: list[Question]) -> str:
    """What questions ask, in the words of their labels; the columns of a log, one like the other, in one word."""
    columns = [question for question in questions if question.key.startswith(COLUMNS)]
    named = [
        question.label
        if question.label[1:2].isupper() or question.noun[:1].isupper()
        else question.label[:1].lower() + question.label[1:]
        for question in questions
        if question not in columns
    ]
    return ", ".join([*named, ALL_COLUMNS] if columns else named)


def _at_once(desk: Desk, question: Question) -> bool:
    if question.key == "feed.run" and is_run_by_run(desk):
        return True
    return not question.more or (question.key.startswith(COLUMNS) and _is_column_at_once(desk, question))


def _is_column_at_once(desk: Desk, question: Question) -> bool:
    from fuelwiz.wizard.form.log_columns import is_column_at_once

    return is_column_at_once(desk, question)


def _column_row(desk: Desk, question: Question) -> AnyRow:
    """A column of the log, with the heads of its file among the answers."""
    from fuelwiz.wizard.form.log_columns import with_heads

    return FieldRow(with_heads(desk, question), question.key)


def _is_of_step(question: Question) -> bool:
    """Whether a question stands in its step's own rows, not inside an entry of a list."""
    return question.key in _LISTS or question.key in _FIRST_CURVE or not question.key.startswith(_IN_A_LIST)


def _rows_of_question(desk: Desk, question: Question) -> Iterator[AnyRow]:
    key = question.key
    if key == "pull":
        yield HeadRow(question, (question.label, PULL_POINTS, "", ""))
        yield from _points_rows(desk, question, key)
    elif key == "pump.amps":
        yield FieldRow(question, f"{AMPS}.0")
    elif key in _LISTS:
        yield from _list_rows(desk, question)
    elif key == "pump.curve.points":
        yield from _points_rows(desk, question, "pump.curve.0.points")
    elif key == "pump.current":
        yield from _points_rows(desk, question, key)
    elif key == "pump.curve.voltage":
        yield FieldRow(question, "pump.curve.0.voltage")
    elif key.startswith(COLUMNS):
        yield _column_row(desk, question)
    else:
        yield _plain_row(question, key)
    if key == "log.file":
        yield from _rows_of_log(desk, question)


def _rows_of_log(desk: Desk, question: Question) -> Iterator[AnyRow]:
    """What a log showed; loaded where it is asked for, for an answer needs nothing of it."""
    from fuelwiz.wizard.form.found_rows import found_rows
    from fuelwiz.wizard.form.log_rows import log_rows

    yield from log_rows(desk, question)
    yield from found_rows(desk, question)


def _plain_row(question: Question, path: str) -> AnyRow:
    """A row of choices where a word is wanted, else a field; choices of a quantity stand beside its field."""
    if question.choices and question.key not in _TYPED_WORDS and not _takes_quantity(question.key):
        return ChoiceRow(question, path)
    return FieldRow(question, path)


def _takes_quantity(key: str) -> bool:
    try:
        return field_at(key).type != "choice"
    except KeyError:
        return False


def _list_rows(desk: Desk, question: Question) -> Iterator[AnyRow]:
    path, add = _LISTS[question.key]
    if question.step == STEP:
        from fuelwiz.wizard.form.found_rows import expected_rows, found_rows

        yield from expected_rows(desk, question)
    first = 1 if path == "pump.curve" else 0
    listed = entries(desk, path)
    if len(listed) > first:
        yield HeadRow(question, HEADS[path.rpartition(".")[2]])
    for index, entry in enumerate(listed):
        if index >= first:
            of_entry = desk, path, index, entry
            yield ItemRow(question, path, index, columns(*of_entry), is_guessed(*of_entry))
    yield DoRow(question, "add", add, path)
    if question.step == STEP:
        yield from found_rows(desk, question)


def _points_rows(desk: Desk, question: Question, path: str) -> Iterator[AnyRow]:
    """Points run across: a line for each of their figures, and one empty place for the next."""
    points = value_at(desk.plain, value_path(path))
    count = len(points) if isinstance(points, list) else 0
    lines = _TABLE_LINES[path.rpartition(".")[2]]
    if path == FIRST_CURVE:
        lines = (*lines, _AMPS_LINE)
    for start in range(0, count + 1, POINTS_A_ROW):
        which = range(start, min(start + POINTS_A_ROW, count + 1))
        for number, (name, key, cell) in enumerate(lines):
            cells = tuple(FormCell(cell.format(points=path, n=i)) for i in which)
            asked = _beside(question, key)
            unit = desk.unit_of_row(cells[0].path) or _UNIT_OF_SPEED
            label, goes_on = (name if start == 0 else ""), which.stop <= count
            yield CellsRow(asked, cells, label, unit, path, number, len(lines), goes_on, follows=start > 0)


def _beside(question: Question, key: str) -> Question:
    """A question of the same step, whose file is loaded already."""
    if not key or key == question.key:
        return question
    return next(one for one in step_questions(question.step, question.system) if one.key == key)


def _entry_rows(desk: Desk, place: Place) -> Iterator[AnyRow]:
    base = f"{place.list_path}.{place.index}"
    about = [(key, q) for key, q in catalogue(desk.system).items() if key.startswith(f"{place.list_path}.")]
    for key, question in about:
        path = f"{base}.{key.removeprefix(f'{place.list_path}.')}"
        if key.endswith(".fittings"):
            for label, kinds in _FITTINGS:
                ends = tuple(FormCell(f"{path}.{kind}", _end_name(kind)) for kind in kinds)
                yield CellsRow(question, ends, label)
        elif key.endswith(".points"):
            yield from _points_rows(desk, question, path)
        elif key.endswith(".change"):
            yield from _change_rows(desk, question, path)
        else:
            yield _plain_row(question, path)
    yield DoRow(about[0][1], "close", "done: back to the list")


def _end_name(kind: str) -> str:
    """A fitting by its name; what bends a hose end is swept, so that word is left out in a narrow cell."""
    return FITTINGS[kind].removeprefix("swept ")


def _change_rows(desk: Desk, question: Question, path: str) -> Iterator[AnyRow]:
    """One field for each value that a stress case changes, and a way to add one."""
    change = value_at(desk.plain, value_path(path))
    for key in change if isinstance(change, dict) else ():
        yield FieldRow(question_of(key, desk.system) or question, f"{path}.{key}")
    text = (
        "+ press a to pick another answer that differs"
        if change
        else "+ pick an answer that differs that day"
    )
    yield DoRow(question, "add_change", text, path)
