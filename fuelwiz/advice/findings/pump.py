"""What is worth a look at the pump: its curve, its volts, its spare, and what a second one means."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.fuel import PSI_PA
from fuelwiz.physics.curve import ONE_POINT_SLOPE
from fuelwiz.session import Pump

CARRIED_VOLTS = 0.7
GUESSED_OVER_PA = PSI_PA
OVERSIZE = 0.6


def pump_remarks(build: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know; nothing while no pump is known."""
    pump = build.session.pump
    if pump is None or not build.has_pump:
        return
    yield from _lean(build)
    yield from _curve(build)
    yield from _carried(build, pump)
    yield from _never_ends(build, pump)
    yield from _several(build, pump)
    yield from _staged(build, pump)
    yield from _oversize(build)


def _lean(build: Subject) -> Iterator[Remark]:
    row, rail = build.pick, build.figures.pressure.rail_Pa
    held = row.rail_at_goal_Pa
    if held is None or held >= rail - (row.rail_sag_Pa or 0.0) - 1.0:
        return
    falls = build.numbers.figure("pressure", held, rail)
    wanted = build.numbers.figure("pressure", rail, held)
    missing = build.numbers.figure("pressure", rail - held, 0.0)
    yield Remark(
        "warning",
        "goal.power",
        f"At the goal rail pressure falls to {falls} from {wanted}: the mixture goes lean.",
        f"That is {missing} too little. Stay below full power until the pump keeps up.",
    )


def _curve(build: Subject) -> Iterator[Remark]:
    if build.one_point:
        yield Remark(
            "warning",
            "pump.curve",
            "One point of the pump's curve is known; the rest is a guess.",
            f"Each {_step(build)} more costs {_step_costs(build)} of its flow here: ask for the maker's table.",
        )
    elif build.pick.extrapolated and build.pick.capacity_m3_s is not None:
        flow = build.numbers.figure("flow", build.pick.capacity_m3_s)
        yield Remark(
            "warning",
            "pump.curve",
            f"{flow} is beyond the pump's table; the rest is a straight-line guess.",
            "Ask the maker for points beyond it, or have a shop flow-test the pump.",
        )


def _step(build: Subject) -> str:
    return build.numbers.limit("pressure", GUESSED_OVER_PA)


def _step_costs(build: Subject) -> str:
    return build.numbers.limit("percent", ONE_POINT_SLOPE * GUESSED_OVER_PA)


def _carried(build: Subject, pump: Pump) -> Iterator[Remark]:
    volts = build.pick.pump_volts_V
    if volts is None:
        return
    nearest = min((curve.voltage for curve in pump.curve), key=lambda sheet: abs(sheet - volts))
    away = abs(nearest - volts)
    if away <= CARRIED_VOLTS + 1e-9:
        return
    yield Remark(
        "warning",
        "pump.curve",
        f"The pump's curve is for {build.numbers.figure('volts', nearest)}, it gets"
        f" {build.numbers.figure('volts', volts)}: its flow is estimated from that.",
        f"{build.numbers.figure('volts', away, CARRIED_VOLTS)} is a long way: look for a curve closer to it.",
    )


def _never_ends(build: Subject, pump: Pump) -> Iterator[Remark]:
    if build.figures.pump is not None and build.figures.pump.dead_head_Pa is None and pump.relief is None:
        yield Remark(
            "warning",
            "pump.relief",
            "The pump's curve never falls to zero flow, and no relief pressure is given.",
            "Its pressure with the line blocked (dead head) is unknown: look for its relief pressure on the data sheet,"
            " and never test it by blocking the line.",
        )


def _several(build: Subject, pump: Pump) -> Iterator[Remark]:
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
    case = build.case("one pump dead")
    check = "Fit a check valve for each pump, so that fuel cannot flow back through one that stopped."
    if case is None or case.margin is None:
        yield Remark("note", "pump.count", f"{pump.count} pumps side by side, in parallel.", check)
    elif case.margin < 0.0:
        short = build.numbers.figure("percent", -case.margin, 0.0)
        yield Remark(
            "warning",
            "pump.count",
            f"If one pump stops, fuel is {short} short at the goal.",
            f"Fit a cut-off that stops boost or spark when fuel pressure falls. {check}",
        )
    else:
        left = build.numbers.figure("percent", case.margin, 0.0)
        yield Remark(
            "note", "pump.count", f"If one pump stops, the rest still feed the goal, {left} to spare.", check
        )


def _staged(build: Subject, pump: Pump) -> Iterator[Remark]:
    figures = build.figures.pump
    if figures is None or not figures.stages or pump.running_at_idle >= pump.count:
        return
    power = build.numbers.figure("power", figures.stages[-1].power_W)
    yield Remark(
        "note",
        "pump.running_at_idle",
        f"{pump.running_at_idle} of {pump.count} pumps run at idle; all must run from {power} up.",
        "Switch the rest in well before that, and test that they do: the mixture leans out if they don't.",
    )


def _oversize(build: Subject) -> Iterator[Remark]:
    margin, reserve = build.pick.margin, build.session.goal.reserve
    if margin is None or margin < reserve + OVERSIZE:
        return
    yield Remark(
        "note",
        "pump",
        f"The {build.pump_word} can flow {build.numbers.figure('percent', margin)} more than the goal needs.",
        "If nothing more is planned, less pump is enough and warms the fuel less.",
    )
