"""What is worth a look at the pump: its curve, its volts, its spare, and what a second one means."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.phrases import volt_moves
from fuelwiz.advice.result import Remark
from fuelwiz.advice.stages import stage_sentence
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.facts import NEAR
from fuelwiz.physics.curve import ONE_POINT_SLOPE
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.session import Pump
from fuelwiz.sizing.thresholds import LITTLE_BEFORE_RELIEF_PA

CARRIED_VOLTS = 0.7
GUESSED_OVER_PA = PSI_PA
OVERSIZE = 0.6


def pump_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know; nothing while no pump is known."""
    pump = subject.session.pump
    if pump is None or not subject.has_pump:
        return
    yield from _lean(subject)
    yield from _curve(subject)
    yield from _carried(subject, pump)
    yield from _kind(subject)
    yield from _weeps(subject, pump)
    yield from _never_ends(subject, pump)
    yield from _several(subject, pump)
    yield from _staged(subject, pump)
    yield from _oversize(subject)


def _lean(subject: Subject) -> Iterator[Remark]:
    row, rail = subject.pick, subject.figures.pressure.rail_Pa
    held = row.rail_at_goal_Pa
    if held is None or held >= rail - (row.rail_sag_Pa or 0.0) - 1.0:
        return
    falls = subject.numbers.figure("pressure", held, rail)
    wanted = subject.numbers.figure("pressure", rail, held)
    missing = subject.numbers.figure("pressure", rail - held, 0.0)
    yield Remark(
        "warning",
        "goal.power",
        f"At the goal rail pressure falls to {falls} from {wanted}: the mixture goes lean.",
        f"That is {missing} too little. Stay below full power until the pump keeps up.",
        elsewhere=True,
    )


def _curve(subject: Subject) -> Iterator[Remark]:
    if subject.one_point:
        yield Remark(
            "warning",
            "pump.curve",
            "One point of the pump's curve is known; the rest is a guess.",
            f"Each {_step(subject)} more costs {_step_costs(subject)} of its flow here: ask for the maker's table.",
        )
    elif subject.pick.extrapolated and subject.pick.capacity_m3_s is not None:
        flow = subject.numbers.figure("flow", subject.pick.capacity_m3_s)
        yield Remark(
            "warning",
            "pump.curve",
            f"{flow} is beyond the pump's table; the rest is a straight-line guess.",
            "Ask the maker for points beyond it, or have a shop flow-test the pump.",
        )


def _step(subject: Subject) -> str:
    return subject.numbers.limit("pressure", GUESSED_OVER_PA)


def _step_costs(subject: Subject) -> str:
    return subject.numbers.limit("percent", ONE_POINT_SLOPE * GUESSED_OVER_PA)


def _carried(subject: Subject, pump: Pump) -> Iterator[Remark]:
    volts = subject.pick.pump_volts_V
    if volts is None:
        return
    nearest = min((curve.voltage for curve in pump.curve), key=lambda sheet: abs(sheet - volts))
    away = abs(nearest - volts)
    if away <= CARRIED_VOLTS + NEAR:
        return
    yield Remark(
        "warning",
        "pump.curve",
        f"The pump's curve is for {subject.numbers.figure('volts', nearest)}, it gets"
        f" {subject.numbers.figure('volts', volts)}: its flow is estimated from that.",
        f"{subject.numbers.figure('volts', away, CARRIED_VOLTS)} is a long way: look for a curve closer to it.",
    )


def _kind(subject: Subject) -> Iterator[Remark]:
    """What either law gives where the kind of pump is not known, and what a volt does to it."""
    figures = subject.figures.pump
    if figures is None or figures.capacity_turbine_m3_s is None or figures.capacity_displacement_m3_s is None:
        return
    edges = (subject.figures.demand.volume_flow_m3_s, subject.figures.demand.target_flow_m3_s)
    turbine = subject.numbers.figure("flow", figures.capacity_turbine_m3_s, *edges)
    displacement = subject.numbers.figure("flow", figures.capacity_displacement_m3_s, *edges)
    volt = volt_moves(subject)
    if turbine == displacement:
        what = "The kind of pump is not known; at these volts either kind gives the same."
    else:
        what = (
            f"The kind of pump is not known: a turbine would give {turbine}, a displacement pump (gerotor, roller,"
            f" screw) {displacement}; the lower counts."
        )
    yield Remark(
        "note",
        "pump.kind",
        what,
        f"{f'{capitalized(volt)}. ' if volt else ''}A second curve at another voltage settles it.",
    )


