"""One build told line by line, at the same desk as the wizard's: each line answers a question, or is a command."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.ask.wording import (
    COMMANDS,
    answer_lines,
    as_typed,
    help_lines,
    picked,
    picks_by_number,
    question_line,
    step_line,
    why_lines,
)
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.log_read import reader
from fuelwiz.errors import FuelwizError
from fuelwiz.file_limits import LONGEST_TEXT
from fuelwiz.questions.catalogue import STEPS
from fuelwiz.wizard.form.bad_day import change_on_that_day
from fuelwiz.wizard.form.finding import Findable, changeable, found
from fuelwiz.wizard.form.form import Form
from fuelwiz.wizard.form.form_rows import CellsRow, ChoiceRow, DoRow, FieldRow, FoundRow, ItemRow
from fuelwiz.wizard.form.log_rows import UNREAD
from fuelwiz.wizard.form.taking import take

Say = Callable[[str], None]

MOST_OFFERED = 9
ASKED_ABOUT = ("add", "add_change")
"""Rows that do something and are worth a question of their own."""
YES_OR_ON = "y, or an empty line to go on."
WHICH = "Which answer differs that day? Type words of its question; an empty line goes on."
LAST = "That was the last question. /save NAME keeps it, /skip STEP goes back to a step, an empty line ends."


class Conversation:
    """Asks, takes a line, says what came of it; `over` once the last empty line or /quit has come."""

    def __init__(self, desk: Desk, say: Say) -> None:
        self.desk = desk
        self.say = say
        self.over = False
        self.form = Form(desk)
        self._past_the_end = False
        self._picking: tuple[Findable, ...] | None = None
        self._asked_from: str | None = None
        self._commands: dict[str, Callable[[str], None]] = {
            "help": lambda _: self._say_all(help_lines(self.form.question)),
            "why": lambda _: self._say_all(why_lines(self.form.question)),
            "back": lambda _: self._back(),
            "more": lambda _: self._more(),
            "skip": self._skip,
            "answer": lambda _: self.say_answer(whole=True),
            "save": self._save,
            "quit": lambda _: self._quit(),
        }

    def begin(self) -> None:
        """Say how it goes, and ask the first question."""
        self.say(COMMANDS)
        self._begin_step()

    def take(self, line: str) -> None:
        """A line that was typed."""
        text = line.strip()[:LONGEST_TEXT]
        word, _, rest = text.partition(" ")
        if word.startswith("/"):
            command = self._commands.get(word[1:].lower())
            if command is None:
                self.say(f"There is no {word}. {COMMANDS}")
            else:
                self._picking = None
                command(rest.strip())
        elif self._past_the_end:
            self._quit() if not text else self.say(LAST)
        else:
            self._answer(text)
        if not self.over:
            self._ask()

    def say_answer(self, *, whole: bool) -> None:
        """What the build comes to."""
        if whole and self.desk.result is not None:
            self.desk.finish()
        self._say_all(answer_lines(self.desk, whole=whole))

    def _say_all(self, lines: list[str]) -> None:
        for line in lines:
            self.say(line)

    def _answer(self, text: str) -> None:
        row = self.form.row
        if self._picking is not None:
            self._pick(self._picking, text)
        elif isinstance(row, FoundRow | DoRow | ItemRow):
            self._do_or_not(row, text)
        elif not text:
            self._on()
        elif text == "?":
            self.form.unsure()
            self.say(self.form.note)
            self._answered()
        elif self._typed(text):
            self._answered()

    def _take_or_read(self, row: FoundRow) -> None:
        """Take what was measured, or read the log that waits for it."""
        if row.path == UNREAD:
            self._read_log()
        elif take(self.form):
            self.say_answer(whole=False)
            if self.form.path == UNREAD:
                self._read_log()
        else:
            self._on()

    def _read_log(self) -> None:
        """Hold the log against the build, and wait for the disk; what it shows replaces the row that waited."""
        found = self.desk.result
        if found is not None and found.session.log.file:
            self.desk.log.hold(reader(self.desk.folder, found.session, found.figures)())
            self.desk.update()
        self.form.rebuild()

    def _do_or_not(self, row: FoundRow | DoRow | ItemRow, text: str) -> None:
        """A row that does something, which y asks for; any other words than no are not lost in silence."""
        if text.lower() in ("", "n", "no"):
            self._on()
        elif text.lower() not in ("y", "yes"):
            self.say(f"{text} is no answer here: {YES_OR_ON}")
        elif isinstance(row, FoundRow):
            self._take_or_read(row)
        elif isinstance(row, DoRow) and row.act == "add_change":
            self._picking = ()
        else:
            self.form.key("a" if isinstance(row, DoRow) and row.act == "add" else "enter", "a")

    def _pick(self, offered: tuple[Findable, ...], text: str) -> None:
        """Words of the question that has another answer on a bad day, or the number of one that they brought up."""
        if not text:
            self._picking = None
            self._on()
            return
        at = int(text) - 1 if text.isdecimal() else -1
        hits = [offered[at]] if 0 <= at < len(offered) else found(changeable(self.desk), text)
        if not hits:
            self.say(f"No question that may have another answer has these words: {text}.")
        elif len(hits) == 1 or hits[0].text.lower() == text.lower():
            self._picking = None
            change_on_that_day(self.form, hits[0].id)
        else:
            self._picking = tuple(hits[:MOST_OFFERED])
            names = ", ".join(f"{number} {one.text}" for number, one in enumerate(self._picking, 1))
            self.say(f"There are {names}: type the number of one, or more words.")

    def _typed(self, text: str) -> bool:
        """Hand a line to the desk; whether it was taken. What is refused is said, and stands."""
        form = self.form
        is_choice = isinstance(form.row, ChoiceRow)
        choice = picked(form.question, text, by_number=picks_by_number(form))
        if choice is not None:
            self.desk.choose(form.path, choice.value)
            if choice.note:
                self.say(f"{choice.say}: {choice.note}")
        elif is_choice and not form.takes_typed(text):
            self.say(f"{text} is none of the answers.")
            return False
        elif not is_choice:
            stands = self.desk.text_in_field(form.path).text
            self.desk.type(form.path, as_typed(form.question, text, stands))
        form.rebuild()
        refused = self.desk.refused.get(form.path)
        if refused:
            self.say(f"Not taken: {refused}")
        return not refused

    def _answered(self) -> None:
        is_half_a_point = isinstance(self.form.row, CellsRow) and self.desk.refused
        if not is_half_a_point:  # the rest of the point is asked for next
            self.say_answer(whole=False)
        wanting = self._passed_over()
        if wanting is not None:
            self._asked_from = self._asked_from or self.form.path
            self.form.go_to_path(wanting)
            return
        if self._asked_from is not None:
            self.form.go_to_path(self._asked_from)
            self._asked_from = None
        self._on()

    def _passed_over(self) -> str | None:
        """A question of this step that was left empty, and that the answer just given needs."""
        before = self.form.pointer.rows[: self.form.pointer.at]
        empty = (row.path for row in before if isinstance(row, FieldRow))
        return next((path for path in empty if self.desk.text_in_field(path).is_missing), None)

    def _on(self) -> None:
        """To the next question: a row that only shows more is passed over, an entry that is told is closed."""
        form = self.form
        form.focus_on(form.pointer.at, form.pointer.cell)  # so that the editor has what stands
        ends_a_table = isinstance(form.row, CellsRow) and not form.editor.text.strip()
        reaction = form.key("enter", None) if ends_a_table else form.move(1)
        while reaction != "next_step" and isinstance(form.row, DoRow) and form.row.act not in ASKED_ABOUT:
            if form.row.act == "close":
                form.close_entry()
            reaction = form.move(1)
        if reaction == "next_step":
            self._next_step()

    def _next_step(self) -> None:
        if self.form.place.in_entry:
            self.form.close_entry()
            self._on()
        elif self.form.step_number + 1 < len(STEPS):
            self.form.go_to_step(STEPS[self.form.step_number + 1].id)
            self.say(step_line(self.form))
        else:
            self._past_the_end = True
            self.say_answer(whole=True)

    def _begin_step(self) -> None:
        self.say(step_line(self.form))
        self._ask()

    def _ask(self) -> None:
        if self._picking is not None:
            self.say(WHICH)
        else:
            self.say(LAST if self._past_the_end else question_line(self.form))

    def _back(self) -> None:
        at = self.form.pointer.at, self.form.pointer.cell
        self._past_the_end = False
        self.form.move(-1)
        if (self.form.pointer.at, self.form.pointer.cell) == at and self.form.step_number:
            self.form.go_to_step(STEPS[self.form.step_number - 1].id)
            self.say(step_line(self.form))

    def _more(self) -> None:
        rows = self.form.pointer.rows
        if not any(isinstance(row, DoRow) and row.act == "more" for row in rows):
            self.say("There is no more to ask here.")
        elif self.form.place.more:
            self.say("The further questions of this step are asked already.")
        else:
            self.form.toggle_more()

    def _skip(self, name: str) -> None:
        number = self.form.step_number + 1
        if name:
            fitting = [
                i
                for i, step in enumerate(STEPS)
                if name == str(i + 1) or step.name.lower().startswith(name.lower()) or step.id == name.lower()
            ]
            if not fitting:
                self.say(f"There is no step {name}: there are {', '.join(step.name for step in STEPS)}.")
                return
            number = fitting[0]
        self._past_the_end = number >= len(STEPS)
        if not self._past_the_end:
            self.form.go_to_step(STEPS[number].id)
            self.say(step_line(self.form))

    def _save(self, name: str) -> None:
        try:
            saved = self.desk.save_as(name) if name else self.desk.save()
        except SaveRefused as refused:
            self.say(str(refused))
            if refused.path and refused.reason not in ("exists", "changed", "owner"):
                self.form.go_to_path(refused.path)
        except FuelwizError as error:
            self.say(str(error))
        else:
            self.say(f"Saved: {saved.path}. {saved.left_out or ''}".rstrip())

    def _quit(self) -> None:
        self.over = True
