"""Builds side by side: different inputs, results, and which build is better in what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

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
from fuelwiz.printable import shown_name
from fuelwiz.report.differences import KEYS_AS_THEY_ARE, JudgedBuild, Wording, differences
from fuelwiz.report.measures import MEASURES, Measure, Side, sides_of

LABEL_COLUMNS = 22
BUILD_COLUMNS = 20


def builds_that_fit(width: int) -> int:
    """How many builds stand side by side in so many columns; two always do."""
    return max(2, (width - LABEL_COLUMNS) // BUILD_COLUMNS)


def comparison(builds: Sequence[JudgedBuild], width: int, wording: Wording = KEYS_AS_THEY_ARE) -> Sheet:
    """Two builds or more, as many side by side as fit; what is over follows, again beside the first."""
    names = _names(builds)
    fit = builds_that_fit(width)
    blocks: list[Block] = [
        Pairs(
            tuple(
                (name, " ".join(build.result.words.answer[:2]))
                for name, build in zip(names, builds, strict=True)
            )
        )
    ]
    for start in range(1, len(builds), fit - 1):
        shown = [0, *range(start, min(start + fit - 1, len(builds)))]
        blocks += _side_by_side([builds[at] for at in shown], [names[at] for at in shown], wording)
    follow = "; the others follow, each beside the first" if len(builds) > fit else ""
    blocks += _cautions(builds)
    blocks.append(Paragraph(f"{width} columns hold {fit} builds side by side{follow}."))
    return Sheet("Builds side by side", tuple(blocks))


def _cautions(builds: Sequence[JudgedBuild]) -> Iterator[Block]:
    """The standing cautions of any of the builds, each once."""
    yield Heading("Cautions")
    said = dict.fromkeys(text for build in builds for text in build.result.words.cautions)
    yield Listing(tuple(Item(text) for text in said))


def _names(builds: Sequence[JudgedBuild]) -> list[str]:
    """What each build is called; where two have one name its file is told too, that alone where all have it."""
    names = [build.result.session.name or "unnamed" for build in builds]
    if len(set(names)) == 1:
        return [shown_name(build.file) for build in builds]
    return [
        f"{name} ({shown_name(build.file)})" if names.count(name) > 1 else name
        for name, build in zip(names, builds, strict=True)
    ]


def _side_by_side(builds: Sequence[JudgedBuild], names: list[str], wording: Wording) -> Iterator[Block]:
    yield Heading("Different inputs")
    columns = tuple(Column(name) for name in names)
    found = differences(builds, wording)
    if found:
        yield Table(
            (Column("Question"), *columns), tuple(row(wording.label(item.key), *item.texts) for item in found)
        )
    else:
        yield Paragraph("Nothing that changes the result.")
    yield Heading("Results")
    sides = sides_of([build.result for build in builds])
    yield Table((Column("", whole=True), *columns), tuple(_measure_rows(sides)))
    yield from _better_in(sides, names)


def _measure_rows(sides: Sequence[Side]) -> Iterator[tuple[Cell, ...]]:
    """A row for each measure that at least one of the builds has."""
    for measure in MEASURES:
        if any(measure.shown(side) is not None for side in sides):
            yield _measure_row(measure, sides)


def _measure_row(measure: Measure, sides: Sequence[Side]) -> tuple[Cell, ...]:
    best = _best(measure, sides)
    word = "better" if len(sides) == 2 else "best"
    shown = [measure.shown(side) for side in sides]
    cells = [
        Cell(f"{text} ({word})", strong=True) if text is not None and at in best else text
        for at, text in enumerate(shown)
    ]
    return row(measure.name, *cells)


def _best(measure: Measure, sides: Sequence[Side]) -> list[int]:
    """The places of the best figure; none where there is no better, or where all look the same."""
    if measure.better is None or len({measure.shown(side) for side in sides}) == 1:
        return []
    values = [measure.value(side) for side in sides]
    known = [value for value in values if value is not None]
    if len(known) < 2:
        return []
    top = max(known) if measure.better == "more" else min(known)
    shown = {measure.shown(side) for side, value in zip(sides, values, strict=True) if value == top}
    return [at for at, side in enumerate(sides) if measure.shown(side) in shown]


def _better_in(sides: Sequence[Side], names: list[str]) -> Iterator[Block]:
    """In what each is better, in a line each."""
    best = {measure.name: _best(measure, sides) for measure in MEASURES}
    word = "better in" if len(sides) == 2 else "best in"
    rows = tuple(
        (name, f"{word} {'; '.join(what for what, places in best.items() if at in places) or 'nothing'}")
        for at, name in enumerate(names)
    )
    yield Pairs(rows)
