"""Bad days, the next goal, and what a careful friend would point out."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.case_sentences import changes_in_few, fails_by_itself, own_changes
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.result import Severity, Words
from fuelwiz.advice.sections.headings import BAD_DAYS, FINDINGS
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.figures import StressFigures

NEXT_GOAL = "Next goal"
_MOST_BESIDE = 3
COMBINED_STAYS_OUT = "The least to spare in the answer is of single days, not of the combined one."
NO_RESERVE = "The reserve is for such days, so it is not asked for here"
AS_TODAY = ": a day may fail for what is wrong today alone, and still have enough to spare"
LABELS: dict[Severity, str] = {"stop": "Stop", "warning": "Warning", "note": "Note"}


def bad_days(subject: Subject, words: Words) -> Iterator[Block]:
    """Each case with what is left of the pump, and what fails first."""
    yield Heading(BAD_DAYS)
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
    yield from _side_by_side(subject)
    texts = zip(cases, words.case_names, words.stress, strict=True)
    rows = (_case_row(subject, case, name, what) for case, name, what in texts)
    yield Table(columns, tuple(rows))
    together = subject.case("bad day")
    counted = "" if together is None or fails_by_itself(subject, together) else f" {COMBINED_STAYS_OUT}"
    as_today = any(case.works is False and not fails_by_itself(subject, case) for case in cases)
    yield Paragraph(f"{NO_RESERVE}{AS_TODAY if as_today else ''}.{counted}", quiet=True)


def _side_by_side(subject: Subject) -> Iterator[Block]:
    """Today beside the builder's own days, such as summer fuel beside winter fuel."""
    own = subject.session.stress.case[:_MOST_BESIDE]
    if not own:
        return
    figures, numbers = subject.figures, subject.numbers
    days = figures.stress[len(figures.stress) - len(subject.session.stress.case) :][: len(own)]
    today = figures.pick
    margins = [today.margin, *(day.margin for day in days)]
    boiling = [today.vapour_margin_Pa, *(day.vapour_margin_Pa for day in days)]
    works = [figures.verdict.works, *(day.works for day in days)]
    duties = [None if figures.injectors is None else figures.injectors.duty, *(day.duty for day in days)]
    heads = [Column("Beside one another"), Column("Today"), *(Column(day.name or "own day") for day in own)]
    spare = [None if one is None else numbers.figure("percent", one, 0.0) for one in margins]
    above = [None if one is None else numbers.figure("pressure", one, 0.0) for one in boiling]
    yes_or_no = [None if one is None else "yes" if one else "no" for one in works]
    lines = [
        row("with", "as typed", *(own_changes(subject, day.change) for day in own)),
        row("to spare", *spare),
    ]
    if any(duty is not None for duty in duties):
        lines.append(row("injector duty", *_duties(subject, duties)))
    lines += [row("above boiling", *above), row("works", *yes_or_no)]
    yield Table(tuple(heads), tuple(lines))


def _duties(subject: Subject, duties: list[float | None]) -> Iterator[str | None]:
    """How long the injectors are open, each on its own side of what they may be."""
    given = subject.session.injectors
    limits = () if given is None else (given.duty_limit,)
    for duty in duties:
        yield None if duty is None else subject.numbers.figure("percent", duty, *limits)


def _case_row(subject: Subject, case: StressFigures, name: str, what: str) -> tuple[Cell, ...]:
    works = None if case.works is None else Cell(*("yes", "yes") if case.works else ("no", "no"))
    spare = None if case.margin is None else subject.numbers.number("percent", case.margin, 0.0)
    return row(name, spare, works, Cell(what, in_one_line=_in_one_line(subject, case, what)))


def _in_one_line(subject: Subject, case: StressFigures, what: str) -> tuple[str, ...]:
    """What fails, or where nothing does, what changes, ever shorter: the columns beside it say the rest."""
    changes, colon, failure = what.partition(": ")
    if not (colon and case.works is False):
        few = changes_in_few(subject, case) or capitalized(changes.removeprefix("With "))
        return changes, few, few.partition(",")[0]
    if not fails_by_itself(subject, case):
        return capitalized(failure), "As today"
    first = capitalized(failure).partition(". ")[0].rstrip(".")
    return capitalized(failure), first, first.partition(";")[0], first.partition(",")[0]


def next_goal(subject: Subject, words: Words) -> Iterator[Block]:
    """What today's parts come to at the next goal, part by part."""
    yield Heading(NEXT_GOAL)
    following = subject.next
    if following is not None:
        first, *rest = words.next_goal
        yield Listing((Item(first, "no" if following.limits else "yes"), *(Item(text) for text in rest)))
    elif subject.session.goal.next_power is None:
        yield Paragraph("None is given.")
    elif subject.next_is_this:
        yield Paragraph("It is this goal.")
    elif subject.next_is_below:
        yield Paragraph("It is below this goal, so nothing is said of it.")
    else:
        yield Paragraph(not_known_sentence(subject, "line", "pump"))


def findings(_subject: Subject, words: Words) -> Iterator[Block]:
    """Stops, warnings and notes."""
    yield Heading(FINDINGS)
    if words.findings:
        yield Listing(tuple(Item(item.text, item.severity, LABELS[item.severity]) for item in words.findings))
    else:
        yield Paragraph("Nothing to point out.")
