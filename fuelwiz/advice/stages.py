"""Stages: where each further pump is switched on and off again, by power, boost and injector duty."""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

from fuelwiz.advice.changes import ORDINALS
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.boost import boost_in_step_pa
from fuelwiz.sizing.part_figures import Stage

BEFORE = 0.9
"""A stage comes in 10 % before it is needed and goes out 10 % before that again: common practice, no source."""


class SwitchPoint(NamedTuple):
    """A power, and the boost and the injector duty that go with it; None where they are not known."""

    power_W: float
    boost_Pa: float | None
    duty: float | None


def switch_points(subject: Subject, stage: Stage) -> tuple[SwitchPoint, SwitchPoint]:
    """Where the pump that follows a stage is switched on, and off."""
    on = BEFORE * stage.power_W
    return _point(subject, on), _point(subject, BEFORE * on)


def _point(subject: Subject, power_w: float) -> SwitchPoint:
    pressure, boost = subject.figures.pressure, subject.session.pressure.boost
    share = power_w / subject.figures.demand.crank_power_W
    there = boost_in_step_pa(boost_pa=boost, share=share, atmosphere_pa=pressure.atmosphere_Pa)
    return SwitchPoint(power_w, there if boost > 0.0 else None, _duty(subject, share, boost - there))


def _duty(subject: Subject, share: float, less_boost_pa: float) -> float | None:
    """The duty at a share of the goal's power; at a regulator open to the air the injectors see more with less boost."""
    injectors, across = subject.figures.injectors, subject.figures.pressure.injector_Pa
    if injectors is None or injectors.duty is None or across <= 0.0:
        return None
    there = across + (less_boost_pa if subject.session.pressure.reference == "atmosphere" else 0.0)
    return injectors.duty * share * sqrt(across / there)


def stage_sentence(subject: Subject, stage: Stage) -> str:
    """When the next pump comes in and goes out."""
    on, off = switch_points(subject, stage)
    pump = ORDINALS[stage.pumps + 1]
    if stage.power_W <= 0.0:
        return f"The {pump} pump has to run all the time: without it the rail is not held even at idle."
    return f"Switch the {pump} on at {point_words(subject, on)}, off at {point_words(subject, off)}."


def point_words(subject: Subject, point: SwitchPoint) -> str:
    """A switch point: "404 hp (7.1 psi of boost, 61 % duty)"."""
    numbers = subject.numbers
    known = []
    if point.boost_Pa is not None:
        known.append(f"{numbers.figure('pressure', point.boost_Pa)} of boost")
    if point.duty is not None:
        known.append(f"{numbers.figure('percent', point.duty)} duty")
    behind = f" ({', '.join(known)})" if known else ""
    return f"{numbers.figure('power', point.power_W)}{behind}"
