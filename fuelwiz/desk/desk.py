"""One build on the desk, without a screen: told, answered, kept in its file and in a draft."""

from __future__ import annotations

from pathlib import Path

from fuelwiz.desk.board import Board
from fuelwiz.desk.errors import SaveRefused
from fuelwiz.desk.keeping import Keeping, from_draft, opened
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.reading import sorted_out
from fuelwiz.desk.saving import Paper, Saved, left_out, refuse_to_overwrite, refuse_unfinished, written
from fuelwiz.desk.state import State
from fuelwiz.document.changes import Change, changes
from fuelwiz.file_limits import LONGEST_NAME
from fuelwiz.printable import clean
from fuelwiz.store.folder import file_name


class Desk(Board):
    """A board with a file and a draft."""

    def __init__(self, state: State, keeping: Keeping, *, saved: State | None = None) -> None:
        super().__init__(state)
        self.origin: Desk | None = None
        self._keeping = keeping
        self._saved = state if saved is None else saved

    @classmethod
    def new(cls, folder: Path, name: str = "") -> Desk:
        """An empty build that is to be saved in a folder."""
        plain: Plain = {"format": 1}
        return cls(State({**plain, "name": name} if name else plain), Keeping(folder))

    @classmethod
    def open(cls, path: Path) -> Desk:
        """A build from its file; where there is none, an empty one to be saved there.

        Raises:
            SessionError: the file cannot be read, or holds keys that a save would lose.
        """
        return cls(*opened(path))

    @classmethod
    def from_draft(cls, place: Path) -> Desk:
        """A build as its draft has it, refused texts and all. DraftError where it cannot be read."""
        state, seen, saved, keeping = from_draft(place)
        desk = cls(state, keeping, saved=saved)
        desk._seen |= seen
        return desk

    def what_if(self) -> Desk:
        """A scratch copy to try things on; it has no file and keeps no draft until it is saved under a name."""
        copy = Desk(self._state, Keeping(self.folder, paper=Paper(self._keeping.paper.text), is_scratch=True))
        copy.origin = self
        copy._seen = set(self._seen)
        copy.update()
        return copy

    def begun(self) -> Desk:
        """The same build as one that has just been begun: nothing to undo, and nothing unsaved until it is changed."""
        return Desk(self._state, Keeping(self.folder))

    @property
    def folder(self) -> Path:
        """Where the build is kept, or will be."""
        return self._keeping.folder

    @property
    def path(self) -> Path | None:
        """The build's file; None for one that was never saved."""
        return self._keeping.path

    @property
    def dirty(self) -> bool:
        """Whether anything is told that is not saved."""
        return not self._state.same(self._saved)

    def save(self, path: Path | None = None, *, overwrite: bool = False) -> Saved:
        """Write the build to its file, or to another, with what the program says of it today.

        Raises:
            SaveRefused: a field holds something refused, or a file stands in the way and `overwrite` is false.
            OutputError: the file cannot be written.
        """
        keeping, target = self._keeping, path or self.path
        refuse_unfinished(self._refusals, self.result)
        if target is None:
            raise SaveRefused("name", "Not saved: the build wants a name first.")
        if not overwrite:
            refuse_to_overwrite(target, keeping.paper, target == keeping.path)
        self.finish()
        assert self.result is not None
        paper = written(target, keeping.paper, self.plain, self.result)
        keeping.discard_draft()
        self._keeping = Keeping(target.parent, target, paper)
        self._saved = self._state
        self.update()
        self.finish()
        return Saved(target, left_out(self.plain, self._state.plain))

    def save_as(self, name: str, *, overwrite: bool = False) -> Saved:
        """Write the build under a name, in a file called after it; raises as `save` does."""
        name = clean(name).strip()
        if not 0 < len(name) <= LONGEST_NAME:
            raise SaveRefused(
                "name", f"Not saved: a name has 1 to {LONGEST_NAME} characters, this one {len(name)}."
            )
        target = self.folder / file_name(name)
        refuse_unfinished(self._refusals, self.result)
        if not overwrite:
            refuse_to_overwrite(target, self._keeping.paper, target == self.path)
        if self._state.plain.get("name") != name:
            self._change("name", self._state.with_value("name", name))
        return self.save(target, overwrite=True)

    def write_draft(self) -> Path | None:
        """Keep all that is told, refused or not, beside the build; its place, None where nothing is unsaved.

        Raises:
            OutputError: it cannot be written.
        """
        if not self.dirty:
            self.discard_draft()
            return None
        return self._keeping.write_draft(self._state, frozenset(self._seen))

    def discard_draft(self) -> None:
        """The draft that was written here, or come back to, is no longer wanted."""
        self._keeping.discard_draft()

    @property
    def _default_name(self) -> str:
        return self.path.name.removesuffix(".toml") if self.path is not None else super()._default_name

    def _warm_up(self) -> None:
        same = self._saved is self._state
        super()._warm_up()
        self._saved = self._state if same else sorted_out(self._saved)


def diff(before: Desk, after: Desk) -> tuple[Change, ...]:
    """What two builds say differently, key by key."""
    return changes(before.plain, after.plain, into_absent=True)
