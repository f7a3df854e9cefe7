"""What a log showed, as rows under its file: the pump, what is not as it should be, columns, and proposals."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.log_words import found_in_log, pump_sentence, signature_text
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.measuring import STEP, place_of_proposal
from fuelwiz.measured.figures import ColumnTaken, LogFigures, Proposal
from fuelwiz.printable import clean
from fuelwiz.wizard.form.form_rows import TAKES, FoundRow

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.questions.catalogue import Question

READ_IT = "F8 reads it"
READ_AGAIN = "F8 reads it again: the build was changed since"


def log_rows(desk: Desk, question: Question) -> Iterator[FoundRow]:
    """The rows that stand under the file of a log; before it is read, how to."""
    result, read = desk.result, desk.log_read
    if result is None or not result.session.log.file:
        return
    if read is None or read.session != result.session:
        text = READ_IT if read is None else READ_AGAIN
        yield FoundRow(question, f"{STEP}.log", text, "What it shows is held against the build as it is.")
        return
    subject = Subject(result.session, result.figures)
    yield from _told(subject, read.figures, question)


def column_rows(desk: Desk, question: Question) -> Iterator[FoundRow]:
    """Which column of the log was taken for what."""
    result, read = desk.result, desk.log_read
    if result is None or read is None or read.session != result.session:
        return
    yield from _to_own(read.figures, question)
    for number, column in enumerate(read.figures.columns):
        text = _column(column)
        yield FoundRow(
            question, f"{STEP}.column.{number}", text, f"{text}. Another one is named behind more."
        )


def _to_own(log: LogFigures, question: Question) -> Iterator[FoundRow]:
    """All columns that were guessed, as one answer: naming one of them ends the guessing of the rest."""
    if not any(column.guessed for column in log.columns):
        return
    heads = {column.key: column.head for column in log.columns}
    proposal = Proposal("log.columns", heads, None, None, "heads of the log")
    text = f"{TAKES} takes these {len(heads)} columns as your own"
    yield FoundRow(question, place_of_proposal(proposal), text, proposal=proposal)


def _told(subject: Subject, log: LogFigures, question: Question) -> Iterator[FoundRow]:
    pump = pump_sentence(subject, log.pump)
    yield FoundRow(question, f"{STEP}.log.pump", pump, pump)
    for number, shown in enumerate(log.signatures):
        text = signature_text(shown)
        yield FoundRow(question, f"{STEP}.log.{number}", text, text, is_odd=True)
    for name, text in found_in_log(subject, log):
        line = f"{name}: {text}"
        yield FoundRow(question, f"{STEP}.log.{name}", line, f"{line}.")


def _column(column: ColumnTaken) -> str:
    """Which column was taken for what; whether that was guessed."""
    guessed = ", guessed" if column.guessed else ""
    return f"{column.key.replace('_', ' ')} is {clean(column.head)}{guessed}"
