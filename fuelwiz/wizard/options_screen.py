"""Parts that do the job, on the screen: the sets as they are found, the highlighted one explained."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from textual.events import Key
from textual.screen import Screen
from textual.strip import Strip

from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import BACK, MOVE, footer_line
from fuelwiz.wizard.late_keys import hand_on
from fuelwiz.wizard.page_screen import PageScreen
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.program import Program

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.options.figures import OptionsFigures
    from fuelwiz.options.outcome import Progress, Shown
    from fuelwiz.options.parts_file import Parts

OPEN = Action("open", ("enter",), "", "try it", "")
NEXT = Action("next_goal", ("n",), "", "next goal too", "")
BAD = Action("bad_days", ("b",), "", "bad days too", "")
STOP = Action("stop", ("escape",), "", "stop", "")
ON_AND_OFF = {"n": "next_goal", "b": "bad_days"}
PAINTED_EVERY = 4  # steps of the search: the eye needs no more
BETWEEN_S = 0.001  # for a key that waits


class OptionsScreen(PageScreen):
    """Stands on top of a build until Esc; Enter opens a set as a what-if of that build."""

    title_text = "Parts that do the job"

    def __init__(self, origin: Screen[None], desk: Desk, path: Path) -> None:
        super().__init__()
        self.origin, self.desk, self.path = origin, desk, path
        self.asked = {"next_goal": False, "bad_days": False}
        self.fault = ""
        self.at = 0
        self.scrolled = 0
        self.progress: Progress | None = None
        self.figures: OptionsFigures | None = None
        self.shown: list[Shown] = []
        self._parts: Parts | None = None
        self._parts_plain: dict[str, Any] = {}
        self._steps: Iterator[Progress] | None = None
        self._run = 0

    @property
    def searching(self) -> bool:
        """Whether the search is still on."""
        return self._steps is not None

    def on_mount(self) -> None:
        """Show the screen first and search then."""
        super().on_mount()
        self.call_after_refresh(self.begin)

    def begin(self) -> None:
        """Read the parts file, and begin to search it."""
        from fuelwiz.options.outcome import in_steps
        from fuelwiz.options.parts_check import load_parts, plain_parts
        from fuelwiz.options.search import Asked, Search

        self._run += 1
        self.at, self.scrolled, self.shown, self.figures, self.progress = 0, 0, [], None, None
        session, result = self.desk.session, self.desk.result
        try:
            self._parts_plain, self._parts = plain_parts(self.path), load_parts(self.path)
            assert session is not None and result is not None
            search = Search(session, self._parts, result.figures, Asked(**self.asked))
        except FuelwizError as error:
            self.fault, self._steps = str(error), None
            self.repaint()
            return
        self.fault, self._steps = "", in_steps(search)
        self._go_on(self._run)

    def _go_on(self, run: int) -> None:
        """A few steps of the search, then whatever key waits."""
        if self._steps is None or run != self._run:
            return
        for _ in range(PAINTED_EVERY):
            self.progress = next(self._steps, None) or self.progress
            if self.progress is None or self.progress.done >= self.progress.sets:
                self._end()
                return
        self._look_at_what_is_found()
        self.set_timer(BETWEEN_S, lambda: self._go_on(run))

    def _look_at_what_is_found(self) -> None:
        if self.progress is not None:
            self.shown, self.figures = self.progress.shown(), self.progress.figures()
            self.at = min(self.at, max(len(self.shown) - 1, 0))
        self.repaint()

    def _end(self) -> None:
        """The search is done; where nothing would do, say what is missing."""
        from fuelwiz.options.outcome import with_what_is_missing

        self._steps = None
        self._look_at_what_is_found()
        if self.progress is not None and not self.progress.found.works:
            self.figures = with_what_is_missing(self.progress)
            self.repaint()

    def on_key(self, event: Key) -> None:
        """Every key: it moves, scrolls, asks for more, takes a set, stops or goes back."""
        event.stop()
        event.prevent_default()
        if hand_on(self, event):
            return
        if event.key == "escape":
            self._stop_or_leave()
        elif event.key == "enter":
            self.try_it()
        elif event.key in ("up", "down"):
            moved = self.at + (1 if event.key == "down" else -1)
            self.at = min(max(moved, 0), max(len(self.shown) - 1, 0))
        elif event.key in ("pageup", "pagedown"):
            page = max(self.size.height - 3, 1)
            self.scrolled += page if event.key == "pagedown" else -page
        elif event.key in ON_AND_OFF:
            name = ON_AND_OFF[event.key]
            self.asked[name] = not self.asked[name]
            self.begin()
        self.repaint()

    def _stop_or_leave(self) -> None:
        if self.searching:
            self._steps = None
        else:
            self.app.pop_screen()

    def try_it(self) -> None:
        """Open the highlighted set as a what-if of the build; there it can be kept as a build of its own."""
        from fuelwiz.options.as_build import as_build

        session, parts = self.desk.session, self._parts
        if not self.shown or session is None or parts is None:
            return
        self._steps = None
        plain = self.desk.plain
        built = as_build(plain, session, self._parts_plain, parts, self.shown[self.at].parts)
        fitted = {section: value for section, value in built.items() if plain.get(section) != value}
        app, copy = cast("Program", self.app), self.desk.what_if()
        copy.fit(fitted)
        self.app.pop_screen()
        app.show_what_if(self.origin, copy)

    def note(self) -> str:
        """The parts file."""
        return self.path.name

    def page_lines(self, area: Area) -> list[Strip]:
        """What is wrong with the file, or the sets."""
        if self.fault:
            lines = [line for fault in self.fault.splitlines() for line in area.paragraph(fault, 1, "fault")]
        else:
            lines = self._sets(area)
        self.scrolled = min(max(self.scrolled, 0), max(len(lines) - area.rows, 0))
        return lines[self.scrolled : self.scrolled + area.rows]

    def _sets(self, area: Area) -> list[Strip]:
        from fuelwiz.advice.option_words import sets_on_screen
        from fuelwiz.advice.subject import Subject
        from fuelwiz.wizard.block_view import lines_of

        session, result = self.desk.session, self.desk.result
        if self.progress is None or self.figures is None or session is None or result is None:
            return area.paragraph("Searching …", 1)
        state = self._state_of_the_search()
        assert self._parts is not None
        subject = Subject(session, result.figures)
        blocks = sets_on_screen(subject, self.figures, self.at, self._parts.currency, ended=state == "")
        return [
            *area.paragraph(state or self._how_many(), 1, "focus"),
            *lines_of(blocks, area, one_line=True),
        ]

    def _state_of_the_search(self) -> str:
        """How far it is; empty once it is through."""
        assert self.progress is not None
        far = f"{self.progress.done} of {self.progress.sets} sets, {self.progress.found.works} do the job"
        if self.searching:
            return f"Searching: {far}. Esc stops."
        return f"Stopped: {far}." if self.progress.done < self.progress.sets else ""

    def _how_many(self) -> str:
        from fuelwiz.advice.option_words import how_many, passed

        assert self.figures is not None
        return how_many(self.figures, passed(**self.asked))

    def footer_lines(self, area: Area) -> list[Strip]:
        """The keys that do something now."""
        more = [action for action in (NEXT, BAD) if not self.asked[action.id]]
        return [footer_line([OPEN, *more, MOVE], STOP if self.searching else BACK, area)]
