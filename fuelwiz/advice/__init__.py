"""Figures -> words: the answer, what each size means, findings, cautions; together they are the Result."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.advice.answer import answer_lines
from fuelwiz.advice.answer.fit import line_to_fit
from fuelwiz.advice.case_sentences import case_names, case_sentences
from fuelwiz.advice.cautions import cautions
from fuelwiz.advice.changes import change_words
from fuelwiz.advice.findings import remarks_on
from fuelwiz.advice.first_limit import first_limit
from fuelwiz.advice.next_goal import next_goal
from fuelwiz.advice.next_step import next_step
from fuelwiz.advice.result import Explanation, Finding, Result, Words
from fuelwiz.advice.sizes import explanation
from fuelwiz.advice.subject import Subject
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures

if TYPE_CHECKING:
    from fuelwiz.measured.figures import LoggedRun

__all__ = ["Explanation", "Finding", "Result", "Words", "result"]


def result(session: Session, figures: Figures, log: LoggedRun | None = None) -> Result:
    """The figures of a session together with everything that is said about them, and what its log showed."""
    subject = Subject(session, figures)
    remarks = remarks_on(subject)
    lines = answer_lines(subject)
    words = Words(
        answer=tuple(forms[0] for forms in lines),
        answer_forms=lines,
        line_to_fit=line_to_fit(subject),
        next_step=next_step(subject),
        explanations=tuple(explanation(subject, row) for row in figures.sizes),
        stress=case_sentences(subject),
        changes=change_words(subject, figures.changes),
        next_changes=() if figures.next is None else change_words(subject, figures.next.changes),
        case_names=case_names(subject),
        first_limit=first_limit(subject),
        next_goal=next_goal(subject),
        findings=tuple(remark.finding for remark in remarks),
        cautions=cautions(subject),
    )
    return Result(session, figures, words, log)
