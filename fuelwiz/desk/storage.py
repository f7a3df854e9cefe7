"""Where a build comes from and goes to: its file, never written over what somebody else wrote, and its draft."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Any

import fuelwiz
from fuelwiz.advice import Result
from fuelwiz.advice.row import SPARE
from fuelwiz.advice.subject import Subject
from fuelwiz.desk import draft_text
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.outside_data import is_well_formed, known_part
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.refusals import Refusal
from fuelwiz.desk.state import State
from fuelwiz.document.file import load, read
from fuelwiz.document.merge import merge
from fuelwiz.errors import Fault, OutputError, SessionError
from fuelwiz.file_limits import LONGEST_NAME, MOST_BYTES
from fuelwiz.files import reason, write_atomically
from fuelwiz.printable import NO_BREAK, clean
from fuelwiz.session import inputs_digest
from fuelwiz.store.drafts import build_of, draft_of, new_draft_place
from fuelwiz.store.history import keep

_FIRST_LINE = "format = 1\n"


@dataclass(frozen=True, slots=True)
class FileSnapshot:
    """A file as it was last seen: its text, and a digest by which a change is noticed; both None for none."""

    text: str | None = None
    digest: str | None = None

    @classmethod
    def of(cls, text: str) -> FileSnapshot:
        """The file with a text."""
        return cls(text, _text_digest(text))


@dataclass(frozen=True, slots=True)
class Saved:
    """Where a build was written, and a sentence on what the file cannot hold; None where it holds all."""

    path: Path
    left_out: str | None


@dataclass(slots=True)
class Storage:
    """The file of a build as it was last seen, and the place of its draft; a scratch copy has neither."""

    folder: Path
    path: Path | None = None
    snapshot: FileSnapshot = field(default_factory=FileSnapshot)
    draft: Path | None = None
    is_scratch: bool = False

    def refuse_to_overwrite(self, target: Path) -> None:
        """Stops a save that would go over what has not been read here.

        Raises:
            SaveRefused: there is another build in that file, or somebody else has changed it.
        """
        if not os.path.lexists(target):
            return
        if target != self.path or self.snapshot.digest is None:
            raise SaveRefused("exists", f"{clean(target.name)} already exists. Overwrite it?")
        try:
            same = _text_digest(read(target).text) == self.snapshot.digest
        except SessionError:
            same = False
        if not same:
            raise SaveRefused(
                "changed",
                f"{clean(target.name)} was changed outside this program since you opened it. Overwrite it?",
            )

    def write(self, target: Path, plain: Plain, result: Result) -> None:
        """Writes a build into a file, which is its own from now on; its draft goes.

        Raises:
            SaveRefused: it is too large for a session file.
            OutputError: the file cannot be written.
        """
        text = merge(self.snapshot.text or _FIRST_LINE, {**plain, "record": record_of(result)})
        if len(text.encode("utf-8")) > MOST_BYTES:
            raise SaveRefused(
                "refused", f"Not saved: the file would be over {MOST_BYTES // 1024} KiB. Shorten the notes."
            )
        try:
            target.parent.mkdir(parents=True, exist_ok=True)
        except (OSError, ValueError) as error:
            raise OutputError(f"{clean(str(target.parent))}: cannot be made: {reason(error)}") from None
        keep(target, text)
        write_atomically(target, text)
        self.discard_draft()
        self.folder, self.path, self.snapshot = target.parent, target, FileSnapshot.of(text)
        self.is_scratch = False

    def write_draft(self, state: State, seen: frozenset[str]) -> Path | None:
        """Keeps all that is told beside the build; a scratch copy is not kept. OutputError where it cannot be."""
        if self.is_scratch:
            return None
        if self.draft is None:
            self.draft = new_draft_place(self.folder) if self.path is None else self._own_place(self.path)
        write_atomically(self.draft, draft_text.written(state, seen, self.snapshot.digest))
        return self.draft

    def _own_place(self, path: Path) -> Path:
        """The draft's place beside the file; a draft that nobody came back to is kept as one without a file."""
        place = draft_of(path)
        if os.path.lexists(place):
            with suppress(OSError, OutputError):
                os.replace(place, new_draft_place(self.folder))
        return place

    def discard_draft(self) -> None:
        """Deletes the draft that was written here, or come back to."""
        place, self.draft = self.draft, None
        if place is not None:
            with suppress(OSError):
                place.unlink()


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
    return State(known_part(document.plain)), Storage(path.parent, path, FileSnapshot.of(document.text))


def open_draft(place: Path) -> tuple[State, frozenset[str], State, Storage]:
    """A build from its draft, the steps that were seen, and the build as its file has it.

    Raises:
        DraftError: the draft cannot be read.
    """
    contents = draft_text.read(place)
    path = build_of(place)
    saved, storage = State({"format": 1}), Storage(place.parent)
    if path is not None:
        try:
            saved, storage = open_file(path)
        except SessionError:
            storage = Storage(place.parent, path)
        storage.snapshot = FileSnapshot(storage.snapshot.text, contents.base)
    storage.draft = place
    return contents.state, contents.seen, saved, storage


def _text_digest(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def record_of(result: Result) -> dict[str, Any]:
    """What the program says of a build today, as a file keeps it."""
    session, figures, words = result.session, result.figures, result.words
    record: dict[str, Any] = {
        "inputs": inputs_digest(session),
        "saved": date.today().isoformat(),
        "version": fuelwiz.__version__,
    }
    if figures.verdict.works is not None:
        record["works"] = figures.verdict.works
    margin = SPARE.figure(Subject(session, figures), figures.pick)
    if margin is not None:
        record["margin"] = margin.replace(NO_BREAK, " ")
    record["answer"] = clean(words.answer.replace(NO_BREAK, " "))
    return record


def allowed_name(name: str) -> str:
    """A name that a build may be saved under.

    Raises:
        SaveRefused: it is empty, or too long.
    """
    name = clean(name).strip()
    if not name:
        raise SaveRefused("name", "Not saved: enter a name.")
    if len(name) > LONGEST_NAME:
        raise SaveRefused(
            "name", f"Not saved: the name has {len(name)} characters; the limit is {LONGEST_NAME}."
        )
    return name


def refuse_unfinished(refusals: Mapping[str, Refusal], result: Result | None) -> Result:
    """Stops a save where a field holds something that is refused, or where the power is not known.

    Raises:
        SaveRefused: it names the first such field.
    """
    if refusals:
        path, refusal = next(iter(refusals.items()))
        raise SaveRefused("refused", f"Not saved. Check {noun_of(path)}: {refusal.short}.", path)
    if result is None:
        raise SaveRefused("refused", "Not saved: enter the power wanted first.", "goal.power")
    return result


def left_out(saved: Plain, given: Plain) -> str | None:
    """What a file cannot hold of what is told, in a sentence; None where it holds all."""
    if "pump" in given and "pump" not in saved:
        return "The pump is saved once it has a flow figure."
    return None
