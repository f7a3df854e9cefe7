"""Bad days, the next goal, and what a careful friend would point out."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import SYMBOLS, Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import StressFigures


def bad_days(build: Subject, words: Words) -> Iterator[Block]:
    """Each case with what is left of the pump, and what fails first."""
    yield Heading("On a bad day")
    cases = build.figures.stress
    if not cases:
        yield Paragraph("Not known yet: it takes a pump, [pump], and a line, [[feed.run]].")
        return
    columns = (
        Column("Case"),
        Column("Spare", "%", figures=True),
        Column("Works"),
        Column("What happens"),
    )
    told = zip(cases, words.stress, strict=True)
    yield Table(columns, tuple(_case_row(build, case, what) for case, what in told))
    yield Paragraph("The reserve is there for such days, so here it counts as nought.")


def _case_row(build: Subject, case: StressFigures, what: str) -> tuple[Cell, ...]:
    works = None if case.works is None else Cell(*("yes", "yes") if case.works else ("no", "no"))
    spare = None if case.margin is None else build.numbers.number("percent", case.margin, 0.0)
    return row(case.case, spare, works, what)


def next_goal(build: Subject, words: Words) -> Iterator[Block]:
    """What today's parts come to at the next goal, part by part."""
    yield Heading("The next goal")
    following = build.figures.next
    if following is not None:
        first, *rest = words.next_goal
        yield Listing((Item(first, "no" if following.limits else "yes"), *(Item(told) for told in rest)))
    elif build.session.goal.next_power is None:
        yield Paragraph("None is given, in goal.next_power.")
    else:
        yield Paragraph("Not known yet: it takes a pump, [pump], and a line, [[feed.run]].")


def findings(_build: Subject, words: Words) -> Iterator[Block]:
    """Stops, warnings and notes."""
    yield Heading("Findings")
    if words.findings:
        yield Paragraph(
            f"{SYMBOLS['stop']} stops the build, {SYMBOLS['warning']} is a warning, the rest is good to know."
        )
        yield Listing(tuple(Item(finding.text, finding.severity) for finding in words.findings))
    else:
        yield Paragraph("Nothing to point out.")
