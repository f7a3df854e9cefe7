"""What was measured and what it should have been, as rows of their step; what it proposes can be taken there."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.proposal_words import value_now, why
from fuelwiz.advice.sections.measured import (
    ITEMS,
    bench_verdict,
    difference_text,
    expected_in_brief,
    how_to_test,
    odd_or_far,
    reading_text,
)
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.desk.measuring import STEP, place_of_proposal
from fuelwiz.errors import SessionError
from fuelwiz.measured.before_after import before_after
from fuelwiz.measured.proposals import values_of
from fuelwiz.report.measures import MEASURES, Side
from fuelwiz.terms import key_in_words
from fuelwiz.wizard.form.form_rows import TAKES, FoundRow

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.measured.figures import GaugeDifference, Measured, Proposal, Reason
    from fuelwiz.questions.catalogue import Question
    from fuelwiz.session import Session
    from fuelwiz.sizing.figures import Figures

LIST_OF: dict[Reason, str] = {
    "bench tests": "bench",
    "gauge with the hose off": "gauge",
    "gauge at the pump": "gauge",
}
"""The list of readings that a proposal comes from."""
_COMPARED = ("works", "spare", "feeds")


def found_rows(desk: Desk, question: Question) -> Iterator[FoundRow]:
    """What follows from a list of bench tests, or from one of gauge readings; nothing from other lists."""
    result = desk.result
    if result is None:
        return
    subject = Subject(result.session, result.figures, result.measured)
    if question.key in _MAKERS:
        yield from _MAKERS[question.key](subject, result.measured, question)
    proposals = [one for one in result.measured.proposals if LIST_OF.get(one.reason) == question.key]
    if question.key == "log.file" and result.log is not None and result.log.figures is not None:
        proposals += result.log.figures.proposals
    yield from (_proposed(subject, one, question) for one in proposals if not _stands(desk, one))


def expected_rows(desk: Desk, question: Question) -> Iterator[FoundRow]:
    """What a bench test should show, over the list of those that were done."""
    result = desk.result
    if question.key != "bench" or result is None:
        return
    subject = Subject(result.session, result.figures, result.measured)
    for number, test in enumerate(result.measured.expected):
        text = expected_in_brief(subject, test)
        yield FoundRow(question, f"{STEP}.expected.{number}", text, how_to_test(subject))


def _of_bench(subject: Subject, found: Measured, question: Question) -> Iterator[FoundRow]:
    if found.bench is not None:
        verdict = bench_verdict(subject, found.bench)
        yield FoundRow(question, f"{STEP}.bench", verdict, verdict, is_odd=found.bench.factor is None)
        for number, note in enumerate(odd_or_far(subject, found.bench)):
            yield FoundRow(question, f"{STEP}.bench.{number}", note, note, is_odd=True)


def _of_gauge(subject: Subject, found: Measured, question: Question) -> Iterator[FoundRow]:
    for number, difference in enumerate(found.gauge):
        text = _difference(subject, difference)
        whole = difference_text(subject, difference).text
        is_odd = difference.cause not in (None, "as expected")
        yield FoundRow(
            question, f"{STEP}.gauge.{number}", text, f"{whole[:1].upper()}{whole[1:]}", is_odd=is_odd
        )


_MAKERS: dict[str, Callable[[Subject, Measured, Question], Iterator[FoundRow]]] = {
    "bench": _of_bench,
    "gauge": _of_gauge,
}


def _difference(subject: Subject, difference: GaugeDifference) -> str:
    """A reading beside what should be there, in 56 columns."""
    read = reading_text(subject, difference.item, difference.read)
    if difference.predicted is None:
        return f"{ITEMS[difference.item]} {read}"
    wanted = reading_text(subject, difference.item, difference.predicted)
    return f"{ITEMS[difference.item]} {read}, expected {wanted}"


def _proposed(subject: Subject, proposal: Proposal, question: Question) -> FoundRow:
    before = "" if isinstance(proposal.value, list) else value_now(subject, proposal.key)
    text = f"{TAKES} takes {named(proposal)}{f', now {before}' if before else ''}"
    return FoundRow(question, place_of_proposal(proposal), text, proposal=proposal)


def _stands(desk: Desk, proposal: Proposal) -> bool:
    """Whether a proposal has been taken, and all that it says still stands."""
    return all(desk.value(path) == value for path, value in values_of(proposal).items())


def named(proposal: Proposal) -> str:
    """What a proposal would write."""
    if isinstance(proposal.value, list):
        return f"{len(proposal.value)} points of full power"
    return f"{key_in_words(proposal.key)} {proposal.value}"


def words_of(desk: Desk, row: FoundRow) -> str:
    """What is said of a row that has the pointer: of a proposal, what the build comes to before and after it."""
    if row.proposal is None:
        return row.whole
    reason = why(row.proposal)
    tolerance = row.proposal.tolerance
    said = f"Good to {tolerance}: {reason}" if tolerance else capitalized(reason)
    return f"{_before_and_after(desk, row.proposal)} {said}.".strip()


def _before_and_after(desk: Desk, proposal: Proposal) -> str:
    if desk.result is None:
        return ""
    try:
        both = before_after(desk.plain, [proposal])
    except SessionError:
        return ""
    session = desk.result.session
    return f"Now {_judged(session, both.before)}; with it {_judged(session, both.after)}."


def _judged(session: Session, figures: Figures) -> str:
    subject = Subject(session, figures)
    side = Side(subject, subject.numbers)
    shown = {measure.name: measure.shown(side) for measure in MEASURES if measure.name in _COMPARED}
    works = {"yes": "works", "no": "fails"}.get(shown["works"] or "", "not known")
    return ", ".join([works, *(f"{name} {shown[name]}" for name in ("spare", "feeds") if shown[name])])
