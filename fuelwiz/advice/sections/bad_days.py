"""Bad days, the next goal, and what a careful friend would point out."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.result import Severity, Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.figures import StressFigures

NAME = "Bad days"
NEXT_GOAL = "Next goal"
FINDINGS = "Findings"
LABELS: dict[Severity, str] = {"stop": "Stop", "warning": "Warning", "note": "Note"}


def bad_days(subject: Subject, words: Words) -> Iterator[Block]:
    """Each case with what is left of the pump, and what fails first."""
    yield Heading(NAME)
    cases = subject.figures.stress
    if not cases:
        yield Paragraph(not_known_sentence(subject, "line", "pump"))
        return
    columns = (
        Column("Case"),
        Column("Spare", "%", figures=True),
        Column("Works", whole=True),
        Column("What happens"),
    )
    today = [short_why(subject, limit) for limit in subject.figures.verdict.limits]
    if today:
        yield Paragraph(f"Wrong today already, so not said again below: {'; '.join(today)}.")
    texts = zip(cases, words.case_names, words.stress, strict=True)
    rows = (_case_row(subject, case, name, what) for case, name, what in texts)
    yield Table(columns, tuple(rows))
    yield Paragraph("The reserve is for such days, so it is not asked for here.", quiet=True)


def _case_row(subject: Subject, case: StressFigures, name: str, what: str) -> tuple[Cell, ...]:
    works = None if case.works is None else Cell(*("yes", "yes") if case.works else ("no", "no"))
    spare = None if case.margin is None else subject.numbers.number("percent", case.margin, 0.0)
    return row(name, spare, works, Cell(what, short=_short(what, fails=case.works is False)))


def _short(what: str, *, fails: bool) -> str:
    """What fails, or where nothing does, what changes: the columns beside it say the rest."""
    changes, colon, failure = what.partition(": ")
    return capitalized(failure) if colon and fails else changes


def next_goal(subject: Subject, words: Words) -> Iterator[Block]:
    """What today's parts come to at the next goal, part by part."""
    yield Heading(NEXT_GOAL)
    following = subject.figures.next
    if following is not None:
        first, *rest = words.next_goal
        yield Listing((Item(first, "no" if following.limits else "yes"), *(Item(text) for text in rest)))
    elif subject.session.goal.next_power is None:
        yield Paragraph("None is given.")
    else:
        yield Paragraph(not_known_sentence(subject, "line", "pump"))


def findings(_subject: Subject, words: Words) -> Iterator[Block]:
    """Stops, warnings and notes."""
    yield Heading(FINDINGS)
    if words.findings:
        yield Listing(tuple(Item(item.text, item.severity, LABELS[item.severity]) for item in words.findings))
    else:
        yield Paragraph("Nothing to point out.")
