"""A build written to its file, with what the program says of it, and never over what somebody else wrote."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import fuelwiz
from fuelwiz.advice import Result
from fuelwiz.advice.row import SPARE
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.errors import SaveRefused
from fuelwiz.desk.numbers import NO_BREAK
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.words import Refusal, label
from fuelwiz.document.file import read
from fuelwiz.document.merge import merge
from fuelwiz.errors import OutputError, SessionError
from fuelwiz.file_limits import MOST_BYTES
from fuelwiz.files import reason, write_atomically
from fuelwiz.printable import clean
from fuelwiz.session import inputs_digest
from fuelwiz.store.history import keep

_FIRST_LINE = "format = 1\n"
_NO_PUMP = "The pump is not in the file until its flow is known."


@dataclass(frozen=True, slots=True)
class Paper:
    """A file as it was last seen: its text, and a digest by which a change is noticed; both None for none."""

    text: str | None = None
    digest: str | None = None

    @classmethod
    def of(cls, text: str) -> Paper:
        """The file with a text."""
        return cls(text, text_digest(text))


@dataclass(frozen=True, slots=True)
class Saved:
    """Where a build was written, and a sentence on what the file cannot hold; None where it holds all."""

    path: Path
    left_out: str | None


def text_digest(text: str) -> str:
    """A digest of a file's text."""
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


def refuse_unfinished(refusals: Mapping[str, Refusal], result: Result | None) -> None:
    """Stops a save where a field holds something that is refused, or where the power is not known.

    Raises:
        SaveRefused: it names the first such field.
    """
    if refusals:
        path, refusal = next(iter(refusals.items()))
        raise SaveRefused("refused", f"Not saved: at {label(path)}, {refusal.short}.", path)
    if result is None:
        raise SaveRefused("refused", "Not saved: the power wanted has to be known first.", "goal.power")


def refuse_to_overwrite(path: Path, paper: Paper, is_its_own: bool) -> None:
    """Stops a save that would go over what this desk has not read.

    Args:
        path: where the build is to be written.
        paper: its file as this desk last saw it.
        is_its_own: whether that is the file of this build.

    Raises:
        SaveRefused: there is a file of that name already, or it has changed.
    """
    if not os.path.lexists(path):
        return
    if not is_its_own or paper.digest is None:
        raise SaveRefused("exists", f"There is a file {clean(path.name)} already. Write over it?")
    try:
        same = text_digest(read(path).text) == paper.digest
    except SessionError:
        same = False
    if not same:
        raise SaveRefused(
            "changed", f"{clean(path.name)} was changed by somebody else since it was opened. Write over it?"
        )


def written(path: Path, paper: Paper, plain: Plain, result: Result) -> Paper:
    """Writes a build into its file; the file as it then stands.

    Raises:
        SaveRefused: it is too large for a session file.
        OutputError: the file cannot be written.
    """
    text = merge(paper.text or _FIRST_LINE, {**plain, "record": record_of(result)})
    if len(text.encode("utf-8")) > MOST_BYTES:
        raise SaveRefused(
            "refused",
            f"Not saved: the file would be larger than {MOST_BYTES // 1024} KiB. Shorten the notes.",
        )
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as error:
        raise OutputError(f"{clean(str(path.parent))}: cannot be made: {reason(error)}") from None
    keep(path, text)
    write_atomically(path, text)
    return Paper.of(text)


def left_out(plain: Plain, told: Plain) -> str | None:
    """What a file cannot hold of what is told."""
    return _NO_PUMP if "pump" in told and "pump" not in plain else None