def _weeps(subject: Subject, pump: Pump) -> Iterator[Remark]:
    rise = subject.pick.pump_rise_Pa
    if pump.relief is None or rise is None or not 0.0 <= pump.relief - rise < LITTLE_BEFORE_RELIEF_PA:
        return
    left = subject.numbers.figure("pressure", pump.relief - rise, LITTLE_BEFORE_RELIEF_PA)
    yield Remark(
        "warning",
        "pump.relief",
        f"At the goal the pump works only {left} below its relief pressure, and such valves weep early.",
        f"Keep {subject.numbers.limit('pressure', LITTLE_BEFORE_RELIEF_PA)} away from it: a pump with a higher"
        " relief pressure, or less to push against.",
    )


def _never_ends(subject: Subject, pump: Pump) -> Iterator[Remark]:
    if subject.figures.pump is not None and subject.figures.pump.dead_head_Pa is None and pump.relief is None:
        yield Remark(
            "warning",
            "pump.relief",
            "The pump's curve never falls to zero flow, and no relief pressure is given.",
            "Its pressure with the line blocked (dead head) is unknown: look for its relief pressure on the data sheet,"
            " and never test it by blocking the line.",
        )


def _several(subject: Subject, pump: Pump) -> Iterator[Remark]:
    if pump.count == 1:
        return
    if pump.arrangement == "series":
        yield Remark(
            "warning",
            "pump.arrangement",
            f"{pump.count} pumps in series: one that stops blocks the others.",
            "Fit a cut-off on low fuel pressure, and give each pump a circuit of its own.",
        )
        return
    case = subject.case("one pump dead")
    check = "Fit a check valve for each pump, so that fuel cannot flow back through one that stopped."
    if case is None or case.margin is None:
        yield Remark("note", "pump.count", f"{pump.count} pumps side by side, in parallel.", check)
    elif case.margin < 0.0:
        short = subject.numbers.figure("percent", -case.margin, 0.0)
        yield Remark(
            "warning",
            "pump.count",
            f"If one pump stops, fuel is {short} short at the goal.",
            f"{_cut_off(subject)} {check}",
            elsewhere=True,
        )
    else:
        left = subject.numbers.figure("percent", case.margin, 0.0)
        yield Remark(
            "note", "pump.count", f"If one pump stops, the rest still feed the goal, {left} to spare.", check
        )


def _cut_off(subject: Subject) -> str:
    """What guards the engine where one pump of several stops."""
    boosted = subject.session.pressure.boost > 0.0
    drops = "drops boost or spark" if boosted else "cuts the spark"
    return f"Fit a cut-off that {drops} when fuel pressure falls."


def _staged(subject: Subject, pump: Pump) -> Iterator[Remark]:
    figures = subject.figures.pump
    if figures is None or not figures.stages or pump.running_at_idle >= pump.count:
        return
    power = subject.numbers.figure("power", figures.stages[-1].power_W)
    switched = " ".join(stage_sentence(subject, stage) for stage in figures.stages)
    yield Remark(
        "note",
        "pump.running_at_idle",
        f"{pump.running_at_idle} of {pump.count} pumps run at idle; all must run from {power} up.",
        f"{switched} Test that they come in: the mixture leans out if they don't.",
    )


def _oversize(subject: Subject) -> Iterator[Remark]:
    margin, reserve = subject.pick.margin, subject.session.goal.reserve
    if margin is None or margin < reserve + OVERSIZE:
        return
    yield Remark(
        "note",
        "pump",
        f"The {subject.pump_word} can flow {subject.numbers.figure('percent', margin)} more than the goal needs.",
        "If nothing more is planned, less pump is enough and warms the fuel less.",
    )
