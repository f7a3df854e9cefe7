"""Phrases that several sentences share: velocity, loss, what is to spare, and how near the fuel is to boiling."""

from __future__ import annotations

from math import ceil

from fuelwiz.advice.blocks import UNKNOWN
from fuelwiz.advice.numbers import Numbers, Role
from fuelwiz.advice.row import LOSS, SPARE, VELOCITY
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.inlet import LEAST_VAPOUR_MARGIN_PA
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.units import from_si, to_si

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


def volt_moves(subject: Subject) -> str | None:
    """What a volt less at the pump takes off this pump's flow; by either law where its kind is not known."""
    volt, numbers = subject.figures.one_volt, subject.numbers
    if volt is None:
        return None
    lost = numbers.figure("percent", volt.share)
    if volt.turbine is None or volt.displacement is None:
        return f"a volt less takes {lost} of its flow here"
    turbine, displacement = (
        numbers.figure("percent", volt.turbine),
        numbers.figure("percent", volt.displacement),
    )
    if turbine == displacement:
        return f"a volt less takes {turbine} of its flow here"
    return f"a volt less takes {turbine} of its flow here if it is a turbine, {displacement} if a displacement pump"


def wire_loss_not_counted(subject: Subject) -> bool:
    """Whether the volts at the pump follow from a wire of which something is missing: it then seems to lose nothing."""
    pump, wiring = subject.session.pump, subject.session.wiring
    if pump is None or wiring is None or pump.volts is not None:
        return False
    return not pump.current or wiring.wire is None or wiring.length is None


def point_name(subject: Subject, at: int) -> str:
    """A point of full power in a sentence: "at 4500 rpm", else by its power."""
    point = subject.figures.pull[at]
    if point.rpm is not None:
        return f"at {point.rpm} rpm"
    return f"at the pull's {subject.numbers.figure('power', point.crank_power_W)}"


def kept_run_number(subject: Subject) -> int:
    """The run of a size of its own that is tightest, from 0."""
    tightest = next((item.run for item in subject.figures.ceilings if item.run is not None), None)
    if tightest is not None:
        return tightest
    runs = enumerate(subject.session.feed.run)
    return next((at for at, run in runs if run.size is not None or run.bore is not None), 0)


def kept_run_name(subject: Subject) -> str:
    """The same by its name or number: what to change, not the rest of the line."""
    at = kept_run_number(subject)
    run = subject.session.feed.run[at]
    name = f"the run \u201c{run.what}\u201d" if run.what else f"run {at + 1} of the feed line"
    if run.bore is not None:
        return f"{name}, kept at {subject.numbers.figure('bore', run.bore)},"
    return f"{name}, kept at {run.size.text}," if run.size is not None else name


def kept_loss_pa(subject: Subject) -> float:
    """What the runs of a size of their own lose at the goal; 0 without any."""
    runs = subject.session.feed.run
    return sum(
        part.loss_Pa
        for part in subject.figures.path
        if part.kind == "run" and (runs[part.number].size is not None or runs[part.number].bore is not None)
    )


def kept_run_chokes(subject: Subject, row: SizeFigures) -> bool:
    """Whether the runs that keep a size of their own lose more than those that follow the size."""
    if row.fixed or row.line_loss_Pa is None:
        return False
    return kept_loss_pa(subject) > max(row.line_loss_Pa, 0.0)


def dead_head_guessed(subject: Subject) -> bool:
    """Whether the dead head lies beyond the pump's table, with no relief pressure that bounds it."""
    pump = subject.session.pump
    return pump is not None and pump.relief is None and any(curve.points[-1][1] > 0.0 for curve in pump.curve)


GUESS_STEPS = {"psi": 10.0, "bar": 0.5}


def dead_head_at_most(numbers: Numbers, pressure_pa: float, *, guessed: bool) -> str:
    """A dead head to be rated for: one that is guessed rounded up, as its last digits mean nothing."""
    unit = numbers.unit("pressure")
    if not guessed or unit not in GUESS_STEPS:
        return numbers.figure("pressure", pressure_pa)
    step = GUESS_STEPS[unit]
    return numbers.limit("pressure", to_si(step * ceil(from_si(pressure_pa, unit) / step), unit))


def least_spare(row: SizeFigures) -> tuple[float, int | None] | None:
    """The least margin of the goal and the pull, and the point that it is at."""
    if row.least is not None:
        return row.least.margin, row.least.at
    return None if row.margin is None else (row.margin, None)


def both_units(subject: Subject, role: Role, value: float) -> str:
    """A figure in both unit systems, as shops quote either: "62 gal/h (235 L/h)"."""
    return f"{subject.numbers.figure(role, value)} ({subject.numbers.other.figure(role, value)})"


def clock(seconds: float) -> str:
    """A time as one says it: whole minutes from two up, else seconds."""
    return f"{seconds / 60.0:.0f}{NO_BREAK}min" if seconds >= 120.0 else f"{seconds:.0f}{NO_BREAK}s"


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
