"""The draft that one sitting writes: beside its build, or where the user may write when that folder takes none."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from fuelwiz.errors import OutputError
from fuelwiz.files import Access, move, put_in_place, reason, write_atomically
from fuelwiz.printable import clean
from fuelwiz.store.drafts import DRAFT, UNNAMED_DRAFT, draft_of, hidden_name, mark_of
from fuelwiz.store.refuge import made_refuges

_NUMBERED = 1000


@dataclass(slots=True)
class OwnDraft:
    """In a place that was nobody's, and left alone once it is not its own.

    Its text tells the folder and the file that it is of, so that it is found again from wherever it had to go.
    """

    folder: Path
    build: Path | None
    place: Path | None = None
    _mark: tuple[int, int, int, int] | None = None
    _away: OwnDraft | None = None

    def write(self, text: str) -> Path:
        """Keep a text in place of the one before; where it is kept.

        Raises:
            OutputError: nothing can be written there, nor anywhere else.
        """
        try:
            place = self._write_here(text)
        except OutputError as error:
            away = self._written_away(text)
            if away is None:
                raise error from None
            return away
        if self._away is not None:
            self._away.remove()
            self._away = None
        return place

    def _written_away(self, text: str) -> Path | None:
        """Where it is kept when its own folder takes none; None where no place does."""
        known = [] if self._away is None else [self._away]
        for away in (*known, *(OwnDraft(folder, None) for folder in made_refuges())):
            with suppress(OutputError):
                place = away._write_here(text)
                self._away = away
                return place
        return None

    def _write_here(self, text: str) -> Path:
        if self.place is not None and self._is_own:
            access = None if self.build is None else Access.of(self.build)
            write_atomically(self.place, text, follow=False, access=access)
        else:
            self.place = self._kept_new(text)
        self._mark = mark_of(self.place)
        return self.place

    def remove(self) -> None:
        """Delete it, where it still is what was written here."""
        if self._away is not None:
            self._away.remove()
        if self.place is not None and self._is_own:
            with suppress(OSError):
                self.place.unlink()

    @property
    def _is_own(self) -> bool:
        return self.place is not None and self._mark is not None and mark_of(self.place) == self._mark

    def _kept_new(self, text: str) -> Path:
        name = clean(str(self.folder))
        access = None if self.build is None else Access.of(self.build)
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            for place in _places(self.folder, self.build):
                if os.path.lexists(place):
                    continue
                with suppress(FileExistsError):
                    put_in_place(place, text.encode("utf-8"), access=access, move=move)
                    return place
        except (OSError, ValueError) as error:
            why = reason(error)
            raise OutputError(f"{name}: no draft can be kept: {why}", why) from None
        raise OutputError(f"{name}: no draft can be kept")


def _places(folder: Path, build: Path | None) -> Iterator[Path]:
    """Where a draft may stand: the plain name first, then names that are nobody's."""
    if build is not None:
        yield draft_of(build)
    else:
        yield from (folder / f"{UNNAMED_DRAFT}{number}{DRAFT}" for number in range(1, _NUMBERED))
    for _ in range(_NUMBERED):
        own = os.urandom(4).hex()
        yield (
            folder / f"{UNNAMED_DRAFT}{own}{DRAFT}"
            if build is None
            else build.with_name(hidden_name(build.name, f".{own}{DRAFT}"))
        )
