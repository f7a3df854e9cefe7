"""Single lines and the column of steps: the parts of the screen around the questions."""

from __future__ import annotations

from collections.abc import Callable

from textual.strip import Strip

from fuelwiz.wizard.look import Look
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import Painted

Painter = Callable[[Area], list[Strip]]


class LinesView(Painted):
    """Draws what a function paints."""

    def __init__(self, look: Look, name: str, painter: Painter) -> None:
        super().__init__(look, id=name)
        self._painter = painter

    def painted(self, area: Area) -> list[Strip]:
        """What the function paints, in the area's rows."""
        return area.filled(self._painter(area))
