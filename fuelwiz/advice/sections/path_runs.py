"""Runs of line in words, whatever line they are of."""

from __future__ import annotations

from fuelwiz.advice.sections.path_line import PathLine
from fuelwiz.advice.subject import Subject
from fuelwiz.session import Run
from fuelwiz.session import given as is_given
from fuelwiz.sizing.vocabulary import Limit
from fuelwiz.terms import FITTINGS, HOSES

OPEN_ENDS = ("entrance", "exit")
"""What is no part that one buys."""


def run_line(
    subject: Subject,
    run: Run,
    size: str,
    speed: str,
    comes_out: str,
    limits: tuple[Limit, ...],
    path_of_run: str,
) -> PathLine:
    """A run of whatever line it is."""
    return PathLine(
        "│",
        run_name(subject, run, size),
        run_in_words(subject, run),
        speed,
        comes_out,
        limits,
        _is_assumed(subject, path_of_run),
        short=_run_in_few_words(subject, run),
    )


def _is_assumed(subject: Subject, path_of_run: str) -> bool:
    """Whether a run's length or kind of hose was not given, in whatever line it is."""
    return not all(is_given(subject.session, f"{path_of_run}.{key}") for key in ("length", "hose"))


def run_name(subject: Subject, run: Run, size: str) -> str:
    """A run by its size and hose: "-8 PTFE"."""
    if run.bore is not None:
        return f"{subject.numbers.figure('bore', run.bore)} {HOSES[run.hose]}"
    return f"{run.size.text if run.size is not None else size} {HOSES[run.hose]}"


def run_in_words(subject: Subject, run: Run) -> str:
    """A run by its length, its ends and what it is."""
    ends = [f"{count} {FITTINGS[kind]}" for kind, count in _fittings(run)]
    return ", ".join([subject.numbers.limit("length", run.length), *_many(run), *ends])


def _run_in_few_words(subject: Subject, run: Run) -> str:
    """The same with its ends counted."""
    count = sum(count for _, count in _fittings(run))
    fitted = [f"{count} {'end' if count == 1 else 'ends'}"] if count else []
    return ", ".join([subject.numbers.limit("length", run.length), *_many(run), *fitted])


def _fittings(run: Run) -> list[tuple[str, int]]:
    return [(kind, count) for kind, count in run.fittings.items() if count and kind not in OPEN_ENDS]


def _many(run: Run) -> list[str]:
    return [f"{run.side_by_side} side by side"] if run.side_by_side > 1 else []
