"""The page of words: what the trade's words mean, to scroll through."""

from __future__ import annotations

from textual.strip import Strip

from fuelwiz.units import UnitSystem
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.scrolling import ScrollingScreen

WORD, BESIDE, UNDER = 1, 18, 3
BESIDE_FROM = 76


def word_lines(area: Area, system: UnitSystem = "us") -> list[Strip]:
    """Every word and its meaning, beside it where there is room, else under it."""
    from fuelwiz.questions.glossary import glossary

    beside = area.width >= BESIDE_FROM
    column = BESIDE if beside else UNDER
    lines = []
    for word, meaning in glossary(system).items():
        line = area.row().put(WORD, word, bold=True)
        if not beside:
            lines.append(line.strip())
            line = area.row()
        first, *rest = area.wrapped(meaning, column)
        lines.append(line.put(column, first).strip())
        lines += [area.row().put(column, text).strip() for text in rest]
    return lines


class WordsScreen(ScrollingScreen):
    """The words on top of a build, in its units."""

    title_text = "Words of the trade"

    def __init__(self, system: UnitSystem) -> None:
        super().__init__()
        self.system = system

    def lines(self, area: Area) -> list[Strip]:
        """Every word and its meaning."""
        return word_lines(area, self.system)
