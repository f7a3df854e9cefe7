"""What a line says of a question, of its help, and of the answer."""

from __future__ import annotations

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.edits import ALWAYS_WANTED
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.desk.log_read import COLUMNS
from fuelwiz.questions.catalogue import STEPS, Choice, Question
from fuelwiz.terminal.marks import MARKS
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import CellsRow, ChoiceRow, DoRow, FoundRow, ItemRow, cells_of
from fuelwiz.wizard.form.found_rows import words_of
from fuelwiz.wizard.form.log_rows import UNREAD
from fuelwiz.wizard.form.picking import also_typed

COMMANDS = (
    "An empty line goes on, ? takes the usual value. /help, /why, /back, /more, /skip STEP, /answer,"
    " /save NAME and /quit do what they say."
)
MOST_COLUMNS = 4  # of an entry; what follows is another spelling for a narrow list
TAKES_OUT = "-"
ADDS = f"What you type is added, with {TAKES_OUT} before it taken out."
_PARTS = ("what", "why", "rule", "usual", "wrong", "unsure", "units", "source")


def step_line(form: Form) -> str:
    """Which step begins."""
    return f"Step {form.step_number + 1} of {len(STEPS)}: {STEPS[form.step_number].name}."


def question_line(form: Form) -> str:
    """The question under the pointer, what stands, and what may be picked."""
    row, question = form.row, form.question
    if isinstance(row, DoRow):
        return f"{row.text.removeprefix('+ ').removeprefix('press a to ').capitalize()}? y does it."
    if isinstance(row, ItemRow):
        return f"{', '.join(part for part in row.columns[:MOST_COLUMNS] if part)}. y opens it."
    if isinstance(row, FoundRow) and row.path == UNREAD:
        return (
            f"The log is held against the build as it is. y reads {form.desk.text_in_field('log.file').text}."
        )
    if isinstance(row, FoundRow):
        words = words_of(form.desk, row)
        return words if words.startswith(row.text) else f"{row.text}. {words}"
    field = form.desk.text_in_field(form.path)
    label = question.label
    if isinstance(row, CellsRow):
        label = _cell_label(form, row)
    unit = field.unit or (row.unit if isinstance(row, CellsRow) else "")
    asked = f"{label}, {unit}" if unit else label
    stands = _stands(question, field.text)
    nothing = "needed" if field.is_missing or form.path in ALWAYS_WANTED else "empty"
    said = f"{asked}: {stands}{' assumed' if field.assumed else ''}" if stands else f"{asked}: {nothing}"
    offered = _offered(question, by_number=picks_by_number(form))
    adds = f" {ADDS}" if stands and _takes_several(question) else ""
    return f"{said}.{adds} {offered}".strip()


def _cell_label(form: Form, row: CellsRow) -> str:
    """A cell by what its row is about, its number, and its own name."""
    cell = cells_of(row)[form.pointer.cell]
    if cell.name:
        return f"{form.question.label}, {cell.name}"
    what = row.label or form.question.label
    number = next((part for part in reversed(cell.path.split(".")[1:]) if part.isdigit()), "")
    if cell.path.startswith(f"{row.table}.") and row.table:
        number = cell.path.removeprefix(f"{row.table}.").partition(".")[0]
    return f"{what}, point {int(number) + 1}" if number.isdigit() else what


def _stands(question: Question, text: str) -> str:
    choice = next((one for one in question.choices if one.value == text), None)
    return choice.say if choice is not None else text


def picks_by_number(form: Form) -> bool:
    """Whether a number that is typed picks an answer: not where it may be a figure."""
    return isinstance(form.row, ChoiceRow) or form.path.startswith(COLUMNS)


def _offered(question: Question, *, by_number: bool) -> str:
    """What may be picked, by number where no figure can be meant, and by its words."""
    if not question.choices:
        return ""
    if not by_number and not _takes_several(question):
        return f"Or: {', '.join(choice.say for choice in question.choices)}."
    between = "; " if any("," in choice.say for choice in question.choices) else ", "
    picks = between.join(f"{number} {choice.say}" for number, choice in enumerate(question.choices, 1))
    also = f"; or {also_typed(question.key)}" if also_typed(question.key) else ""
    return f"{'One' if by_number else 'Any'} of: {picks}{also}."


def _takes_several(question: Question) -> bool:
    """Whether an answer may have several of the words, with commas between."""
    try:
        return spec_at(question.key).type == "words"
    except NoSuchField:
        return False


def as_typed(question: Question, text: str, stands: str) -> str:
    """What a line says for its field: of an answer that may have several words, those that stand and those typed.

    Each is typed by its number or its name; one with a minus before it is taken out.
    """
    if not question.choices or not _takes_several(question):
        return text
    told = [one.say for part in _parts(stands) if (one := picked(question, part, by_number=False))]
    for part in _parts(text):
        goes = part.startswith(TAKES_OUT)
        found = picked(question, part.lstrip(f"{TAKES_OUT} "), by_number=True)
        name = part if found is None else found.say
        if goes and found is not None:
            told = [one for one in told if one != name]
        elif name not in told:
            told.append(name)
    return ", ".join(told)


def _parts(text: str) -> list[str]:
    return [part.strip() for part in text.split(",") if part.strip()]


def picked(question: Question, typed: str, *, by_number: bool) -> Choice | None:
    """The answer that a line picks: by its number, its words, or the words that it alone begins with."""
    choices, wanted = question.choices, typed.strip().lower()
    if by_number and wanted.isdigit() and 1 <= int(wanted) <= len(choices):
        return choices[int(wanted) - 1]
    exact = [one for one in choices if wanted in (one.say.lower(), one.value.lower())]
    begun = [one for one in choices if one.say.lower().startswith(wanted)]
    fitting = exact or begun
    return fitting[0] if len(fitting) == 1 or exact else None


def why_lines(question: Question) -> list[str]:
    """Why it is asked, and what is usual."""
    return [question.why, *([f"Usual: {question.usual}."] if question.usual else [])]


def help_lines(question: Question) -> list[str]:
    """The page on a question, a line a part."""
    page = question.help
    return [text for part in _PARTS if (text := getattr(page, part))]


def answer_lines(desk: Desk, *, whole: bool) -> list[str]:
    """The answer as far as there is one: its first line, or all of it and what to do next."""
    if desk.result is None:
        return ["Type the power that you want: the answer starts with it."]
    words = desk.result.words
    held = [desk.held] if desk.held else []
    works = desk.result.figures.verdict.works
    mark = "" if works is None else f"{MARKS['works' if works else 'stop'][0]} "
    first = f"{mark}{words.answer[0]}"
    return [*held, first, *(words.answer[1:] if whole else ())]
