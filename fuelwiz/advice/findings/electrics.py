"""What is worth a look in the wiring: volts at the pump, wire and fuse."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.phrases import volt_moves
from fuelwiz.advice.result import Remark
from fuelwiz.advice.subject import Subject, capitalized
from fuelwiz.advice.wire_words import own_wire, smallest_wire
from fuelwiz.physics.circuit import ASSUMED_VOLTS
from fuelwiz.physics.wire import FUSE_HOLDS, FUSE_OPENS, FUSE_OVER_WORKING, MOST_WIRE_LOSS_V

if TYPE_CHECKING:
    from fuelwiz.session import Wiring
    from fuelwiz.sizing.part_figures import WireChoice, WiringFigures


def electric_remarks(subject: Subject) -> Iterator[Remark]:
    """Warnings first, then what is good to know; nothing while no pump is known."""
    if not subject.has_pump:
        return
    yield from _volts(subject)
    yield from _above_supply(subject)
    yield from _more_lost_than_there_is(subject)
    yield from _current_unknown(subject)
    yield from _one_current(subject)
    yield from _wire_unknown(subject)
    yield from _wire(subject)
    yield from _fuse(subject)


def _volts(subject: Subject) -> Iterator[Remark]:
    volts = subject.pick.pump_volts_V
    usual = subject.numbers.figure("volts", ASSUMED_VOLTS)
    if subject.volts_assumed:
        yield Remark(
            "note",
            "pump.volts",
            f"{usual} at the pump is assumed.",
            f"Measure at the pump under full load, on a dyno and away from fuel vapor{_worth(subject)}.",
        )
    elif volts is not None and volts < ASSUMED_VOLTS:
        low = subject.numbers.figure("volts", volts, ASSUMED_VOLTS)
        yield Remark(
            "warning",
            "pump.volts",
            f"The pump gets {low}; under {usual} it slows down and flows less.",
            f"{_a_volt(subject)}Heavier wire, a relay near the pump and clean grounds come before a bigger pump.",
        )


def _worth(subject: Subject) -> str:
    moves = volt_moves(subject)
    return f": {moves}" if moves else ""


def _a_volt(subject: Subject) -> str:
    moves = volt_moves(subject)
    return f"{capitalized(moves)}. " if moves else ""


def _more_lost_than_there_is(subject: Subject) -> Iterator[Remark]:
    """A wire that would lose all of the supply: no pump runs on that, so a figure must be wrong."""
    figures, wiring = subject.figures.wiring, subject.session.wiring
    if figures is None or wiring is None or figures.pump_volts_V > 0.0:
        return
    yield Remark(
        "warning",
        "wiring.length",
        f"By these figures the wire loses all {subject.numbers.figure('volts', wiring.supply)} of the supply.",
        "One of them must be wrong: check its size, its length and the pump's current.",
    )


def _above_supply(subject: Subject) -> Iterator[Remark]:
    pump, wiring = subject.session.pump, subject.session.wiring
    if pump is None or wiring is None or pump.volts is None or pump.volts <= wiring.supply:
        return
    given = subject.numbers.figure("volts", pump.volts, wiring.supply)
    supply = subject.numbers.figure("volts", wiring.supply, pump.volts)
    yield Remark(
        "warning",
        "pump.volts",
        f"{given} at the pump is more than the supply of {supply}.",
        "One of the two is wrong: measure both under full load, on a dyno and away from fuel vapor.",
    )


def _current_unknown(subject: Subject) -> Iterator[Remark]:
    """With no current, a wire seems to lose nothing: too hopeful, and nothing else would show it."""
    pump, wiring = subject.session.pump, subject.session.wiring
    if pump is None or wiring is None or pump.current or pump.volts is not None:
        return
    yield Remark(
        "warning",
        "pump.current",
        "Wire loss is not counted: the pump's current is not known.",
        "Give the current that the pump draws, or the voltage measured at it; until then the result is optimistic.",
    )


def _one_current(subject: Subject) -> Iterator[Remark]:
    """One point of current is taken at every pressure: too little for a pump that has to push harder."""
    known_at, needed = current_known_at_pa(subject), _pressure_across_one_pump_pa(subject)
    if known_at is None or subject.session.wiring is None or needed is None or needed <= known_at:
        return
    at, works_at = (
        subject.numbers.figure("pressure", known_at, needed),
        subject.numbers.figure("pressure", needed, known_at),
    )
    yield Remark(
        "warning",
        "pump.current",
        f"The pump's current is known at {at} alone and taken to stay so; at {works_at} it draws more.",
        "Give its current there too: volts, wire and fuse rest on it.",
    )


def current_known_at_pa(subject: Subject) -> float | None:
    """The pressure of the one point at which the pump's current is known; None where there are more, or none."""
    pump = subject.session.pump
    return pump.current[0][0] if pump is not None and len(pump.current) == 1 else None


