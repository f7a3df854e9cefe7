"""What is worth a look in the return line where it still holds."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.limits import return_cure
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.physics.return_line import AT_EASE_SHARE
from fuelwiz.sizing.thresholds import CREEP_CALLED_OUT_PA


def return_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings; a size that does not hold is a stop."""
    yield from _not_at_ease(subject)
    yield from _all_pumps_on(subject)


def _not_at_ease(subject: Subject) -> Iterator[Remark]:
    line, idle = subject.figures.return_line, subject.figures.pressure.idle_rail_Pa
    if line is None or not line.holds or line.at_ease or idle <= 0.0:
        return
    name = "the return line you have" if line.fixed else f"the {line.size} return line"
    needs = subject.numbers.figure("pressure", line.back_pressure_Pa, idle)
    held = subject.numbers.figure("pressure", idle, line.back_pressure_Pa)
    share = subject.numbers.figure("percent", line.back_pressure_Pa / idle, AT_EASE_SHARE, 1.0)
    yield Remark(
        "warning",
        "return_line",
        f"{capitalized(name)} backs up to {needs} at idle, {share} of the {held} of rail pressure there: it works"
        " with little left for a bend or a cooler.",
        return_cure(subject),
    )


def _all_pumps_on(subject: Subject) -> Iterator[Remark]:
    """Throttle shut with all pumps on, as just after a stage comes in."""
    line, pump = subject.figures.return_line, subject.session.pump
    if line is None or pump is None or line.creep_all_on_Pa is None:
        return
    if line.creep_all_on_Pa <= CREEP_CALLED_OUT_PA:
        return
    creep = subject.numbers.figure("pressure", line.creep_all_on_Pa, CREEP_CALLED_OUT_PA)
    yield Remark(
        "warning",
        "pump.running_at_idle",
        f"With all {pump.count} pumps on and the throttle shut rail pressure creeps {creep} high.",
        f"Have the engine computer drop the further pumps at once. {return_cure(subject, all_on=True)}",
    )
