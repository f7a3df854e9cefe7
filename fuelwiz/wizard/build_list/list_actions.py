"""What the actions of the list do."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.errors import FuelwizError
from fuelwiz.store import folder as files
from fuelwiz.store.build_file import BuildFile, draft_of
from fuelwiz.wizard.build_list.first_time import CHOICES
from fuelwiz.wizard.build_list.list_state import BuildList
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.prompt import Prompt

if TYPE_CHECKING:
    from fuelwiz.wizard.build_list.list_screen import BuildListScreen

OFFER = "d: go on with the draft, s: what is saved, Esc: stay"
NEVER_SAVED = "This build was never saved: Enter opens it, Ctrl+S saves it."


class ListActions:
    """The actions, by their id; what cannot be done is said in the footer."""

    def __init__(self, screen: BuildListScreen) -> None:
        self.screen = screen

    def do(self, name: str) -> None:
        """Do the action of that id."""
        act: Callable[[], None] = getattr(self, f"_{name}")
        act()

    def read(self) -> None:
        """Read the folder anew."""
        try:
            self.screen.builds.read()
        except FuelwizError as error:
            self._say(str(error))

    def clear_filter(self) -> None:
        """Show all builds again."""
        self.screen.builds.filter(LineEdit())

    def _say(self, text: str) -> None:
        self.screen.page.said = text

    def _ask(self, text: str, done: Callable[[str], None], start: str) -> None:
        self.screen.page.prompt = Prompt(text, done, editor=LineEdit.at_end(start))

    def _open(self) -> None:
        page, wizard = self.screen.page, self.screen.wizard
        if page.is_empty:
            self.do(CHOICES[page.choice][0])
            return
        entry = page.builds.entry
        if entry is None:
            self._new() if page.builds.has_new_row else None
        elif entry.fault and (entry := self._read_again(entry)).fault:
            self._say(f"{entry.file_name} cannot be opened before that is put right.")
        elif entry.is_draft:
            self._open_draft(entry.path)
        elif entry.has_draft:
            self._offer_draft(entry)
        else:
            wizard.open_build(entry.path)

    def _read_again(self, entry: BuildFile) -> BuildFile:
        """A build that could not be read, as its file stands now: somebody may have put it right meanwhile."""
        self.read()
        return self.screen.builds.entry or entry

    def _offer_draft(self, entry: BuildFile) -> None:
        """Ask whether to go on with work that was kept but not saved."""

        def answered(letter: str) -> None:
            if letter == "d":
                self._open_draft(draft_of(entry.path))
            else:
                self.screen.wizard.open_build(entry.path)

        self.screen.page.prompt = Prompt(OFFER, answered, letters="ds")

    def _open_draft(self, path: Path) -> None:
        """Go on with a draft; loads the desk, so only now."""
        from fuelwiz.desk.desk import Desk
        from fuelwiz.wizard.editor.build_screen import BuildScreen

        try:
            desk = Desk.from_draft(path)
        except FuelwizError as error:
            self._say(str(error))
        else:
            self.screen.app.switch_screen(BuildScreen(desk))

    def _new(self) -> None:
        self.screen.wizard.new_build()

    def _sample(self) -> None:
        self.screen.wizard.open_sample()

    def _saved_entry(self) -> BuildFile | None:
        """The build under the pointer, if it has a file; else it is said why nothing is done."""
        entry = self.screen.builds.entry
        if entry is None:
            self._say("Put the pointer on a build first.")
        elif entry.is_draft:
            self._say(NEVER_SAVED)
        else:
            return entry
        return None

    def _try(self, act: Callable[[], Path | None]) -> Path | None:
        """Change something in the folder, and read it anew; the pointer goes to the file that came of it."""
        try:
            path = act()
        except FuelwizError as error:
            self._say(str(error))
            path = None
        self.read()
        if path is not None and not self.screen.builds.point_at(path):
            self.clear_filter()
            self.screen.builds.point_at(path)
        return path

    def _copy(self) -> None:
        entry = self._saved_entry()
        if entry is not None and (path := self._try(lambda: files.copy(entry.path))) is not None:
            self._say(f"Copied into {path.name}.")

    def _rename(self) -> None:
        entry = self._saved_entry()
        if entry is not None:
            self._ask("New name:", lambda name: self._rename_to(entry, name), entry.name)

    def _rename_to(self, entry: BuildFile, name: str) -> None:
        path = self._try(lambda: files.rename(entry.path, name))
        if path is not None:
            self._say(f"Renamed; its file is {path.name} now.")

    def _delete(self) -> None:
        builds, entry = self.screen.builds, self.screen.builds.entry
        if entry is None:
            self._say("Put the pointer on a build first.")
            return
        at = builds.at
        try:
            files.put_in_bin(entry.path)
        except FuelwizError as error:
            self._say(str(error))
        else:
            self._say(f"Deleted: {entry.name}. u brings it back.")
        self.read()
        builds.at = at
        builds.move(0)

    def _restore(self) -> None:
        folder = self.screen.builds.folder
        path = self._try(lambda: files.bring_back(folder))
        entry = self.screen.builds.entry
        if path is not None and entry is not None:
            self._say(f"Back again: {entry.name}.")
        elif not self.screen.page.said:
            self._say("The bin is empty: there is nothing to bring back.")

    def _mark(self) -> None:
        builds = self.screen.builds
        if not builds.mark():
            self._say("Only a saved build can be marked.")
            return
        if len(builds.marked) == 1:
            self._say("Marked. Mark another one, or go to it and press x.")

    def _compare(self) -> None:
        paths = self.screen.builds.to_compare()
        if len(paths) < 2:
            self._say("Mark two builds or more with Space first.")
        else:
            self.screen.wizard.compare(paths)

    def _filter(self) -> None:
        if not self.screen.page.is_empty:
            self.screen.builds.typing = True

    def _file(self) -> None:
        self._ask("Which file?", self._open_file, "")

    def _open_file(self, text: str) -> None:
        for place in (_path(text), self.screen.builds.folder / text):
            if _is_there(place, Path.is_file):
                self.screen.wizard.open_build(place)
                return
        self._say(f"There is no file {text}.")

    def _folder(self) -> None:
        self._ask("Folder:", self._to_folder, str(self.screen.builds.folder))

    def _to_folder(self, text: str) -> None:
        folder = _path(text)
        if not _is_there(folder, Path.is_dir):
            self._say(f"There is no folder {text}.")
            return
        page = self.screen.page
        before, page.builds = page.builds, BuildList(folder, judged=page.builds.judged)
        try:
            page.builds.read()
        except FuelwizError as error:
            page.builds = before
            self._say(str(error))
        else:
            self.screen.wizard.folder = folder

    def _help(self) -> None:
        self.screen.page.mode = "help"
        self.screen.page.scrolled = 0

    def _quit(self) -> None:
        self.screen.wizard.leave()

    def _keys(self) -> None:
        self.screen.page.mode = "keys"


def _path(text: str) -> Path:
    """A path as people type it, with ~ for their home."""
    try:
        return Path(text).expanduser()
    except RuntimeError:
        return Path(text)


def _is_there(path: Path, kind: Callable[[Path], bool]) -> bool:
    try:
        return kind(path)
    except (OSError, ValueError):
        return False
