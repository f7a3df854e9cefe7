"""What is said where there is no parts file yet: how one is made, and where it is looked for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from textual.strip import Strip

from fuelwiz.advice.parts_file_words import how_to_make_one
from fuelwiz.printable import shown_name
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.block_view import block_lines
from fuelwiz.wizard.chrome import BACK, footer_line
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.scrolling import ScrollingScreen

AGAIN = Action("again", ("enter",), "", "look again", "")
OTHER = Action("other", ("f",), "", "another file", "")
READ_ON = Action("read_on", ("pagedown",), "", "read on", "")


class NoPartsScreen(ScrollingScreen):
    """Stands on top of a build until a key; Enter looks whether there is a file by now."""

    title_text = "Parts that do the job"

    def __init__(self, folder: Path, again: Callable[[], None], other: Callable[[], None]) -> None:
        super().__init__()
        self.folder = folder
        self._following = {"enter": again, "f": other}

    def take(self, key: str) -> None:
        """Look again, or ask for a name."""
        if key in self._following:
            self.app.pop_screen()
            self._following[key]()

    def lines(self, area: Area) -> list[Strip]:
        """How a parts file is made."""
        blocks = how_to_make_one(shown_name(str(self.folder)))
        return [line for block in blocks for line in block_lines(block, area)]

    def footer_lines(self, area: Area) -> list[Strip]:
        """The keys."""
        return [footer_line([AGAIN, READ_ON, OTHER], BACK, area)]
