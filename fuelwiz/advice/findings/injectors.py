"""What is worth a look at rail and injectors: the pressure that is left across them, and the sag."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.thresholds import MOST_SAG

PRESSURE_SHARE = 0.7
SAG_WORTH_A_NOTE = 0.01
SAG_WORTH_A_WARNING = 0.5  # of the most that it may be


def injector_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    yield from _pressure_left(subject)
    yield from _sag(subject)


def _pressure_left(subject: Subject) -> Iterator[Remark]:
    left, base = subject.figures.pressure.injector_Pa, subject.session.pressure.base
    if left <= 0.0 or left >= PRESSURE_SHARE * base:
        return
    share = subject.numbers.figure("percent", left / base, PRESSURE_SHARE)
    pressure = subject.numbers.figure("pressure", left)
    yield Remark(
        "warning",
        "pressure.reference",
        f"At full boost {pressure} is left across the injectors, {share} of the base pressure.",
        "Let the regulator follow the manifold: the pressure across them then stays the same.",
    )


def _sag(subject: Subject) -> Iterator[Remark]:
    sag, across = subject.pick.rail_sag_Pa, subject.figures.pressure.injector_Pa
    if sag is None or across <= 0.0 or "sag" in subject.pick.limits or sag < SAG_WORTH_A_NOTE * across:
        return
    drop = subject.numbers.figure("pressure", sag, MOST_SAG * across)
    share = subject.numbers.figure("percent", sag / across, MOST_SAG)
    yield Remark(
        "warning" if sag > SAG_WORTH_A_WARNING * MOST_SAG * across else "note",
        "pressure.regulator",
        f"Rail pressure drops {drop} at full power, {share} of what the injectors get.",
        "Nothing at the rail makes up for the line: tune with the drop, or fit a larger line.",
    )
