"""Which of a question's answers a key picks."""

from __future__ import annotations

from collections.abc import Sequence

from fuelwiz.questions.catalogue import Choice

FIGURES_CHOOSE_NOTHING = "Left and Right choose; typed figures do nothing here."


def choice_beside(choices: Sequence[Choice], given: tuple[str, ...], way: int) -> Choice:
    """The answer after or before the one that stands, in a circle; `given` are the texts it may stand as."""
    at = next((i for i, choice in enumerate(choices) if choice.value in given), None)
    if at is None:
        return choices[0 if way > 0 else -1]
    return choices[(at + way) % len(choices)]


def choice_by_letter(choices: Sequence[Choice], given: str, letter: str) -> Choice | None:
    """The next answer with a word that begins with a letter."""
    at = next((i for i, choice in enumerate(choices) if choice.value == given), -1)
    ahead = (*choices[at + 1 :], *choices[: at + 1])
    return next((choice for choice in ahead if _answers(choice, letter.lower())), None)


def _answers(choice: Choice, letter: str) -> bool:
    words = choice.say.lower().replace("(", " ").split()
    return any(word.startswith(letter) for word in words)
