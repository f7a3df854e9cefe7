"""The log of a run: what it shows, by which file and of which day, and pressure and flow by engine speed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.blocks import Block, Heading, Item, Listing, Pairs, Paragraph
from fuelwiz.advice.log_words import (
    found_in_log,
    marked_signature,
    pulls_in_words,
    pump_sentence,
    signature_list,
    speed_sentence,
    speed_table,
)
from fuelwiz.advice.proposal_words import proposal_text
from fuelwiz.advice.sections.headings import LOG_OF_A_RUN

if TYPE_CHECKING:
    from fuelwiz.advice.result import Words
    from fuelwiz.advice.subject import Subject
    from fuelwiz.measured.figures import LogFigures, LoggedRun

ONE_STEP = "There is one step of engine speed alone, so there is no line to draw."


def logged(subject: Subject, _words: Words) -> Iterator[Block]:
    """What the log of a build shows; why not, where it cannot be used; nothing without one."""
    run = log_of(subject)
    if run is None:
        return
    yield Heading(LOG_OF_A_RUN)
    if run.figures is None:
        yield Paragraph(refused_sentence(run))
        return
    log = run.figures
    yield Paragraph(pump_sentence(subject, log.pump), strong=True)
    yield Paragraph(read_sentence(run, log))
    yield signature_list(log)
    if log.bins:
        yield Paragraph(speed_sentence(subject, log))
        yield speed_table(subject, log)
    yield Pairs(tuple(found_in_log(subject, log)))
    if log.proposals:
        yield Paragraph("It proposes, to be taken one at a time:")
        yield Listing(tuple(Item(proposal_text(subject, proposal)) for proposal in log.proposals))


def logged_in_brief(subject: Subject) -> Iterator[Item]:
    """The same in a few entries of a list."""
    run = log_of(subject)
    if run is None:
        return
    if run.figures is None:
        yield Item(refused_sentence(run), "warning")
        return
    yield Item(f"{pump_sentence(subject, run.figures.pump)} {read_sentence(run, run.figures)}")
    yield from (marked_signature(shown) for shown in run.figures.signatures)


def log_of(subject: Subject) -> LoggedRun | None:
    """The log of a build, where it was read."""
    return None if subject.measured is None else subject.measured.log


def refused_sentence(run: LoggedRun) -> str:
    """Why a log shows nothing."""
    return f"The log is not used. {run.file}: {run.refused}."


def read_sentence(run: LoggedRun, log: LogFigures) -> str:
    """By which file, of which day, and how much of it counted."""
    day = f" of {run.day}" if run.day else ""
    return f"Log {run.file}{day}: {log.samples} of {log.rows} rows at full load, in {pulls_in_words(log)}."
