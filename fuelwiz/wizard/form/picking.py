"""Which of a question's answers a key picks."""

from __future__ import annotations

import re
from collections.abc import Sequence

from fuelwiz.desk import Desk
from fuelwiz.desk.composites import CHOICE_QUESTIONS, field_of
from fuelwiz.desk.exceptions import NoSuchField
from fuelwiz.desk.field_specs import spec_at
from fuelwiz.questions.catalogue import Choice

_ASIDE = re.compile(r"[(),;:]")


def standing_answer(desk: Desk, path: str) -> str:
    """The answer that is shown as chosen: what stands; today's at the next goal; else what the key falls back to."""
    text = desk.text_in_field(path).text
    if text:
        return text
    if path == "goal.next_induction":
        return desk.text_in_field("engine.induction").text
    try:
        return spec_at(field_of(path)).fallback_text or ""
    except NoSuchField:
        return ""


def choice_beside(choices: Sequence[Choice], given: tuple[str, ...], way: int) -> Choice:
    """The answer after or before the one that is shown, in a circle; `given` are the texts it may stand as."""
    at = next((i for i, choice in enumerate(choices) if choice.value in given), None)
    if at is None:
        return choices[0 if way > 0 else -1]
    return choices[(at + way) % len(choices)]


def choice_by_text(choices: Sequence[Choice], given: str, text: str) -> Choice | None:
    """The answer that words begin: of a single letter, or that letter again, the next one; else the one that stands."""
    wanted = _plain(text)
    if not wanted:
        return None
    at = next((i for i, choice in enumerate(choices) if choice.value == given), -1)
    first = at + 1 if len(wanted) == 1 else max(at, 0)
    fitting = [
        choice for choice in (*choices[first:], *choices[:first]) if f" {wanted}" in f" {_plain(choice.say)}"
    ]
    if fitting:
        return fitting[0]
    is_letter_again = len(wanted) > 1 and wanted.isalpha() and set(wanted) == {wanted[0]}
    return choice_by_text(choices, given, wanted[0]) if is_letter_again else None


def also_typed(path: str) -> str:
    """What may be typed at a question beside its answers, as a sentence says it."""
    return CHOICE_QUESTIONS[path].also if path in CHOICE_QUESTIONS else ""


def none_of_them(path: str, text: str) -> str:
    """What is said of a text that is none of a question's answers."""
    also = also_typed(path)
    typed = f", or type {also}" if also else ""
    return f'"{text}" is none of the answers: Left and Right choose{typed}.'


def _plain(text: str) -> str:
    return " ".join(_ASIDE.sub(" ", text.lower()).split())
