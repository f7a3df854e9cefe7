"""The page of words: what the trade's words mean, to scroll through."""

from __future__ import annotations

from typing import cast

from textual.app import ComposeResult
from textual.events import Key, Resize
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.units import UnitSystem
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import footer_line
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView, place
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.screen_layout import Box

TITLE = "Words"
WORD, BESIDE, UNDER = 1, 18, 3
BESIDE_FROM = 76

SCROLL = Action("scroll", ("up", "down", "pageup", "pagedown"), "", "and Down, PgUp, PgDn scroll", "")
CLOSE = Action("close", ("escape",), "", "close", "")


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


class WordsScreen(Screen[None]):
    """Shows the words on top of a build; any key that does not scroll closes it."""

    def __init__(self, system: UnitSystem) -> None:
        super().__init__()
        self.system = system
        self.scrolled = 0

    def compose(self) -> ComposeResult:
        """Title, words, and the keys."""
        look = cast("Program", self.app).look
        yield LinesView(look, "top", lambda area: [area.row("bar").put(1, TITLE, bold=True).strip()])
        yield LinesView(look, "words", self._page)
        yield LinesView(look, "footer", lambda area: [footer_line([SCROLL], CLOSE, area)])

    def on_mount(self) -> None:
        """The ground of the theme lies under everything."""
        self.styles.background = cast("Program", self.app).look.screen_background

    def on_resize(self, event: Resize) -> None:
        """Lay everything out for the new size."""
        width, height = self.size
        place(self.query_one("#top"), Box(0, 0, width, 1))
        place(self.query_one("#words"), Box(0, 1, width, height - 2))
        place(self.query_one("#footer"), Box(0, height - 1, width, 1))
        self.call_after_refresh(self._repaint)

    def _repaint(self) -> None:
        for view in self.query(LinesView):
            view.repaint()

    def _page(self, area: Area) -> list[Strip]:
        lines = word_lines(area, self.system)
        self.scrolled = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self.scrolled : self.scrolled + area.rows]

    def on_key(self, event: Key) -> None:
        """It scrolls, or closes the page."""
        event.stop()
        event.prevent_default()
        page = max(self.size.height - 3, 1)
        moves = {"up": -1, "down": 1, "pageup": -page, "pagedown": page, "home": -self.scrolled, "end": 10**6}
        if event.key in moves:
            self.scrolled += moves[event.key]
            self._repaint()
        else:
            self.app.pop_screen()
