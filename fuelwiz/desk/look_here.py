"""What to put right in a build: the answer that cures it, and why, step by step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fuelwiz.advice import Result
from fuelwiz.advice.limits import cured_at, return_fault, short_why
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.steps import step_of
from fuelwiz.questions import STEPS
from fuelwiz.record import record
from fuelwiz.sizing.vocabulary import Limit

_ORDER = {step.id: number for number, step in enumerate(STEPS)}


@record
class LookHere:
    """An answer to put right, by its path, and why, without the full stop."""

    path: str
    why: str

    @property
    def step(self) -> str:
        """The step that asks for it."""
        return step_of(self.path)


def what_to_look_at(refusals: Mapping[str, Refusal], result: Result | None) -> tuple[LookHere, ...]:
    """Every refused field and everything that stops the build, in the order of the steps."""
    return tuple(sorted(_found(refusals, result), key=lambda look: _ORDER[look.step]))


def _found(refusals: Mapping[str, Refusal], result: Result | None) -> Iterator[LookHere]:
    for path, refusal in refusals.items():
        yield LookHere(path, f"{noun_of(path)}: {refusal.short}")
    if result is not None:
        subject = Subject(result.session, result.figures)
        for limit in result.figures.verdict.limits:
            path = cured_at(subject, limit)
            yield LookHere(path, _why(subject, limit, path))


def _why(subject: Subject, limit: Limit, path: str) -> str:
    if limit == "return":
        return return_fault(subject)
    through = " through this line" if limit == "pump" and step_of(path) == "lines" else ""
    return f"{short_why(subject, limit)}{through}"
