"""What is worth a look in the return line where it still holds."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.physics.return_line import AT_EASE_SHARE


def return_remarks(subject: Subject) -> Iterator[Remark]:
    """A back pressure that comes near the idle rail pressure; a size that does not hold is a stop."""
    line, idle = subject.figures.return_line, subject.figures.pressure.idle_rail_Pa
    if line is None or not line.holds or idle <= 0.0 or line.back_pressure_Pa <= AT_EASE_SHARE * idle:
        return
    name = "the return line you have" if line.fixed else f"the {line.size} return line"
    needs = subject.numbers.figure("pressure", line.back_pressure_Pa, idle)
    share = subject.numbers.figure("percent", line.back_pressure_Pa / idle, AT_EASE_SHARE, 1.0)
    larger = next(
        (row for row in line.sizes if row.holds and row.back_pressure_Pa <= AT_EASE_SHARE * idle), None
    )
    do = "Fewer fittings or a larger return line would lower it."
    if larger is not None and not larger.fixed:
        do = f"It works, with little left for a bend or a cooler; {larger.size} gives room."
    yield Remark(
        "warning",
        "return_line",
        f"{capitalized(name)} backs up to {needs} at idle, {share} of rail pressure.",
        do,
    )
