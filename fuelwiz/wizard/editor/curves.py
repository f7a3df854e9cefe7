"""The curves of the picture, reckoned once for an answer and a size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fuelwiz.wizard.live.curves import CurveData

if TYPE_CHECKING:
    from fuelwiz.advice.result import Result


class Curves:
    """Pump against system for a size and its neighbours; keeps the last picture."""

    def __init__(self) -> None:
        self._known: tuple[Result, str, CurveData | None] | None = None

    def __call__(self, result: Result, size: str) -> CurveData | None:
        """The curves of an answer around a size; None before pump and lines are known."""
        known = self._known
        if known is not None and known[0] is result and known[1] == size:
            return known[2]
        data = _around(result, size)
        self._known = (result, size, data)
        return data


def _around(result: Result, size: str) -> CurveData | None:
    from fuelwiz.sizing.plot import plot

    names = [row.size for row in result.figures.sizes]
    at = names.index(size) if size in names else 0
    found = plot(result.session, names[max(at - 1, 0) : at + 2], size)
    if found is None:
        return None
    return CurveData(found.flows, found.pump_pressures, found.systems, found.goal_flow, found.crossing)
