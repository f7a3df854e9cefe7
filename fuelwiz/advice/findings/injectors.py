"""What is worth a look at rail and injectors: the pressure that is left across them, and the sag."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.sizing.thresholds import MOST_SAG

PRESSURE_SHARE = 0.7
SAG_WORTH_TELLING = 0.01


def injector_remarks(build: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know."""
    yield from _pressure_left(build)
    yield from _sag(build)


def _pressure_left(build: Subject) -> Iterator[Remark]:
    left, base = build.figures.pressure.injector_Pa, build.session.pressure.base
    if left <= 0.0 or left >= PRESSURE_SHARE * base:
        return
    share = build.numbers.figure("percent", left / base, PRESSURE_SHARE)
    told = build.numbers.figure("pressure", left)
    yield Remark(
        "warning",
        "pressure.reference",
        f"On full boost {told} is left across the injectors, {share} of the base.",
        "Let the regulator follow the manifold: the pressure across them then stays the same.",
    )


def _sag(build: Subject) -> Iterator[Remark]:
    sag, across = build.pick.rail_sag_Pa, build.figures.pressure.injector_Pa
    if sag is None or across <= 0.0 or "sag" in build.pick.limits or sag < SAG_WORTH_TELLING * across:
        return
    told = build.numbers.figure("pressure", sag, MOST_SAG * across)
    share = build.numbers.figure("percent", sag / across, MOST_SAG)
    yield Remark(
        "warning" if sag > MOST_SAG * across / 2.0 else "note",
        "pressure.regulator",
        f"The rail sags by {told} at full power, {share} of what the injectors see.",
        "The regulator sits at the tank and cannot make up for the line: tune for it.",
    )
