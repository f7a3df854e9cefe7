"""The data of the picture, computed once for an answer and a size."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result
    from fuelwiz.sizing.figures import Plot


class Plots:
    """Pump against system for a size and its neighbours; keeps the last one."""

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
