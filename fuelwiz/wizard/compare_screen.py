"""Builds side by side on the screen: different inputs, results, and which build is better in what."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from textual.strip import Strip

from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.scrolling import ScrollingScreen

if TYPE_CHECKING:
    from fuelwiz.report.differences import JudgedBuild

CALCULATING = "Calculating the builds …"
NEEDS_TWO = "To compare, two builds are needed that can be read."


class CompareScreen(ScrollingScreen):
    """Two builds or more, from their files or ready ones."""

    title_text = "Builds side by side"

    def __init__(self, builds: Sequence[Path | JudgedBuild]) -> None:
        super().__init__()
        self.results: list[JudgedBuild] = []
        self.unread: list[str] = []
        self._builds = builds
        self._ready = False
        self._lines: list[Strip] = []
        self._lines_for: Area | None = None

    def on_mount(self) -> None:
        """Show the screen first and calculate then."""
        super().on_mount()
        self.call_after_refresh(self._calculate)

    def _calculate(self) -> None:
        for build in self._builds:
            if not isinstance(build, Path):
                self.results.append(build)
                continue
            try:
                self.results.append(judged(build))
            except FuelwizError as error:
                self.unread += str(error).splitlines()
        self._ready = True
        self.repaint()

    @property
    def fit(self) -> int:
        """How many builds stand side by side at this width."""
        from fuelwiz.report.compare import builds_that_fit

        return builds_that_fit(self.size.width)

    def note(self) -> str:
        """How many builds fit."""
        return f"{self.fit} fit at this width"

    def lines(self, area: Area) -> list[Strip]:
        """The comparison, under what could not be read."""
        if not self._ready:
            return area.paragraph(CALCULATING, 1)
        faults = [line for fault in self.unread for line in area.paragraph(fault, 1, "fault")]
        if len(self.results) < 2:
            return [*faults, *area.paragraph(NEEDS_TWO, 1)]
        return [*faults, *self._compared(area)]

    def _compared(self, area: Area) -> list[Strip]:
        """The comparison in lines; the same ones until the area changes."""
        from fuelwiz.desk.labels import WORDS_OF_THE_QUESTIONS
        from fuelwiz.report.compare import comparison
        from fuelwiz.wizard.block_view import lines_of

        if self._lines_for != area:
            side_by_side = comparison(self.results, area.width, WORDS_OF_THE_QUESTIONS)
            self._lines = lines_of(side_by_side.blocks, area)
            self._lines_for = area
        return self._lines


def judged(path: Path) -> JudgedBuild:
    """A session file, what it holds, and what it comes to.

    Raises:
        SessionError: the file cannot be used.
    """
    from fuelwiz.advice import result
    from fuelwiz.document.file import load
    from fuelwiz.report.differences import JudgedBuild
    from fuelwiz.sizing import quick_figures

    document, session = load(path)
    return JudgedBuild(path.name, document.plain, result(session, quick_figures(session)))
