"""Saving a build, keeping its draft, and leaving it: what is asked and what is answered."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.storage import Save, Saved
from fuelwiz.errors import FuelwizError
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

FollowUp = Callable[[], None]

SAVE_PATIENCE_S, DRAFT_PATIENCE_S = 0.1, 0.02
"""How long keys wait for a quick disk."""


class SaveDialog:
    """What becomes of the build on a screen's desk; `kept` is what the top line shows of it."""

    leave_question = "Not saved yet: s saves, k keeps a draft, x discards the changes, Esc stays"
    leave_letters = "skx"
    draft_kept = "draft kept"

    def __init__(self, host: Host) -> None:
        self.host = host
        self.kept = ""
        self._name = ""
        self._then: FollowUp | None = None
        self._after: FollowUp | None = None
        self._is_saving = self._is_keeping = self._again = self._is_away = False

    def save(self, then: FollowUp | None = None) -> None:
        """Save under the build's file, asking for a name where it has none; `then` follows once it is saved."""
        if self.host.desk.path is None:
            self.save_as(then)
            return
        self._then, self._name = then, ""
        self._try(self.host.desk.prepared)

    def save_as(self, then: FollowUp | None = None) -> None:
        """Save under a name that is asked for."""
        self._then = then
        desk = self.host.desk
        self._ask_name("Save as:", desk.name if desk.is_given("name") else "")

    def _ask_name(self, question: str, name: str, *, is_refused: bool = False) -> None:
        """Ask for a name: typing replaces the one that is shown, or corrects one that was refused."""
        editor = LineEdit.at_end(name) if is_refused else LineEdit.marked(name)
        self.host.ask(Prompt(question, self._save_under, editor=editor))

    def _save_under(self, name: str) -> None:
        self._name = name
        self._try(lambda: self.host.desk.prepared_as(name))

    def _try(self, prepare: Callable[[], Save]) -> None:
        """Save beside the keys, and say how it went; where a file stands in the way, ask."""
        if self._is_saving:
            self.host.say("The last save is still on its way to the disk.")
            return
        try:
            save = prepare()
        except SaveRefused as refused:
            self._refused(refused)
            return
        except FuelwizError as error:
            self.host.say(str(error))
            return
        self._is_saving = True
        if not self.host.program.off_the_keys(save.written, self._written, SAVE_PATIENCE_S):
            self.host.say("Saving ...")

    def _written(self, save: Save | FuelwizError) -> None:
        """A save has come back from the disk."""
        self._is_saving = False
        if isinstance(save, SaveRefused):
            self._refused(save)
        elif isinstance(save, FuelwizError):
            self.host.say(str(save))
        else:
            self._saved(self.host.desk.saved(save))
        self.host.show_all()

    def _saved(self, saved: Saved) -> None:
        self.kept = f"saved {datetime.now():%H:%M}"
        self.host.say(f"Saved: {saved.path.name}, in {saved.path.parent}. {saved.left_out or ''}".rstrip())
        if self.host.desk.dirty:
            self.host.changed()  # told while the disk was waited for
        elif self._then is not None:
            self._then()

    def _refused(self, refused: SaveRefused) -> None:
        if refused.path:
            self.host.form.go_to_path(refused.path)
        if refused.reason in ("refused", "name"):
            self.host.say(str(refused))
            return
        verb = "overwrites" if refused.reason in ("exists", "changed") else "saves"
        shows = "v shows the changes, " if refused.reason == "changed" else ""
        question = f"{refused} {shows}y {verb}, Esc cancels"
        letters = "yv" if shows else "y"
        self.host.ask(Prompt(question, lambda letter: self._overwrite(letter, refused), letters=letters))

    def _overwrite(self, letter: str, refused: SaveRefused) -> None:
        desk = self.host.desk
        if letter == "v":
            self.host.program.show_differences(refused.differences)
            self._refused(refused)  # asked again, behind what is shown
        elif self._name:
            self._try(lambda: desk.prepared_as(self._name, overwrite=True))
        else:
            self._try(lambda: desk.prepared(overwrite=True))

    def keep_draft(self, then: FollowUp | None = None) -> None:
        """Write the draft beside the keys; `then` follows once it is kept. Says so where it is not."""
        self._after = then or self._after
        if self._is_keeping:
            self._again = True
            return
        self._is_keeping = True
        self.host.program.off_the_keys(self.host.desk.write_draft, self._draft_written, DRAFT_PATIENCE_S)

    def _draft_written(self, place: Path | FuelwizError | None) -> None:
        """A draft has come back from the disk."""
        self._is_keeping = False
        if self._again:
            self._again = False
            self.keep_draft()
            return
        then, self._after = self._after, None
        if isinstance(place, FuelwizError):
            self.kept = "draft not kept"
            self.host.say(f"The draft cannot be saved: {getattr(place, 'why', place)}")
        else:
            self.kept = f"{self.draft_kept} {datetime.now():%H:%M}"
            self._say_where(place)
            if then is not None:
                then()
        self.host.show_all()

    def _say_where(self, place: Path | None) -> None:
        """Say once that the draft could not be kept beside its build."""
        was_away, self._is_away = self._is_away, place is not None and place.parent != self.host.desk.folder
        if self._is_away and not was_away:
            self.host.say(
                f"This folder takes no draft: it is kept in {place and place.parent}, and found there."
            )

    def leave_for_list(self) -> None:
        """Back to the past builds."""
        self._leave(self.host.program.show_list)

    def leave_program(self) -> None:
        """End the program."""
        self._leave(self.host.program.leave)

    def _leave(self, go: FollowUp) -> None:
        """Leave the build; unsaved changes are asked about."""

        def leave() -> None:
            self.host.desk.storage.release()
            go()

        if not self.host.desk.dirty:
            self._drop_draft()  # of what was taken back a moment ago
            leave()
            return
        self.host.ask(
            Prompt(
                self.leave_question, lambda letter: self._leave_by(letter, leave), letters=self.leave_letters
            )
        )

    def _drop_draft(self) -> None:
        self._again = False
        self.host.desk.discard_draft()

    def _leave_by(self, letter: str, go: FollowUp) -> None:
        if letter == "x":
            self._drop_draft()
            go()
        elif letter == "k":
            self.keep_draft(go)
        else:
            self.save(go)
