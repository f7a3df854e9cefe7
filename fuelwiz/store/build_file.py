"""One build of a folder as a list shows it: read quickly, judged by nobody yet."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache
from pathlib import Path
from typing import Any

from fuelwiz.errors import SessionError
from fuelwiz.file_limits import LONGEST_NAME, MOST_BYTES, MOST_LEVELS, SUFFIX, UNNAMED
from fuelwiz.files import BYTE_ORDER_MARK, read_whole
from fuelwiz.printable import clean
from fuelwiz.record import record
from fuelwiz.store.drafts import build_name, changed_ns, pending_drafts, read_draft
from fuelwiz.terms import fuel_name_as_typed

DAMAGED = "is a damaged draft: what is whole of it can be read in an editor"
LEFT_OVER = "left over from a write that was cut short, and may not be removed here"

_LONG_KEY = re.compile(r"(?<![\w\"'-])(?:[\w\"'-]++[ \t]*+\.[ \t]*+){8}")
_BRACKET = re.compile(r"[\[\]{}]")
_POWER = re.compile(r"\s*([0-9]{1,7}(?:\.[0-9]{0,6})?)\s*([A-Za-z]{1,4})\s*")


@record
class Recorded:
    """What the program said at the last save, as far as the file tells it; texts are safe to show."""

    inputs: str
    saved: str
    version: str
    works: bool | None
    margin: str
    answer: str


@record
class BuildFile:
    """One file of the folder.

    `changed` is the time of its last change in ns since 1970, `plain` what it holds, as TOML reads it.
    `fault` says in words why it cannot be read; `plain` is then empty. `has_draft` tells of a draft that says
    something else than the file. `is_draft` is a draft by itself: of a build that has no file, or damaged; its path
    is the draft's. `is_read` says that the file has been looked into: a long list shows names first.
    """

    path: Path
    changed: int
    plain: dict[str, Any]
    fault: str | None
    has_draft: bool
    is_draft: bool = False
    is_read: bool = True

    @property
    def file_name(self) -> str:
        """The name of the file, safe to show."""
        return clean(self.path.name) or "?"

    @property
    def name(self) -> str:
        """What the build is called: its own name, else that of its file, whole where it cannot be read."""
        own = self.plain.get("name")
        given = clean(own).strip()[:LONGEST_NAME] if isinstance(own, str) else ""
        return given or (self.file_name if self.fault else self._stem)

    @property
    def goal(self) -> tuple[str, str] | None:
        """The power wanted and its unit, as the builder gave them; None where that is no plain quantity."""
        power = self._at("goal", "power")
        return _parted(power) if isinstance(power, str) else None

    @property
    def fuel(self) -> str | None:
        """The fuel by the name that people use; None where the file does not say it plainly."""
        return fuel_name_as_typed(self._at("fuel", "kind"), self._at("fuel", "ethanol"))

    @property
    def chosen(self) -> str | None:
        """The size of the feed line that the builder chose."""
        size = self._at("feed", "chosen")
        return clean(size)[:LONGEST_NAME] if isinstance(size, str) and size.strip() else None

    @property
    def notes(self) -> str:
        """The builder's notes in one line."""
        return " ".join(_text_of(self.plain.get("notes")).split())

    @property
    def record(self) -> Recorded | None:
        """What the program said at the last save; None where it has not saved the file yet."""
        table = self.plain.get("record")
        if not isinstance(table, dict):
            return None
        works = table.get("works")
        inputs, saved, version = map(_text_of, map(table.get, ("inputs", "saved", "version")))
        margin, answer = map(_text_of, map(table.get, ("margin", "answer")))
        return Recorded(inputs, saved, version, works if isinstance(works, bool) else None, margin, answer)

    @property
    def _stem(self) -> str:
        """What stands in for the name that the build does not give."""
        stem = self.path.name
        if self.is_draft:
            build = build_name(stem)
            return UNNAMED if build is None else clean(build.removesuffix(SUFFIX))
        return clean(stem.removesuffix(SUFFIX)) or "?"

    def _at(self, section: str, key: str) -> Any:
        table = self.plain.get(section)
        return table.get(key) if isinstance(table, dict) else None


