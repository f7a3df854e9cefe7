"""What somebody else changed in the file of a build, on top of the build, before it is written over."""

from __future__ import annotations

from collections.abc import Sequence

from textual.strip import Strip

from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.scrolling import ScrollingScreen

NONE = "Nothing that the form shows: comments, order, or something that cannot be read."


class DifferencesScreen(ScrollingScreen):
    """One line a change, in the words of the questions."""

    title_text = "Changed in the file since you opened it"

    def __init__(self, differences: Sequence[str]) -> None:
        super().__init__()
        self.differences = differences

    def lines(self, area: Area) -> list[Strip]:
        """Every change."""
        found = self.differences or (NONE,)
        return [line for text in found for line in area.paragraph(f"{text[:1].upper()}{text[1:]}", 1)]
