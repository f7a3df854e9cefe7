"""The data of the pictures, computed once for an answer and a size."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Plot
    from fuelwiz.sizing.part_figures import PathPart


class Plots:
    """Pump against system for a size and its neighbors; keeps the last one."""

    def __init__(self) -> None:
        self._last: tuple[Result, str, Plot | None] | None = None

    def __call__(self, result: Result, size: str) -> Plot | None:
        """The curves of an answer around a size; None before pump and lines are known."""
        if self._last is not None and self._last[0] is result and self._last[1] == size:
            return self._last[2]
        from fuelwiz.sizing.plot import plot_around

        plot = plot_around(result.session, size)
        self._last = (result, size, plot)
        return plot


class Ways:
    """The parts of the fuel's way at a size; keeps the last one."""

    def __init__(self) -> None:
        self._last: tuple[Result, str, tuple[PathPart, ...]] | None = None

    def __call__(self, result: Result, size: str) -> tuple[PathPart, ...]:
        """The parts of an answer at a size; none before the lines are known."""
        if size == result.figures.verdict.size:
            return result.figures.path
        if self._last is not None and self._last[0] is result and self._last[1] == size:
            return self._last[2]
        from fuelwiz.sizing.path import path_at

        parts = path_at(result.session, size)
        self._last = (result, size, parts)
        return parts
