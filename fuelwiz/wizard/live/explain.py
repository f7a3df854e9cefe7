"""What the highlighted size means, in labelled lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.advice.numbers import Numbers
from fuelwiz.physics.line import LAMINAR_BELOW, TURBULENT_FROM
from fuelwiz.wizard.paint import Area, clip

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Ladder, SizeFigures

LABEL = 3
TEXT = 11
EXTRA_ROWS = 4

Labelled = list[tuple[str, str]]


def explanation_lines(result: Result, highlighted: str, area: Area, more: bool = False) -> list[Strip]:
    """The labelled lines of a size in the area's rows; `more` adds those of the table in focus."""
    at = next((index for index, row in enumerate(result.figures.sizes) if row.size == highlighted), 0)
    row = result.figures.sizes[at]
    said = result.words.explanations[at]
    labelled = [
        ("no", said.no and said.no.removeprefix("refused: ")),
        ("means", said.means),
        ("costs", said.costs),
        ("bigger", said.next),
        ("smaller", said.smaller),
    ]
    lines = [(label, text) for label, text in labelled if text] + _what_comes_later(row)
    extra = _more(result, row) if more else []
    room = area.high(area.rows - len(extra))
    drawn = _drawn(lines, room)
    return drawn + _drawn(extra, area.high(area.rows - len(drawn)))


def _drawn(lines: Labelled, area: Area) -> list[Strip]:
    """Each label gets its first line before any text gets a second one; what does not fit is left out."""
    lines = lines[: max(area.rows, 0)]
    wrapped = [area.wrapped(text, TEXT) for _, text in lines]
    heights = [1] * len(lines)
    for _ in range(area.rows - len(lines)):
        short = next((at for at, height in enumerate(heights) if height < len(wrapped[at])), None)
        if short is None:
            break
        heights[short] += 1
    drawn: list[Strip] = []
    for (label, text), rows in zip(lines, heights, strict=True):
        for at, part in enumerate(area.wrapped(text, TEXT, rows)):
            line = area.row()
            if at == 0:
                line.put(LABEL, clip(label, TEXT - LABEL - 1), "fault" if label == "no" else "muted", True)
            drawn.append(line.put(TEXT, part).strip())
    return drawn


def _what_comes_later(row: SizeFigures) -> Labelled:
    """What the dashes in the table wait for."""
    if row.feed_loss_Pa is None:
        return [
            ("later", "loss, spare and power come after Lines"),
            ("new?", "F1 explains, ? puts in a sensible value"),
        ]
    return [] if row.margin is not None else [("later", "spare and power come with a pump")]


def _more(result: Result, row: SizeFigures) -> Labelled:
    """What shows of a size while the table has the keys."""
    numbers = Numbers.of(result.session)
    feed = result.session.bands.feed
    lines: Labelled = []
    if row.ladder is not None:
        lines.append(("lost in", _where_the_loss_sits(row.ladder, numbers)))
    if row.full_delivery_velocity_m_s is not None:
        full = numbers.figure("velocity", row.full_delivery_velocity_m_s, *feed)
        lines.append(("at most", f"{full}, {row.full_delivery_band}, when the pump gives all it can"))
    if row.nominal_velocity_m_s is not None:
        quoted = numbers.figure("velocity", row.nominal_velocity_m_s)
        lines.append(("quoted", f"{quoted} by dash/16 in, as people quote it"))
    return [*lines, ("flow", _regime(row.reynolds))]


def _where_the_loss_sits(ladder: Ladder, numbers: Numbers) -> str:
    parts = {
        "line": ladder.friction_Pa,
        "fittings": ladder.fittings_Pa,
        "filter": ladder.filters_Pa,
        "parts": ladder.parts_Pa,
    }
    worst_first = sorted(parts.items(), key=lambda part: -part[1])
    told = [f"{what} {numbers.number('pressure', loss)}" for what, loss in worst_first if loss]
    return f"{', '.join(told)}\N{NO-BREAK SPACE}{numbers.unit('pressure')}" if told else "nothing"


def _regime(reynolds: float) -> str:
    told = f"Reynolds number {float(f'{reynolds:.2g}'):.0f}"
    if reynolds <= LAMINAR_BELOW:
        return f"laminar, layer on layer: {told}"
    if reynolds < TURBULENT_FROM:
        return f"half turbulent: {told}"
    return f"turbulent, as is usual: {told}"
