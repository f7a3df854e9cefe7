"""What to put right in a build: the answer that cures it, and why, step by step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from fuelwiz.advice import Result
from fuelwiz.advice.answer.how_far import limit_named_first
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
    """An answer to put right, by its path, and why, without the full stop; `limit` None is a text that is refused."""

    path: str
    why: str
    limit: Limit | None = None

    @property
    def step(self) -> str:
        """The step that asks for it."""
        return step_of(self.path)


def what_to_look_at(refusals: Mapping[str, Refusal], result: Result | None) -> tuple[LookHere, ...]:
    """Every refused field and everything that stops the build, in the order of the steps."""
    return tuple(sorted(_found(refusals, result), key=lambda look: _ORDER[look.step]))


def first_to_put_right(looks: Sequence[LookHere], result: Result | None) -> LookHere | None:
    """A refused text; else what stands behind the first line of the answer, whichever step asks for it."""
    if not looks or result is None:
        return next(iter(looks), None)
    refused = next((look for look in looks if look.limit is None), None)
    if refused is not None:
        return refused
    named = limit_named_first(Subject(result.session, result.figures))
    cure = next((look.path for look in looks if look.limit == named), looks[0].path)
    return next(look for look in looks if look.path == cure)


def _found(refusals: Mapping[str, Refusal], result: Result | None) -> Iterator[LookHere]:
    for path, refusal in refusals.items():
        yield LookHere(path, f"{noun_of(path)}: {refusal.short}")
    if result is not None:
        subject = Subject(result.session, result.figures)
        for limit in result.figures.verdict.limits:
            path = cured_at(subject, limit)
            yield LookHere(path, _why(subject, limit, path), limit)


def _why(subject: Subject, limit: Limit, path: str) -> str:
    if limit == "return":
        return return_fault(subject)
    through = " through this line" if limit == "pump" and step_of(path) == "lines" else ""
    return f"{short_why(subject, limit)}{through}"
