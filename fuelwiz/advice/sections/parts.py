"""Parts and lengths: what is to be bought or cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known_sentence
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.session import Run, given
from fuelwiz.terms import FITTINGS, HOSES


def parts_and_lengths(subject: Subject, _words: Words) -> Iterator[Block]:
    """Every run with its hose, size, length and ends, then what sits in the line."""
    yield Heading("Parts and lengths")
    columns = (
        Column("Run"),
        Column("Hose"),
        Column("Size"),
        Column("Length", subject.numbers.unit("length"), figures=True),
        Column("What is on it"),
    )
    rows = tuple(_all_runs(subject))
    if rows:
        yield Table(columns, rows)
    else:
        yield Paragraph(not_known_sentence(subject, "line"))
    items = tuple(Item(capitalized(text)) for text in _in_line(subject))
    if items:
        yield Listing(items)


def _all_runs(subject: Subject) -> Iterator[tuple[Cell, ...]]:
    session, figures = subject.session, subject.figures
    feed = figures.chosen or figures.line_to_fit
    back = None if figures.return_line is None else figures.return_line.size
    yield from _runs(subject, "suction", "inlet", session.inlet.run if session.inlet else (), None)
    yield from _runs(subject, "feed", "feed", session.feed.run, feed)
    runs = session.return_line.run if session.return_line else ()
    yield from _runs(subject, "return", "return_line", runs, back)


def _runs(
    subject: Subject, line: str, section: str, runs: Sequence[Run], candidate: str | None
) -> Iterator[tuple[Cell, ...]]:
    for number, run in enumerate(runs):
        guessed = "" if given(subject.session, f"{section}.run.{number}.length") else "length assumed, "
        ends = [f"{count} {FITTINGS[kind]}" for kind, count in run.fittings.items() if count]
        if run.side_by_side > 1:
            ends.insert(0, f"{run.side_by_side} side by side, each")
        yield row(
            f"{line}: {run.what}" if run.what else line,
            HOSES[run.hose],
            _size(subject, run, candidate),
            subject.numbers.number("length", run.length),
            f"{guessed}{', '.join(ends) or 'nothing given'}",
        )


def _size(subject: Subject, run: Run, candidate: str | None) -> str | None:
    if run.bore is not None:
        return subject.numbers.figure("bore", run.bore)
    return run.size.text if run.size is not None else candidate


def _in_line(subject: Subject) -> Iterator[str]:
    """Strainer, filters and other parts, with their ratings."""
    session, numbers = subject.session, subject.numbers
    if session.inlet is not None and session.inlet.strainer is not None:
        yield f"strainer, rated for {numbers.figure('flow', session.inlet.strainer.rated_flow)}"
    for part in session.feed.filter:
        where = ", before the regulator" if part.place == "pump" and subject.at_tank else ""
        yield f"{part.what or 'filter'}{where}, rated for {numbers.figure('flow', part.rated_flow)}"
    for item in (*session.feed.part, *(session.return_line.part if session.return_line else ())):
        yield f"{item.what or 'a part in line'}, rated for {numbers.figure('flow', item.rated_flow)}"
