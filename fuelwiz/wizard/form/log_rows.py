"""What a log showed, as rows under its file: the pump, what is not as it should be, and proposals."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.log_words import found_in_log, pump_sentence, signature_text
from fuelwiz.advice.sections.logged import read_sentence, refused_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.measuring import STEP
from fuelwiz.wizard.form.form_rows import FoundRow

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.measured.figures import LogFigures, LoggedRun
    from fuelwiz.questions.catalogue import Question

UNREAD = f"{STEP}.log.unread"
"""Where the pointer is while a log waits to be read."""
READ_IT = "F8 reads it"
READ_AGAIN = "F8 reads it again: the build was changed since"


def log_rows(desk: Desk, question: Question) -> Iterator[FoundRow]:
    """The rows that stand under the file of a log; before it is read, how to."""
    result = desk.result
    if result is None or not result.session.log.file:
        return
    if result.log is None:
        text = READ_AGAIN if desk.log.heads(result.session) else READ_IT
        yield FoundRow(question, UNREAD, text, "What it shows is held against the build as it is.")
    elif result.log.figures is None:
        why = refused_sentence(result.log)
        yield FoundRow(question, f"{STEP}.log", why, f"{why} F8 chooses another file.", is_odd=True)
    else:
        subject = Subject(result.session, result.figures)
        yield from _shown(subject, result.log, result.log.figures, question)


def _shown(subject: Subject, run: LoggedRun, log: LogFigures, question: Question) -> Iterator[FoundRow]:
    pump = pump_sentence(subject, log.pump)
    yield FoundRow(question, f"{STEP}.log.pump", pump, pump)
    for number, shown in enumerate(log.signatures):
        text = signature_text(shown)
        yield FoundRow(question, f"{STEP}.log.{number}", text, text, is_odd=True)
    for name, text in found_in_log(subject, log):
        line = f"{name}: {text}"
        yield FoundRow(question, f"{STEP}.log.{name}", line, f"{line}.")
    rows = read_sentence(run, log)
    yield FoundRow(question, f"{STEP}.log.rows", rows, rows)
