"""Wire and fuse: what is given, and every wire that would do."""

from __future__ import annotations

from collections.abc import Iterator

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.findings.electrics import current_known_at_pa
from fuelwiz.advice.numbers import guarded, written
from fuelwiz.advice.result import Words
from fuelwiz.advice.sections.unknown import not_known, not_known_sentence
from fuelwiz.advice.subject import Subject
from fuelwiz.advice.wire_words import smallest_wire, wire_choices, wire_label
from fuelwiz.physics.wire import MOST_WIRE_LOSS_V
from fuelwiz.sizing.part_figures import WireChoice, WiringFigures

FUSE_FOLLOWS = "The fuse follows from the current that the pump draws"
LOSS_DECIMALS = 2
THIN = " Thin: it carries its fuse, but loses more."
NO_WIRE_WORKS = "None of these works: add circuits or shorten the run."


def wire_and_fuse(subject: Subject, _words: Words) -> Iterator[Block]:
    """What the circuit draws and its wire is good for, then every wire."""
    yield Heading("Wire and fuse")
    wiring = subject.figures.wiring
    if wiring is None:
        yield Paragraph(not_known_sentence(subject, "wiring", "line", "pump"))
        return
    yield Pairs(tuple(_given(subject, wiring)))
    yield from wires_that_would_do(subject)


def wires_that_would_do(subject: Subject) -> Iterator[Block]:
    """Every wire with what it loses and carries, and the thinnest that works; before that, what it waits for."""
    wiring = subject.figures.wiring
    if wiring is None:
        yield Paragraph(f"{FUSE_FOLLOWS}. {not_known_sentence(subject, 'wiring', 'line', 'pump')}")
        return
    if wiring.current_A is None:
        yield Paragraph(f"{FUSE_FOLLOWS}, which is not given yet.")
        yield Paragraph(
            "Wire loss is not counted. Enter the current that the pump draws, or the volts measured at the pump;"
            " until then the result is optimistic."
        )
        return
    choices = wire_choices(subject)
    if not choices or wiring.fuse_A is None:
        return
    numbers = subject.numbers
    columns = (
        Column("Wire", whole=True),
        Column("Loss", numbers.unit("volts"), figures=True),
        Column("Good for", numbers.unit("amps"), figures=True),
        Column("Fuse", numbers.unit("amps"), figures=True, rank=1),
        Column("Works", whole=True),
    )
    own = next((at for at, choice in enumerate(choices) if choice.given), None)
    yield Table(columns, tuple(_row(subject, choice, wiring.fuse_A) for choice in choices), own)
    thin = any(choice.carries_fuse and not choice.does for choice in choices)
    yield Paragraph(f"{_what_to_take(subject, wiring, wiring.current_A)}{THIN if thin else ''}")


def _what_to_take(subject: Subject, wiring: WiringFigures, current_a: float) -> str:
    numbers, least = subject.numbers, smallest_wire(subject, wiring)
    drawn, most = numbers.figure("amps", current_a), numbers.limit("volts", MOST_WIRE_LOSS_V)
    if least is None:
        return f"{drawn} at full power; the wire may lose {most}. {NO_WIRE_WORKS}"
    return (
        f"{drawn} at full power. {least} is the thinnest that loses no more than {most} and carries its fuse."
    )


def _row(subject: Subject, choice: WireChoice, fuse_a: float) -> tuple[Cell, ...]:
    return row(
        f"{wire_label(subject, choice.area_m2)}{'*' if choice.given else ''}",
        written(guarded(choice.loss_V, LOSS_DECIMALS, (MOST_WIRE_LOSS_V,))),
        subject.numbers.number("amps", choice.ampacity_A, fuse_a),
        f"{fuse_a:g}",
        _works(choice),
    )


def _works(choice: WireChoice) -> Cell:
    """What may stand is told apart from what does not: a wire whose fuse does not guard it."""
    if choice.does:
        return Cell("yes", "yes")
    return Cell("thin", "brisk") if choice.carries_fuse else Cell("no", "no")


def _given(subject: Subject, wiring: WiringFigures) -> Iterator[tuple[str, str]]:
    numbers = subject.numbers
    loss = numbers.figure("volts", wiring.loss_V)
    yield "at the pump", f"{numbers.figure('volts', wiring.pump_volts_V)}, {loss} below the supply"
    if wiring.current_A is None or wiring.peak_current_A is None:
        yield "current", not_known(subject, "current")
        return
    known_at = current_known_at_pa(subject)
    also = f"{numbers.figure('amps', wiring.peak_current_A)} with the line blocked"
    if known_at is not None:
        also = f"as at {numbers.figure('pressure', known_at)}: no other point is given"
    yield "each circuit", f"{numbers.figure('amps', wiring.current_A)} at full power, {also}"
    pump = subject.session.pump
    if wiring.total_A is not None and pump is not None and pump.count > 1:
        yield "all pumps", f"{numbers.figure('amps', wiring.total_A)} together"
    yield "fuse", "none is large enough" if wiring.fuse_A is None else numbers.limit("amps", wiring.fuse_A)
    if wiring.ampacity_A is not None:
        fuse = [wiring.fuse_A] if wiring.fuse_A else []
        yield "wire good for", numbers.figure("amps", wiring.ampacity_A, *fuse)
    if subject.session.wiring is not None and subject.session.wiring.length is None:
        yield "smallest wire", "not known yet (needs the length of the wire)"
