"""The questions about the columns of a log: which are asked at once, and which heads of the file they offer."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from fuelwiz.desk.log_read import COLUMNS, Heads
from fuelwiz.session import NO_UNIT_AT_ALL, NOT_IN_THE_LOG, field_at, fits

if TYPE_CHECKING:
    from fuelwiz.desk.desk import Desk
    from fuelwiz.measured.log.layout import Head
    from fuelwiz.questions.catalogue import Question
    from fuelwiz.session import FieldSpec

NEEDED = ("time", "rail", "manifold", "boost", "rpm", "duty")
"""Asked at once where no head speaks for them."""


def is_up_to_date(desk: Desk) -> bool:
    """Whether the log that the build names was read and held against the build as it is now."""
    return desk.result is not None and desk.result.log is not None


def f8_does(desk: Desk, question: Question) -> str:
    """What F8 does at a question about the log, in a word or two."""
    if question.key.startswith(COLUMNS):
        return "its heads" if is_up_to_date(desk) else "read it"
    named = desk.result is not None and bool(desk.result.session.log.file)
    return "read it" if named and not is_up_to_date(desk) else "choose a file"


def is_column_at_once(desk: Desk, question: Question) -> bool:
    """Whether a column is asked for at once: one of the file, or one that is needed and that nothing speaks for."""
    if not question.key.startswith(COLUMNS) or desk.result is None or not desk.log.heads(desk.result.session):
        return False
    is_found = desk.is_given(question.key) or desk.log.guess(question.key, desk.result.session) is not None
    return is_found or (_is_refused(desk) and question.key.removeprefix(COLUMNS) in NEEDED)


def _is_refused(desk: Desk) -> bool:
    result = desk.result
    return result is None or result.log is None or result.log.figures is None


def with_heads(desk: Desk, question: Question) -> Question:
    """The question about a column, with the heads of the file that fit it among its answers."""
    heads = None if desk.result is None else desk.log.heads(desk.result.session)
    if not heads or not question.key.startswith(COLUMNS):
        return question
    return replace(question, entry={**question.entry, "choices": _answers(heads, question.key)})


@lru_cache(maxsize=64)
def _answers(heads: Heads, key: str) -> tuple[dict[str, str], ...]:
    """The heads that a column may be, and that it is not in the log."""
    spec = field_at(key)
    offered = (_offered(spec, head) for head in heads if head.text and _fits(spec, head))
    return (*offered, {"value": NOT_IN_THE_LOG, "say": "not in the log"})


def _fits(spec: FieldSpec, head: Head) -> bool:
    """Whether a column may be what is asked for: its unit fits, or it has none."""
    if head.unit is None:
        return True
    return head.unit.lower() in NO_UNIT_AT_ALL if spec.kind is None else fits(spec, head.unit)


def _offered(spec: FieldSpec, head: Head) -> dict[str, str]:
    """A head as an answer; one that says no unit is offered with the usual one, which is said."""
    if head.unit is not None or spec.kind is None:
        return {"value": head.text, "say": head.text.replace("{", "(").replace("}", ")")}
    said = head.text.replace("{", "(").replace("}", ")")
    return {"value": f"{head.text}, {spec.us_unit}", "say": f"{said}, taken as {spec.us_unit}"}
