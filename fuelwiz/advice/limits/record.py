"""The record of what is said of a limit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from fuelwiz.advice.limits.cure_places import CuredAt
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.vocabulary import BuildLimit, SizeLimit

WhatAndDo = tuple[str, str]
"""A sentence on what is so, with its figure, and one on what to do about it."""


@dataclass(frozen=True, slots=True)
class SizeLimitWords:
    """What is said where something is wrong with a size of feed line.

    `cured_at` is the path of the answer that cures it, `short` says in a few words what is ({pump_is} stands for one
    pump or several), `cure` names what cures it, `phrase` gives the figure and its limit inside a sentence, `stop`
    says what is so and what to do.
    """

    limit: SizeLimit
    cured_at: CuredAt
    short: str
    cure: str
    phrase: Callable[[Subject, SizeFigures], str]
    stop: Callable[[Subject, SizeFigures], WhatAndDo]

    def what_and_do(self, subject: Subject) -> WhatAndDo:
        """What is so at the size that the build is judged at, and what to do."""
        return self.stop(subject, subject.pick)


@dataclass(frozen=True, slots=True)
class BuildLimitWords:
    """What is said where something is wrong whatever the size of the feed line; the fields as of a size's."""

    limit: BuildLimit
    cured_at: CuredAt
    short: str
    cure: str
    stop: Callable[[Subject], WhatAndDo]

    def what_and_do(self, subject: Subject) -> WhatAndDo:
        """What is so, and what to do."""
        return self.stop(subject)


LimitWords = SizeLimitWords | BuildLimitWords
