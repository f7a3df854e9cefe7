"""What if: a scratch copy of the build on the desk to try things on, with then and now side by side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from textual.strip import Strip

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.errors import SaveRefused
from fuelwiz.desk.saving import Saved
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import Headline
from fuelwiz.wizard.editor.build_actions import BuildActions
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.lines_view import LinesView
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.prompt import Prompt
from fuelwiz.wizard.then_and_now import ROWS, then_and_now

KEEP_OR_DROP = "k keeps it as a build of its own, d drops it, Esc stays"
ALREADY = "This is a what-if already: change what you like, Esc keeps it or drops it."


def open_what_if(screen: BuildScreen) -> None:
    """Put a scratch copy of a screen's build on top of it, at the same question."""
    if isinstance(screen, WhatIfScreen):
        screen.say(ALREADY)
        return
    screen.app.push_screen(WhatIfScreen(screen.desk.what_if(), screen))


class WhatIfScreen(BuildScreen):
    """A scratch copy; what it comes to stands above the footer, under what the build itself comes to."""

    strip_rows = ROWS

    def __init__(self, desk: Desk, origin: BuildScreen) -> None:
        super().__init__(desk, step=origin.form.place.step)
        self.origin = origin
        self.actions = WhatIfActions(self)
        self.actions.kept = "nothing saved"
        self.view, self.highlighted = origin.view, origin.highlighted
        self.form.go_to_path(origin.form.path)

    def headline(self) -> Headline:
        """The top line of the build, and that this is no more than a what-if."""
        head = super().headline()
        return replace(head, name=f"what if: {head.name}")

    def strip_lines(self, area: Area) -> list[Strip]:
        """Then and now."""
        return then_and_now(self.origin.desk, self.desk, area)

    def show_answer(self) -> None:
        """The live pane, and the strip that rests on the same answer."""
        super().show_answer()
        self.query_one("#strip", LinesView).repaint()

    def offered(self) -> list[Action]:
        """Among the questions, the way back comes second."""
        offered = super().offered()
        if self.mode != "form":
            return offered
        word = "keep or drop" if self.desk.dirty else "back"
        return [offered[0], Action("back", ("escape",), "", word, ""), *offered[1:]]


class WhatIfActions(BuildActions):
    """What is done otherwise on a scratch copy: it is kept under a name of its own, or dropped."""

    def __init__(self, screen: WhatIfScreen) -> None:
        super().__init__(screen)
        self._scratch = screen
        self._then: Callable[[], None] | None = None

    def keep_draft(self) -> None:
        """A scratch copy has no draft; one that was saved is a build like any other."""
        if self._scratch.desk.path is not None:
            super().keep_draft()

    def do(self, name: str, key: str = "") -> None:
        """As on any build; an action asked for anew no longer leaves when it is done."""
        self._then = None
        super().do(name, key)

    def _quit(self, key: str) -> None:
        self._leave(lambda: self._close("quit"))

    def _away(self, go: Callable[[], None]) -> None:
        self._leave(self._close)

    def _leave(self, close: Callable[[], None]) -> None:
        """Close; what was changed and not kept is asked about first."""
        if not self._scratch.desk.dirty:
            close()
            return

        def answered(letter: str) -> None:
            if letter == "d":
                self._scratch.desk.discard_draft()
                close()
            else:
                self._then = close
                self._save(letter)

        self.screen.ask(Prompt(KEEP_OR_DROP, answered, letters="kd"))

    def _close(self, then: str = "") -> None:
        """Back to the build, which is as it was; and from there on, where more was asked for."""
        origin, path = self._scratch.origin, self._scratch.desk.path
        self._scratch.app.pop_screen()
        origin.say("Dropped; this build is as it was." if path is None else f"Kept as {path.name}.")
        if then:
            origin.actions.do(then)

    def _save_as(self, key: str) -> None:
        self._ask_name("Keep it as:", f"{self._scratch.desk.name} what if")

    def _ask_name(self, asked: str, name: str) -> None:
        self.screen.ask(Prompt(asked, self._save_named, editor=LineEdit.at_end(name)))

    def _saved(self, save: Callable[[], Saved]) -> bool:
        saved = super()._saved(save)
        if saved and self._then is not None:
            self._then()
        return saved

    def _refused(self, refused: SaveRefused) -> None:
        """A name that is taken is never written over: it may be that of the build itself."""
        if refused.reason == "exists":
            self._ask_name("That name is taken. Another one:", self._named)
        else:
            super()._refused(refused)
