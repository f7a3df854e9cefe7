"""Saving a build, keeping its draft, writing its report, and leaving it: what is asked and what is answered."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.storage import Saved
from fuelwiz.errors import FuelwizError
from fuelwiz.store.folder import file_name
from fuelwiz.wizard.editor.host import Host
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

FollowUp = Callable[[], None]


class SaveDialog:
    """What becomes of the build on a screen's desk; `kept` is what the top line shows of it."""

    leave_question = "Not saved yet: s saves, k keeps a draft, x discards the changes, Esc stays"
    leave_letters = "skx"

    def __init__(self, host: Host) -> None:
        self.host = host
        self.kept = ""
        self._name = ""
        self._then: FollowUp | None = None

    def save(self, then: FollowUp | None = None) -> None:
        """Save under the build's file, asking for a name where it has none; `then` follows once it is saved."""
        if self.host.desk.path is None:
            self.save_as(then)
            return
        self._then, self._name = then, ""
        self._try(self.host.desk.save)

    def save_as(self, then: FollowUp | None = None) -> None:
        """Save under a name that is asked for."""
        self._then = then
        desk = self.host.desk
        self._ask_name("Save as:", desk.name if desk.is_given("name") else "")

    def _ask_name(self, question: str, name: str) -> None:
        self.host.ask(Prompt(question, self._save_under, editor=LineEdit.at_end(name)))

    def _save_under(self, name: str) -> None:
        self._name = name
        self._try(lambda: self.host.desk.save_as(name))

    def _try(self, save: Callable[[], Saved]) -> None:
        """Save, and say how it went; where a file stands in the way, ask."""
        try:
            saved = save()
        except SaveRefused as refused:
            self._refused(refused)
            return
        except FuelwizError as error:
            self.host.say(str(error))
            return
        self.kept = f"saved {datetime.now():%H:%M}"
        self.host.say(f"Saved: {saved.path.name}. {saved.left_out or ''}".rstrip())
        if self._then is not None:
            self._then()

    def _refused(self, refused: SaveRefused) -> None:
        if refused.path:
            self.host.form.go_to_path(refused.path)
        if refused.reason in ("exists", "changed"):
            question = f"{refused} y overwrites, Esc cancels"
            self.host.ask(Prompt(question, self._overwrite, letters="y"))
        else:
            self.host.say(str(refused))

    def _overwrite(self, letter: str) -> None:
        desk = self.host.desk
        if self._name:
            self._try(lambda: desk.save_as(self._name, overwrite=True))
        else:
            self._try(lambda: desk.save(overwrite=True))

    def keep_draft(self) -> None:
        """Write the draft; says once where that is not possible."""
        try:
            self.host.desk.write_draft()
        except FuelwizError as error:
            self.kept = "draft not kept"
            self.host.say(f"The draft cannot be saved: {error}")
        else:
            self.kept = f"draft kept {datetime.now():%H:%M}"

    def offer_draft(self, path: Path) -> None:
        """A draft was kept that is newer than the file: offer to go on with it."""

        def answered(letter: str) -> None:
            try:
                self.host.program.show_build(Desk.from_draft(path))
            except FuelwizError as error:
                self.host.say(str(error))

        question = "There is a newer draft: d opens it, Esc stays with the saved file"
        self.host.ask(Prompt(question, answered, letters="d"))

    def leave_for_list(self) -> None:
        """Back to the past builds."""
        self._leave(self.host.program.show_list)

    def leave_program(self) -> None:
        """End the program."""
        self._leave(self.host.program.leave)

    def _leave(self, go: FollowUp) -> None:
        """Leave the build; unsaved changes are asked about."""
        if not self.host.desk.dirty:
            go()
            return

        self.host.ask(
            Prompt(self.leave_question, lambda letter: self._leave_by(letter, go), letters=self.leave_letters)
        )

    def _leave_by(self, letter: str, go: FollowUp) -> None:
        if letter == "x":
            self.host.desk.discard_draft()
            go()
        elif letter == "k":
            self.keep_draft()
            go()
        else:
            self.save(go)

    def write_report(self) -> None:
        """Write the report of the build to a text file whose name is asked for."""
        desk = self.host.desk
        if desk.result is None:
            self.host.say("There is no report to write yet: the power is missing.")
            return
        name = f"{file_name(desk.name).removesuffix('.toml')}-report.txt"
        self.host.ask(Prompt("Write the report to:", self._write_to, editor=LineEdit.at_end(name)))

    def _write_to(self, name: str) -> None:
        from fuelwiz.report import write_report

        desk = self.host.desk
        desk.fill_in(math.inf)
        assert desk.result is not None
        try:
            path = write_report(desk.result, desk.folder / name)
        except FuelwizError as error:
            self.host.say(str(error))
        else:
            self.host.say(f"Written: {path}")
