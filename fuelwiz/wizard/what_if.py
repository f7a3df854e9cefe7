"""What if: a scratch copy of the build on the desk to try things on, with then and now side by side."""

from __future__ import annotations

from dataclasses import replace

from textual.strip import Strip

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.sizing.vocabulary import Change
from fuelwiz.wizard.actions import Action
from fuelwiz.wizard.chrome import Headline
from fuelwiz.wizard.editor.build_screen import BuildScreen
from fuelwiz.wizard.editor.save_dialog import FollowUp, SaveDialog
from fuelwiz.wizard.paint import Area
from fuelwiz.wizard.painted import LinesView
from fuelwiz.wizard.then_and_now import ROWS, name_to_keep, then_and_now

POWER = "goal.power"
NESTED = "This is a what-if already: Esc keeps or drops it."


class WhatIfScreen(BuildScreen):
    """A scratch copy; what it comes to stands above the footer, under what the build itself comes to."""

    strip_rows = ROWS

    def __init__(self, desk: Desk, origin: BuildScreen, path: str = "") -> None:
        super().__init__(desk, step="goal")
        self.origin = origin
        self.view, self.highlighted = origin.view, "" if desk.dirty else origin.highlighted
        self.form.go_to_path(path or POWER)

    def _first_answer(self) -> None:
        super()._first_answer()
        if self.desk.dirty:  # something is tried on it already: it is kept as what is typed
            self.changed()

    def save_dialog(self) -> SaveDialog:
        """What keeps or drops a scratch copy."""
        return WhatIfDialog(self)

    def try_what_if(self, change: Change | None = None) -> None:
        """A scratch copy has no scratch copy of its own."""
        self.say(NESTED)

    def headline(self) -> Headline:
        """The top line of the build, and that this is no more than a what-if."""
        head = super().headline()
        return replace(head, name=f"what if: {head.name}")

    def strip_lines(self, area: Area) -> list[Strip]:
        """Then and now."""
        return then_and_now(self.origin.desk, self.desk, area, self.shown_size)

    def show_answer(self) -> None:
        """The live pane, and the strip that rests on the same answer."""
        if not self._is_here:
            return
        self.live.then = self.origin.desk.result
        super().show_answer()
        self.query_one("#strip", LinesView).repaint()

    def offered(self) -> list[Action]:
        """Among the questions, the way back comes second; what one change buys is not tried from here."""
        offered = [action for action in super().offered() if action.id not in ("try", "what_if")]
        if self.mode != "form" or self.form.place.in_entry:
            return offered
        word = "keep or drop" if self.desk.dirty else "back"
        return [offered[0], Action("back", ("escape",), "", word, ""), *offered[1:]]


class WhatIfDialog(SaveDialog):
    """A scratch copy is kept as a build of its own, or dropped."""

    leave_question = "k keeps it as a new build, d drops it, Esc stays"
    leave_letters = "kd"
    draft_kept = "not saved, draft kept"

    def __init__(self, screen: WhatIfScreen) -> None:
        super().__init__(screen)
        self._scratch = screen
        self.kept = "not saved"

    def save_as(self, then: FollowUp | None = None) -> None:
        """Keep it under a name that is asked for."""
        self._then = then
        self._ask_name("Keep it as:", name_to_keep(self._scratch.origin.desk, self._scratch.desk))

    def leave_for_list(self) -> None:
        """Back to the build."""
        self._leave(self._close)

    def leave_program(self) -> None:
        """Back to the build, and leave from there."""

        def close_and_leave() -> None:
            self._close()
            self._scratch.origin.saving.leave_program()

        self._leave(close_and_leave)

    def _leave_by(self, letter: str, go: FollowUp) -> None:
        if letter == "d":
            self._drop_draft()
            go()
        else:
            self.save(go)

    def _close(self) -> None:
        """Back to the build, which is as it was."""
        origin, path = self._scratch.origin, self._scratch.desk.path
        self._scratch.app.pop_screen()
        origin.say("Dropped; this build is unchanged." if path is None else self._kept_words())

    def _kept_words(self) -> str:
        """What it is kept as, which build is on the screen now, and where the other one is."""
        origin = self._scratch.origin.desk
        listed = "both" if origin.path is not None else "the one that was kept"
        return (
            f'Kept as "{self._scratch.desk.name}". You are still in {origin.name}; Ctrl+G b lists {listed}.'
        )

    def _refused(self, refused: SaveRefused) -> None:
        """A name that is taken is never written over: it may be that of the build itself."""
        if refused.reason == "exists":
            self._ask_name("That name is taken. Another name:", self._name, is_refused=True)
        else:
            super()._refused(refused)
