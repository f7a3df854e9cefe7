"""The way out: the changes that together leave nothing wrong, today or at the next goal."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fuelwiz.sizing.figures import Figures, NextFigures
    from fuelwiz.sizing.slow_figures import ChangeFigures
    from fuelwiz.sizing.vocabulary import Change


def steps_out(found: Figures | NextFigures) -> tuple[ChangeFigures, ...]:
    """The changes, best first: in single steps, else in larger ones; none where nothing is wrong or nothing helps."""
    if found.way_out is None:
        return found.long_way
    return tuple(change for change in found.changes if change.change in found.way_out)


def way_out(found: Figures | NextFigures | None) -> tuple[Change, ...]:
    """Their names."""
    return () if found is None else tuple(change.change for change in steps_out(found))
