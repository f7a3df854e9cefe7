"""Everything a careful friend would point out: stops first, then warnings, then notes."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.findings.electrics import electric_remarks
from fuelwiz.advice.findings.fuel import fuel_remarks
from fuelwiz.advice.findings.goal import goal_remarks
from fuelwiz.advice.findings.injectors import injector_remarks
from fuelwiz.advice.findings.lines import line_remarks
from fuelwiz.advice.findings.pump import pump_remarks
from fuelwiz.advice.findings.return_line import return_remarks
from fuelwiz.advice.findings.stress import stress_remarks
from fuelwiz.advice.findings.unknowns import unknown_remarks
from fuelwiz.advice.limits import what_and_do
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject


def _stops(subject: Subject) -> Iterator[Remark]:
    """One remark for each limit of the pick and of the build, in the order of the verdict."""
    for limit in subject.figures.verdict.limits:
        yield Remark("stop", limit, *what_and_do(subject, limit))


_TOPICS = (
    _stops,
    goal_remarks,
    pump_remarks,
    electric_remarks,
    injector_remarks,
    return_remarks,
    fuel_remarks,
    line_remarks,
    stress_remarks,
    unknown_remarks,
)
_ORDER = ("stop", "warning", "note")


def remarks_on(subject: Subject) -> list[Remark]:
    """All remarks on a build; within one severity in the order of the topics."""
    remarks = [remark for topic in _TOPICS for remark in topic(subject)]
    return sorted(remarks, key=lambda remark: _ORDER.index(remark.severity))
