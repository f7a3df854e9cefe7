"""Where a build comes from and goes to: its file, never written over what somebody else wrote, and its draft."""

from __future__ import annotations

import hashlib
import os
import threading
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from fuelwiz.advice import Result
from fuelwiz.desk import draft_text
from fuelwiz.desk.exceptions import OnlyLooks, SaveRefused
from fuelwiz.desk.measuring import what_measured, with_what_measured, without_what_is_typed_over
from fuelwiz.desk.outside_data import is_well_formed, known_part
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.save_rules import record_of
from fuelwiz.desk.state import State
from fuelwiz.document.file import load, read
from fuelwiz.errors import Fault, OutputError, SessionError
from fuelwiz.file_limits import LONGEST_NAME, MOST_BYTES
from fuelwiz.files import changed_by_a_save, reason, write_atomically
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.store.drafts import Draft, build_of, read_draft, remove_abandoned
from fuelwiz.store.lock import Lock, alone_in, owner_of, take
from fuelwiz.store.sitting import Sitting

_FIRST_LINE = "format = 1\n"


if TYPE_CHECKING:
    from fuelwiz.store.own_draft import OwnDraft


@record
class FileSnapshot:
    """A file as it was last seen: its text, and a digest by which a change is noticed; both None for none."""

    text: str | None = None
    digest: str | None = None

    @classmethod
    def of(cls, text: str) -> FileSnapshot:
        """The file with a text."""
        return cls(text, _text_digest(text))


@record
class Saved:
    """Where a build was written, and a sentence on what the file cannot hold; None where it holds all."""

    path: Path
    left_out: str | None


@dataclass(slots=True)
class Storage:
    """The file of a build as it was last seen, and the place of its draft.

    `scratch_of` names the build that a scratch copy is of: it has no file, and its draft says what it is.
    `sitting` is who works at it, `lock` what holds the file for it, `goes_on_beside` whether it works in a file that
    another holds by its own choice, `looks_at` whose build is only looked at, `came_from` the draft that it goes on
    with.
    Drafts and saves may be written by another thread, each in its `turn`.
    """

    folder: Path
    path: Path | None = None
    snapshot: FileSnapshot = field(default_factory=FileSnapshot)
    scratch_of: str | None = None
    came_from: Draft | None = None
    sitting: Sitting = field(default_factory=Sitting.new)
    lock: Lock | None = None
    turn: threading.RLock = field(default_factory=threading.RLock)
    goes_on_beside: bool = False
    looks_at: Sitting | None = None
    _own_draft: OwnDraft | None = None
    _refused: str | None = None

    def hold(self, *, by_force: bool = False) -> Sitting | None:
        """Hold the build's file for this sitting; who else has it open, None where nobody has."""
        if self.path is None or self.lock is not None:
            return None
        taken = take(self.path, self.sitting, by_force=by_force)
        self.lock = taken if isinstance(taken, Lock) else None
        return taken if isinstance(taken, Sitting) else None

    def refuse_to_change(self) -> None:
        """Stops a change to a build that is only looked at; once its owner has left it as it was, it may be changed.

        Raises:
            OnlyLooks: it says whose it is.
        """
        owner = self.looks_at
        if owner is None or self.path is None:
            return
        if owner_of(self.path) is None:
            if _digest_of(self.path) != self.snapshot.digest:
                raise OnlyLooks(
                    "You only look: this build was saved elsewhere since. Open it again to change it."
                )
            self.looks_at = owner = self.hold()
        if owner is not None:
            whose = f"this build is open {owner.words}"
            raise OnlyLooks(f"You only look: {whose}. Save it under another name to change it there.")

    def release(self) -> None:
        """Let go of the build's file."""
        lock, self.lock = self.lock, None
        if lock is not None:
            lock.release()

    def scratch(self, name: str) -> Storage:
        """That of a copy to try things on, of the build of that name: what the file says, and no file."""
        return Storage(self.folder, snapshot=FileSnapshot(self.snapshot.text), scratch_of=name)

    def refuse_to_overwrite(self, target: Path) -> None:
        """Stops a save that would go over what has not been read here, or take a file from its owner.

        Raises:
            SaveRefused: there is another build in that file, or somebody else has changed it or owns it.
        """
        if not os.path.lexists(target):
            return
        if target != self.path or self.snapshot.digest is None:
            self._refused = _digest_of(target)
            raise SaveRefused("exists", f"{clean(target.name)} already exists. Overwrite it?")
        self._refused = _digest_of(target)
        if self._refused != self.snapshot.digest:
            from fuelwiz.desk.change_words import change_lines
            from fuelwiz.store.history import changed_outside

            found = change_lines(changed_outside(self.snapshot.text, target))
            words = (
                f"{clean(target.name)} was changed outside this program since you opened it. Overwrite it?"
            )
            raise SaveRefused("changed", words, differences=found)
        owner = owner_of(target) if self.lock is None and not self.goes_on_beside else None
        if owner is not None:
            raise SaveRefused("held", f"{clean(target.name)} is open {owner.words}. Save it all the same?")
        lost = changed_by_a_save(target)
        if lost is not None:
            raise SaveRefused("owner", f"{clean(target.name)}: a save changes its {lost}. Save it?")

    def text_of(self, plain: Plain, result: Result, measured: Mapping[str, str]) -> str:
        """What a file is to say: the build merged into what was read of it, and what the program says today.

        Raises:
            SaveRefused: it is too large for a session file.
        """
        from fuelwiz.document.merge import merge  # a first answer writes nothing

        text = without_what_is_typed_over(self.snapshot.text or _FIRST_LINE, measured)
        text = merge(text, {**plain, "record": record_of(result)})
        text = with_what_measured(text, measured)
        if len(text.encode("utf-8")) > MOST_BYTES:
            raise SaveRefused(
                "refused", f"Not saved: the file would be over {MOST_BYTES // 1024} KiB. Shorten the notes."
            )
        return text

    def write(self, target: Path, text: str, *, overwrite: bool) -> None:
        """Writes a build into a file, which is its own from now on; its draft goes.

        Args:
            target: the file.
            text: what is to stand in it.
            overwrite: whether what was refused before may be written over; what came there since may not.

        Raises:
            SaveRefused: something stands in the way.
            OutputError: the file cannot be written.
        """
        from fuelwiz.store.history import keep

        try:
            target.parent.mkdir(parents=True, exist_ok=True)
        except (OSError, ValueError) as error:
            raise OutputError(f"{clean(str(target.parent))}: cannot be made: {reason(error)}") from None
        if target == self.path:
            self.refuse_to_change()
        with self.turn, alone_in(target.parent):
            if not overwrite or self._came_since(target):
                self.refuse_to_overwrite(target)
            was_held = self.lock is not None or self.path is None
            keep(target, text)
            write_atomically(target, text)
            self.discard_draft()
            if target != self.path:
                self.release()
            self.folder, self.path, self.snapshot = target.parent, target, FileSnapshot.of(text)
            self.scratch_of = self.looks_at = self._refused = None
            if was_held:
                self.hold()

    def _came_since(self, target: Path) -> bool:
        """Whether a file says something else than when a save over it was refused."""
        return self._refused is not None and _digest_of(target) not in (self._refused, None)

    def write_draft(
        self, state: State, seen: frozenset[str], table: draft_text.Table = ("", "")
    ) -> Path | None:
        """Keeps all that is told beside the build. OutputError where it cannot be."""
        if self.looks_at is not None:
            return None
        if self.scratch_of is not None and state.plain.get("name") in (None, self.scratch_of):
            state = state.with_value("name", f"what if: {self.scratch_of}"[:LONGEST_NAME])
        if self._own_draft is None:
            from fuelwiz.store.own_draft import OwnDraft

            self._own_draft = OwnDraft(self.folder, self.path)
        own = self._own_draft
        of = None if self.path is None else self.path.name
        text = draft_text.written(
            state,
            seen,
            self.snapshot.digest,
            sitting=self.sitting,
            of=of,
            folder=str(self.folder.absolute()),
            table=table,
        )
        place = own.write(text)
        self._leave_where_it_came_from()
        return place

    def discard_draft(self) -> None:
        """Deletes the draft that was written here, or come back to."""
        with self.turn:
            own, self._own_draft = self._own_draft, None
            if own is not None:
                own.remove()
            self._leave_where_it_came_from()

    def _leave_where_it_came_from(self) -> None:
        """Deletes the draft that was come back to, where nobody works at it or has changed it since."""
        draft, self.came_from = self.came_from, None
        if draft is not None:
            remove_abandoned(draft)


