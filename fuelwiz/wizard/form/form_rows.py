"""The rows of a form, and what stands in the columns of a list: what each is, apart from how it is painted."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from fuelwiz.desk.field_text import changes_in_words
from fuelwiz.desk.log_read import COLUMNS
from fuelwiz.desk.look_here import LookHere
from fuelwiz.desk.plain import value_at, value_path
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.terms import FILTER_PLACES, FITTINGS, HOSES

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.desk.field_text import FieldText
    from fuelwiz.measured.figures import Proposal
    from fuelwiz.questions.catalogue import Question

ADDS = "a"
"""The letter that adds to a list; Enter goes on there, so that nobody adds by walking past."""
TAKES = "y"
"""The letter that takes a proposal; Enter goes on, so that nobody takes one by walking past."""
HEADS = {
    "run": ("Run of hose", "Hose", "Length", "What is on it", "Ends"),
    "filter": ("Filter", "Rated", "Loss", "Where"),
    "part": ("Part", "Rated", "Loss", ""),
    "curve": ("Curve at", "Points", "", ""),
    "case": ("Bad day", "What changes", "", ""),
    "bench": ("Bench test", "At", "Volts", "Pumped"),
    "gauge": ("Readings", "Idle", "Full", "Hose off"),
}

_TAKEN = {
    "run": {"length": "length"},
    "filter": {"rated_flow": "rating", "rated_loss": "loss"},
    "curve": {"voltage": "voltage"},
}
"""What the row of an entry shows of what is taken where nothing is told, and what it calls that."""
BESIDE = 3
"""The column behind the figures."""


@record
class FormCell:
    """A place to type in: the path that it answers, and a short name where a row has several."""

    path: str
    name: str = ""


@record
class FormRow:
    """A line of the form about one question."""

    question: Question


@record
class FieldRow(FormRow):
    """One value to type; a question with choices offers them beside it."""

    path: str

    @property
    def cells(self) -> tuple[FormCell, ...]:
        """The one place to type in."""
        return (FormCell(self.path),)


@record
class ChoiceRow(FormRow):
    """One of a few answers to pick."""

    path: str


@record
class CellsRow(FormRow):
    """Several small values side by side: counts of fittings, or one line of a table of points.

    Of a table, `table` is the path of its list, `line` which of its `lines` this is: a point stands in one column.
    `goes_on` where further points stand in rows below, `follows` where this is such a row.
    """

    cells: tuple[FormCell, ...]
    label: str
    unit: str = ""
    table: str = ""
    line: int = 0
    lines: int = 1
    goes_on: bool = False
    follows: bool = False


@record
class ItemRow(FormRow):
    """An entry of a list, opened with Enter; `heads` stand over the first one of a list."""

    list_path: str
    index: int
    columns: tuple[str, ...]
    is_guessed: bool = False


@record
class HeadRow(FormRow):
    """What stands over the columns of a list; takes no focus."""

    columns: tuple[str, ...]


@record
class NoteRow(FormRow):
    """A word of caution above the questions of a step, and the same for a narrow form; takes no focus."""

    text: str
    short: str


@record
class DoRow(FormRow):
    """Something to do with Enter: add an entry, show more questions, go back."""

    act: str
    text: str
    list_path: str = ""


@record
class FoundRow(FormRow):
    """A line on what was measured or should be; `whole` says more of it, a proposal may be taken there."""

    path: str
    text: str
    whole: str = ""
    is_odd: bool = False
    proposal: Proposal | None = None


AnyRow = FieldRow | ChoiceRow | CellsRow | ItemRow | HeadRow | NoteRow | DoRow | FoundRow


def takes_focus(row: AnyRow) -> bool:
    """Whether the pointer stops at a row."""
    return not isinstance(row, HeadRow | NoteRow)


def takes(row: AnyRow, letter: str | None) -> bool:
    """Whether a letter takes what a row proposes."""
    return isinstance(row, FoundRow) and row.proposal is not None and letter == TAKES


def cells_of(row: AnyRow) -> tuple[FormCell, ...]:
    """The places to type in of a row."""
    return row.cells if isinstance(row, FieldRow | CellsRow) else ()


def is_to_answer(row: AnyRow) -> bool:
    """Whether a row is one to answer, not one that leads elsewhere."""
    return bool(cells_of(row)) or isinstance(row, ChoiceRow)


def owned_by_enter(row: AnyRow) -> bool:
    """Whether Enter makes what stands one's own: an answer to pick, or a column of the log, one by one."""
    return isinstance(row, ChoiceRow) or row.question.key.startswith(COLUMNS)


def path_of(row: AnyRow, cell: int = 0) -> str:
    """The path that a row's place answers; the question's key where there is none."""
    cells = cells_of(row)
    if cells:
        return cells[min(cell, len(cells) - 1)].path
    if isinstance(row, DoRow) and row.act == "more":
        return f"{row.question.key.partition('.')[0]}.more"
    return row.path if isinstance(row, ChoiceRow | FoundRow) else row.question.key


def entries(desk: Desk, list_path: str) -> list[dict[str, Any]]:
    """The entries of a list as the file would hold them."""
    value = value_at(desk.plain, value_path(list_path))
    return [entry for entry in value if isinstance(entry, dict)] if isinstance(value, list) else []


