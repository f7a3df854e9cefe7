"""Injectors: what is given, and ratings around the smallest that would do."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.session import Injectors
from fuelwiz.sizing.part_figures import InjectorChoice, InjectorFigures
from fuelwiz.sizing.thresholds import DUTY_LIMIT, RATED_AT_PA


def injectors(subject: Subject, _words: Words) -> Iterator[Block]:
    """The injectors that are given, then the ratings around the smallest that would do."""
    yield Heading("Injectors")
    given, figures = subject.session.injectors, subject.figures.injectors
    if subject.session.engine.injection == "direct":
        yield Paragraph("Not judged: the line feeds the high-pressure pump of direct injection.")
        return
    if given is None and figures is not None and figures.smallest_rating_m3_s is not None:
        each = subject.numbers.figure("injector", figures.smallest_rating_m3_s)
        at, most = (
            subject.numbers.figure("pressure", RATED_AT_PA),
            subject.numbers.limit("percent", DUTY_LIMIT),
        )
        yield Paragraph(
            f"Not given: look for {figures.count} of {each} or more, rated at {at}: {most} duty at the goal."
        )
        return
    if given is None or figures is None:
        yield Paragraph(not_known_sentence(subject, "injectors", "line"))
        return
    yield Pairs(tuple(_given(subject, given, figures)))
    yield from injectors_that_would_do(subject)


def injectors_that_would_do(subject: Subject) -> Iterator[Block]:
    """Ratings with the duty of each, and the least that works; nothing before that is known."""
    given, figures = subject.session.injectors, subject.figures.injectors
    choices = subject.figures.injector_choices
    if given is None or figures is None or figures.smallest_rating_m3_s is None or not choices:
        return
    numbers = subject.numbers
    columns = (
        Column("Injectors", numbers.unit("injector"), whole=True),
        Column("Duty", numbers.unit("percent"), figures=True),
        Column("Works", whole=True),
    )
    own = next((at for at, choice in enumerate(choices) if choice.given), None)
    rows = (_row(subject, figures.count, choice, given.duty_limit) for choice in choices)
    yield Table(columns, tuple(rows), own)
    least = numbers.figure("injector", figures.smallest_rating_m3_s, given.rated_flow)
    yield Paragraph(
        f"{least} each, rated at {numbers.figure('pressure', given.rated_pressure)}, is the least that works:"
        f" {numbers.limit('percent', given.duty_limit)} duty is the limit."
    )


def _row(subject: Subject, count: int, choice: InjectorChoice, limit: float) -> tuple[Cell, ...]:
    numbers = subject.numbers
    return row(
        f"{count} × {numbers.number('injector', choice.rating_m3_s)}{'*' if choice.given else ''}",
        numbers.number("percent", choice.duty, limit),
        Cell("yes", "yes") if choice.does else Cell("no", "no"),
    )


def _given(subject: Subject, given: Injectors, figures: InjectorFigures) -> Iterator[tuple[str, str]]:
    numbers = subject.numbers
    rated = numbers.figure("injector", given.rated_flow)
    at = numbers.figure("pressure", given.rated_pressure)
    yield "given", f"{figures.count} of {rated} each, rated at {at}"
    if figures.duty is None or figures.smallest_rating_m3_s is None:
        yield "duty", "none: no pressure is left across them"
        return
    duty, most = numbers.pair("percent", figures.duty, given.duty_limit)
    yield "duty at the goal", f"{duty} (limit {most})"
