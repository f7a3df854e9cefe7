"""A build that works today and fails on a bad day."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.case_sentences import case_names, new_limits
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, listed


def stress_remarks(subject: Subject) -> Iterator[Remark]:
    """The bad days that bring a limit which today has not; a pump that stops is said with the pumps."""
    today = set(subject.figures.verdict.limits)
    names = zip(subject.figures.stress, case_names(subject), strict=True)
    stopped, combined = subject.case("one pump dead"), subject.case("bad day")
    failing = [(case, name) for case, name in names if case is not stopped and new_limits(subject, case)]
    if not failing or "pump" in today:
        return
    called = [name for _, name in failing]
    shown = called if len(called) <= 3 else [*called[:2], f"{len(called) - 2} more"]
    yield Remark(
        "note" if [case for case, _ in failing] == [combined] else "warning",
        "stress",
        f"{'Fails on a bad day' if today else 'Works today, fails on a bad day'}: {listed(shown)}.",
        "The bad days show what fails first in each, and what helps.",
        elsewhere=True,
    )
