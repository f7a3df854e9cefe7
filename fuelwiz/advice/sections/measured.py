"""Measured: what bench and gauge showed, beside what was predicted; and what a test of this build should show."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Item, Listing, Paragraph, Table, row
from fuelwiz.advice.proposal_words import proposal_text
from fuelwiz.advice.sections.logged import logged_in_brief
from fuelwiz.advice.sections.rests_on import rests_on, taken_items
from fuelwiz.advice.sections.return_line import no_return_at_the_tank
from fuelwiz.measured.thresholds import CANS, WORTH_MOST_WITHIN_V
from fuelwiz.units import from_si

if TYPE_CHECKING:
    from fuelwiz.advice.result import Words
    from fuelwiz.advice.subject import Subject
    from fuelwiz.measured.figures import (
        BenchFigures,
        BenchTest,
        Expected,
        GaugeCause,
        GaugeDifference,
        GaugeItem,
        Measured,
    )
    from fuelwiz.session import Bench

SAFELY = (
    "Do it outdoors and away from flame, sparks and phones: a fuel-rated metal can, never an open one, grounded and"
    " bonded to the car, an extinguisher and a second person at hand. Relieve the pressure before a line is opened. Put"
    " a charger on the battery before any fuel is in the open, so that the volts are real. Never pinch a hose: set the"
    " pressure with a hand pump on the regulator's hose."
)
ITEMS: dict[GaugeItem, str] = {
    "hose off": "rail, hose off",
    "idle": "rail at idle",
    "full power": "rail at full power",
    "volts": "volts at the pump",
    "current": "amps of one pump",
}
CAUSES: dict[GaugeCause, str] = {
    "as expected": "as expected",
    "set low": "the regulator is set low",
    "set high": "the regulator is set high, or the return is too small",
    "return too small": "the return is too small: the rail creeps up at idle",
    "does not follow": "the regulator does not follow the manifold: look at its hose",
    "other vacuum": "more vacuum than was typed, or a regulator that sticks",
    "volts low": "fewer volts at the pump than expected: look at its wires first",
    "pump short": "the pump does not keep up, or its filter is dirty",
    "line or pump short": "the line loses more than expected, or the pump does not keep up",
    "other boost": "more boost than was typed",
    "wires lose more": "the wires and plugs lose more than expected",
    "wires lose less": "the wires and plugs lose less than expected",
    "draws more": "the pump draws more than its sheet says: a tight pump, or a higher pressure",
    "draws less": "the pump draws less than its sheet says: a worn pump, or a lower pressure",
}
AT_THE_RETURN = " at the return,"
SAFELY_IN_BRIEF = (
    f"Outdoors, no flame, no phone; metal can{AT_THE_RETURN} bonded to the car; extinguisher, second person. Relieve the"
    " pressure first; charger on before fuel is out. Never pinch a hose: hand pump on the regulator."
)
SAME_PRESSURE_PA = 1.0
"""Pressures that differ by less are one: both come from the same figures."""
AT = {"rail": "at the rail", "pump": "at the pump"}


def measured(subject: Subject, _words: Words) -> Iterator[Block]:
    """What was measured, when, and what it proposes; nothing where nothing was and nothing can be expected."""
    found = subject.measured
    if found is None:
        return
    if found.bench is not None:
        yield from _bench(subject, found.bench)
    if found.gauge:
        yield from _gauge(subject, found.gauge)
    if was_measured(found):
        yield Heading("Measured, and not")
        yield Listing((*taken_items(subject, found), Item(rests_on(subject, found))))
    if found.proposals:
        yield Heading("Proposed by what was measured")
        yield Listing(tuple(Item(proposal_text(subject, proposal)) for proposal in found.proposals))
    if found.expected:
        yield from _expected(subject, found.expected)


def was_measured(found: Measured) -> bool:
    """Whether anything was measured at all."""
    return found.bench is not None or bool(found.gauge) or found.log is not None or bool(found.taken)


def measured_in_brief(subject: Subject, _words: Words) -> Iterator[Block]:
    """What was measured and when, in a few lines; nothing where nothing was."""
    found = subject.measured
    if found is None or not was_measured(found):
        return
    yield Heading("Measured")
    items = []
    if found.bench is not None:
        days = sorted(test.date for test in subject.session.bench if test.date)
        when = f" Tested: {', '.join(dict.fromkeys(days))}." if days else ""
        items.append(Item(f"{bench_verdict(subject, found.bench)}{when}"))
    items += [difference_text(subject, difference) for difference in found.gauge]
    items += logged_in_brief(subject)
    items += [*taken_items(subject, found), Item(rests_on(subject, found))]
    yield Listing(tuple(items))


def difference_text(subject: Subject, difference: GaugeDifference) -> Item:
    """A reading beside what should be there, and the likely cause where they differ."""
    item, cause = difference.item, difference.cause
    read = reading_text(subject, item, difference.read)
    day = subject.session.gauge[difference.reading].date
    start = f"{ITEMS[item]}{f' on {day}' if day else ''}: {read}"
    if difference.predicted is None or cause is None:
        return Item(f"{start}.")
    if cause == "as expected":
        return Item(f"{start}, as expected.", "yes")
    wanted = reading_text(subject, item, difference.predicted)
    return Item(f"{start} where {wanted} is expected: {CAUSES[cause]}.", "warning")


def _bench(subject: Subject, bench: BenchFigures) -> Iterator[Block]:
    numbers = subject.numbers
    yield Heading("Bench tests")
    yield Paragraph(bench_verdict(subject, bench), strong=True)
    columns = (
        Column("Day", whole=True),
        Column("Pressure", numbers.unit("pressure"), figures=True),
        Column("Read", rank=2),
        Column("Pumps", figures=True, rank=3),
        Column("Volts", "V", figures=True, rank=1),
        Column("Flow", numbers.unit("flow"), figures=True),
        Column("By sheet", numbers.unit("flow"), figures=True),
        Column("Share", "%", figures=True),
    )
    pairs = zip(subject.session.bench, bench.tests, strict=True)
    yield Table(columns, tuple(_bench_row(subject, test, found) for test, found in pairs))
    notes = odd_or_far(subject, bench)
    if notes:
        yield Listing(tuple(Item(note, "warning") for note in notes))


def odd_or_far(subject: Subject, bench: BenchFigures) -> list[str]:
    """What is to be said of single tests that do not count, or count less."""
    pairs = zip(subject.session.bench, bench.tests, strict=True)
    return [note for test, found in pairs if (note := _bench_note(subject, test, found))]


def bench_verdict(subject: Subject, bench: BenchFigures) -> str:
    """What the tests come to, in a sentence."""
    if bench.factor is None or bench.tolerance is None:
        return "The bench tests do not agree with each other, or cannot be compared: no figure is taken from them."
    share, within = (
        subject.numbers.figure("percent", bench.factor),
        subject.numbers.figure("percent", bench.tolerance),
    )
    return f"On the bench the pump sends {share} of what the build counts on, give or take {within}."


def _bench_row(subject: Subject, test: Bench, found: BenchTest) -> tuple[Cell, ...]:
    numbers = subject.numbers
    return row(
        test.date or "–",
        numbers.number("pressure", test.pressure),
        AT[test.at],
        str(test.pumps),
        numbers.number("volts", test.volts),
        numbers.number("flow", found.flow_m3_s),
        None if found.model_m3_s is None else numbers.number("flow", found.model_m3_s),
        None if found.factor is None else numbers.number("percent", found.factor),
    )


def _bench_note(subject: Subject, test: Bench, found: BenchTest) -> str:
    """What is to be said of one test: that it is odd, or was done at volts that the car does not have."""
    name = f"the test of {test.date}" if test.date else "one test"
    if found.odd:
        pressure = subject.numbers.figure("pressure", test.pressure)
        at_volts = subject.numbers.figure("volts", test.volts)
        return f"Odd: {name} at {pressure} and {at_volts} lies too far from the others, so it is left out. Do it again."
    volts = subject.pick.pump_volts_V
    if volts is not None and abs(test.volts - volts) > WORTH_MOST_WITHIN_V:
        on_the_car = subject.numbers.figure("volts", volts)
        return (
            f"{name[:1].upper()}{name[1:]} was done far from the {on_the_car} of the car: it is worth less."
        )
    return ""


def _gauge(subject: Subject, differences: tuple[GaugeDifference, ...]) -> Iterator[Block]:
    yield Heading("Gauge readings")
    columns = (
        Column("Day", whole=True, rank=1),
        Column("Reading", whole=True),
        Column("Read", figures=True),
        Column("Expected", figures=True),
        Column("Likely cause"),
    )
    yield Table(columns, tuple(_gauge_row(subject, difference) for difference in differences))


def _gauge_row(subject: Subject, difference: GaugeDifference) -> tuple[Cell, ...]:
    cause = difference.cause
    said = None if cause is None else Cell(CAUSES[cause], "yes" if cause == "as expected" else "warning")
    return row(
        subject.session.gauge[difference.reading].date or "–",
        ITEMS[difference.item],
        reading_text(subject, difference.item, difference.read),
        None
        if difference.predicted is None
        else reading_text(subject, difference.item, difference.predicted),
        said,
    )


def reading_text(subject: Subject, item: GaugeItem, value: float) -> str:
    """A reading in the unit of what was read."""
    match item:
        case "volts":
            return subject.numbers.figure("volts", value)
        case "current":
            return subject.numbers.figure("amps", value)
        case _:
            return subject.numbers.figure("pressure", value)


def _expected(subject: Subject, tests: tuple[Expected, ...]) -> Iterator[Block]:
    yield Heading("What a bench test should show")
    yield Listing(tuple(Item(expected_text(subject, test)) for test in tests))
    yield Paragraph(SAFELY)


def expected_text(subject: Subject, test: Expected) -> str:
    """One test as it should come out: so much fuel in so many seconds."""
    pumps, rail, volts, can = _of_test(subject, test)
    pressure = subject.session.pressure
    if pressure.regulator == "none":
        return f"{pumps}, {rail} at the rail, {volts} at the pump: {can}."
    by_hand = test.rail_Pa > pressure.base + SAME_PRESSURE_PA
    how = ", by hand pump" if by_hand else ", its hose off" if pressure.reference == "manifold" else ""
    return f"{pumps}, the regulator at {rail}{how}, {volts} at the pump: {can} at the return."


def how_to_test(subject: Subject) -> str:
    """How a test is done safely, in a few lines, and where the fuel is caught."""
    has_return = subject.session.pressure.regulator != "none" and not no_return_at_the_tank(subject)
    return SAFELY_IN_BRIEF if has_return else SAFELY_IN_BRIEF.replace(AT_THE_RETURN, "")


def expected_in_brief(subject: Subject, test: Expected) -> str:
    """The same in 41 columns where there is one pump alone, in 56 where there are more."""
    pumps, rail, volts, can = _of_test(subject, test)
    pump = subject.session.pump
    which = f", {pumps}" if pump is not None and pump.count > 1 else ""
    return f"expect {can} at {rail}, {volts}{which}"


def _of_test(subject: Subject, test: Expected) -> tuple[str, str, str, str]:
    """Which pumps run, at which pressure and volts, and how much that gives in how long."""
    numbers = subject.numbers
    unit = CANS[subject.session.show_units][0][1]
    can = f"{from_si(test.volume_m3, unit):g} {'L' if unit == 'l' else unit}"
    pumps = "one pump" if test.pumps == 1 else f"all {test.pumps} pumps"
    rail, volts = numbers.figure("pressure", test.rail_Pa), numbers.figure("volts", test.volts_V)
    return pumps, rail, volts, f"{can} in {numbers.figure('seconds', test.time_s)}"
