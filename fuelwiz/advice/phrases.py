"""What is wrong with a size, limit by limit, in a few words that stand inside a sentence."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.advice.blocks import UNKNOWN
from fuelwiz.advice.row import LOSS, SPARE, VELOCITY
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import MOST_SAG

GUESSED = ", probably: the rest of the pump's curve is guessed"


def limit_phrase(build: Subject, row: SizeFigures, limit: str) -> str:
    """One limit of one size: the figure and what was wanted."""
    return _PHRASES[limit](build, row)


def _velocity(build: Subject, row: SizeFigures) -> str:
    figure, most = build.numbers.pair("velocity", row.velocity_m_s, build.session.bands.feed[2])
    return f"{figure}, {most} is the most"


def _delivery(build: Subject, row: SizeFigures) -> str:
    assert row.full_delivery_velocity_m_s is not None
    figure, most = build.numbers.pair("velocity", row.full_delivery_velocity_m_s, build.session.bands.feed[3])
    return f"{figure} with the return flow on top, {most} is the most"


def _sag(build: Subject, row: SizeFigures) -> str:
    assert row.rail_sag_Pa is not None
    allowed = MOST_SAG * build.figures.pressure.injector_Pa
    figure, most = build.numbers.pair("pressure", row.rail_sag_Pa, allowed)
    return f"the rail sags {figure}, under {most} is wanted"


def _pump(build: Subject, row: SizeFigures) -> str:
    assert row.margin is not None
    reserve = build.session.goal.reserve
    if row.margin < 0.0:
        return f"{build.numbers.figure('percent', -row.margin, 0.0)} short of the goal"
    figure, wanted = build.numbers.pair("percent", row.margin, reserve)
    return f"{figure} to spare, {wanted}\u00a0% is wanted"


def _relief(build: Subject, row: SizeFigures) -> str:
    pump = build.session.pump
    assert pump is not None and pump.relief is not None and row.pump_rise_Pa is not None
    needed, relief = build.numbers.pair("pressure", row.pump_rise_Pa, pump.relief)
    return f"{needed} must be made, the pump's relief opens at {relief}"


def vapour_need(build: Subject) -> float:
    """What the place of the pump needs above the fuel's vapour pressure, Pa."""
    pump = build.session.pump
    return LEAST_VAPOUR_MARGIN_PA["outside"] if pump is not None and pump.place == "outside" else 0.0


def vapour_phrase(build: Subject, margin_pa: float) -> str:
    """How near the fuel is to boiling at the pump's inlet, where that is too near."""
    if margin_pa < 0.0:
        missing = build.numbers.figure("pressure", -margin_pa, 0.0)
        return f"the fuel boils at the pump's inlet, its pressure {missing} too low"
    figure, wanted = build.numbers.pair("pressure", margin_pa, vapour_need(build))
    return f"the fuel is {figure} from boiling at the pump's inlet, {wanted} is wanted"


def _vapour(build: Subject, row: SizeFigures) -> str:
    assert row.vapour_margin_Pa is not None
    return vapour_phrase(build, row.vapour_margin_Pa)


def _inlet(build: Subject, row: SizeFigures) -> str:
    inlet = build.figures.inlet
    most = build.session.bands.inlet[2]
    if inlet is None or inlet.velocity_m_s is None or row is not build.pick:
        return "the suction line runs too fast"
    figure, shown = build.numbers.pair("velocity", inlet.velocity_m_s, most)
    return f"{figure} in the suction line, {shown} is the most"


_PHRASES: dict[str, Callable[[Subject, SizeFigures], str]] = {
    "velocity": _velocity,
    "delivery": _delivery,
    "sag": _sag,
    "pump": _pump,
    "relief": _relief,
    "vapour": _vapour,
    "inlet": _inlet,
}


def speed(build: Subject, row: SizeFigures) -> str:
    """The velocity at the goal, on its own side of every band's edge."""
    return VELOCITY.figure(build, row) or UNKNOWN


def loss(build: Subject, row: SizeFigures) -> str | None:
    """The loss of the whole feed at the goal; at the tank it is the sag that is judged."""
    return LOSS.figure(build, row)


def lost(build: Subject, row: SizeFigures) -> str | None:
    """The loss with its verb; a line that runs downhill may gain."""
    if row.feed_loss_Pa is not None and row.feed_loss_Pa < 0.0:
        return f"{build.numbers.figure('pressure', -row.feed_loss_Pa)} gained"
    told = loss(build, row)
    return f"{told} lost" if told is not None else None


def spare(build: Subject, row: SizeFigures) -> str | None:
    """What the pump has to spare, with the volts where they are assumed."""
    if row.margin is None:
        return None
    volts = f" at {volts_seen(build, row)}" if build.volts_assumed else ""
    if row.margin < 0.0:
        return f"{build.numbers.figure('percent', -row.margin, 0.0)} short{volts}"
    return f"{SPARE.figure(build, row)} to spare{volts}"


def volts_seen(build: Subject, row: SizeFigures) -> str:
    """The volts that the pump gets, "(assumed)" where they are the fallback."""
    volts = row.pump_volts_V if row.pump_volts_V is not None else ASSUMED_VOLTS
    told = build.numbers.figure("volts", volts, ASSUMED_VOLTS)
    return f"{told} (assumed)" if build.volts_assumed else told
