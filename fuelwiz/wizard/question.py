"""What has to be answered before anything else, and the answers to choose from."""

from __future__ import annotations

from collections.abc import Callable

from fuelwiz.record import record

ESCAPE = "escape"


@record
class Choice:
    """One answer: the key that gives it, what it does in two or three words, and what follows from it."""

    key: str
    words: str
    follows: str


@record
class Question:
    """What is asked, what there is to know, what to choose from; the last choice is that of Esc."""

    title: str
    sentences: tuple[str, ...]
    choices: tuple[Choice, ...]
    done: Callable[[str], None]