@record
class Save:
    """A save that waits for the disk: another thread may do that part of it."""

    storage: Storage
    target: Path
    text: str
    state: State
    overwrite: bool

    def written(self) -> Save:
        """The same, once the file is written; raises as `Storage.write` does."""
        self.storage.write(self.target, self.text, overwrite=self.overwrite)
        return self


def open_file(path: Path) -> tuple[State, Storage]:
    """A build from its file; one that is not there yet is empty. Its values are not read yet.

    Raises:
        SessionError: the file cannot be read, or holds keys that a save would lose.
    """
    if not os.path.lexists(path):
        return State({"format": 1}), Storage(path.parent, path)
    document = read(path)
    if not is_well_formed(document.plain):
        load(path)
        raise SessionError(clean(str(path)), (Fault("", "holds something that a save would lose"),))
    state = State(known_part(document.plain), measured=what_measured(document.text))
    return state, Storage(path.parent, path, FileSnapshot.of(document.text))


def open_draft(place: Path) -> tuple[draft_text.Contents, State, Storage]:
    """What a draft holds, and the build as its file has it.

    Raises:
        DraftError: the draft cannot be read.
    """
    draft = read_draft(place)
    contents = draft_text.read(place)
    path = build_of(place) if draft is None else draft.build
    saved, storage = State({"format": 1}), Storage(place.parent if draft is None else draft.folder)
    if path is not None:
        try:
            saved, storage = open_file(path)
        except SessionError:
            storage = Storage(path.parent, path)
        storage.snapshot = FileSnapshot(storage.snapshot.text, contents.base)
    storage.came_from = draft
    return contents, saved, storage


def _digest_of(target: Path) -> str | None:
    """The digest of a file's text; None where it cannot be read."""
    try:
        return _text_digest(read(target).text)
    except SessionError:
        return None


def _text_digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()
