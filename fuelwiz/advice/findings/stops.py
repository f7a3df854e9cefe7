"""What stops the build: one remark for each limit of the pick and of the build."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fuelwiz.advice.build_limits import WhatAndDo, build_limit
from fuelwiz.advice.phrases import limit_phrase, spare, volts_seen
from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import LINE_LIMITS, SIZE_LIMITS, Subject, called, capitalized
from fuelwiz.physics.circuit import ASSUMED_VOLTS


def stops(build: Subject) -> Iterator[Remark]:
    """One remark a limit, in the order of the verdict."""
    for limit in build.figures.verdict.limits:
        what, do = _SIZE[limit](build) if limit in SIZE_LIMITS else build_limit(build, limit)
        yield Remark("stop", limit, what, do)


def _larger_line(build: Subject) -> str:
    row = build.smallest_with_working_line()
    if row is None or row.fixed:
        return "Fit a larger line, or two side by side."
    return f"Fit {row.size} or larger, or two lines side by side."


def _velocity(build: Subject) -> WhatAndDo:
    phrase = limit_phrase(build, build.pick, "velocity")
    return f"{capitalized(called(build.pick.size))} is too small for the goal: {phrase}.", _larger_line(build)


def _delivery(build: Subject) -> WhatAndDo:
    phrase = limit_phrase(build, build.pick, "delivery")
    name = capitalized(called(build.pick.size))
    return (
        f"{name} is too small: {phrase}.",
        _larger_line(build),
    )


def _sag(build: Subject) -> WhatAndDo:
    phrase = limit_phrase(build, build.pick, "sag")
    return f"At full power {phrase}: the mixture goes lean.", _larger_line(build)


def _pump(build: Subject) -> WhatAndDo:
    row, line = build.pick, build.figures.row(build.figures.recommended)
    through = "" if row.fixed else f" through {row.size}"
    what = f"The {build.pump_word} cannot do it{through}: {limit_phrase(build, row, 'pump')}."
    if line is not None and line is not row:
        return what, f"Fit {line.size}: {spare(build, line)}."
    if LINE_LIMITS.intersection(row.limits):
        return what, "A larger line comes first: too much is lost in this one."
    if row.pump_volts_V is not None and row.pump_volts_V < ASSUMED_VOLTS:
        return what, f"Look at the wiring first: the pump gets {volts_seen(build, row)}."
    if build.volts_assumed:
        return what, f"Measure the volts at the pump first: {volts_seen(build, row)} is taken."
    target = build.figures.pump_target
    assert target is not None
    flow = build.numbers.figure("flow", target.flow_m3_s)
    rise = build.numbers.about("pressure", target.rise_Pa)
    wanted = "pumps that give" if build.pump_word == "pumps" else "a pump that gives"
    return what, f"Look for {wanted} {flow} at {rise}, or settle for less power."


def _relief(build: Subject) -> WhatAndDo:
    return (
        f"{capitalized(limit_phrase(build, build.pick, 'relief'))}.",
        "Fit a pump whose relief opens higher, or ask for less pressure.",
    )


def _vapour(build: Subject) -> WhatAndDo:
    return (
        f"{capitalized(limit_phrase(build, build.pick, 'vapour'))}.",
        "Cool the fuel, clean or enlarge the strainer, or set the pump below the fuel.",
    )


def _inlet(build: Subject) -> WhatAndDo:
    return (
        f"Too fast at the inlet: {limit_phrase(build, build.pick, 'inlet')}.",
        "Fit a larger suction line: a starved pump loses flow and wears.",
    )


_SIZE: dict[str, Callable[[Subject], WhatAndDo]] = {
    "velocity": _velocity,
    "delivery": _delivery,
    "sag": _sag,
    "pump": _pump,
    "relief": _relief,
    "vapour": _vapour,
    "inlet": _inlet,
}
