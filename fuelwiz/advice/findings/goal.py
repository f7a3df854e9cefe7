"""What is worth a look in the goals themselves."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject


def goal_remarks(subject: Subject) -> Iterator[Remark]:
    """A next goal below this one: most often left behind where this season's was raised."""
    if not subject.next_is_below:
        return
    goal, wanted = subject.session.goal, subject.session.goal.next_power
    assert wanted is not None
    below = subject.numbers.figure("power", _at_crank(subject, wanted), _at_crank(subject, goal.power))
    above = subject.numbers.figure("power", _at_crank(subject, goal.power), _at_crank(subject, wanted))
    yield Remark(
        "warning",
        "goal.next_power",
        f"The next goal of {below} is below this one of {above}, so nothing is said of it.",
        "Raise it, or leave it empty.",
    )


def _at_crank(subject: Subject, power_w: float) -> float:
    """A power as it was given, at the crank, which is what figures are."""
    return power_w * subject.figures.demand.crank_power_W / subject.session.goal.power
