"""The table of sizes, and what each of them means."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fuelwiz.advice.blocks import Block, Cell, Column, Heading, Pairs, Paragraph, Table, row
from fuelwiz.advice.flow import flow_regime
from fuelwiz.advice.limits import short_why
from fuelwiz.advice.result import Explanation, Words
from fuelwiz.advice.row import (
    BORE,
    FEEDS,
    FULL_DELIVERY_VELOCITY,
    LOSS,
    SPARE,
    VELOCITY,
    size_name,
    speed_mark,
    works,
)
from fuelwiz.advice.sections.headings import SIZES
from fuelwiz.advice.subject import Subject, capitalized, size_label
from fuelwiz.printable import NO_BREAK
from fuelwiz.sizing.figures import Ladder, SizeFigures
from fuelwiz.sizing.vocabulary import BUILD_LIMITS
from fuelwiz.terms import VELOCITY_IS

Labeled = tuple[tuple[str, str], ...]


def sizes(subject: Subject, words: Words) -> Iterator[Block]:
    """Every candidate, then the pick and the sizes beside it in words."""
    yield Heading(SIZES)
    yield size_table(subject)
    yield Paragraph(" ".join((_legend(subject), *size_alone(subject, subject.figures.sizes))))
    explanations = dict(zip(subject.figures.sizes, words.explanations, strict=True))
    for size, name in _explained(subject):
        own = size is subject.pick
        larger = size.bore_m > subject.pick.bore_m
        rows = labeled(explanations[size], bigger=own or larger, smaller=own)
        yield Pairs(rows, name)


def size_columns(subject: Subject) -> tuple[Column, ...]:
    """The heads of the table of sizes."""
    unit = subject.numbers.unit
    return (
        Column("Size"),
        Column("Bore", unit("bore"), figures=True),
        Column("Velocity", unit("velocity"), figures=True),
        Column(VELOCITY_IS, whole=True),
        Column("Loss", unit("pressure"), figures=True),
        Column("Spare", unit("percent"), figures=True),
        Column("Feeds", unit("power"), figures=True),
        Column("Works", whole=True),
    )


def size_table(subject: Subject) -> Table:
    """One row for each candidate, a dash where a figure rests on what is not known."""
    figures = subject.figures
    own = next((at for at, size in enumerate(figures.sizes) if size.size == figures.chosen), None)
    return Table(size_columns(subject), tuple(_size_row(subject, size) for size in figures.sizes), own)


def _size_row(subject: Subject, size: SizeFigures) -> tuple[Cell, ...]:
    answer = works(size)
    return row(
        size_name(subject, size),
        BORE.number(subject, size),
        VELOCITY.number(subject, size),
        Cell(size.band, speed_mark(size)),
        LOSS.number(subject, size),
        SPARE.number(subject, size),
        FEEDS.number(subject, size),
        None if answer is None else Cell(answer, answer),
    )


def _legend(subject: Subject) -> str:
    bands = [subject.numbers.limit("velocity", edge) for edge in subject.session.bands.feed]
    legend = (
        f"Velocity up to {bands[0]} is easy, {bands[1]} good, {bands[2]} brisk, {bands[3]} fast,"
        " above that too fast."
    )
    return f"{legend} * is the size you chose." if subject.figures.chosen is not None else legend


def _wrong_elsewhere(subject: Subject) -> str | None:
    """What no size of line changes, in a few words: the gravest of it."""
    return next(
        (short_why(subject, limit) for limit in subject.figures.verdict.limits if limit in BUILD_LIMITS), None
    )


def size_alone(subject: Subject, rows: Sequence[SizeFigures]) -> Iterator[str]:
    """That a yes in the table is said of a size, where the build fails all the same."""
    wrong = _wrong_elsewhere(subject)
    if wrong is not None and any(size.works for size in rows):
        yield f"Works judges the size alone: {wrong}."


def but_not_the_build(subject: Subject, size: SizeFigures) -> Labeled:
    """The same of one size, on the line above what it means."""
    wrong = _wrong_elsewhere(subject)
    return (("but", f"not the build: {wrong}"),) if wrong is not None and size.works else ()


def _explained(subject: Subject) -> list[tuple[SizeFigures, str]]:
    """The pick, the size below it and the size above it, with the name that each goes under."""
    pick = subject.pick
    chosen = ", chosen" if pick.size == subject.figures.chosen else ""
    fit = ", the line to fit" if pick.size == subject.figures.line_to_fit and not pick.fixed else ""
    explained = [(pick, f"{capitalized(size_label(pick.size))}{chosen}{fit}")]
    for step, name in ((-1, "one size smaller"), (1, "one size larger")):
        beside = subject.neighbor(pick, step)
        if beside is not None:
            explained.append((beside, f"{beside.size}, {name}"))
    return explained


def labeled(explanation: Explanation, *, bigger: bool = True, smaller: bool = True) -> Labeled:
    """What a size means, line by line; of a neighbor of the pick without what the pick's own lines say."""
    lines = (
        ("no", explanation.no),
        ("means", explanation.means),
        ("costs", explanation.costs),
        ("bigger", explanation.next if bigger else None),
        ("smaller", explanation.smaller if smaller else None),
    )
    return tuple((label, text) for label, text in lines if text)


def still_open(size: SizeFigures) -> Labeled:
    """What the dashes in a row wait for."""
    if size.feed_loss_Pa is None:
        return (("open", "loss, spare and power need a feed line"),)
    return () if size.margin is not None else (("open", "spare and power need a pump"),)


def closer_look(subject: Subject, size: SizeFigures) -> Labeled:
    """Where the loss sits, the velocity at full delivery and by dash number, and how the fuel flows."""
    lines = [("lost in", _where_the_loss_sits(subject, size.ladder))] if size.ladder is not None else []
    full = FULL_DELIVERY_VELOCITY.figure(subject, size)
    if full is not None:
        lines.append(("at most", f"{full}, {size.full_delivery_band}, with all that the pump gives"))
    if size.nominal_velocity_m_s is not None:
        quoted = subject.numbers.figure("velocity", size.nominal_velocity_m_s)
        lines.append(("quoted", f"{quoted} by the dash number, as people quote it"))
    return (*lines, ("flow", flow_regime(size)))


def _where_the_loss_sits(subject: Subject, ladder: Ladder) -> str:
    losses = {
        "line": ladder.friction_Pa,
        "fittings": ladder.fittings_Pa,
        "filter": ladder.filters_Pa,
        "parts": ladder.parts_Pa,
    }
    worst_first = sorted(losses.items(), key=lambda part: -part[1])
    shown = [f"{name} {subject.numbers.number('pressure', loss)}" for name, loss in worst_first if loss]
    return f"{', '.join(shown)}{NO_BREAK}{subject.numbers.unit('pressure')}" if shown else "nothing"
