"""What a save needs to know of a build, and what it writes down of its answer."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

import fuelwiz
from fuelwiz.advice import Result
from fuelwiz.advice.phrases import least_spare
from fuelwiz.advice.subject import Subject
from fuelwiz.desk.exceptions import SaveRefused
from fuelwiz.desk.field_questions import noun_of
from fuelwiz.desk.plain import Plain
from fuelwiz.desk.refusals import Refusal
from fuelwiz.file_limits import LONGEST_NAME
from fuelwiz.printable import NO_BREAK, clean
from fuelwiz.session import inputs_digest


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
    subject = Subject(session, figures)
    least = least_spare(figures.pick)
    if least is not None:
        margin = subject.numbers.figure("percent", least[0], session.goal.reserve, 0.0)
        record["margin"] = margin.replace(NO_BREAK, " ")
    record["answer"] = clean(words.answer[0].replace(NO_BREAK, " "))
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
