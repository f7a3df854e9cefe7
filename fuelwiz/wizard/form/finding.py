"""What can be found by words of it: the questions that a build is asked, behind *more* too, actions, and builds."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from typing import Literal

from fuelwiz.desk.composites import field_of
from fuelwiz.desk.desk import Desk
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.questions import not_asked
from fuelwiz.questions.catalogue import STEPS, Question, catalogue, step_questions
from fuelwiz.record import record
from fuelwiz.wizard.form.plan import Place, rows_of

Kind = Literal["question", "action", "build", "file", "head"]

_CHANGED = ("quantity", "count", "ratio", "choice", "rated_flow", "wire")
"""Types of field that a bad day changes."""
_LAST = ("log.columns.", "tolerance.")
"""Where a log has a value, and how far it may be off: found last, as the value itself is what is looked for."""
_WORD = re.compile(r"[^\W_]+")


@record
class Findable:
    """One thing to find: what it is called, what stands beside it, the texts that it is found by, the best first, and
    what is said of it under it, where that is anything; `further` for a question that is not asked at once."""

    kind: Kind
    id: str
    text: str
    beside: str
    texts: tuple[str, ...]
    says: str = ""
    further: bool = False


@record
class Offer:
    """What is said around a list to pick from; `typed` takes a text that is none of the list, such as a path.

    `begun` is the first letter of what is looked for, `opened_by` a letter that opened the list and may have been meant
    as the first of a word.
    """

    title: str = "Find"
    nothing: str = "No question and no key has all of these words. Try one of them alone."
    go: str = "go there"
    typed: Callable[[str], None] | None = None
    begun: str = ""
    opened_by: str = ""


def questions_of(desk: Desk) -> list[Findable]:
    """Every question that the build is asked, step by step."""
    return [
        _question(question, step.name)
        for step in STEPS
        for question in {
            row.question.key: row.question for row in rows_of(desk, Place(step.id, more=True), "")
        }.values()
    ]


def answers_found() -> list[Findable]:
    """What is looked for and not asked: each leads to the question nearest to it."""
    return [
        Findable("question", one.nearest, one.name, f"see {label}", (f"{one.name} {one.words}",), one.say)
        for one in not_asked()
        for label in (catalogue()[one.nearest].label,)
    ]


def changeable(desk: Desk) -> list[Findable]:
    """The questions whose answer a bad day may change: those with a field of their own, asked or answered."""
    return [
        _question(question, step.name)
        for step in STEPS
        for question in step_questions(step.id, desk.system)
        if _has_field(desk, question)
    ]


def _has_field(desk: Desk, question: Question) -> bool:
    try:
        spec = spec_at(field_of(question.key))
        return spec.type in _CHANGED and bool(desk.text_in_field(question.key).text)
    except NoSuchField:
        return False


def _question(question: Question, step: str) -> Findable:
    page = question.help
    choices = " ".join(choice.say for choice in question.choices)
    return Findable(
        "question",
        question.key,
        question.label,
        f"{step}, more" if question.more else step,
        (
            question.label,
            f"{question.noun} {choices} {question.key}",
            question.why,
            f"{page.what} {page.why}",
        ),
        further=question.more,
    )


def found(findable: Iterable[Findable], typed: str) -> list[Findable]:
    """Those that have every word typed, or a word that begins so; the best first, else in their own order.

    What is called just so comes before all others, and what is asked at once before what is asked under *more*.
    """
    wanted = _words(typed)
    ranked = [(rank, one) for one in findable if (rank := _rank(one.texts, wanted)) is not None]
    ranked.sort(
        key=lambda pair: (_lateness(pair[1]), _words(pair[1].text) != wanted, pair[0], pair[1].further)
    )
    return [one for _, one in ranked]


def _words(text: str) -> list[str]:
    return [word.lower() for word in _WORD.findall(text)]


def _lateness(one: Findable) -> int:
    """0 for what is looked for as a rule; more for what only goes with it."""
    return next((late for late, begin in enumerate(_LAST, 1) if one.id.startswith(begin)), 0)


def _rank(texts: Sequence[str], wanted: Sequence[str]) -> int | None:
    """How far down the texts one has to read to have met every word; None where one is not met."""
    missing = set(wanted)
    for rank, text in enumerate(texts):
        words = _words(text)
        missing = {word for word in missing if not any(known.startswith(word) for known in words)}
        if not missing:
            return rank
    return None
