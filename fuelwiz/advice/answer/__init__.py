"""The answer: whether it does and how far, where it is tightest, what to do first, what to measure; then the line."""

from __future__ import annotations

from fuelwiz.advice.answer.how_far import how_far
from fuelwiz.advice.answer.lines import Forms, fitting
from fuelwiz.advice.answer.measure import measure
from fuelwiz.advice.answer.tightest import tightest
from fuelwiz.advice.answer.what_first import what_first
from fuelwiz.advice.subject import Subject

__all__ = ["Forms", "answer_lines", "fitting"]


def answer_lines(subject: Subject) -> tuple[Forms, ...]:
    """The lines that have something to say, four at most; the first is always there."""
    lines = (how_far(subject), tightest(subject), what_first(subject), measure(subject))
    return tuple(line for line in lines if line is not None)
