"""The Result: figures and the words that go with them, frozen, ready for a screen or a sheet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from fuelwiz.once import once
from fuelwiz.record import record
from fuelwiz.session import Session
from fuelwiz.sizing.figures import Figures

if TYPE_CHECKING:
    from fuelwiz.measured.figures import LoggedRun, Measured
    from fuelwiz.options.part_prices import PartPrices

Severity = Literal["stop", "warning", "note"]


@record
class Explanation:
    """What one size means, a sentence or None each; `no` says why a refused size is refused."""

    no: str | None
    means: str | None
    costs: str | None
    next: str | None
    smaller: str | None


@record
class Finding:
    """Something a careful friend would point out: how grave, about which limit or key, and what to do."""

    severity: Severity
    about: str
    text: str


@record
class Remark:
    """A finding in two halves, what is so and what to do, so that one line can say either.

    `elsewhere`: a report of one page says it in another of its sections already.
    """

    severity: Severity
    about: str
    what: str
    do: str = ""
    elsewhere: bool = False

    @property
    def finding(self) -> Finding:
        """The whole of it."""
        return Finding(self.severity, self.about, f"{self.what} {self.do}".strip())


@record
class Words:
    """Everything that is said about the figures."""

    answer: tuple[str, ...]  # four lines at most, those that have something to say
    answer_forms: tuple[tuple[str, ...], ...]  # the same lines ever shorter, the last in 56 columns or less
    line_to_fit: str | None  # what a sheet says under the answer: the size, its velocity and loss
    next_step: str  # where to go on in a build that lacks its line or its pump, for the wizard
    explanations: tuple[Explanation, ...]  # one for each of Figures.sizes, in that order
    stress: tuple[str, ...]  # what changes and what fails first, one for each of Figures.stress
    changes: tuple[str, ...]  # what each of Figures.changes is
    next_changes: tuple[str, ...]  # the same of those of the next goal
    case_names: tuple[str, ...]  # what each of Figures.stress is called
    first_limit: str | None  # which part reaches its limit first
    next_goal: tuple[str, ...]  # what would have to change for the next goal, part by part
    findings: tuple[Finding, ...]  # stops first, then warnings, then notes
    cautions: tuple[str, ...]  # the standing cautions that apply to this build


@dataclass(frozen=True)
class Result:
    """One session, its figures and its words; what its log showed and what its parts cost, where known.

    `comments` say what measured its values, by key, as its file has them.
    """

    session: Session
    figures: Figures
    words: Words
    log: LoggedRun | None = None
    prices: PartPrices | None = None
    comments: Mapping[str, str] = field(default_factory=dict)

    @once
    def measured(self) -> Measured:
        """What was measured of it: a first answer says nothing of that, so it is loaded where somebody asks."""
        from fuelwiz.measured import measured

        return measured(self.session, self.figures, self.log, self.comments)
