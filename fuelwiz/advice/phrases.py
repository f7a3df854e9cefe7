"""Phrases that several sentences share: velocity, loss, what is to spare, and how near the fuel is to boiling."""

from __future__ import annotations

from fuelwiz.advice.blocks import UNKNOWN
from fuelwiz.advice.row import LOSS, SPARE, VELOCITY
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.sizing.figures import SizeFigures

GUESSED = ", a guess from one point of the pump's curve"


def speed(subject: Subject, row: SizeFigures) -> str:
    """The velocity at the goal, on its own side of every band's edge."""
    return VELOCITY.figure(subject, row) or UNKNOWN


def lost(subject: Subject, row: SizeFigures) -> str | None:
    """The loss with its verb; a line that runs downhill may gain."""
    if row.feed_loss_Pa is not None and row.feed_loss_Pa < 0.0:
        return f"{subject.numbers.figure('pressure', -row.feed_loss_Pa)} gained"
    loss = LOSS.figure(subject, row)
    return f"{loss} lost" if loss is not None else None


def spare(subject: Subject, row: SizeFigures) -> str | None:
    """What the pump has to spare, with the volts where they are assumed."""
    if row.margin is None:
        return None
    volts = f" at {volts_seen(subject, row)}" if subject.volts_assumed else ""
    if row.margin < 0.0:
        return f"{subject.numbers.figure('percent', -row.margin, 0.0)} short{volts}"
    return f"{SPARE.figure(subject, row)} to spare{volts}"


def volts_seen(subject: Subject, row: SizeFigures) -> str:
    """The volts that the pump gets, "(assumed)" where they are the fallback."""
    volts = row.pump_volts_V if row.pump_volts_V is not None else ASSUMED_VOLTS
    figure = subject.numbers.figure("volts", volts, ASSUMED_VOLTS)
    return f"{figure} (assumed)" if subject.volts_assumed else figure


def vapour_need(subject: Subject) -> float:
    """What the place of the pump needs above the fuel's vapour pressure, Pa."""
    pump = subject.session.pump
    return 0.0 if pump is None else LEAST_VAPOUR_MARGIN_PA[pump.place]


def vapour_phrase(subject: Subject, margin_pa: float) -> str:
    """How near the fuel is to boiling at the pump's inlet, where that is too near."""
    if margin_pa < 0.0:
        missing = subject.numbers.figure("pressure", -margin_pa, 0.0)
        return f"the fuel boils at the pump inlet: its pressure is {missing} too low there"
    figure, wanted = subject.numbers.pair("pressure", margin_pa, vapour_need(subject))
    return f"the fuel is only {figure} above boiling at the pump inlet ({wanted} is needed)"
