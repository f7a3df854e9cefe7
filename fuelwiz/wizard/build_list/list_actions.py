"""What the actions of the list do."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from fuelwiz.errors import FuelwizError
from fuelwiz.store import folder as files
from fuelwiz.store.build_file import BuildFile
from fuelwiz.wizard.build_list.first_time import CHOICES
from fuelwiz.wizard.build_list.list_page import ListPage
from fuelwiz.wizard.build_list.list_state import BuildList
from fuelwiz.wizard.line_edit import LineEdit
from fuelwiz.wizard.program import Program
from fuelwiz.wizard.prompt import Prompt

NEVER_SAVED = "This build was never saved: Enter opens it, Ctrl+S saves it."


class ListActions:
    """The actions, by their id; the footer says what cannot be done."""

    def __init__(self, page: ListPage, program: Program, new: Callable[[], None]) -> None:
        self.page = page
        self.program = program
        self.handlers: dict[str, Callable[[], None]] = {
            "open": self.open,
            "new": new,
            "sample": program.open_sample,
            "copy": self.copy,
            "rename": self.rename,
            "delete": self.delete,
            "restore": self.restore,
            "mark": self.mark,
            "compare": self.compare,
            "filter": self.filter,
            "file": self.file,
            "folder": self.folder,
            "help": self.help,
            "quit": self.quit,
            "keys": self.keys,
        }

    @property
    def builds(self) -> BuildList:
        """The list."""
        return self.page.builds

    def do(self, name: str) -> None:
        """Do the action of that id."""
        self.handlers[name]()

    def read(self, *, at_a_glance: bool = False) -> None:
        """Read the folder anew; at a glance for a first paint."""
        try:
            self.builds.read(at_a_glance=at_a_glance)
        except FuelwizError as error:
            self._say(str(error))

    def clear_filter(self) -> None:
        """Show all builds again."""
        self.builds.filter(LineEdit())

    def _say(self, text: str) -> None:
        self.page.message = text

    def _ask(self, text: str, done: Callable[[str], None], start: str) -> None:
        self.page.prompt = Prompt(text, done, editor=LineEdit.marked(start))

    def open(self) -> None:
        """Open the build under the pointer, or do what an empty folder offers."""
        page, program = self.page, self.program
        if page.is_empty:
            self.do(CHOICES[page.choice][0])
            return
        entry = page.builds.entry
        if entry is None:
            self.do("new") if page.builds.has_new_row else None
        elif entry.fault and (entry := self._read_again(entry)).fault:
            self._say(f"{entry.file_name} cannot be opened until that is fixed.")
        elif entry.is_draft:
            self._open_draft(entry.path)
        else:
            program.open_build(entry.path)

    def _read_again(self, entry: BuildFile) -> BuildFile:
        """A build that could not be read, as its file stands now: somebody may have put it right meanwhile."""
        self.read()
        return self.builds.entry or entry

    def _open_draft(self, path: Path) -> None:
        """Go on with a draft; loads the desk, so only now."""
        from fuelwiz.desk.desk import Desk

        try:
            desk = Desk.from_draft(path)
        except FuelwizError as error:
            self._say(str(error))
        else:
            self.program.show_build(desk)

    def _saved_entry(self) -> BuildFile | None:
        """The build under the pointer, if it has a file; else the footer says why nothing is done."""
        entry = self.builds.entry
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
        if path is not None and not self.builds.point_at(path):
            self.clear_filter()
            self.builds.point_at(path)
        return path

    def copy(self) -> None:
        """Put a copy beside the build."""
        entry = self._saved_entry()
        if entry is not None and (path := self._try(lambda: files.copy(entry.path))) is not None:
            self._say(f"Copied to {path.name}.")

    def rename(self) -> None:
        """Give the build another name, file and all."""
        entry = self._saved_entry()
        if entry is not None:
            self._ask("New name:", lambda name: self._rename_to(entry, name), entry.name)

    def _rename_to(self, entry: BuildFile, name: str) -> None:
        path = self._try(lambda: files.rename(entry.path, name))
        if path is not None:
            self._say(f"Renamed; its file is now {path.name}.")

    def delete(self) -> None:
        """Put the build into the bin."""
        builds, entry = self.builds, self.builds.entry
        if entry is None:
            self._say("Put the pointer on a build first.")
            return
        at = builds.at
        try:
            files.put_in_bin(entry.path)
        except FuelwizError as error:
            self._say(str(error))
        else:
            self._say(f"Deleted: {entry.name}. u restores it.")
        self.read()
        builds.at = at
        builds.move(0)

    def restore(self) -> None:
        """Bring the last build back from the bin."""
        folder = self.builds.folder
        path = self._try(lambda: files.bring_back(folder))
        entry = self.builds.entry
        if path is not None and entry is not None:
            self._say(f"Restored: {entry.name}.")
        elif not self.page.message:
            self._say("The bin is empty.")

    def mark(self) -> None:
        """Mark the build to compare it."""
        builds = self.builds
        if not builds.mark():
            self._say("Only a saved build can be marked.")
            return
        if len(builds.marked) == 1:
            self._say("Marked. Mark another, or go to it and press x.")

    def compare(self) -> None:
        """Compare the marked builds."""
        paths = self.builds.to_compare()
        if len(paths) < 2:
            self._say("Mark two or more builds with Space first.")
        else:
            self.program.compare(paths)

    def filter(self) -> None:
        """Type a filter."""
        if not self.page.is_empty:
            self.builds.typing = True

    def file(self) -> None:
        """Open a build from another place."""
        self._ask("Which file?", self._open_file, "")

    def _open_file(self, text: str) -> None:
        for place in (_path(text), self.builds.folder / text):
            if _is_there(place, Path.is_file):
                self.program.open_build(place)
                return
        self._say(f"There is no file {text}.")

    def folder(self) -> None:
        """Show another folder of builds."""
        self._ask("Folder:", self._to_folder, str(self.builds.folder))

    def _to_folder(self, text: str) -> None:
        folder = _path(text)
        if not _is_there(folder, Path.is_dir):
            self._say(f"There is no folder {text}.")
            return
        page = self.page
        before, page.builds = page.builds, BuildList(folder, judged=page.builds.judged)
        try:
            page.builds.read()
        except FuelwizError as error:
            page.builds = before
            self._say(str(error))
        else:
            self.program.folder = folder

    def help(self) -> None:
        """Open the page on columns and marks."""
        self.page.mode = "help"
        self.page.scrolled = 0

    def quit(self) -> None:
        """Leave the program."""
        self.program.leave()

    def keys(self) -> None:
        """Open the page of all keys."""
        self.page.mode = "keys"


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