@lru_cache(maxsize=4096)
def _parted(power: str) -> tuple[str, str] | None:
    """A power and its unit; remembered, as a long list asks for all of them at each key."""
    match = _POWER.fullmatch(power)
    return (str(Decimal(match[1]).quantize(Decimal(1), ROUND_HALF_UP)), match[2]) if match else None


def _text_of(value: Any) -> str:
    return clean(value).strip()[:2000] if isinstance(value, str) else ""


def read_build_file(path: Path, drafts: Iterable[str] | None = None) -> BuildFile:
    """The entry of one file, whatever stands in it.

    Args:
        path: the file.
        drafts: the names of the drafts in its folder, where they are known.
    """
    quick = _quickly_parsed(path)
    plain, fault = _carefully_read(path) if quick is None else (quick, None)
    has_draft = bool(pending_drafts(path, drafts))
    return BuildFile(path, changed_ns(path), plain, fault, has_draft)


def glance(path: Path, drafts: Iterable[str]) -> BuildFile:
    """The same where nothing is unusual; else no more than a name, as what is wrong takes long to load."""
    plain = _quickly_parsed(path)
    if plain is None:
        return unread(path)
    return BuildFile(path, changed_ns(path), plain, None, bool(pending_drafts(path, drafts)))


def unread(path: Path) -> BuildFile:
    """The entry of a file of which no more is known than its name and its time."""
    return BuildFile(path, changed_ns(path), {}, None, has_draft=False, is_read=False)


def draft_entry(path: Path) -> BuildFile | None:
    """The entry of a draft by itself; one that is damaged says so. None where it is gone."""
    draft = read_draft(path)
    if draft is None:
        return None
    plain = None if draft.plain is None else draft.plain["plain"]
    if plain and draft.is_away and draft.build is not None and "name" not in plain:
        plain = {**plain, "name": draft.build.name.removesuffix(SUFFIX)}  # its place does not tell it
    fault = None if plain is not None else DAMAGED
    return BuildFile(path, draft.mark[2], plain or {}, fault, has_draft=fault is None, is_draft=True)


def _quickly_parsed(path: Path) -> dict[str, Any] | None:
    """What a file holds, as TOML reads it; None where anything is unusual."""
    text = _quickly_read(path)
    if text is None or _needs_care(text):
        return None
    try:
        plain = tomllib.loads(text)
    except (ValueError, RecursionError):
        return None
    return plain if isinstance(plain.get("format"), int) and plain["format"] <= 1 else None


def _quickly_read(path: Path) -> str | None:
    """The text of a plain file of a session's size; None where anything is unusual."""
    try:
        return read_whole(path, MOST_BYTES).decode("utf-8").removeprefix(BYTE_ORDER_MARK)
    except (OSError, ValueError):
        return None


def _needs_care(text: str) -> bool:
    """Whether a text may be nested too deep to be parsed; rather once too often than too seldom."""
    depth = 0
    for bracket in _BRACKET.finditer(text):
        depth += 1 if bracket[0] in "[{" else -1
        if depth > MOST_LEVELS:
            return True
    return _LONG_KEY.search(text) is not None


def _carefully_read(path: Path) -> tuple[dict[str, Any], str | None]:
    """As `document.file` reads it, with its words for what is wrong; loaded only where it is needed."""
    from fuelwiz.document.file import read

    if path.is_symlink() and not path.exists():
        return {}, "is a link to a file that is not there"
    try:
        return read(path).plain, None
    except SessionError as error:
        return {}, first_fault(error)


def first_fault(error: SessionError) -> str:
    """The first thing that is wrong with a file, in a line that need not name the file."""
    fault = error.faults[0]
    place = f"line {fault.line}: " if fault.line is not None else ""
    key = f"`{fault.key}` " if fault.key else ""
    return clean(f"{place}{key}{fault.text}")
