"""What is worth a look at the pump: its curve, its volts, its spare, and what a second one means."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.session import Pump
from fuelwiz.units import to_si

CARRIED_VOLTS = 0.7
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
    told = build.numbers.figure("pressure", held, rail)
    wanted = build.numbers.figure("pressure", rail, held)
    missing = build.numbers.figure("pressure", rail - held, 0.0)
    yield Remark(
        "warning",
        "goal.power",
        f"At the goal the rail falls to {told} from {wanted}: the mixture goes lean.",
        f"That is {missing} too little. Hold the engine below full power until the pump keeps up.",
    )


def _curve(build: Subject) -> Iterator[Remark]:
    if build.one_point:
        yield Remark(
            "warning",
            "pump.curve",
            "The pump's sheet gives one figure; the rest of its curve is guessed.",
            f"{_slope(build)} more takes 1\u00a0% off its flow here: ask for the maker's table.",
        )
    elif build.pick.extrapolated and build.pick.capacity_m3_s is not None:
        flow = build.numbers.figure("flow", build.pick.capacity_m3_s)
        yield Remark(
            "warning",
            "pump.curve",
            f"{flow} lies off the end of the pump's table and is carried on straight.",
            "Ask the maker for points beyond it, or have the pump tested there.",
        )


def _slope(build: Subject) -> str:
    """The pressure that is taken to cost a hundredth of the flow: 1 psi, 0.07 bar."""
    return build.numbers.limit("pressure", to_si(1.0, "psi"))


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
        f"The sheet is for {build.numbers.figure('volts', nearest)}, the pump gets"
        f" {build.numbers.figure('volts', volts)}: its flow is carried over.",
        f"{build.numbers.figure('volts', away, CARRIED_VOLTS)} is far to carry a curve: look for one nearer.",
    )


def _never_ends(build: Subject, pump: Pump) -> Iterator[Remark]:
    if build.figures.pump is not None and build.figures.pump.dead_head_Pa is None and pump.relief is None:
        yield Remark(
            "warning",
            "pump.relief",
            "The pump's flow never ends on its sheet, and no relief is given.",
            "How hard it can push with the outlet shut is unknown: find its relief pressure.",
        )


def _several(build: Subject, pump: Pump) -> Iterator[Remark]:
    if pump.count == 1:
        return
    if pump.arrangement == "series":
        yield Remark(
            "warning",
            "pump.arrangement",
            f"{pump.count} pumps in series: one that stops holds up the others.",
            "Fit a pressure cut, and feed each pump's wire from a circuit of its own.",
        )
        return
    case = next((case for case in build.figures.stress if case.case == "one pump dead"), None)
    check = "Fit a check valve for each pump, so that a dead one does not leak the flow back."
    if case is None or case.margin is None:
        yield Remark("note", "pump.count", f"{pump.count} pumps side by side, in parallel.", check)
    elif case.margin < 0.0:
        less = build.numbers.figure("percent", -case.margin, 0.0)
        yield Remark(
            "warning",
            "pump.count",
            f"One pump dead gives {less} less than the engine burns.",
            f"Fit a pressure cut that stops boost or spark at once. {check}",
        )
    else:
        left = build.numbers.figure("percent", case.margin, 0.0)
        yield Remark("note", "pump.count", f"One pump dead still feeds the goal, {left} to spare.", check)


def _staged(build: Subject, pump: Pump) -> Iterator[Remark]:
    figures = build.figures.pump
    if figures is None or not figures.stages or pump.running_at_idle >= pump.count:
        return
    power = build.numbers.figure("power", figures.stages[-1].power_W)
    yield Remark(
        "note",
        "pump.running_at_idle",
        f"{pump.running_at_idle} of {pump.count} pumps run at idle: all must run from {power} up.",
        "Switch the rest in well before that, and test that they do: the mixture leans out if they don't.",
    )


def _oversize(build: Subject) -> Iterator[Remark]:
    margin, reserve = build.pick.margin, build.session.goal.reserve
    if margin is None or margin < reserve + OVERSIZE:
        return
    yield Remark(
        "note",
        "pump",
        f"The pump gives {build.numbers.figure('percent', margin)} more than the goal burns.",
        "A smaller one would do, and warm the fuel less, if nothing more is planned.",
    )