def entry_of(desk: Desk, path: str) -> tuple[str, int] | None:
    """The list and the number of the entry that a path leads into, where the build has it."""
    parts = path.split(".")
    for at, part in enumerate(parts[1:-1], 1):
        list_path = ".".join(parts[:at])
        if part.isdecimal() and list_path.rpartition(".")[2] in HEADS:
            return (list_path, int(part)) if int(part) < len(entries(desk, list_path)) else None
    return None


def to_look_at_in(desk: Desk, row: ItemRow) -> LookHere | None:
    """What is to be put right inside an entry of a list; None where nothing is."""
    begin = f"{row.list_path}.{row.index}."
    return next((look for look in desk.to_look_at() if look.path.startswith(begin)), None)


def has_changes(desk: Desk, row: DoRow) -> bool:
    """Whether a bad day has an answer that differs: Enter goes on there then, and a letter adds another."""
    return bool(value_at(desk.plain, value_path(row.list_path)))


def like_before(desk: Desk, list_path: str) -> dict[str, Any]:
    """What a new entry begins with: of a run the kind of hose of the one before it, for a line is mostly of one kind."""
    before = entries(desk, list_path)
    is_run = list_path.rpartition(".")[2] == "run"
    return {"hose": before[-1]["hose"]} if is_run and before and "hose" in before[-1] else {}


def columns(desk: Desk, list_path: str, index: int, entry: dict[str, Any]) -> tuple[str, ...]:
    """What the row of an entry shows, column by column; what is not told, as it is taken."""
    kind = list_path.rpartition(".")[2]
    make = {
        "run": _run,
        "filter": _filter,
        "part": _part,
        "curve": _curve,
        "case": _case,
        "bench": _bench,
        "gauge": _gauge,
    }[kind]
    fields = _taken(desk, list_path, index, entry)
    taken = {key: f"{field.text} {field.unit}".strip() for key, field in fields.items()}
    shown = [clean(str(text)) for text in make(index, {**taken, **entry})]
    guessed = " and ".join(_TAKEN[kind][key] for key, field in fields.items() if field.assumed)
    if guessed:
        shown[BESIDE] = ", ".join(filter(None, (f"{guessed} assumed", shown[BESIDE])))
    return tuple(shown)


def is_guessed(desk: Desk, list_path: str, index: int, entry: dict[str, Any]) -> bool:
    """Whether a figure in the row of an entry is its fallback."""
    return any(field.assumed for field in _taken(desk, list_path, index, entry).values())


def _taken(desk: Desk, list_path: str, index: int, entry: dict[str, Any]) -> dict[str, FieldText]:
    """The fields of an entry that its row shows and that nothing is told in."""
    keys = _TAKEN.get(list_path.rpartition(".")[2], {})
    return {key: desk.text_in_field(f"{list_path}.{index}.{key}") for key in keys if key not in entry}


def _run(index: int, run: dict[str, Any]) -> tuple[str, ...]:
    size = run.get("bore") or run.get("size")
    hose = HOSES.get(run.get("hose", "ptfe"), "?") + (f" {size}" if size else "")
    counts = run.get("fittings") or {}
    ends = sum(count for count in counts.values() if isinstance(count, int))
    return (
        run.get("what") or f"run {index + 1}",
        hose,
        run["length"],
        _fittings(counts),
        str(ends),
    )


def _fittings(counts: dict[str, Any]) -> str:
    return (
        ", ".join(f"{count} {FITTINGS.get(kind, kind)}" for kind, count in counts.items() if count)
        or "no fittings"
    )


def _filter(index: int, part: dict[str, Any]) -> tuple[str, ...]:
    place = FILTER_PLACES.get(part.get("place", "line"), "?")
    return (
        part.get("what") or f"filter {index + 1}",
        part["rated_flow"],
        part["rated_loss"],
        place,
    )


def _part(index: int, part: dict[str, Any]) -> tuple[str, ...]:
    return (
        part.get("what") or f"part {index + 1}",
        part.get("rated_flow", "?"),
        part.get("rated_loss", "?"),
        "",
    )


def _curve(index: int, curve: dict[str, Any]) -> tuple[str, ...]:
    count = len(curve.get("points") or ())
    return (curve["voltage"], f"{count} point{'' if count == 1 else 's'}", "", "")


def _bench(index: int, test: dict[str, Any]) -> tuple[str, ...]:
    pumped = test.get("volume") or test.get("mass") or "?"
    return (
        test.get("date") or f"test {index + 1}",
        test.get("pressure", "?"),
        test.get("volts", "?"),
        f"{pumped} in {test.get('time', '?')}",
    )


def _gauge(index: int, read: dict[str, Any]) -> tuple[str, ...]:
    name = read.get("date") or f"readings {index + 1}"
    return (name, read.get("idle", "-"), read.get("full_power", "-"), read.get("hose_off", "-"))


def _case(index: int, case: dict[str, Any]) -> tuple[str, ...]:
    values = changes_in_words(case.get("change") or {})
    return (case.get("name") or f"day {index + 1}", values or "nothing yet", "", "")
