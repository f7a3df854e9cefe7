"""What lowers the back pressure of a return, by the part that makes most of it."""

from __future__ import annotations

from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.sizing.part_figures import ReturnFigures

MOST_OF_IT = 0.5


def regulator_makes_most(subject: Subject) -> bool:
    """Whether the regulator, wide open, makes more of the back pressure than all that follows it."""
    line = subject.figures.return_line
    if line is None or line.back_pressure_Pa <= 0.0:
        return False
    return line.regulator_loss_Pa > MOST_OF_IT * line.back_pressure_Pa


def return_cure(subject: Subject, *, all_on: bool = False) -> str:
    """The cure as a sentence; `all_on` where it is all the pumps together that are too much."""
    line, pump = subject.figures.return_line, subject.session.pump
    assert line is not None
    fewer = ""
    if pump is not None and pump.running_at_idle > 1 and not all_on:
        fewer = ", or run fewer pumps at idle"
    if regulator_makes_most(subject):
        return _larger_regulator(subject, fewer)
    if all_on:
        return "A larger return line, or a larger regulator, lowers it."
    wanted = line.smallest_at_ease or line.smallest_that_holds
    if wanted is not None and wanted != line.size:
        return f"{_sizes_that_do(line, wanted)}{fewer}."
    if line.holds:
        return f"Fewer bends or a larger return line would lower it{fewer}."
    if line.fixed:
        return f"Fit a larger one{fewer}."
    return f"No return size tried works: try larger ones{fewer}."


def _sizes_that_do(line: ReturnFigures, wanted: str) -> str:
    """The smallest return at ease, and the one that just holds where that is smaller."""
    holds = line.smallest_that_holds
    if wanted != line.smallest_at_ease:
        return f"{capitalized(wanted)} is the smallest return line that holds"
    just = f"{capitalized(holds)} just holds; " if not line.holds and holds not in (None, wanted) else ""
    name = wanted if just else capitalized(wanted)
    return f"{just}{name} is the smallest return line that is at ease, at no more than half of that"


def return_fault(subject: Subject) -> str:
    """What of the return does not let the regulator hold: the regulator itself, or its line."""
    line = subject.figures.return_line
    assert line is not None
    if regulator_makes_most(subject):
        return "the regulator is too small for the return flow"
    return f"the {'return' if line.fixed else f'{line.size} return'} is too small"


def _larger_regulator(subject: Subject, fewer: str) -> str:
    line, given = subject.figures.return_line, subject.session.return_line
    assert line is not None and given is not None
    lost = subject.numbers.figure("pressure", line.regulator_loss_Pa)
    whole = subject.numbers.number("pressure", line.back_pressure_Pa, line.regulator_loss_Pa)
    taken = " (assumed)" if "return_line.regulator" in subject.assumed else ""
    flow = subject.numbers.figure("flow", line.flow_m3_s)
    hose = ""
    if not line.holds and line.smallest_that_holds is not None:
        hose = f" {capitalized(line.smallest_that_holds)} would just hold."
    return (
        f"The regulator itself makes {lost} of the {whole}{taken}: fit a larger regulator rather than hose{fewer}."
        f" Ask its maker what it loses wide open at {flow}.{hose}"
    )
