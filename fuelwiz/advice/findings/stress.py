"""A build that works today and fails on a bad day."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject, listed


def stress_remarks(build: Subject) -> Iterator[Remark]:
    """The bad days that bring a limit which today has not; a dead pump is told with the pumps."""
    today = set(build.figures.verdict.limits)
    failing = [
        case.case
        for case in build.figures.stress
        if case.case != "one pump dead" and set(case.limits) - today
    ]
    if not failing or "pump" in today:
        return
    shown = failing if len(failing) <= 3 else [*failing[:2], f"{len(failing) - 2} more"]
    yield Remark(
        "note" if failing == ["bad day"] else "warning",
        "stress",
        f"Does not hold under stress: {listed(shown)}.",
        "Stress says what fails first in each, and what would cure it.",
    )
