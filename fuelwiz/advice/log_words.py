"""A logged run in words: what it shows of the pumps, the regulator, the wires and the fuel use, never more than that."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, assert_never

from fuelwiz.advice.blocks import (
    Block,
    Cell,
    Column,
    Heading,
    Item,
    Listing,
    Pairs,
    Paragraph,
    Sheet,
    Table,
    row,
)
from fuelwiz.advice.proposal_words import proposal_text
from fuelwiz.printable import clean

if TYPE_CHECKING:
    from fuelwiz.advice.subject import Subject
    from fuelwiz.measured.figures import Bin, LogFigures, PumpKnown, Shown, Signature

SIGNATURES: dict[Signature, str] = {
    "falls with flow": (
        "the pressure across the injectors falls as the engine takes more, at the same boost: the pump or its volts"
        " are at their limit. The mixture goes lean there: less boost until it is cured."
    ),
    "falls with its square": (
        "the rail falls with the square of the flow behind the regulator at the tank: hose, fittings or filter lose"
        " more than the build has them."
    ),
    "high at idle": (
        "with little fuel taken the rail stands higher than the regulator is set: the return or the regulator is too"
        " small for what the pump sends round."
    ),
    "falls later": (
        "the pressure falls from pull to pull: look for heat, fuel that boils at the pump's inlet, or a tank that"
        " runs low."
    ),
    "set low": "the rail is short from the first sample on: the regulator is set lower than the build has it.",
    "slope": "the rail rises less than the manifold: the regulator's hose leaks or is pinched.",
}
NO_MORE = (
    "No more is known from this log: while the pressure holds, the pump could do this and might do more."
)


def log_sheet(subject: Subject, log: LogFigures) -> Sheet:
    """The sheet of a logged run."""
    return Sheet(f"Log of a run: {subject.session.name or 'build'}", tuple(_blocks(subject, log)))


def _blocks(subject: Subject, log: LogFigures) -> Iterator[Block]:
    yield Paragraph(pump_sentence(subject, log.pump), strong=True)
    yield signature_list(log)
    if log.bins:
        yield Heading("By engine speed")
        yield Paragraph(speed_sentence(subject, log))
        yield speed_table(subject, log)
    yield Heading("Found")
    yield Pairs(tuple(found_in_log(subject, log)))
    if log.proposals:
        yield Heading("Proposed by what was measured")
        yield Listing(tuple(Item(proposal_text(subject, proposal)) for proposal in log.proposals))
        yield Paragraph("Take one at a time, and look at what it changes before the next.")
    yield from _how_it_was_read(subject, log)


def pump_sentence(subject: Subject, pump: PumpKnown) -> str:
    """What the log tells of the pumps, in a sentence."""
    if pump.factor is None or pump.tolerance is None:
        return "This log says nothing of the pump: the build has no pump or no feed line to hold it against."
    share = subject.numbers.figure("percent", pump.factor)
    match pump.known:
        case "factor":
            within = subject.numbers.figure("percent", pump.tolerance)
            return f"The pump sends {share} of what the build counts on, give or take {within}: its pressure sagged."
        case "at least":
            return f"The pump sends at least {share} of what the build counts on. {NO_MORE}"
        case "nothing":
            return "This log says nothing of the pump."
        case _:
            assert_never(pump.known)


def signature_text(shown: Shown) -> str:
    """A signature and when it is first seen, in a sentence."""
    sentence = SIGNATURES[shown.name]
    return f"From {shown.first_s:.1f} s: {sentence}"


def signature_list(log: LogFigures) -> Block:
    """What points at a part that is not as it should be; that nothing does, where so."""
    if not log.signatures:
        return Paragraph("Nothing in it points at a part that is not as it should be.")
    return Listing(tuple(marked_signature(shown) for shown in log.signatures))


def marked_signature(shown: Shown) -> Item:
    """A signature as an entry of a list: a pump at its limit is a stop."""
    return Item(signature_text(shown), "stop" if shown.name == "falls with flow" else "warning")


def speed_sentence(subject: Subject, log: LogFigures) -> str:
    """What pressure and flow by engine speed show, in two sentences."""
    return f"{pressure_sentence(subject, log)} {flow_sentence(subject, log)}".strip()


def pressure_sentence(subject: Subject, log: LogFigures) -> str:
    """What the pressure across the injectors does; nothing without steps of engine speed."""
    if log.lowest is None:
        return ""
    low, numbers = log.bins[log.lowest], subject.numbers
    found, wanted = numbers.number("pressure", low.injector_Pa), numbers.figure("pressure", low.target_Pa)
    sags = next((one for one in log.bins if one.sags), None)
    if sags is None:
        return f"Pressure does not sag with flow: lowest {found} of {wanted} {_at(low, log.lowest)}."
    return f"Pressure sags {_from(sags, log.bins.index(sags))} on: lowest {found} of {wanted} {_at(low, log.lowest)}."


def flow_sentence(subject: Subject, log: LogFigures) -> str:
    """Where the pumps have least to spare by their sheet; nothing where their flow is not known."""
    if log.tightest is None:
        return ""
    tight, numbers = log.bins[log.tightest], subject.numbers
    assert tight.capacity_m3_s is not None
    taken, could = numbers.number("flow", tight.flow_m3_s), numbers.figure("flow", tight.capacity_m3_s)
    return f"Tightest {_at(tight, log.tightest)}: {taken} taken, the pump of the build could send {could}."


def _from(one: Bin, number: int) -> str:
    return f"from {_called(one, number)}"


def _at(one: Bin, number: int) -> str:
    """Where a bin is, behind a word such as "lowest"."""
    return f"{'in' if one.rpm_low is None else 'at'} {_called(one, number)}"


def _called(one: Bin, number: int) -> str:
    """A bin in a sentence: the engine speed that it begins at, or which pull it is where no speed was logged."""
    return f"pull {number + 1}" if one.rpm_low is None else f"{one.rpm_low:.0f} rpm"


def speed_table(subject: Subject, log: LogFigures) -> Table:
    """Pressure and flow by engine speed; the step at which the pumps have least to spare stands out."""
    numbers = subject.numbers
    columns = (
        Column("Engine speed", "rpm", whole=True, short="rpm"),
        Column("Boost", numbers.unit("pressure"), figures=True, rank=2),
        Column("Wanted", numbers.unit("pressure"), figures=True),
        Column("Across injectors", numbers.unit("pressure"), figures=True, short="Across"),
        Column("Flow", numbers.unit("flow"), figures=True),
        Column("Pump could", numbers.unit("flow"), figures=True, rank=1),
        Column("Sags"),
    )
    return Table(
        columns, tuple(_bin_row(subject, one, number) for number, one in enumerate(log.bins)), log.tightest
    )


def speed_of(one: Bin, number: int) -> float:
    """The middle of a step of engine speed; the number of a pull where none was logged."""
    return float(number) if one.rpm_low is None or one.rpm_high is None else (one.rpm_low + one.rpm_high) / 2


def bin_texts(subject: Subject, one: Bin, number: int) -> str:
    """One step of engine speed in words, with the figures of its row."""
    speed, _, wanted, across, taken, could, sags = _bin_row(subject, one, number)
    unit = " rpm" if one.rpm_low is not None else ""
    pump = f", pump could {could.text}" if one.capacity_m3_s is not None else ""
    return f"{speed.text}{unit} {across.text} of {wanted.text}, takes {taken.text}{pump}, {sags.text}"


def _bin_row(subject: Subject, one: Bin, number: int) -> tuple[Cell, ...]:
    numbers = subject.numbers
    return row(
        _called(one, number)
        if one.rpm_low is None or one.rpm_high is None
        else f"{one.rpm_low:.0f} to {one.rpm_high:.0f}",
        numbers.number("pressure", one.boost_Pa),
        numbers.number("pressure", one.target_Pa),
        numbers.number("pressure", one.injector_Pa),
        numbers.number("flow", one.flow_m3_s),
        None if one.capacity_m3_s is None else numbers.number("flow", one.capacity_m3_s),
        Cell("sags", "no") if one.sags else Cell("holds", "yes"),
    )


def found_in_log(subject: Subject, log: LogFigures) -> Iterator[tuple[str, str]]:
    """What is told besides: a name and what was found, each."""
    slope = log.regulator_slope
    yield (
        "regulator",
        "not known" if slope is None else f"the rail rises {slope:.2f} for each 1 of the manifold",
    )
    bsfc = log.bsfc_kg_J
    whose = "by the flow column" if log.metered else "injectors' rating and fuel use together"
    yield "fuel use", "not known" if bsfc is None else f"{subject.numbers.figure('bsfc', bsfc)}, {whose}"
    ohm = log.wiring_ohm
    yield (
        "wires",
        "not known" if ohm is None else f"{1000 * ohm:.0f} milliohm in the loop, plugs and relay included",
    )


def _how_it_was_read(subject: Subject, log: LogFigures) -> Iterator[Block]:
    yield Heading("How it was read")
    numbers = subject.numbers
    skipped = f", {log.skipped} could not be read" if log.skipped else ""
    rail = numbers.figure("pressure", log.zero.rail_Pa)
    manifold = numbers.figure("pressure", log.zero.manifold_Pa)
    zeroed = log.zero.rail_Pa != 0 or log.zero.manifold_Pa != 0
    zero = (
        f"taken off with the engine stopped: rail {rail}, manifold {manifold}"
        if zeroed
        else "no samples with it off"
    )
    yield Pairs(
        (
            ("rows", f"{log.rows}{skipped}"),
            ("full load", f"{log.samples} samples in {pulls_in_words(log)}"),
            ("sensors", zero),
            *((one.key.replace("_", " "), _column(one.head, one.unit, one.guessed)) for one in log.columns),
        )
    )


def pulls_in_words(log: LogFigures) -> str:
    """How many pulls there are in it."""
    count = len(log.pulls)
    return "1 pull" if count == 1 else f"{count} pulls"


def _column(head: str, unit: str, guessed: bool) -> str:
    said = clean(head) if not unit or unit in head else f"{clean(head)}, {clean(unit)}"
    return f"{said} (guessed from its head)" if guessed else said
