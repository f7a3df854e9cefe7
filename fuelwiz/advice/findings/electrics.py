"""What is worth a look in the wiring: volts at the pump, wire and fuse."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.remark import Remark
from fuelwiz.advice.subject import Subject
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.wire import MOST_WIRE_LOSS_V


def electric_remarks(build: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know; nothing while no pump is known."""
    if not build.has_pump:
        return
    yield from _volts(build)
    yield from _above_supply(build)
    yield from _current_unknown(build)
    yield from _wire(build)
    yield from _fuse(build)


def _volts(build: Subject) -> Iterator[Remark]:
    volts = build.pick.pump_volts_V
    if build.volts_assumed:
        yield Remark(
            "note",
            "pump.volts",
            "13.0\u00a0V at the pump is assumed.",
            "Measure it at the pump with the engine at full load: a volt moves its flow by a tenth or so.",
        )
    elif volts is not None and volts < ASSUMED_VOLTS:
        told = build.numbers.figure("volts", volts, ASSUMED_VOLTS)
        yield Remark(
            "warning",
            "pump.volts",
            f"The pump gets {told}; under 13.0\u00a0V it slows and gives less.",
            "Heavier wire, a relay near the pump and clean grounds come before a bigger pump.",
        )


def _above_supply(build: Subject) -> Iterator[Remark]:
    pump, wiring = build.session.pump, build.session.wiring
    if pump is None or wiring is None or pump.volts is None or pump.volts <= wiring.supply:
        return
    given = build.numbers.figure("volts", pump.volts, wiring.supply)
    supply = build.numbers.figure("volts", wiring.supply, pump.volts)
    yield Remark(
        "warning",
        "pump.volts",
        f"{given} at the pump is more than the supply of {supply}.",
        "One of the two is wrong: measure both with the engine at full load.",
    )


def _current_unknown(build: Subject) -> Iterator[Remark]:
    """With no current, a wire seems to lose nothing: too hopeful, and nothing else would show it."""
    pump, wiring = build.session.pump, build.session.wiring
    if pump is None or wiring is None or pump.current or pump.volts is not None:
        return
    yield Remark(
        "warning",
        "pump.current",
        "What the wire loses is not counted: the pump's current is not known.",
        "Type the current it draws, under more in Pump, or the volts measured at the pump. Until then the answer is"
        " too hopeful: a thin wire can take a volt.",
    )


def _wire(build: Subject) -> Iterator[Remark]:
    figures, wiring = build.figures.wiring, build.session.wiring
    if (
        figures is None
        or wiring is None
        or figures.loss_V <= MOST_WIRE_LOSS_V
        or figures.smallest_wire is None
    ):
        return
    lost = build.numbers.figure("volts", figures.loss_V, MOST_WIRE_LOSS_V)
    yield Remark(
        "note",
        "wiring.wire",
        f"The wiring loses {lost} between supply and pump.",
        f"{figures.smallest_wire} would lose no more than 0.5\u00a0V by itself, and carries the fuse.",
    )


def _fuse(build: Subject) -> Iterator[Remark]:
    figures = build.figures.wiring
    if figures is None or figures.fuse_A is None or figures.peak_current_A is None:
        return
    if "fuse" in build.figures.verdict.limits:
        return
    fuse = build.numbers.limit("amps", figures.fuse_A)
    peak = build.numbers.figure("amps", figures.peak_current_A, figures.fuse_A)
    yield Remark(
        "note",
        "wiring",
        f"Each circuit wants a relay and a {fuse} fuse: it may draw {peak}.",
        "Put the fuse near the battery.",
    )