def _pressure_across_one_pump_pa(subject: Subject) -> float | None:
    """What one pump has to make at the goal."""
    pump, rise = subject.session.pump, subject.pick.pump_rise_Pa
    if pump is None or rise is None:
        return None
    return rise / pump.count if pump.arrangement == "series" else rise


def _wire_unknown(subject: Subject) -> Iterator[Remark]:
    """Without a size or a length the wire seems to lose nothing."""
    pump, wiring = subject.session.pump, subject.session.wiring
    if pump is None or wiring is None or not pump.current or pump.volts is not None:
        return
    missing = [name for name, value in (("size", wiring.wire), ("length", wiring.length)) if value is None]
    if missing:
        yield Remark(
            "warning",
            "wiring.wire" if "size" in missing else "wiring.length",
            f"Wire loss is not counted: its {' and its '.join(missing)} {'is' if len(missing) == 1 else 'are'}"
            " not given.",
            "Give it, or the voltage measured at the pump; until then the result is optimistic.",
        )


def _wire(subject: Subject) -> Iterator[Remark]:
    figures, wiring, own = subject.figures.wiring, subject.session.wiring, own_wire(subject)
    least = smallest_wire(subject, figures)
    if figures is None or wiring is None or figures.loss_V <= MOST_WIRE_LOSS_V or least is None:
        return
    lost = subject.numbers.figure("volts", figures.loss_V, MOST_WIRE_LOSS_V)
    most = subject.numbers.limit("volts", MOST_WIRE_LOSS_V)
    do = f"{least} loses no more than {most} by itself, and carries the fuse."
    if own is not None and own.does:
        do = "The wire is thick enough: look at plugs, relay and fuse holder."
    yield Remark(
        "note",
        "wiring.wire",
        f"The wiring loses {lost} between supply and pump{_where_it_is_lost(subject, wiring, own)}.",
        do,
    )


def _where_it_is_lost(subject: Subject, wiring: Wiring, own: WireChoice | None) -> str:
    """How much is lost in the wire and how much in its connections; nothing where volts were measured."""
    if own is None or subject.session.pump is None or subject.session.pump.volts is not None:
        return ""
    in_wire = subject.numbers.figure("volts", own.loss_V, MOST_WIRE_LOSS_V)
    in_plugs = subject.numbers.figure("volts", wiring.connections, 0.0)
    assumed = " (assumed)" if "wiring.connections" in subject.assumed else ""
    return f": {in_wire} in the wire, {in_plugs} in its connections{assumed}"


def _fuse(subject: Subject) -> Iterator[Remark]:
    figures = subject.figures.wiring
    if figures is None or figures.fuse_A is None or figures.peak_current_A is None:
        return
    if "fuse" in subject.figures.verdict.limits:
        return
    fuse = subject.numbers.limit("amps", figures.fuse_A)
    yield Remark(
        "note",
        "wiring",
        f"Give each circuit a relay and a {fuse} fuse{_load(subject, figures)}."
        f" {_with_the_line_blocked(subject, figures.fuse_A, figures.peak_current_A)}.",
        f"The fuse is there for the wire, and goes close to the battery.{_all_pumps(subject)}",
    )


def _with_the_line_blocked(subject: Subject, fuse_a: float, peak_a: float) -> str:
    if current_known_at_pa(subject) is not None:
        return "With the line blocked it draws more than at full power; how much is not known"
    peak = subject.numbers.figure("amps", peak_a, FUSE_HOLDS * fuse_a, FUSE_OPENS * fuse_a)
    return f"With the line blocked it draws {peak} at most: {_blown(peak_a / fuse_a)}"


def _load(subject: Subject, figures: WiringFigures) -> str:
    """How much of its fuse full power takes."""
    if figures.current_A is None or figures.fuse_A is None:
        return ""
    share = subject.numbers.figure("percent", figures.current_A / figures.fuse_A, 1.0 / FUSE_OVER_WORKING)
    most = subject.numbers.limit("percent", 1.0 / FUSE_OVER_WORKING)
    return f", {share} loaded at full power ({most} at most)"


def _blown(of_its_rating: float) -> str:
    """What a blade fuse does at a share of its rating."""
    if of_its_rating <= FUSE_HOLDS:
        return "a blade fuse holds that"
    if of_its_rating < FUSE_OPENS:
        return "a blade fuse may hold that for minutes or hours"
    return "that blows a blade fuse within minutes, as it should"


def _all_pumps(subject: Subject) -> str:
    """What several pumps draw together: the part of it that one circuit does not show."""
    figures, pump = subject.figures.wiring, subject.session.pump
    if figures is None or figures.total_A is None or pump is None or pump.count == 1:
        return ""
    total = subject.numbers.figure("amps", figures.total_A)
    return f" All pumps together draw {total}: alternator, battery cable and grounds must carry that."
