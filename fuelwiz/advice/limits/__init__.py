"""What is said of each limit: one record each, for the size of the feed line and for the rest of the build."""

from __future__ import annotations

from fuelwiz.advice.limits.near_boiling import cooler_inlet, needs_less_in_the_tank
from fuelwiz.advice.limits.of_build import BUILD_WORDS
from fuelwiz.advice.limits.of_size import SIZE_WORDS
from fuelwiz.advice.limits.record import LimitWords, SizeLimitWords, WhatAndDo
from fuelwiz.advice.limits.returning import return_cure, return_fault
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.vocabulary import Limit, SizeLimit

__all__ = [
    "WORDS",
    "LimitWords",
    "SizeLimitWords",
    "WhatAndDo",
    "cooler_inlet",
    "cure",
    "cured_at",
    "limit_phrase",
    "needs_less_in_the_tank",
    "return_cure",
    "return_fault",
    "short_why",
    "size_stop",
    "what_and_do",
]

WORDS: dict[Limit, LimitWords] = {
    **{words.limit: words for words in SIZE_WORDS},
    **{words.limit: words for words in BUILD_WORDS},
}
_OF_SIZE: dict[SizeLimit, SizeLimitWords] = {words.limit: words for words in SIZE_WORDS}


def what_and_do(subject: Subject, limit: Limit) -> WhatAndDo:
    """A sentence on what is wrong where the build is judged, one on what to do."""
    return WORDS[limit].what_and_do(subject)


def size_stop(subject: Subject, row: SizeFigures, limit: SizeLimit) -> WhatAndDo:
    """The same of one size."""
    return _OF_SIZE[limit].stop(subject, row)


def limit_phrase(subject: Subject, row: SizeFigures, limit: SizeLimit) -> str:
    """One limit of one size inside a sentence: the figure, and the limit that it is judged by."""
    return _OF_SIZE[limit].phrase(subject, row)


def short_why(subject: Subject, limit: Limit) -> str:
    """What is wrong, in a few words that make a sentence."""
    if limit == "return" and subject.figures.return_line is not None:
        return return_fault(subject)
    pumps = "the pumps are" if subject.pump_word == "pumps" else "the pump is"
    return WORDS[limit].short.format(pump_is=pumps)


def cure(limit: Limit) -> str:
    """What cures it, as a noun: "a larger return line"."""
    return WORDS[limit].cure


def cured_at(subject: Subject, limit: Limit) -> str:
    """The path of the answer that cures it."""
    return WORDS[limit].cured_at(subject)
