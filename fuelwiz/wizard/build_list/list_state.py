"""The list without a screen: which builds show, where the pointer is, what is marked, what is known of each."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime
from itertools import islice
from pathlib import Path

from fuelwiz.store.build_file import BuildFile
from fuelwiz.store.drafts import build_name
from fuelwiz.store.folder import Listing, listing
from fuelwiz.wizard.build_list.judged import Judged
from fuelwiz.wizard.line_edit import LineEdit

Key = tuple[Path, int]

FIRST = 40
"""How many builds are read before the list is shown: more than a screen has rows."""


@dataclass(slots=True)
class BuildList:
    """The builds of a folder. Drafts of builds that were never saved come first, a row for a new build last.

    `at` is the row under the pointer, `needle` the filter, `typing` whether keys go into it.
    """

    folder: Path
    entries: list[BuildFile] = field(default_factory=list)
    judged: dict[Key, Judged] = field(default_factory=dict)
    at: int = 0
    first: int = 0
    marked: list[Path] = field(default_factory=list)
    needle: LineEdit = field(default_factory=LineEdit)
    typing: bool = False
    listing: Listing | None = None
    _shown: tuple[object, list[BuildFile]] = (None, [])
    _learned: int = 0

    def read(self, *, at_a_glance: bool = False) -> None:
        """Read the folder anew; the pointer stays on its build, marks stay where the build is still there.

        Of a long list the first builds are read; the others are names until they are filled in.

        Args:
            at_a_glance: whether a file with anything unusual in it is no more than a name for now.

        Raises:
            SessionError: the folder cannot be read.
        """
        on = self.entry
        before, self.entries = self.entries, []
        found = self.listing = listing(self.folder)
        drafted = set(map(build_name, found.names_of_drafts))
        known = {
            (entry.path, entry.changed): entry for entry in before if entry.is_read and not entry.has_draft
        }
        builds = [
            known.get((entry.path, entry.changed), entry) if entry.path.name not in drafted else entry
            for entry in found.builds
        ]
        self.entries = [*found.drafts, *builds]
        look = found.glance if at_a_glance else found.read
        self.fill([look(entry) for entry in self.unread(FIRST)])
        there = {entry.path for entry in self.entries}
        self.marked = [path for path in self.marked if path in there]
        if on is not None:
            self.point_at(on.path)
        self.move(0)

    def unread(self, most: int) -> list[BuildFile]:
        """The first builds that are no more than names so far."""
        return list(islice((entry for entry in self.entries if not entry.is_read), most))

    def fill(self, read: list[BuildFile]) -> None:
        """Put in what files say that were names so far; the pointer stays on its build."""
        on = self.entry
        by_path = {entry.path: entry for entry in read}
        self.entries = [by_path.get(entry.path, entry) for entry in self.entries]
        if on is not None and self.needle.text:
            self.point_at(on.path)

    @property
    def rows(self) -> list[BuildFile]:
        """The builds that the filter lets through."""
        words = self.needle.text.casefold().split()
        if not words:
            return self.entries
        asked_for = (words, id(self.entries), len(self.entries), self._learned)
        if self._shown[0] != asked_for:
            texts = [(entry, self._text(entry)) for entry in self.entries]
            rows = [entry for entry, text in texts if all(word in text for word in words)]
            self._shown = (asked_for, rows)
        return self._shown[1]

    @property
    def has_new_row(self) -> bool:
        """Whether the list ends in a row for a new build; a filtered one does not."""
        return not self.needle.text

    @property
    def entry(self) -> BuildFile | None:
        """The build under the pointer; None on the row for a new one."""
        rows = self.rows
        return rows[self.at] if self.at < len(rows) else None

    def known(self, entry: BuildFile | None) -> Judged | None:
        """What a build comes to, where that has been calculated since it was last changed."""
        return self.judged.get((entry.path, entry.changed)) if entry is not None else None

    def learn(self, entry: BuildFile, judged: Judged) -> None:
        """Keep what a build comes to."""
        on = self.entry
        self.judged[entry.path, entry.changed] = judged
        self._learned += 1
        if on is not None and self.needle.text:
            self.point_at(on.path)

    def move(self, rows: int) -> None:
        """Move the pointer, as far as there are rows."""
        last = len(self.rows) - (0 if self.has_new_row else 1)
        self.at = min(max(self.at + rows, 0), max(last, 0))

    def point_at(self, path: Path) -> bool:
        """Put the pointer on a build; false where the list does not show it."""
        place = next((at for at, entry in enumerate(self.rows) if entry.path == path), None)
        if place is not None:
            self.at = place
        return place is not None

    def window(self, height: int) -> range:
        """Which rows show in that many lines; as few as needed move when the pointer leaves them."""
        count = len(self.rows) + self.has_new_row
        height = max(height, 1)
        self.first = min(max(self.first, self.at - height + 1), self.at)
        self.first = max(min(self.first, count - height), 0)
        return range(self.first, min(self.first + height, count))

    def mark(self) -> bool:
        """Mark the build under the pointer, or take its mark off; false where there is none."""
        entry = self.entry
        if entry is None or entry.is_draft:
            return False
        if entry.path in self.marked:
            self.marked.remove(entry.path)
        else:
            self.marked.append(entry.path)
        return True

    def to_compare(self) -> list[Path]:
        """The marked builds in the order of the list; one alone stands against the build under the pointer."""
        paths = [entry.path for entry in self.entries if entry.path in self.marked]
        entry = self.entry
        if len(paths) == 1 and entry is not None and not entry.is_draft and entry.path not in paths:
            paths.append(entry.path)
        return paths

    def filter(self, needle: LineEdit) -> None:
        """Another filter; the pointer stays on its build where that still shows, else goes to the top."""
        on = self.entry
        changed = needle.text != self.needle.text
        self.needle = needle
        if changed and (on is None or not self.point_at(on.path)):
            self.at = 0

    def next_unknown(self, height: int) -> BuildFile | None:
        """The build to calculate next: the one under the pointer, then those in sight, then the others."""
        rows = self.rows
        here = [self.entry] if self.entry is not None else []
        seen = [rows[at] for at in self.window(height) if at < len(rows)]
        wanted = [*here, *seen, *self.entries]
        unknown = (
            entry for entry in wanted if entry.is_read and not entry.fault and self.known(entry) is None
        )
        return next(unknown, None)

    def _text(self, entry: BuildFile) -> str:
        """What the filter looks through: name, file, fuel, line and verdict."""
        known = self.known(entry)
        parts = [entry.name, entry.file_name, (known and known.fuel) or entry.fuel or ""]
        if known is not None and not known.fault:
            parts += [known.line, known.verdict.word]
        else:
            parts += [entry.chosen or "", "cannot be read" if entry.fault or known is not None else ""]
        return " ".join(parts).casefold()


def day_of(entry: BuildFile) -> date | None:
    """The day of a build's last change, by this computer's clock; None where its time is no time."""
    try:
        return datetime.fromtimestamp(entry.changed / 1e9).date()
    except (OverflowError, OSError, ValueError):
        return None
