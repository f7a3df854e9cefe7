"""Where a build on the desk comes from and goes to: its file, its draft, and a scratch copy."""

from __future__ import annotations

import os
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

from fuelwiz.desk import draft
from fuelwiz.desk.reading import is_well_formed, known_part
from fuelwiz.desk.saving import Paper
from fuelwiz.desk.state import State
from fuelwiz.document.file import load, read
from fuelwiz.errors import Fault, OutputError, SessionError
from fuelwiz.files import write_atomically
from fuelwiz.printable import clean
from fuelwiz.store.drafts import build_of, draft_of, new_draft_place


@dataclass(slots=True)
class Keeping:
    """The file of a build as it was last seen, and the place of its draft."""

    folder: Path
    path: Path | None = None
    paper: Paper = field(default_factory=Paper)
    draft: Path | None = None
    is_scratch: bool = False

    def write_draft(self, state: State, seen: frozenset[str]) -> Path | None:
        """Keep all that is told beside the build; a scratch copy is not kept. OutputError where it cannot be."""
        if self.is_scratch:
            return None
        if self.draft is None:
            self.draft = (
                new_draft_place(self.folder) if self.path is None else self._own_place(draft_of(self.path))
            )
        write_atomically(self.draft, draft.draft_text(state, seen, self.paper.digest))
        return self.draft

    def _own_place(self, place: Path) -> Path:
        """The draft's place beside the file; a draft that nobody came back to is kept as one without a file."""
        if os.path.lexists(place):
            with suppress(OSError, OutputError):
                os.replace(place, new_draft_place(self.folder))
        return place

    def discard_draft(self) -> None:
        """The draft that was written here, or come back to, is no longer wanted."""
        place, self.draft = self.draft, None
        if place is not None:
            with suppress(OSError):
                place.unlink()


def opened(path: Path) -> tuple[State, Keeping]:
    """A build from its file; one that is not there yet is empty. Its values are not read yet.

    Raises:
        SessionError: the file cannot be read, or holds keys that a save would lose.
    """
    if not os.path.lexists(path):
        return State({"format": 1}), Keeping(path.parent, path)
    document = read(path)
    if not is_well_formed(document.plain):
        load(path)
        raise SessionError(clean(str(path)), (Fault("", "holds something that a save would lose"),))
    return State(known_part(document.plain)), Keeping(path.parent, path, Paper.of(document.text))


def from_draft(place: Path) -> tuple[State, frozenset[str], State, Keeping]:
    """A build from its draft, the steps that were seen, and the build as its file has it.

    Raises:
        DraftError: the draft cannot be read.
    """
    contents = draft.read(place)
    path = build_of(place)
    saved, keeping = State({"format": 1}), Keeping(place.parent)
    if path is not None:
        try:
            saved, keeping = opened(path)
        except SessionError:
            keeping = Keeping(place.parent, path)
        keeping.paper = Paper(keeping.paper.text, contents.base)
    keeping.draft = place
    return contents.state, contents.seen, saved, keeping
