"""Which size to fit: the smallest that works and is sound, and what is left where none works."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.sizing.figures import SizeFigures
from fuelwiz.sizing.thresholds import WORTH_MARGIN
from fuelwiz.sizing.vocabulary import no_faster_than


def is_sound(row: SizeFigures) -> bool:
    """Whether a size's line works with something to spare."""
    if not row.line_works or not no_faster_than(row.band, "good"):
        return False
    return row.full_delivery_band is None or no_faster_than(row.full_delivery_band, "brisk")


def recommended(rows: Sequence[SizeFigures]) -> str | None:
    """The smallest size that works and is sound, else the smallest that works; rows by rising bore."""
    working = [row for row in rows if row.works]
    best = next((row for row in working if is_sound(row)), working[0] if working else None)
    return None if best is None else best.size


def line_to_fit(rows: Sequence[SizeFigures]) -> str | None:
    """The recommended size; where there is none, the smallest good line that a larger one would not better."""
    best = recommended(rows)
    if best is not None:
        return best
    among = [row for row in rows if is_sound(row)] or [row for row in rows if row.line_works]
    return next((row.size for row in among if not _larger_is_worth_it(rows, row)), None)


def _larger_is_worth_it(rows: Sequence[SizeFigures], row: SizeFigures) -> bool:
    larger = rows[rows.index(row) + 1 :]
    if not larger or "pump" not in row.limits or row.least is None or larger[0].least is None:
        return False
    return larger[0].least.margin - row.least.margin >= WORTH_MARGIN


def comfortable(rows: Sequence[SizeFigures]) -> str | None:
    """The smallest size whose line works easily at the demand, and easily or fairly with all that the pump gives."""
    for row in rows:
        full = row.full_delivery_band
        if row.line_works and row.band == "easy" and (full is None or no_faster_than(full, "good")):
            return row.size
    return None
